/**
 * Cleaning rings before they go to the clipping engine.
 *
 * The engine loops without end, or answers wrongly, on horizontal edges that turn back on themselves. A ring therefore
 * loses its repeated positions, its positions on a straight run and its spikes (A-B-A, or B beyond A on one line), again
 * and again until nothing changes. None of the three encloses any area.
 */
import { orientation } from "./orientation.ts";
import type { Point } from "./types.ts";

/**
 * The ring without repeats, straight-run positions and spikes; not closed (the first position is not repeated).
 * Fewer than three positions are no ring: [].
 */
export function cleanRing(ring: readonly Point[]): Point[] {
  let points = withoutRepeats(ring);
  for (;;) {
    const kept = onePass(points);
    if (kept.length < 3) return [];
    if (kept.length === points.length) return kept;
    points = kept;
  }
}

/** The ring without positions that repeat the one before, round the seam too. */
function withoutRepeats(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of points) {
    const before = kept[kept.length - 1];
    if (!before || before[0] !== p[0] || before[1] !== p[1]) kept.push(p);
  }
  while (kept.length > 1) {
    const first = kept[0] as Point;
    const last = kept[kept.length - 1] as Point;
    if (first[0] !== last[0] || first[1] !== last[1]) break;
    kept.pop();
  }
  return kept;
}

/** Drops every position that turns nowhere or straight back, looking at the positions kept so far. */
function onePass(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of points) {
    while (kept.length >= 2) {
      if (orientation(kept[kept.length - 2] as Point, kept[kept.length - 1] as Point, p) !== 0) break;
      kept.pop();
    }
    kept.push(p);
  }
  // Across the seam.
  let start = 0;
  while (kept.length - start >= 3) {
    const last = kept[kept.length - 1] as Point;
    const first = kept[start] as Point;
    if (orientation(kept[kept.length - 2] as Point, last, first) === 0) kept.pop();
    else if (orientation(last, first, kept[start + 1] as Point) === 0) start++;
    else break;
  }
  return withoutRepeats(kept.slice(start));
}
