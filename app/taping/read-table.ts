/**
 * A table of taped points pasted as text, from a spreadsheet or a note.
 *
 * Terms. A cell ends at a tab, a semicolon, a bar, a comma or two spaces. A heading is a line without any length: it
 * begins the next thing of the yard and says what it is ("Pool", "Fence, north").
 *
 * Stages. 1. Lines to cells. 2. Words among the cells are taken out: left or right, curve, and the point's number or
 * name, which is not kept. 3. What is left are two or three lengths.
 */
import type { Units } from "../../rules/words/lengths.ts";
import type { DrawingTool } from "../edits/templates.ts";
import { parseLength } from "../entry/parse-length.ts";
import { DRAWABLES, emptyRow, type Method, type Row, type Thing } from "./taping.ts";

export type TableRead =
  | { readonly ok: true; readonly things: readonly Thing[] }
  | { readonly ok: false; readonly line: number; readonly reason: string };

const CELL_END = /\t|;|\||,| {2,}/;
const SIDES: Readonly<Record<string, Row["side"]>> = { left: "left", l: "left", right: "right", r: "right" };
const CURVE_WORDS = new Set(["curve", "curved", "arc"]);

/** The things of a pasted table, or its first line that cannot be read, counted from 1. Points before any heading are of `tool`. */
export function readTable(text: string, method: Method, tool: DrawingTool, units: Units): TableRead {
  const things: { tool: DrawingTool; name: string; rows: Row[] }[] = [];
  const lines = text.split(/\r?\n/).map((line) => line.split(CELL_END).map((cell) => cell.trim()));
  const isNumbered = hasNumbers(lines.map((cells) => cells.filter((cell) => cell !== "")));
  for (const [i, all] of lines.entries()) {
    const cells = all.filter((cell) => cell !== "");
    if (cells.length === 0) continue;
    const isLength = (cell: string) => parseLength(cell, units, { mayBeNegative: method === "line" }).ok;
    if (!cells.some(isLength)) {
      if (isColumnHead(cells)) continue;
      things.push({ tool: toolOf(cells.join(" ")) ?? tool, name: nameOf(cells.join(", ")), rows: [] });
      continue;
    }
    const words = cells.filter((cell) => !isLength(cell)).map((cell) => cell.toLowerCase());
    const lengths = cells.filter(isLength).slice(isNumbered && isNumber(cells[0]) ? 1 : 0);
    const unread = isLength(cells[0] ?? "") ? words : words.slice(1);
    const strange = unread.find((word) => !Object.hasOwn(SIDES, word) && !CURVE_WORDS.has(word));
    if (strange !== undefined) return no(i, `"${strange}" is no length. Write it as 16' 6", 198in or 5.03m.`);
    const most = method === "stakes" ? 3 : 2;
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
    rows.push({
      ...emptyRow(),
      first: lengths[0] as string,
      second: lengths[1] as string,
      check: lengths[2] ?? "",
      side: side ?? "left",
      isCurved: words.some((word) => CURVE_WORDS.has(word)),
    });
  }
  const filled = things.filter(({ rows }) => rows.length > 0);
  return filled.length === 0 ? no(0, "There is no point in what was pasted.") : { ok: true, things: filled };
}

/** Lines begin with the numbers of their points, counted up from 1, from 1 again where another thing begins. */
function hasNumbers(lines: readonly (readonly string[])[]): boolean {
  const numbers = lines.filter((cells) => cells.length > 2 && isNumber(cells[0])).map((cells) => Number(cells[0]));
  return numbers.length > 1 && numbers.every((one, i) => one === 1 || one === (numbers[i - 1] ?? 0) + 1);
}

function isNumber(cell: string | undefined): boolean {
  return cell !== undefined && /^\d+$/.test(cell);
}

function isColumnHead(cells: readonly string[]): boolean {
  return cells.length > 1 && cells.some((cell) => /^(from )?(stake )?[ab]$|^along|^off/i.test(cell));
}

function toolOf(heading: string): DrawingTool | null {
  const words = heading.toLowerCase().match(/[a-z-]+/g) ?? [];
  return DRAWABLES.find((one) => words.some((word) => one.words.includes(word)))?.tool ?? null;
}

/** A heading that is only a kind's word names nothing. */
function nameOf(heading: string): string {
  const isKind = DRAWABLES.some((one) => one.words.includes(heading.toLowerCase()));
  return isKind ? "" : heading;
}

function no(line: number, reason: string): TableRead {
  return { ok: false, line: line + 1, reason };
}
