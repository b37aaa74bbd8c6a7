/** How many connections a fence needs: its pieces that are not joined and come within reach, and its gates. */
import { distanceAlongPath, pathLength, pointAlong } from "../../../geometry/outline.ts";
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Path, Point } from "../../../geometry/types.ts";

export interface FenceSections {
  /** Pieces within reach. */
  readonly reached: number;
  /** One position in reach on each. */
  readonly at: readonly Point[];
}

/**
 * The sections of a fence that `pieces` (its stretches within reach) touch. The site says only how many sections are not
 * joined, so they are taken as equally long. `sections` 0 or 1: the fence is one piece.
 */
export function sectionsWithin(fence: Path, pieces: readonly Path[], sections: number): FenceSections {
  const total = pathLength(fence);
  const stretches = pieces.map((piece) => {
    const first = piece.edges[0];
    const start = first ? distanceAlongPath(fence, first.from) : 0;
    return { start, end: start + pathLength(piece) };
  });
  if (sections <= 1 || total === 0) {
    const first = stretches[0];
    return first ? { reached: 1, at: [pointAlong(fence, (first.start + first.end) / 2)] } : { reached: 0, at: [] };
  }
  const length = total / sections;
  const at: Point[] = [];
  for (let i = 0; i < sections; i++) {
    for (const shift of fence.closed ? [0, total] : [0]) {
      const hit = stretches.find(
        ({ start, end }) =>
          start < (i + 1) * length + shift - LIMIT_TOLERANCE && end > i * length + shift + LIMIT_TOLERANCE,
      );
      if (!hit) continue;
      const from = Math.max(hit.start, i * length + shift);
      const to = Math.min(hit.end, (i + 1) * length + shift);
      at.push(pointAlong(fence, (from + to) / 2));
      break;
    }
  }
  return at.length === 0 && stretches[0]
    ? { reached: 1, at: [pointAlong(fence, stretches[0].start)] }
    : { reached: at.length, at };
}
