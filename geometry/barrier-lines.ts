/**
 * The lines of all barriers as one drawing of corners and pieces that meet only at corners.
 *
 * Stages. 1. Corners within SAME_CORNER become one. 2. A corner on another line cuts that line; a corner of one barrier
 * within SEALED_GAP of another barrier is joined to it by a short seal, so that the slip in the drawing is no way
 * through. 3. Lines that cross are cut at the crossing. 4. What lies between two cuts is a piece; pieces that coincide
 * are one.
 *
 * Terms. Line: one straight edge of a barrier as given. Piece: a part of a line that no other line meets but at its ends.
 * No position moves by more than SAME_CORNER; lengths are read off the corners as given.
 */
import { orientation } from "./orientation.ts";
import { distanceBetween } from "./points.ts";
import { boxIndex } from "./spatial-index.ts";
import { SAME_CORNER, SEALED_GAP } from "./tolerances.ts";
import type { Barrier, Point } from "./types.ts";

/** Corners, and pieces as pairs of corner numbers. */
export interface BarrierLines {
  readonly corners: readonly Point[];
  readonly pieces: readonly (readonly [from: number, to: number])[];
}

interface Line {
  readonly a: number;
  readonly b: number;
  readonly barrier: number;
  /** Where it is cut: share of its length, and the corner there. */
  readonly cuts: { share: number; corner: number }[];
}

/** Throws on a position that is not a number: the reader has let nothing of the kind pass. */
export function barrierLines(barriers: readonly Barrier[]): BarrierLines {
  const corners = new CornerStore();
  const lines = linesOf(barriers, corners);
  const pairs = nearPairs(lines, corners.points);
  const seals: Line[] = [];
  for (const [i, j] of pairs) {
    const one = lines[i] as Line;
    const other = lines[j] as Line;
    meetAtEnds(one, other, corners, seals);
    meetAtEnds(other, one, corners, seals);
  }
  for (const [i, j] of pairs) cutWhereCrossing(lines[i] as Line, lines[j] as Line, corners);
  return { corners: corners.points, pieces: piecesOf([...lines, ...seals]) };
}

/** Positions in buckets of one inch; near ones share a number. */
class CornerStore {
  readonly points: Point[] = [];
  private readonly buckets = new Map<number, number[]>();

  numberOf(p: Point): number {
    for (const key of new Set([
      bucket(p[0] - SAME_CORNER, p[1] - SAME_CORNER),
      bucket(p[0] + SAME_CORNER, p[1] - SAME_CORNER),
      bucket(p[0] - SAME_CORNER, p[1] + SAME_CORNER),
      bucket(p[0] + SAME_CORNER, p[1] + SAME_CORNER),
    ])) {
      for (const known of this.buckets.get(key) ?? []) {
        if (distanceBetween(this.points[known] as Point, p) <= SAME_CORNER) return known;
      }
    }
    const added = this.points.push(p) - 1;
    const key = bucket(p[0], p[1]);
    const here = this.buckets.get(key);
    if (here) here.push(added);
    else this.buckets.set(key, [added]);
    return added;
  }
}

/** A number for the square inch that holds a position; far squares may share one, which only costs a comparison. */
function bucket(x: number, y: number): number {
  return Math.imul(Math.floor(x), 73856093) ^ Math.imul(Math.floor(y), 19349663);
}

function linesOf(barriers: readonly Barrier[], corners: CornerStore): Line[] {
  const lines: Line[] = [];
  barriers.forEach((barrier, index) => {
    const { points } = barrier;
    for (const [x, y] of points) {
      if (!Number.isFinite(x) || !Number.isFinite(y))
        throw new RangeError(`barrier ${barrier.id} has a position that is not a number: [${x}, ${y}]`);
    }
    const numbers = points.map((p) => corners.numberOf(p));
    const first = numbers[0];
    if (barrier.shape === "solid" && first !== undefined) numbers.push(first);
    for (let i = 1; i < numbers.length; i++) {
      const a = numbers[i - 1] as number;
      const b = numbers[i] as number;
      if (a !== b) lines.push({ a, b, barrier: index, cuts: [] });
    }
  });
  return lines;
}

/** Pairs of lines whose boxes come within SEALED_GAP, each once. */
function nearPairs(lines: readonly Line[], corners: readonly Point[]): [number, number][] {
  const boxes = lines.map((line) => {
    const [ax, ay] = corners[line.a] as Point;
    const [bx, by] = corners[line.b] as Point;
    const margin = SEALED_GAP / 2;
    return {
      minX: Math.min(ax, bx) - margin,
      minY: Math.min(ay, by) - margin,
      maxX: Math.max(ax, bx) + margin,
      maxY: Math.max(ay, by) + margin,
    };
  });
  const index = boxIndex(boxes);
  const pairs: [number, number][] = [];
  boxes.forEach((box, i) => {
    for (const j of index.search(box)) if (j > i) pairs.push([i, j]);
  });
  return pairs;
}

/** An end of `one` on or just beside `other`: cut, or seal when they belong to different barriers. */
function meetAtEnds(one: Line, other: Line, corners: CornerStore, seals: Line[]): void {
  const from = corners.points[other.a] as Point;
  const to = corners.points[other.b] as Point;
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const squared = dx * dx + dy * dy;
  for (const end of [one.a, one.b]) {
    if (end === other.a || end === other.b) continue;
    const p = corners.points[end] as Point;
    const share = Math.min(1, Math.max(0, ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / squared));
    const foot: Point = [from[0] + dx * share, from[1] + dy * share];
    const gap = distanceBetween(p, foot);
    if (gap <= SAME_CORNER) {
      other.cuts.push({ share, corner: end });
    } else if (gap <= SEALED_GAP && one.barrier !== other.barrier) {
      const corner = share === 0 ? other.a : share === 1 ? other.b : corners.numberOf(foot);
      if (corner !== other.a && corner !== other.b) other.cuts.push({ share, corner });
      if (corner !== end) seals.push({ a: end, b: corner, barrier: -1, cuts: [] });
    }
  }
}

function cutWhereCrossing(one: Line, other: Line, corners: CornerStore): void {
  if (one.a === other.a || one.a === other.b || one.b === other.a || one.b === other.b) return;
  const a = corners.points[one.a] as Point;
  const b = corners.points[one.b] as Point;
  const c = corners.points[other.a] as Point;
  const d = corners.points[other.b] as Point;
  const aSide = orientation(c, d, a);
  const bSide = orientation(c, d, b);
  if (!(aSide > 0 && bSide < 0) && !(aSide < 0 && bSide > 0)) return;
  const cSide = orientation(a, b, c);
  const dSide = orientation(a, b, d);
  if (!(cSide > 0 && dSide < 0) && !(cSide < 0 && dSide > 0)) return;
  const share = aSide / (aSide - bSide);
  const corner = corners.numberOf([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
  if (corner !== one.a && corner !== one.b) one.cuts.push({ share, corner });
  if (corner !== other.a && corner !== other.b) other.cuts.push({ share: cSide / (cSide - dSide), corner });
}

function piecesOf(lines: readonly Line[]): [number, number][] {
  const known = new Set<string>();
  const pieces: [number, number][] = [];
  const add = (from: number, to: number): void => {
    if (from === to) return;
    const key = from < to ? `${from} ${to}` : `${to} ${from}`;
    if (known.has(key)) return;
    known.add(key);
    pieces.push([from, to]);
  };
  for (const line of lines) {
    let last = line.a;
    for (const cut of line.cuts.sort((one, other) => one.share - other.share)) {
      add(last, cut.corner);
      last = cut.corner;
    }
    add(last, line.b);
  }
  return pieces;
}
