/** A table of taped points as it is being filled in: texts as typed, so that nothing is lost on the way. */
import type { DrawingTool } from "../edits/templates.ts";

/** What taped points are drawn as: an outline or a line through them, or an element at each of them. */
export interface Drawable {
  readonly tool: DrawingTool;
  readonly label: string;
  readonly as: "outline" | "line" | "points";
  /** First words of a pasted heading that mean it. */
  readonly words: readonly string[];
}

export const DRAWABLES: readonly Drawable[] = [
  { tool: "pool-outline", label: "Pool or spa", as: "outline", words: ["pool", "spa", "shell", "inside"] },
  {
    tool: "surface",
    label: "Deck or other surface",
    as: "outline",
    words: ["deck", "surface", "patio", "paving", "slab"],
  },
  { tool: "building", label: "Building", as: "outline", words: ["building", "house", "shed", "garage"] },
  { tool: "fence", label: "Fence", as: "line", words: ["fence", "railing"] },
  { tool: "wall", label: "Wall", as: "line", words: ["wall"] },
  { tool: "metal-line", label: "Metal, along a line", as: "line", words: ["rail", "edging", "pipe"] },
  { tool: "underground-run", label: "Underground run", as: "line", words: ["underground", "run", "conduit", "cable"] },
  { tool: "conductor", label: "Copper, as laid", as: "line", words: ["copper", "ring", "conductor"] },
  { tool: "metal-point", label: "Metal parts", as: "points", words: ["metal", "post", "posts", "pole", "poles"] },
  { tool: "equipment", label: "Equipment", as: "points", words: ["equipment", "pump", "heater"] },
  {
    tool: "device",
    label: "Electrical devices",
    as: "points",
    words: ["device", "devices", "receptacle", "receptacles"],
  },
  { tool: "keep-out", label: "No-copper area", as: "outline", words: ["no-copper", "tree", "trees"] },
];

export function drawableOf(tool: DrawingTool): Drawable {
  const found = DRAWABLES.find((one) => one.tool === tool);
  if (!found) throw new RangeError(`Nothing taped is drawn with ${tool}.`);
  return found;
}

/** From two stakes: `first` and `second` are the distances from A and B. Along a line: along it and off it. */
export type Method = "stakes" | "line";

export interface Row {
  readonly first: string;
  readonly second: string;
  /** Distance to the point before; two stakes only. */
  readonly check: string;
  readonly side: "left" | "right";
  /** The side to the next point is a curve. */
  readonly isCurved: boolean;
  /** Kept in the table, not drawn. */
  readonly isLeftOut: boolean;
}

/** One thing of the yard and its points. */
export interface Thing {
  readonly tool: DrawingTool;
  readonly name: string;
  readonly rows: readonly Row[];
}

export interface Taping {
  readonly method: Method;
  /** From stake to stake. */
  readonly apart: string;
  /** Stake A, or the start of the line, on the sheet. */
  readonly startX: string;
  readonly startY: string;
  /** Which way the line runs on the sheet. */
  readonly bearing: string;
  /** How far a tape may be off. */
  readonly tape: string;
  readonly things: readonly Thing[];
}

export function emptyRow(before?: Row): Row {
  return {
    first: "",
    second: "",
    check: "",
    side: before?.side ?? "left",
    isCurved: before?.isCurved ?? false,
    isLeftOut: false,
  };
}

export function emptyTaping(method: Method): Taping {
  return {
    method,
    apart: "",
    startX: '0"',
    startY: '0"',
    bearing: "0",
    tape: '1/2"',
    things: [{ tool: "pool-outline", name: "", rows: [emptyRow(), emptyRow(), emptyRow()] }],
  };
}

export function isEmptyRow({ first, second, check }: Row): boolean {
  return first.trim() === "" && second.trim() === "" && check.trim() === "";
}
