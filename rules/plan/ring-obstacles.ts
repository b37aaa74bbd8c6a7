/**
 * What a ring pulled tight may not run through: walls, buildings and keep-outs, and the ground behind walls and buildings,
 * where copper would lie outside of the perimeter that they end.
 *
 * Stages. 1. The barriers' own ground. 2. Ground round the waters, as far as a ring may lie, less what is reached straight
 * from one of them and a little beyond: no sliver from chords is left between the two. 3. What is left, that much wider.
 */
import { barrierRegion } from "../../geometry/barrier-region.ts";
import { differenceRegions, offsetRegion, unionRegions } from "../../geometry/clipping.ts";
import { waterAndDirectReach } from "../../geometry/reach.ts";
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
    unionRegions(waters.map((water) => waterAndDirectReach(water, max + BEYOND, list)));
  const seen = offsetRegion(groundBefore(near), SHADOW_SLIVER);
  const behind = offsetRegion(differenceRegions(groundBefore([]), seen), SHADOW_SLIVER);
  return unionRegions([standing, behind]);
}
