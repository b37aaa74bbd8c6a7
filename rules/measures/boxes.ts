/** Boxes round barriers and regions, for passing over what is not near. */
import { boundsOfPoints, grownBounds } from "../../geometry/points.ts";
import type { Barrier, Bounds, Region } from "../../geometry/types.ts";

const boxes = new WeakMap<Barrier, Bounds>();

/** The box of a barrier with room round it, so that a line along its edge counts as near. */
export function boxOfBarrier(barrier: Barrier): Bounds {
  const known = boxes.get(barrier);
  if (known) return known;
  const box = grownBounds(boundsOfPoints(barrier.points), ROOM_ROUND_BARRIER);
  boxes.set(barrier, box);
  return box;
}

/** Inches: more than any gap that the paths treat as sealed. */
const ROOM_ROUND_BARRIER = 1;

/** The box of a region; null where it is empty. */
export function boxOfRegion(region: Region): Bounds | null {
  let minX = Number.POSITIVE_INFINITY;
  let minY = minX;
  let maxX = -minX;
  let maxY = -minX;
  for (const polygon of region) {
    for (const [x, y] of polygon[0] ?? []) {
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
    }
  }
  return minX > maxX ? null : { minX, minY, maxX, maxY };
}
