/**
 * A table of taped points pasted as text, from a spreadsheet or a note.
 *
 * Terms. A cell ends at a tab; in a line without tabs at a semicolon or a bar; in one without those at a comma or two
 * spaces. A heading is a line without any length: it begins the next thing of the yard and says what it is ("Pool",
 * "Fence, north"). A column head names the columns, and may name their unit: "A (m)".
 *
 * Stages. 1. Lines to cells. 2. The point's number or name, which is not kept, and words are taken out: left or right,
 * curve. 3. What is left are two or three lengths. Nothing is guessed: where a first cell could be a number as well as a
 * length, the line is refused.
 */
import type { Units } from "../../rules/words/lengths.ts";
import type { DrawingTool } from "../edits/templates.ts";
import { parseLength } from "../entry/parse-length.ts";
import { DRAWABLES, emptyRow, type Method, type Row, type Thing } from "./taping.ts";

export type TableRead =
  | { readonly ok: true; readonly things: readonly Thing[] }
  | { readonly ok: false; readonly line: number; readonly reason: string };

const CELL_ENDS = [/\t/, /[;|]/];
const PLAIN_CELL_END = /,| {2,}/;
const SIDES: Readonly<Record<string, Row["side"]>> = { left: "left", l: "left", right: "right", r: "right" };
const CURVE_WORDS = new Set(["curve", "curved", "arc"]);

/** The things of a pasted table, or its first line that cannot be read, counted from 1. Points before any heading are of `tool`. */
export function readTable(text: string, method: Method, tool: DrawingTool, units: Units): TableRead {
  const things: { tool: DrawingTool; name: string; rows: Row[] }[] = [];
  const most = method === "stakes" ? 3 : 2;
  const read = (cell: string) => parseLength(cell, units, { mayBeNegative: method === "line" });
  const isLength = (cell: string) => read(cell).ok;
  const lines = text.split(/\r?\n/).map(cellsOf);
  const numbering = numberingOf(
    lines.filter((cells) => cells.some(isLength)).map((cells) => cells.filter(isLength)),
    lines.some((cells) => isColumnHead(cells) && /^(no|nr|num|number|point|pt|#)\b/i.test(cells[0] ?? "")),
    most,
  );
  let unit = "";
  for (const [i, cells] of lines.entries()) {
    const [lead = ""] = cells;
    if (cells.length === 0) continue;
    if (!cells.some(isLength)) {
      if (isColumnHead(cells)) {
        unit = cells.map(unitOf).find((one) => one !== "") ?? "";
        if (unit !== "" && !isLength(`1 ${unit}`)) return no(i, `"${unit}" is no unit of length.`);
        continue;
      }
      const figure = cells.filter((cell) => /^[+-]?[\d.]/.test(cell));
      if (figure.length > 1) return no(i, refusalOf(figure[0] as string, read));
      things.push({ tool: toolOf(cells.join(", ")) ?? tool, name: nameOf(cells.join(", ")), rows: [] });
      continue;
    }
    if (numbering === "unclear" && isNumber(lead)) {
      return no(i, `Is ${lead} the number of the point, or a length? Write lengths with their unit: ${lead}'.`);
    }
    const isNamed = isLength(lead) ? numbering === "numbered" && isNumber(lead) : !isWord(lead) && !/[,'"]/.test(lead);
    const rest = isNamed ? cells.slice(1) : cells;
    const lengths = rest.filter(isLength);
    const words = rest.filter((cell) => !isLength(cell)).map((cell) => cell.toLowerCase());
    const strange = words.find((word) => !Object.hasOwn(SIDES, word) && !CURVE_WORDS.has(word));
    if (strange !== undefined) return no(i, refusalOf(strange, read));
    if (lengths.length < 2 || lengths.length > most) {
      const wanted =
        method === "stakes" ? "two distances, from A and from B, and a check at most" : "how far along and how far off";
      return no(
        i,
        `A point needs ${wanted}; this line has ${lengths.length} ${lengths.length === 1 ? "length" : "lengths"}.`,
      );
    }
    if (things.length === 0) things.push({ tool, name: "", rows: [] });
    const { rows } = things.at(-1) as (typeof things)[number];
    const side = words.map((word) => (Object.hasOwn(SIDES, word) ? SIDES[word] : undefined)).find((one) => one);
    const [first = "", second = "", check = ""] = lengths.map((one) =>
      unit === "" || !isBare(one) ? one : `${one} ${unit}`,
    );
    rows.push({
      ...emptyRow(),
      first,
      second,
      check,
      side: side ?? "left",
      isCurved: words.some((word) => CURVE_WORDS.has(word)),
    });
  }
  const filled = things.filter(({ rows }) => rows.length > 0);
  return filled.length === 0 ? no(0, "There is no point in what was pasted.") : { ok: true, things: filled };
}

function cellsOf(line: string): string[] {
  const end = CELL_ENDS.find((one) => one.test(line)) ?? PLAIN_CELL_END;
  return line
    .split(end)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== "");
}

/**
 * Whether lines begin with the numbers of their points. `rows`: the lengths of each line. They do when a head says so,
 * when there are more than the lengths of a point, when all but the first are written with their units, or when they
 * count up from 1 (from 1 again where another thing begins). Whole numbers that count up from elsewhere may be either.
 */
function numberingOf(
  rows: readonly (readonly string[])[],
  isSaid: boolean,
  most: number,
): "numbered" | "none" | "unclear" {
  const begun = rows.filter((cells) => cells.length > 2 && isNumber(cells[0]));
  if (isSaid) return "numbered";
  if (begun.length === 0) return "none";
  if (begun.some((cells) => cells.length > most)) return "numbered";
  if (begun.every((cells) => cells.slice(1).every((cell) => !isBare(cell)))) return "numbered";
  const numbers = begun.map((cells) => Number(cells[0]));
  if (numbers.every((one, i) => one === 1 || (i > 0 && one > (numbers[i - 1] as number)))) return "numbered";
  const countsUp = numbers.length > 1 && numbers.every((one, i) => i === 0 || one === (numbers[i - 1] as number) + 1);
  return countsUp ? "unclear" : "none";
}

function isNumber(cell: string | undefined): boolean {
  return cell !== undefined && /^\d+$/.test(cell);
}

/** Without a unit. */
function isBare(cell: string): boolean {
  return /^[-+\d.,/ ]+$/.test(cell);
}

/** A letter alone names a point when it comes first. */
function isWord(cell: string): boolean {
  const word = cell.toLowerCase();
  return word.length > 1 && (Object.hasOwn(SIDES, word) || CURVE_WORDS.has(word));
}

function refusalOf(cell: string, read: (cell: string) => ReturnType<typeof parseLength>): string {
  const tried = read(cell);
  return tried.ok || !/^[+-]?[\d.]/.test(cell)
    ? `"${cell}" is no length. Write it as 16' 6", 198in or 5.03m.`
    : `"${cell}": ${tried.reason}`;
}

function isColumnHead(cells: readonly string[]): boolean {
  return cells.length > 1 && cells.some((cell) => /^(from )?(stake )?[ab]( ?[([].*)?$|^along|^off/i.test(cell));
}

/** The unit in "A (m)"; empty where none stands. */
function unitOf(cell: string): string {
  return /[([] ?([a-z'".]+) ?[)\]]$/i.exec(cell)?.[1]?.toLowerCase() ?? "";
}

/** Up to a comma or what it lies at, the last word says what a thing is: a pool deck is a deck, a fence along the pool a fence. */
const LIES_AT = /,|\b(?:along|around|round|at|by|near|behind|beside|of|to|in|on|from)\b/;
/** By itself what lies inside the wall is the pool. */
const INSIDE = new Set(["inside", "shell"]);

function toolOf(heading: string): DrawingTool | null {
  const known = heading
    .toLowerCase()
    .split(LIES_AT)
    .map((part) =>
      (part.match(/[a-z-]+/g) ?? []).flatMap((word) => {
        const tool = DRAWABLES.find((one) => one.words.includes(word))?.tool;
        return tool === undefined ? [] : [{ word, tool }];
      }),
    )
    .find((part) => part.length > 0);
  return (known?.find(({ word }) => INSIDE.has(word)) ?? known?.at(-1))?.tool ?? null;
}

/** A heading that is only a kind's word names nothing. */
function nameOf(heading: string): string {
  const isKind = DRAWABLES.some((one) => one.words.includes(heading.toLowerCase()));
  return isKind ? "" : heading;
}

function no(line: number, reason: string): TableRead {
  return { ok: false, line: line + 1, reason };
}
