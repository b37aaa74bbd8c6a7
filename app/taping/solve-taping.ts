/**
 * A filled-in table to places on the sheet, residuals and doubts.
 *
 * Stages. 1. Texts to lengths; what cannot be read is named by its row. 2. Places in the frame of the stakes or of the
 * line, thing by thing. 3. The frame is laid on the sheet. 4. Each thing's path, curves and all.
 */
import type { PathData, Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { parseBearing } from "../entry/parse-bearing.ts";
import { parseLength } from "../entry/parse-length.ts";
import { curveThrough } from "./curve-through.ts";
import { onSheet, pointsAlongLine } from "./offset-run.ts";
import { drawableOf, isEmptyRow, type Row, type Taping, type Thing } from "./taping.ts";
import { type Doubt, pointsFromStakes } from "./two-stakes.ts";

export interface SolvedRow {
  /** On the sheet, inches; null while the row cannot be read or is left out. */
  readonly at: Point | null;
  readonly residuals: { readonly a: number; readonly b: number; readonly check: number | null } | null;
  /** Plain sentences: what is wrong with the row or in doubt about it. */
  readonly faults: readonly string[];
  readonly doubts: readonly string[];
  /** How far off the point may be, inches. */
  readonly spread: number;
  /** Some distance beyond those that it takes leads to it, so that a slip can show. */
  readonly isChecked: boolean;
}

export interface SolvedThing {
  readonly rows: readonly SolvedRow[];
  /** The path through its points, on the sheet; null for points, or while there are too few. */
  readonly path: PathData | null;
}

export interface SolvedTaping {
  readonly start: Point;
  /** Stake B, or a place on the line; null while it is not known. */
  readonly end: Point | null;
  readonly things: readonly SolvedThing[];
  /** What is wrong with the fields above the table, by their names. */
  readonly faults: Readonly<Partial<Record<"apart" | "startX" | "startY" | "bearing" | "tape", string>>>;
  /** The farthest that a point may be off that is not in doubt, inches; 0 when there is none. */
  readonly spread: number;
  /** The farthest that the distance between two of those may be off, inches: both of its ends may be. */
  readonly between: number;
}

/** How much of a stretched line the picture shows, inches; the line itself has no end. */
const LINE_SHOWN = 120;

interface Frame {
  readonly start: Point;
  readonly bearing: number;
  readonly apart: number;
  readonly tape: number;
}

/** `north`: the plan angle that the site's north points to, degrees; compass bearings are read by it. */
export function solveTaping(taping: Taping, units: Units, north?: number): SolvedTaping {
  const isStakes = taping.method === "stakes";
  const faults: { -readonly [K in keyof SolvedTaping["faults"]]: string } = {};
  const length = (field: "apart" | "startX" | "startY" | "tape", mayBeNegative = false): number | null => {
    const read = parseLength(taping[field], units, { mayBeNegative });
    if (read.ok && (mayBeNegative || read.inches > 0)) return read.inches;
    faults[field] = read.ok ? "This has to be more than zero." : read.reason;
    return null;
  };
  const start: Point = [length("startX", true) ?? 0, length("startY", true) ?? 0];
  const tape = length("tape");
  const apart = isStakes ? length("apart") : LINE_SHOWN;
  const turned = parseBearing(taping.bearing, north);
  if (!turned.ok) faults.bearing = turned.reason;
  const isReady = Object.keys(faults).length === 0;
  const frame: Frame | null =
    isReady && tape !== null && apart !== null && turned.ok ? { start, bearing: turned.degrees, apart, tape } : null;
  const things = taping.things.map((thing) => solveThing(thing, taping, frame, units));
  const [spread = 0, next = 0] = things
    .flatMap(({ rows }) => rows.flatMap((row) => (row.at && row.doubts.length === 0 ? [row.spread] : [])))
    .sort((a, b) => b - a);
  return {
    start,
    end: frame ? onSheet([frame.apart, 0], frame.start, frame.bearing) : null,
    things,
    faults,
    spread,
    between: spread + next,
  };
}

const UNSOLVED: SolvedRow = { at: null, residuals: null, faults: [], doubts: [], spread: 0, isChecked: false };

interface ReadRow {
  readonly index: number;
  readonly first: number;
  readonly second: number;
  readonly check: number | null;
  readonly row: Row;
}

function solveThing(thing: Thing, { method }: Taping, frame: Frame | null, units: Units): SolvedThing {
  const { as } = drawableOf(thing.tool);
  const solved: SolvedRow[] = thing.rows.map(() => UNSOLVED);
  const read: ReadRow[] = [];
  for (const [index, row] of thing.rows.entries()) {
    if (row.isLeftOut || isEmptyRow(row)) continue;
    const faults: string[] = [];
    const length = (text: string, words: string, mayBeNegative: boolean): number => {
      const one = parseLength(text, units, { mayBeNegative });
      if (!one.ok) faults.push(`${words}: ${one.reason}`);
      else if (!mayBeNegative && one.inches <= 0 && method === "stakes") faults.push(`${words}: more than zero.`);
      return one.ok ? one.inches : 0;
    };
    const names = method === "stakes" ? ["From A", "From B"] : ["Along", "Off"];
    const first = length(row.first, names[0] as string, method === "line");
    const second = length(row.second, names[1] as string, false);
    const check = method === "line" || row.check.trim() === "" ? null : length(row.check, "To the point before", false);
    if (faults.length > 0) solved[index] = { ...(solved[index] as SolvedRow), faults };
    else read.push({ index, first, second, check, row });
  }
  if (!frame) return { rows: solved, path: null };
  const closed = as === "outline";
  for (const one of placed(withoutStrayChecks(read, thing, closed), method, closed, frame, units))
    solved[one.index] = one.solved;
  const points = read.map(({ index }) => (solved[index] as SolvedRow).at as Point);
  const isEnough = points.length >= (closed ? 3 : 2);
  const isRead = solved.every(({ faults }) => faults.length === 0);
  const curved = read.map(({ row }) => row.isCurved);
  return { rows: solved, path: as !== "points" && isEnough && isRead ? curveThrough(points, curved, closed) : null };
}

/** A check leads to the point before in the table: where that is left out or cannot be read, it leads to nothing. */
function withoutStrayChecks(read: readonly ReadRow[], { rows }: Thing, closed: boolean): ReadRow[] {
  const numbers = rows.flatMap((row, i) => (isEmptyRow(row) ? [] : [i]));
  const before = (list: readonly number[], i: number) => list[i - 1] ?? (closed ? list.at(-1) : undefined);
  const indexes = read.map(({ index }) => index);
  return read.map((one, i) =>
    before(indexes, i) === before(numbers, numbers.indexOf(one.index)) ? one : { ...one, check: null },
  );
}

function placed(
  read: readonly ReadRow[],
  method: Taping["method"],
  closed: boolean,
  { start, bearing, apart, tape }: Frame,
  units: Units,
): { index: number; solved: SolvedRow }[] {
  if (method === "line") {
    const points = pointsAlongLine(
      read.map(({ first, second, row }) => ({ along: first, off: second, side: row.side })),
    );
    return read.map(({ index }, i) => ({
      index,
      solved: {
        at: onSheet(points[i] as Point, start, bearing),
        residuals: null,
        faults: [],
        doubts: [],
        // Along and off may both be off.
        spread: Math.hypot(tape, tape),
        isChecked: false,
      },
    }));
  }
  const rows = read.map(({ first, second, check, row }) => ({ a: first, b: second, side: row.side, check }));
  return pointsFromStakes(rows, { apart, closed, tape }).map((point, i) => ({
    index: (read[i] as ReadRow).index,
    solved: {
      at: onSheet(point.at, start, bearing),
      residuals: point.residuals,
      faults: [],
      doubts: point.doubts.map((doubt) => doubtText(doubt, units)),
      spread: point.spread,
      isChecked: point.isChecked,
    },
  }));
}

const TAPES = { a: "from A", b: "from B", check: "to the point before" } as const;

function doubtText(doubt: Doubt, units: Units): string {
  const by = lengthText(doubt.by, units);
  switch (doubt.kind) {
    case "short":
      return `The two tapes do not reach each other: ${by} short.`;
    case "long":
      return `One tape is too long to meet the other, by ${by}.`;
    case "off":
      return `The distance ${TAPES[doubt.tape]} does not fit the others, by ${by}. Tape it and the checks beside it again.`;
    case "flat":
      return `The tapes cross at ${Math.min(doubt.angle, 180 - doubt.angle).toFixed(0)} degrees only: the point may be ${by} off. Tape it from a neighbor too, or from other stakes.`;
  }
}
