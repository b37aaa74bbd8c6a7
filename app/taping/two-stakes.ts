/**
 * Points taped from two stakes, A and B.
 *
 * Terms. The stakes' line runs from A, the origin, to B, at [apart, 0]; the left side is above it. Check: a further
 * distance, from a point to the one before it in the table; without checks two distances fix a point whatever they say,
 * and nothing can show a slip. Spread: how far a point may be off when every tape, that between the stakes too, is off by
 * `tape` the worst way; many times as much where two tapes cross at a flat angle.
 *
 * Stages. 1. Each point from its two distances; two tapes that do not meet leave a point between their ends. 2. With
 * checks, all points together (`adjust.ts`). 3. The spread of every row: by its own two tapes, or, where that is less, by
 * one of them and a check. 4. Residuals, and why a row is in doubt.
 */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { adjust, type Taped } from "./adjust.ts";

export interface StakeRow {
  /** Distances from the stakes, inches, above zero. */
  readonly a: number;
  readonly b: number;
  readonly side: "left" | "right";
  /** Taped from the point of the row before (of the last row, for the first of a closed outline); null when not. */
  readonly check: number | null;
}

/** Why a row is in doubt, with the inches that say how much. */
export type Doubt =
  /** Two tapes that end short of each other by so much. */
  | { readonly kind: "short"; readonly by: number }
  /** One tape so long that the other cannot reach its end, by so much. */
  | { readonly kind: "long"; readonly by: number }
  /** Distances that do not agree with the others of the table, by so much at most. */
  | { readonly kind: "off"; readonly by: number; readonly tape: "a" | "b" | "check" }
  /** Tapes that cross at a flat angle, degrees. */
  | { readonly kind: "flat"; readonly by: number; readonly angle: number };

export interface StakePoint {
  readonly at: Point;
  /** As taped less as placed, inches. */
  readonly residuals: { readonly a: number; readonly b: number; readonly check: number | null };
  /** A check leads to it or from it. */
  readonly isChecked: boolean;
  /** How far off the point may be, inches: never less than what its distances miss it by. */
  readonly spread: number;
  readonly doubts: readonly Doubt[];
}

/** A residual this many times the tape's own error is no chance. Common practice, no source. */
const OFF_TAPES = 3;
/**
 * A spread this many times the tape's own error: tapes that cross at under about 15 degrees, or 23 near the stakes' line,
 * where it grows faster. Common practice, no source.
 */
const FLAT_TAPES = 8;

/** Places of the rows in the stakes' own frame, in their order. `apart` and `tape`: inches, above zero. */
export function pointsFromStakes(
  rows: readonly StakeRow[],
  { apart, closed, tape }: { readonly apart: number; readonly closed: boolean; readonly tape: number },
): StakePoint[] {
  const first = rows.map((row) => meeting(row, apart));
  const stakes: readonly [Point, Point] = [
    [0, 0],
    [apart, 0],
  ];
  const before = (i: number): number | null => (i > 0 ? i - 1 : closed && rows.length > 2 ? rows.length - 1 : null);
  const checks = rows.flatMap(({ check }, of): Taped[] => {
    const to = before(of);
    return check === null || to === null ? [] : [{ of, to, length: check }];
  });
  const taped: Taped[] = [
    ...rows.flatMap(({ a, b }, of): Taped[] => [
      { of, to: stakes[0], length: a },
      { of, to: stakes[1], length: b },
    ]),
    ...checks,
  ];
  const starts = first.map(({ at }) => at);
  const places = checks.length === 0 ? starts : adjust(starts, taped, tape);
  const own = rows.map((row) => spreadOfTwo(row, apart, tape));
  return rows.map((row, i): StakePoint => {
    const at = places[i] as Point;
    const to = before(i);
    const residuals = {
      a: row.a - distanceBetween(at, stakes[0]),
      b: row.b - distanceBetween(at, stakes[1]),
      check: row.check === null || to === null ? null : row.check - distanceBetween(at, places[to] as Point),
    };
    const others = checks.flatMap((check) =>
      check.of === i ? [check.to as number] : check.to === i ? [check.of] : [],
    );
    const byChecks = others.map((other) =>
      spreadByCheck(at, stakes, places[other] as Point, tape, tape + (own[other] as number)),
    );
    const missed = Math.max(...Object.values(residuals).map((one) => Math.abs(one ?? 0)), first[i]?.miss?.by ?? 0);
    const spread = Math.max(Math.min(own[i] as number, ...byChecks), missed);
    const angle = crossingAngle(at, stakes);
    return {
      at,
      residuals,
      isChecked: others.length > 0,
      spread,
      doubts: doubtsOf(first[i] as Meeting, residuals, spread, angle, tape),
    };
  });
}

interface Meeting {
  readonly at: Point;
  readonly miss: { readonly kind: "short" | "long"; readonly by: number } | null;
}

/** Where two tapes meet; when they do not, the place that both miss by the same. */
function meeting({ a, b, side }: Pick<StakeRow, "a" | "b" | "side">, apart: number): Meeting {
  if (a + b < apart) return { at: [a + (apart - a - b) / 2, 0], miss: { kind: "short", by: apart - a - b } };
  const over = Math.abs(a - b) - apart;
  if (over > 0) {
    const at: Point = a > b ? [apart + b + over / 2, 0] : [-(a + over / 2), 0];
    return { at, miss: { kind: "long", by: over } };
  }
  const x = (a * a - b * b + apart * apart) / (2 * apart);
  const y = Math.sqrt(Math.max(0, a * a - x * x));
  return { at: [x, side === "left" ? y : -y], miss: null };
}

function crossingAngle(at: Point, [a, b]: readonly [Point, Point]): number {
  const [ax, ay, bx, by] = [at[0] - a[0], at[1] - a[1], at[0] - b[0], at[1] - b[1]];
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}

const EITHER_WAY = [-1, 1] as const;

/** How far the meeting of two tapes moves when they and the tape between the stakes are off, the worst way. */
function spreadOfTwo(row: StakeRow, apart: number, tape: number): number {
  const { at } = meeting(row, apart);
  const off = (length: number, way: number) => Math.max(length + way * tape, 0);
  const moves = EITHER_WAY.flatMap((a) =>
    EITHER_WAY.flatMap((b) =>
      // Stakes are farther apart than a tape is off, or nothing can be said from them.
      EITHER_WAY.map((c) => meeting({ ...row, a: off(row.a, a), b: off(row.b, b) }, Math.max(off(apart, c), tape))),
    ),
  );
  return Math.max(...moves.map((moved) => distanceBetween(moved.at, at)));
}

/** The same by a check from a point that may itself be off, `checkOff` in all, and the better of the two tapes with it. */
function spreadByCheck(
  at: Point,
  [a, b]: readonly [Point, Point],
  from: Point,
  tape: number,
  checkOff: number,
): number {
  const way = (place: Point) => Math.atan2(at[1] - place[1], at[0] - place[0]);
  // Stake B stands off as far as the tape between the stakes.
  return Math.min(
    spreadOfPair(way(a) - way(from), tape, checkOff),
    spreadOfPair(way(b) - way(from), 2 * tape, checkOff),
  );
}

/** How far a place moves that two tapes hold, off by so much each, which cross at an angle in radians. */
function spreadOfPair(angle: number, off: number, other: number): number {
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return sin === 0 ? Number.POSITIVE_INFINITY : Math.sqrt(off * off + other * other + 2 * off * other * cos) / sin;
}

function doubtsOf(
  { miss }: Meeting,
  residuals: StakePoint["residuals"],
  spread: number,
  angle: number,
  tape: number,
): Doubt[] {
  const doubts: Doubt[] = [];
  if (miss && miss.by > 2 * tape) doubts.push(miss);
  const worst = (["a", "b", "check"] as const)
    .map((one) => ({ tape: one, by: Math.abs(residuals[one] ?? 0) }))
    .reduce((most, one) => (one.by > most.by ? one : most));
  if (doubts.length === 0 && worst.by > OFF_TAPES * tape) doubts.push({ kind: "off", ...worst });
  if (spread > FLAT_TAPES * tape) doubts.push({ kind: "flat", by: spread, angle: (angle * 180) / Math.PI });
  return doubts;
}
