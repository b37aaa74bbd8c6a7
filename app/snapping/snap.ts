/**
 * Snapping: a pure function from a pointed place to the place meant, with the reason in words.
 *
 * Order. A corner within the slack wins over an edge, an edge over being in line with the corner before, that over the
 * grid. Only what is near the pointer is looked at.
 */
import { nearestOnEdge } from "../../geometry/edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { PathData, Point } from "../../geometry/types.ts";

export interface SnapTarget {
  readonly name: string;
  readonly path: PathData;
}

export interface Snapped {
  readonly point: Point;
  /** In words, as "corner of Pool deck"; empty where nothing drew the point. */
  readonly reason: string;
  /** A line to show why: from what it lines up with. */
  readonly guide: readonly [Point, Point] | null;
}

export interface SnapRequest {
  readonly at: Point;
  /** Inches. */
  readonly slack: number;
  readonly targets: readonly SnapTarget[];
  /** The corner placed before, to line up with. */
  readonly before?: Point;
  /** Grid spacing, inches. */
  readonly grid: number;
}

export function snap({ at, slack, targets, before, grid }: SnapRequest): Snapped {
  const corner = nearest(
    targets.flatMap(({ name, path }) =>
      path.vertices.map((vertex) => ({ point: [vertex[0], vertex[1]] as Point, reason: `corner of ${name}` })),
    ),
    at,
    slack,
  );
  if (corner) return { ...corner, guide: null };
  const edge = nearest(
    targets.flatMap(({ name, path }) =>
      pathFrom(path).edges.map((one) => ({ point: nearestOnEdge(one, at).point, reason: `edge of ${name}` })),
    ),
    at,
    slack,
  );
  if (edge) return { ...edge, guide: null };
  const onGrid: Point = [Math.round(at[0] / grid) * grid, Math.round(at[1] / grid) * grid];
  if (before) {
    const dx = Math.abs(at[0] - before[0]);
    const dy = Math.abs(at[1] - before[1]);
    if (dx <= slack && dy > slack) {
      const point: Point = [before[0], onGrid[1]];
      return { point, reason: "straight up from the corner before", guide: [before, point] };
    }
    if (dy <= slack && dx > slack) {
      const point: Point = [onGrid[0], before[1]];
      return { point, reason: "level with the corner before", guide: [before, point] };
    }
  }
  return { point: onGrid, reason: "grid", guide: null };
}

function nearest<T extends { readonly point: Point }>(candidates: readonly T[], at: Point, slack: number): T | null {
  let best: T | null = null;
  let distance = slack;
  for (const candidate of candidates) {
    const away = distanceBetween(candidate.point, at);
    if (away > distance) continue;
    best = candidate;
    distance = away;
  }
  return best;
}

/** The grid that suits a slack: the finest of 1 in., 3 in., 6 in., 1 ft, 5 ft, 10 ft that is not finer than the hand. */
export function gridFor(slack: number): number {
  return [1, 3, 6, 12, 60, 120].find((size) => size >= slack / 3) ?? 120;
}
