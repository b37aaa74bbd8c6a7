/**
 * Snapping: a pure function from a pointed place to the place that is meant, with the reason in words.
 *
 * Order. 1. A corner, end or part within the tolerance; a crossing of sides; the middle of a side. 2. Where a side from
 * the last corner ends square to a side or touches an arc. 3. A side; where the place is also in line with an earlier
 * corner, the crossing of the two. 4. In line with an earlier corner, exactly at a limit's distance from the water or at
 * a round distance from the corner. 5. Parallel or square to a side, likewise. 6. Exactly at a limit's distance from the
 * water. 7. In line with a corner of something else. 8. The grid.
 */

import { edgeLength, lineEdge, nearestOnEdge, pointAt } from "../../geometry/edge.ts";
import { crossings } from "../../geometry/edge-crossings.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { toStep } from "./grid.ts";
import type { WaterLimit } from "./limits.ts";
import { crossingPlaces, endingPlaces, type Heading, nearestHeading } from "./side-places.ts";
import { type AtDistance, atWaterDistance, type Track, type Water } from "./water-distance.ts";

/** What draws from afar (headings, distances, corners of other things) draws less strongly, in tolerances. */
const FAINT = 0.6;

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
  /** It is not a corner of what is being drawn. */
  readonly isOther?: boolean;
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
  /** Corners of other things to be in line with, after all else. */
  readonly others?: readonly SnapLine[];
  /** Where a straight side to the place comes from. */
  readonly from?: Point;
  /** Ways that it can run. */
  readonly headings?: readonly Heading[];
  /** Waters near the place, and the distances from them that matter. */
  readonly waters?: readonly Water[];
  readonly limits?: readonly WaterLimit[];
  /** For distances in words. */
  readonly units?: Units;
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
  const { tolerance, grid, from } = rule;
  const { points, edges } = candidates;
  const corners = points.filter(({ isMiddle }) => isMiddle !== true);
  const middles = points.filter(({ isMiddle }) => isMiddle === true);
  const point =
    nearest(corners, at, tolerance) ??
    nearest(crossingPlaces(edges, at, tolerance), at, tolerance) ??
    nearest(middles, at, tolerance);
  if (point) return { point: point.at, reason: point.words, guides: [] };
  const ending = from && nearest(endingPlaces(edges, from), at, tolerance);
  if (from && ending) return { point: ending.at, reason: ending.words, guides: [[from, ending.at]] };
  const lines = alignments(at, rule.lines ?? [], tolerance);
  const onEdge = edgeSnap(at, edges, lines, rule);
  if (onEdge) return onEdge;
  if (lines.x || lines.y) return aligned(at, lines, rule);
  const heading = from && nearestHeading(rule.headings ?? [], from, at, FAINT * tolerance);
  if (from && heading) return headed(from, heading.heading, heading.along, rule);
  const water = waterPlace(at, FAINT * tolerance, rule);
  if (water) return { point: water.point, reason: water.words, guides: [[water.wall, water.point]] };
  const others = alignments(at, rule.others ?? [], FAINT * tolerance);
  if (others.x || others.y) return aligned(at, others, rule, rule.origin ?? [0, 0]);
  if (grid === null) return unsnapped(at);
  const [x, y] = rule.origin ?? [0, 0];
  return { point: [x + toStep(at[0] - x, grid), y + toStep(at[1] - y, grid)], reason: "grid", guides: [] };
}

function waterPlace(at: Point, tolerance: number, rule: SnapRule, track?: Track): AtDistance | null {
  const { waters = [], limits = [], units = "ft-in" } = rule;
  return atWaterDistance(at, waters, limits, tolerance, units, track);
}

/** On a heading: exactly at a limit's distance from the water where one is near, else at a round distance from its start. */
function headed(from: Point, { way, words }: Heading, along: number, rule: SnapRule): Snapped {
  const place = (s: number): Point => [from[0] + way[0] * s, from[1] + way[1] * s];
  const water = waterPlace(place(along), rule.tolerance, rule, { through: from, way });
  if (water) {
    return {
      point: water.point,
      reason: `${words}, ${water.words}`,
      guides: [
        [from, water.point],
        [water.wall, water.point],
      ],
    };
  }
  const point = place(rule.grid === null ? along : toStep(along, rule.grid));
  return { point, reason: words, guides: [[from, point]] };
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

function alignments(at: Point, lines: readonly SnapLine[], tolerance: number): Alignments {
  const along = (axis: 0 | 1): Alignment | null => {
    const across = axis === 0 ? 1 : 0;
    const line = lines.find(
      ({ with: other }) =>
        Math.abs(at[axis] - other[axis]) <= tolerance && Math.abs(at[across] - other[across]) > tolerance,
    );
    if (!line) return null;
    if (line.isOther) return { with: line.with, words: `in line with ${line.name}` };
    const words = axis === 0 ? `straight up or down from ${line.name}` : `level with ${line.name}`;
    return { with: line.with, words };
  };
  return { x: along(0), y: along(1) };
}

/** `origin`: where round distances along the line are counted from; absent: from the corner that it is in line with. */
function aligned(at: Point, { x, y }: Alignments, rule: SnapRule, origin?: Point): Snapped {
  const { grid } = rule;
  const only = x && y ? null : (x ?? y);
  if (only) {
    const track: Track = { through: only.with, way: x ? [0, 1] : [1, 0] };
    const water = waterPlace(at, rule.tolerance, rule, track);
    if (water) {
      const guides: Guide[] = [
        [only.with, water.point],
        [water.wall, water.point],
      ];
      return { point: water.point, reason: `${only.words}, ${water.words}`, guides };
    }
  }
  const free = (axis: 0 | 1): number => {
    const base = origin?.[axis] ?? (axis === 0 ? y : x)?.with[axis] ?? 0;
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
