/**
 * Where a body's shell is tied to the perimeter bonding: positions that divide its outline evenly.
 *
 * Stages. 1. Recorded ties count first; only what is still needed is proposed. 2. With none recorded: equal spaces,
 * turned together round the outline to miss what has to be kept clear and, of such turns, to fall nearest to the
 * preferred positions. 3. With some recorded: each new one goes into the gap whose shares are widest, which makes the
 * largest gap as small as it can be, and the ties of a gap divide it evenly; one that falls on a place to be kept clear
 * moves to the nearest clear place.
 *
 * Inches along the outline from its first vertex, exact on arcs; positions are always in 0 <= s < length.
 */
import { regionContains } from "./clipping.ts";
import { pathLength, pointAlong } from "./outline.ts";
import { LIMIT_TOLERANCE } from "./tolerances.ts";
import type { Path, Point, Region } from "./types.ts";

/** Places tried along the outline when ties have to miss something, inches apart. */
const SEARCH_STEP = 1;

export interface TieRequest {
  readonly outer: Path;
  /** How many ties the outline needs in all, recorded ones included. */
  readonly count: number;
  /** Distances along the outline of recorded ties, any order. */
  readonly existing: readonly number[];
  /** No tie may lie in here (keep-outs). */
  readonly keepClear?: Region;
  /** Distances along the outline that ties should be near, as where branches arrive. */
  readonly preferred?: readonly number[];
}

export interface Tie {
  readonly distanceAlong: number;
  readonly at: Point;
  /** True where no clear place was left: it lies in `keepClear`. */
  readonly blocked: boolean;
}

/** The ties to propose beside the existing ones, in the order of the outline. None when enough are recorded. */
export function evenTies(request: TieRequest): Tie[] {
  const total = pathLength(request.outer);
  if (!(total > 0)) throw new Error(`an outline needs a length to be tied, not ${total}`);
  const needed = request.count - request.existing.length;
  if (!(needed > 0)) return [];
  const clear = clearAlong(request.outer, request.keepClear);
  const existing = request.existing.map((s) => wrap(s, total)).sort((a, b) => a - b);
  const found =
    existing.length === 0
      ? turnedTogether(total, needed, clear, request.preferred ?? [])
      : fillGaps(total, needed, existing).map(({ at, room }) => nearestClear(at, room, clear, total));
  return found
    .map((s) => wrap(s, total))
    .sort((a, b) => a - b)
    .map((s) => ({ distanceAlong: s, at: pointAlong(request.outer, s), blocked: !clear(s) }));
}

/** The widest gap between neighbors along a closed outline of length `total`; all of it with one tie or none. */
export function largestGap(total: number, positions: readonly number[]): number {
  const sorted = positions.map((s) => wrap(s, total)).sort((a, b) => a - b);
  const first = sorted[0];
  if (first === undefined) return total;
  let widest = first + total - (sorted[sorted.length - 1] as number);
  for (let i = 1; i < sorted.length; i++) widest = Math.max(widest, (sorted[i] as number) - (sorted[i - 1] as number));
  return widest;
}

function wrap(s: number, total: number): number {
  const rest = s % total;
  const inside = rest < 0 ? rest + total : rest;
  return total - inside <= LIMIT_TOLERANCE ? 0 : inside;
}

function clearAlong(outer: Path, keepClear: Region | undefined): (s: number) => boolean {
  if (!keepClear || keepClear.length === 0) return () => true;
  return (s) => !regionContains(keepClear, pointAlong(outer, s));
}

function turnedTogether(
  total: number,
  count: number,
  clear: (s: number) => boolean,
  preferred: readonly number[],
): number[] {
  const space = total / count;
  const turns = preferred.map((s) => wrap(s, space));
  const steps = Math.ceil(space / SEARCH_STEP);
  for (let i = 0; i < steps; i++) turns.push((i * space) / steps);
  let best = 0;
  let bestBlocked = Number.POSITIVE_INFINITY;
  let bestAway = Number.POSITIVE_INFINITY;
  for (const turn of turns) {
    let blocked = 0;
    for (let i = 0; i < count; i++) if (!clear(turn + i * space)) blocked++;
    if (blocked > bestBlocked) continue;
    let away = 0;
    for (const s of preferred) {
      const beyond = wrap(s - turn, space);
      away += Math.min(beyond, space - beyond);
    }
    if (blocked < bestBlocked || away < bestAway - LIMIT_TOLERANCE) {
      best = turn;
      bestBlocked = blocked;
      bestAway = away;
    }
  }
  return Array.from({ length: count }, (_, i) => best + i * space);
}

/** New positions between existing ones, and how far each may move (half its share of the gap). */
function fillGaps(total: number, needed: number, existing: readonly number[]): { at: number; room: number }[] {
  const gaps = existing.map((from, i) => {
    const next = existing[i + 1] ?? (existing[0] as number) + total;
    return { from, width: next - from, shares: 1 };
  });
  for (let i = 0; i < needed; i++) {
    const widest = gaps.reduce((a, b) => (b.width / b.shares > a.width / a.shares + LIMIT_TOLERANCE ? b : a));
    widest.shares++;
  }
  return gaps.flatMap(({ from, width, shares }) =>
    Array.from({ length: shares - 1 }, (_, i) => ({
      at: from + (width * (i + 1)) / shares,
      room: width / shares / 2,
    })),
  );
}

function nearestClear(at: number, room: number, clear: (s: number) => boolean, total: number): number {
  if (clear(wrap(at, total))) return at;
  for (let away = SEARCH_STEP; away < room; away += SEARCH_STEP) {
    if (clear(wrap(at + away, total))) return at + away;
    if (clear(wrap(at - away, total))) return at - away;
  }
  return at;
}
