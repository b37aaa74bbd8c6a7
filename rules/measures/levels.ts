/** Levels: what lies on top at a place, and how high above the datum. */
import { contains } from "../../geometry/outline.ts";
import type { Area, Point } from "../../geometry/types.ts";
import type { SurfaceElement } from "../site/elements.ts";

export interface SurfaceModel {
  readonly element: SurfaceElement;
  readonly area: Area;
}

/** A level with whether the drawing gives it (`false`: taken as the site's grade because the surface gives none). */
export interface Level {
  readonly z: number;
  readonly given: boolean;
  readonly surface: string | null;
}

/** The level underfoot at a place: of the topmost surface there (the later in the file lies on top), else the grade. */
export function levelAt(p: Point, surfaces: readonly SurfaceModel[], grade: number): Level {
  for (let i = surfaces.length - 1; i >= 0; i--) {
    const surface = surfaces[i];
    if (surface && contains(surface.area, p)) {
      const { level, id } = surface.element;
      return { z: level ?? grade, given: level !== undefined, surface: id };
    }
  }
  return { z: grade, given: true, surface: null };
}
