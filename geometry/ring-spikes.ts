/**
 * Takes the hairlines off a clipped ring: spikes and slits narrower than RING_SPIKE, which are left where two pieces of
 * ground, or ground and water, meet in a line that falls between the steps of the clipping grid.
 */
import { distanceBetween } from "./points.ts";
import { RING_SPIKE } from "./tolerances.ts";
import type { Point } from "./types.ts";

/** The ring (first position not repeated) without hairlines; empty when it is nothing else. */
export function withoutSpikes(ring: readonly Point[]): Point[] {
  let points = [...ring];
  for (;;) {
    const kept = onePass(points);
    if (kept.length < 3) return [];
    if (kept.length === points.length) return kept;
    points = kept;
  }
}

/** Drops every position at which the ring turns straight back, looking at the positions kept so far. */
function onePass(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of points) {
    while (kept.length >= 2 && turnsBack(kept[kept.length - 2] as Point, kept[kept.length - 1] as Point, p)) kept.pop();
    const last = kept[kept.length - 1];
    if (!last || distanceBetween(last, p) > RING_SPIKE) kept.push(p);
  }
  // Across the seam.
  let start = 0;
  while (kept.length - start >= 3) {
    const last = kept[kept.length - 1] as Point;
    const first = kept[start] as Point;
    const isRepeat = distanceBetween(last, first) <= RING_SPIKE;
    if (isRepeat || turnsBack(kept[kept.length - 2] as Point, last, first)) kept.pop();
    else if (turnsBack(last, first, kept[start + 1] as Point)) start++;
    else break;
  }
  return kept.slice(start);
}

/** Whether a -> b -> c comes back along itself, within RING_SPIKE. */
function turnsBack(a: Point, b: Point, c: Point): boolean {
  const [inX, inY] = [b[0] - a[0], b[1] - a[1]];
  const [outX, outY] = [c[0] - b[0], c[1] - b[1]];
  if (inX * outX + inY * outY >= 0) return false;
  // The end of the shorter leg lies beside the longer one.
  const longer = Math.max(Math.hypot(inX, inY), Math.hypot(outX, outY));
  const shorter = Math.min(Math.hypot(inX, inY), Math.hypot(outX, outY));
  return Math.abs(inX * outY - inY * outX) <= RING_SPIKE * longer && shorter > 0;
}
