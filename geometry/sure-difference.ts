/**
 * Ground less other ground, held against the union of both.
 *
 * Where outlines all but run along each other (ground that was reached from the water's edge, less the water) the clipping
 * engine may lose hundreds of square inches of a difference, depending on how the drawing is turned; of unions it loses
 * nothing. What is left and what is taken away have to make the union of both; where they do not, the work is done once
 * more with the drawing turned.
 */
import { differenceRegions, regionArea, unionRegions } from "./clipping.ts";
import { ringPerimeter } from "./rings.ts";
import { CLIP_UNITS_PER_INCH } from "./tolerances.ts";
import { GRID_TURNS, turnedRegion } from "./turned-region.ts";
import type { Region } from "./types.ts";

/** The area of `a` that `b` does not cover, as `differenceRegions` gives it. */
export function sureDifference(a: Region, b: Region): Region {
  let best: Region = [];
  let least = Number.POSITIVE_INFINITY;
  for (const angle of GRID_TURNS) {
    const [from, taken] = [turnedRegion(a, angle), turnedRegion(b, angle)];
    const left = differenceRegions(from, taken);
    const all = unionRegions([from, taken]);
    const lost = Math.abs(regionArea(all) - regionArea(unionRegions([taken])) - regionArea(left));
    if (lost < least) {
      best = turnedRegion(left, -angle);
      least = lost;
    }
    if (lost <= roundingOf([...left, ...all])) break;
  }
  return best;
}

/** What positions moved onto the clipping grid change of an area: two steps along every side. */
function roundingOf(region: Region): number {
  return (2 / CLIP_UNITS_PER_INCH) * region.flat().reduce((sum, ring) => sum + ringPerimeter(ring), 0);
}
