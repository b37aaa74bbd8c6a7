/**
 * What a ring pulled tight may not run through: walls, buildings and keep-outs, and the ground behind walls and buildings,
 * where copper would lie outside of the perimeter that they end.
 *
 * Stages. 1. The barriers' own ground. 2. Ground round the waters, as far as a ring may lie, less what is reached straight
 * from one of them. 3. Slivers between the two, which come from chords, are taken off.
 */
import { barrierRegion } from "../../geometry/barrier-region.ts";
import { differenceRegions, offsetRegion, unionRegions } from "../../geometry/clipping.ts";
import { directReach } from "../../geometry/reach.ts";
import { reaches } from "../../geometry/ring.ts";
import { SHADOW_SLIVER } from "../../geometry/tolerances.ts";
import type { Area, Barrier, Region } from "../../geometry/types.ts";

/** How much farther than a ring may lie the ground is looked at, inches: beyond the chords of its far edge. */
const BEYOND = 1;

/** `max`: the farthest that a ring may lie from the inside walls, inches. */
export function ringObstacles(
  waters: readonly Area[],
  barriers: readonly Barrier[],
  keepOuts: readonly Barrier[],
  max: number,
): Region {
  const standing = barrierRegion([...barriers, ...keepOuts]);
  const near = barriers.filter((barrier) => reaches(barrier, waters, max));
  if (near.length === 0) return unionRegions([standing]);
  const groundBefore = (list: readonly Barrier[]) =>
    unionRegions(waters.map((water) => directReach(water, max + BEYOND, list)));
  const behind = differenceRegions(groundBefore([]), groundBefore(near));
  return unionRegions([standing, offsetRegion(offsetRegion(behind, -SHADOW_SLIVER), SHADOW_SLIVER)]);
}
