/**
 * Which hole belongs to which outline.
 *
 * The clipping engine's own tree of outlines and holes takes a hole that touches its outline, or comes within rounding of
 * it, for an outline of its own. Its flat list keeps the directions right, so the tree is made anew: a ring that runs
 * counter-clockwise is an outline, a clockwise one a hole of the smallest larger outline around a point inside it. A
 * hairline outside of every outline is an edge that rounding folded over, and holds nothing.
 */
import { ringArea, ringContains, ringPerimeter } from "./rings.ts";
import { sortNumbers } from "./short-lists.ts";
import { FOLDED_EDGE } from "./tolerances.ts";
import type { Point } from "./types.ts";

interface Outline {
  readonly ring: readonly Point[];
  readonly area: number;
  readonly holes: Point[][];
}

/** Polygons of outline and holes, from simple rings on whole grid units (first position not repeated). */
export function nestRings(rings: readonly Point[][]): Point[][][] {
  const outlines: Outline[] = [];
  const holes: { ring: Point[]; area: number }[] = [];
  for (const ring of rings) {
    const area = ringArea(ring);
    if (area > 0) outlines.push({ ring, area, holes: [] });
    else if (area < 0) holes.push({ ring, area: -area });
  }
  const bySize = [...outlines].sort((a, b) => a.area - b.area);
  for (const hole of holes) {
    const inside = pointInside(hole.ring);
    const owner = bySize.find(({ ring, area }) => area > hole.area && ringContains(ring, inside));
    if (owner) owner.holes.push(hole.ring);
    else if (2 * hole.area > FOLDED_EDGE * ringPerimeter(hole.ring))
      throw new Error(`the clipping engine gave a hole without an outline, at ${hole.ring[0]}`);
  }
  return outlines.map(({ ring, holes: own }) => [ring as Point[], ...own]);
}

/** The middle of the widest stretch inside a ring, halfway up and between two grid lines, where no vertex lies. */
function pointInside(ring: readonly Point[]): Point {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const [, y] of ring) {
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  const y = Math.floor((low + high) / 2) + 0.5;
  const met: number[] = [];
  let a = ring[ring.length - 1] as Point;
  for (const b of ring) {
    if (a[1] > y !== b[1] > y) met.push(a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]));
    a = b;
  }
  sortNumbers(met);
  let [x, width] = [met[0] as number, -1];
  for (let i = 0; i + 1 < met.length; i += 2) {
    const [from, to] = [met[i] as number, met[i + 1] as number];
    if (to - from > width) [x, width] = [(from + to) / 2, to - from];
  }
  return [x, y];
}
