/**
 * What a tie means by "perimeter": the perimeter bonding at its place.
 *
 * Stages. 1. Of the recorded perimeter copper and the paving whose steel serves, the nearest within the width of the band;
 * at the same distance copper goes before steel, and steel that is only possible counts where nothing else is near.
 * 2. With nothing near: the one recorded perimeter conductor of the site, else its one paving with serving steel.
 * 3. Else nothing that is recorded.
 */
import { pointToArea, pointToPath } from "../../geometry/distance.ts";
import { areaOfPaths } from "../../geometry/outline.ts";
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Point } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement, SurfaceElement } from "../site/elements.ts";
import { perimeterCopper, steelSurfaces } from "./bearers.ts";

/** The word in `joins`. */
export const PERIMETER = "perimeter";

/** The id of the conductor, or of the surface, that "perimeter" names at a place; null when none is recorded. */
export function perimeterAt(yard: Yard, at: Point): string | null {
  const copper = perimeterCopper(yard).map((c) => ({ id: c.id, away: toConductor(yard, c, at) }));
  const steel = [...steelSurfaces(yard)].map(([id, standing]) => ({ id, standing, away: toSurface(yard, id, at) }));
  const within = yard.edition.value("perimeter.width") + LIMIT_TOLERANCE;
  let best: { id: string; away: number } | null = null;
  const sureSteel = steel.filter(({ standing }) => standing === "sure");
  for (const near of [...copper, ...sureSteel]) {
    if (near.away <= within && (!best || near.away < best.away - LIMIT_TOLERANCE)) best = near;
  }
  best ??= steel.find(({ away }) => away <= within) ?? null;
  if (best) return best.id;
  const only = copper.length > 0 ? copper : steel;
  return only.length === 1 ? (only[0]?.id ?? null) : null;
}

/** Straight distance to a conductor; 0 over the area that a closed grid covers. */
function toConductor(yard: Yard, conductor: ConductorElement, at: Point): number {
  const shape = yard.shape(conductor);
  if (shape.kind !== "path") return Number.POSITIVE_INFINITY;
  if (conductor.role === "grid" && shape.path.closed) return pointToArea(at, areaOfPaths(shape.path)).length;
  return pointToPath(at, shape.path).length;
}

function toSurface(yard: Yard, id: string, at: Point): number {
  const model = yard.surfaces.find(({ element }: { element: SurfaceElement }) => element.id === id);
  return model ? pointToArea(at, model.area).length : Number.POSITIVE_INFINITY;
}
