/** Splits ground by the surface that lies on top. */
import { differenceRegions, intersectRegions, regionArea, unionRegions } from "../../geometry/clipping.ts";
import { flattenArea, reversePath } from "../../geometry/outline.ts";
import { boundsOverlap } from "../../geometry/points.ts";
import type { Region } from "../../geometry/types.ts";
import { boxOfRegion } from "./boxes.ts";
import type { SurfaceModel } from "./levels.ts";
import type { BandPiece } from "./yard-types.ts";

/** Pieces of a region smaller than this come from rounding where outlines meet, square inches. */
const SLIVER = 0.5;

/** What a surface covers. An opening may reach past its outline or over another opening: it only ever takes away. */
export function coverOf({ area }: SurfaceModel): Region {
  if (area.holes.length === 0) return flattenArea(area);
  const openings = area.holes.map((hole) => flattenArea({ outer: reversePath(hole), holes: [] }));
  return differenceRegions(flattenArea({ outer: area.outer, holes: [] }), unionRegions(openings));
}

/** A region of ground by the surface on top (later in the file lies on top); last, what nothing covers. */
export function splitBySurface(region: Region, surfaces: readonly SurfaceModel[]): BandPiece[] {
  const pieces: BandPiece[] = [];
  let rest = region;
  const box = boxOfRegion(region);
  for (let i = surfaces.length - 1; i >= 0 && rest.length > 0; i--) {
    const surface = surfaces[i];
    if (!surface || !box || !boundsOverlap(box, surface.area.outer.bounds)) continue;
    const whole = coverOf(surface);
    const piece = intersectRegions(rest, whole);
    const area = regionArea(piece);
    if (area < SLIVER) continue;
    pieces.unshift({ surface: surface.element.id, region: piece, area });
    rest = differenceRegions(rest, whole);
  }
  const area = regionArea(rest);
  if (area >= SLIVER) pieces.push({ surface: null, region: rest, area });
  return pieces;
}
