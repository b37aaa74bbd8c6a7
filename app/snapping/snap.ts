/**
 * Snapping: a pure function from a pointed place to the place that is meant, with the reason in words.
 *
 * Order. 1. A corner, end, part or middle of a side within the tolerance. 2. A side within it; where the place is also
 * in line with an earlier corner, the crossing of the two. 3. In line with an earlier corner, at a round distance from
 * it. 4. The grid.
 */

import { edgeLength, lineEdge, nearestOnEdge, pointAt } from "../../geometry/edge.ts";
import { crossings } from "../../geometry/edge-crossings.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import { toStep } from "./grid.ts";

/** A side and the line of an earlier corner meet this near to the pointer, in tolerances. Farther off they run along each other. */
const MEETING_REACH = 1.5;

/** A place that draws the pointer; `words` as "corner of Pool deck". */
export interface SnapPoint {
  readonly at: Point;
  readonly words: string;
  /** Middles of sides come after corners. */
  readonly isMiddle?: boolean;
}

export interface SnapEdge {
  readonly edge: Edge;
  readonly words: string;
}

/** What lies near the pointer. */
export interface SnapCandidates {
  readonly points: readonly SnapPoint[];
  readonly edges: readonly SnapEdge[];
}

/** A corner to be in line with; `name` as "the last corner". */
export interface SnapLine {
  readonly with: Point;
  readonly name: string;
}

export interface SnapRule {
  /** Inches within which something draws the pointer. */
  readonly tolerance: number;
  /** Step of the grid, inches; null: no grid. */
  readonly grid: number | null;
  /** Where the grid's steps are counted from: [0, 0] when absent. */
  readonly origin?: Point;
  /** Corners to be in line with, the first of those that fit counts. */
  readonly lines?: readonly SnapLine[];
}

/** A line from what the place is in line with. */
export type Guide = readonly [from: Point, to: Point];

export interface Snapped {
  readonly point: Point;
  /** In words; null where nothing drew the place. */
  readonly reason: string | null;
  readonly guides: readonly Guide[];
}

/** The place as it is pointed. */
export function unsnapped(point: Point): Snapped {
  return { point, reason: null, guides: [] };
}

export function snap(at: Point, candidates: SnapCandidates, rule: SnapRule): Snapped {
  const { tolerance, grid } = rule;
  const corners = candidates.points.filter(({ isMiddle }) => isMiddle !== true);
  const middles = candidates.points.filter(({ isMiddle }) => isMiddle === true);
  const point = nearest(corners, at, tolerance) ?? nearest(middles, at, tolerance);
  if (point) return { point: point.at, reason: point.words, guides: [] };
  const lines = alignments(at, rule);
  const onEdge = edgeSnap(at, candidates.edges, lines, rule);
  if (onEdge) return onEdge;
  if (lines.x || lines.y) return aligned(at, lines, rule);
  if (grid === null) return unsnapped(at);
  const [x, y] = rule.origin ?? [0, 0];
  return { point: [x + toStep(at[0] - x, grid), y + toStep(at[1] - y, grid)], reason: "grid", guides: [] };
}

function nearest<T extends Pick<SnapPoint, "at">>(points: readonly T[], at: Point, tolerance: number): T | null {
  let best: T | null = null;
  let least = tolerance;
  for (const candidate of points) {
    const away = distanceBetween(candidate.at, at);
    if (away > least || (best !== null && away === least)) continue;
    best = candidate;
    least = away;
  }
  return best;
}

/** A coordinate shared with an earlier corner. */
interface Alignment {
  readonly with: Point;
  readonly words: string;
}

interface Alignments {
  readonly x: Alignment | null;
  readonly y: Alignment | null;
}

function alignments(at: Point, { lines = [], tolerance }: SnapRule): Alignments {
  const along = (axis: 0 | 1): Alignment | null => {
    const across = axis === 0 ? 1 : 0;
    const line = lines.find(
      ({ with: other }) =>
        Math.abs(at[axis] - other[axis]) <= tolerance && Math.abs(at[across] - other[across]) > tolerance,
    );
    if (!line) return null;
    const words = axis === 0 ? `straight up or down from ${line.name}` : `level with ${line.name}`;
    return { with: line.with, words };
  };
  return { x: along(0), y: along(1) };
}

function aligned(at: Point, { x, y }: Alignments, { grid }: SnapRule): Snapped {
  // Along the line, the distance from the corner is made round.
  const free = (axis: 0 | 1): number => {
    const base = (axis === 0 ? y : x)?.with[axis] ?? 0;
    return grid === null ? at[axis] : base + toStep(at[axis] - base, grid);
  };
  const point: Point = [x ? x.with[0] : free(0), y ? y.with[1] : free(1)];
  const found = [x, y].filter((one) => one !== null);
  return {
    point,
    reason: found.map(({ words }) => words).join(", "),
    guides: found.map((one): Guide => [one.with, point]),
  };
}

function edgeSnap(at: Point, edges: readonly SnapEdge[], lines: Alignments, rule: SnapRule): Snapped | null {
  const { tolerance, grid } = rule;
  let best: { t: number; edge: SnapEdge; away: number } | null = null;
  for (const candidate of edges) {
    const { t, distance } = nearestOnEdge(candidate.edge, at);
    if (distance <= tolerance && (best === null || distance < best.away)) best = { t, edge: candidate, away: distance };
  }
  if (best === null) return null;
  for (const axis of [0, 1] as const) {
    const line = axis === 0 ? lines.x : lines.y;
    if (!line) continue;
    const low: Point = axis === 0 ? [line.with[0], at[1] - 2 * tolerance] : [at[0] - 2 * tolerance, line.with[1]];
    const high: Point = axis === 0 ? [line.with[0], at[1] + 2 * tolerance] : [at[0] + 2 * tolerance, line.with[1]];
    const places = crossings(lineEdge(low, high), best.edge.edge).map((place) => ({ at: place }));
    const meeting = nearest(places, at, MEETING_REACH * tolerance)?.at;
    if (meeting) {
      return {
        point: meeting,
        reason: `${best.edge.words}, ${line.words}`,
        guides: [[line.with, meeting]],
      };
    }
  }
  return { point: roundAlong(best.edge.edge, best.t, grid), reason: best.edge.words, guides: [] };
}

/** The position on a side at a round distance from the corner that it leaves, as near as can be to share `t` of it. */
function roundAlong(edge: Edge, t: number, grid: number | null): Point {
  const length = edgeLength(edge);
  if (grid === null || length === 0) return pointAt(edge, t);
  return pointAt(edge, Math.min(1, toStep(t * length, grid) / length));
}
