/** The legend: only what the plan uses, each with the very figure that it is drawn with. */
import type { Point } from "../../geometry/types.ts";
import type { Outcome } from "../../rules/report.ts";
import { OUTCOMES_WORST_FIRST } from "../../rules/report.ts";
import { typeLine } from "./blocks.ts";
import { HATCHES, type HatchName } from "./hatches.ts";
import { markWords } from "./mark-shapes.ts";
import type { Role } from "./palette.ts";
import type { Item, Scene } from "./scene.ts";
import { paperBox, paperLine } from "./sheet.ts";
import { EQUIPMENT_LETTERS, SYMBOLS, type SymbolName } from "./symbols.ts";

/** Room for a figure, points. */
const FIGURE = 20;
export const LEGEND_STEP = 12.4;

interface Entry {
  readonly words: string;
  /** Draws the figure with its middle at the place. */
  readonly figure: (middle: Point) => Item[];
}

const LINE_WORDS: readonly (readonly [Role, string])[] = [
  ["inside-wall", "inside wall"],
  ["inset", "step or ledge"],
  ["ring-proposed", "ring, proposed"],
  ["copper-recorded", "copper, recorded"],
  ["grid-proposed", "grid, proposed"],
  ["grid-recorded", "grid, recorded"],
  ["branch-proposed", "branch, proposed"],
  ["link-proposed", "link, proposed"],
  ["tail-recorded", "tail, recorded"],
  ["too-close", "no legal place"],
  ["reach", "reach of fixed metal"],
  ["overhead", "line overhead"],
  ["underground", "run underground"],
  ["witness", "measured line"],
  ["wall-line", "wall, no thickness"],
  ["opening", "door or window"],
  ["metal-area", "metal, outline"],
];

const SYMBOL_WORDS: Readonly<Partial<Record<SymbolName, string>>> = {
  "tie-needed": "tie, needed",
  "tie-recorded": "tie, recorded",
  connection: "connection, recorded",
  "first-corner": "start of tie distances",
  "way-in": "way into a building",
  "metal-part": "metal part",
  ladder: "ladder or rail",
  drain: "drain or skimmer",
  cup: "cup or anchor",
  post: "post or pole",
  receptacle: "receptacle",
  switch: "switch",
  luminaire: "luminaire",
  fan: "fan",
  outlet: "other outlet",
  "junction-box": "junction box",
  disconnect: "disconnect",
  "underwater-light": "underwater light",
  "water-bond": "water contact",
  "fence-cross": "fence, metal",
  "fence-ring": "fence, nonmetal",
  "fence-unknown": "fence, not known",
};

const HATCH_WORDS: Readonly<Partial<Record<HatchName, string>>> = {
  band: "perimeter surface",
  wall: "wall",
  building: "building",
  "keep-out": "no copper here",
};

/** The role that a hatch is shown with. */
function hatchRole(hatch: HatchName): Role {
  if (hatch === "band" || hatch === "keep-out" || hatch === "wall" || hatch === "building") return hatch;
  return hatch === "lawn" || hatch === "artificial-turf" ? "lawn" : "surface";
}

/** Everything that the scene uses and the legend can explain. */
export function legendEntries(scene: Scene): Entry[] {
  const roles = new Set<Role>();
  const symbols = new Map<SymbolName, Role>();
  const hatches = new Set<HatchName>();
  const letters = new Set<string>();
  const outcomes = new Set<Outcome>();
  for (const { items } of scene.layers) {
    for (const item of items) {
      if (item.kind === "shape") {
        roles.add(item.role);
        if (item.hatch) hatches.add(item.hatch);
      } else if (item.kind === "symbol") {
        symbols.set(item.symbol, item.role);
        if (item.letters) letters.add(item.letters);
      } else if (item.kind === "mark") outcomes.add(item.outcome);
    }
  }
  const lines = LINE_WORDS.filter(([role]) => roles.has(role)).map(([role, words]) => lineEntry(role, words));
  const parts = (Object.keys(SYMBOLS) as SymbolName[]).flatMap((name) => {
    const role = symbols.get(name);
    const words = SYMBOL_WORDS[name];
    return role && words ? [symbolEntry(name, role, words)] : [];
  });
  const equipment = Object.values(EQUIPMENT_LETTERS)
    .filter(([code]) => letters.has(code))
    .map(([code, words]) => symbolEntry("equipment", "equipment", words, code));
  const unknown = symbols.has("unknown") ? [symbolEntry("unknown", "unknown-kind", "unknown kind", "?")] : [];
  const grounds = (Object.keys(HATCHES) as HatchName[])
    .filter((name) => hatches.has(name))
    .map((name) => hatchEntry(name, HATCH_WORDS[name] ?? name.replaceAll("-", " ")));
  const marks = OUTCOMES_WORST_FIRST.filter((outcome) => outcomes.has(outcome)).map(markEntry);
  return [...marks, ...lines, ...parts, ...equipment, ...unknown, ...grounds];
}

function lineEntry(role: Role, words: string): Entry {
  return {
    words,
    figure: ([x, y]) => [
      paperLine(role, [
        [x - FIGURE / 2, y],
        [x + FIGURE / 2, y],
      ]),
    ],
  };
}

function symbolEntry(symbol: SymbolName, role: Role, words: string, letters?: string): Entry {
  const base = { kind: "symbol", symbol, role, turn: 0, ...(letters ? { letters } : {}) } as const;
  const isOnLine = role === "fence";
  return {
    words,
    figure: ([x, y]) => [
      ...(isOnLine ? lineEntry("fence", "").figure([x, y]) : []),
      ...(isOnLine ? [-5, 5] : [0]).map((shift): Item => ({ ...base, at: [x + shift, y] })),
    ],
  };
}

function hatchEntry(hatch: HatchName, words: string): Entry {
  const item = (box: Item): Item => (box.kind === "shape" ? { ...box, hatch } : box);
  return {
    words,
    figure: ([x, y]) => [
      item(paperBox(hatchRole(hatch), { minX: x - FIGURE / 2, minY: y - 4, maxX: x + FIGURE / 2, maxY: y + 4 })),
    ],
  };
}

function markEntry(outcome: Outcome): Entry {
  return { words: markWords(outcome), figure: (at) => [{ kind: "mark", at, from: null, number: 1, outcome }] };
}

/** Sets the legend into columns of a strip, row by row from its upper left corner. */
export function drawLegend(entries: readonly Entry[], corner: Point, columns: number, columnWidth: number): Item[] {
  const rows = Math.ceil(entries.length / columns);
  return entries.flatMap((entry, i) => {
    const x = corner[0] + Math.floor(i / rows) * columnWidth;
    const y = corner[1] - (i % rows) * LEGEND_STEP;
    return [...entry.figure([x + FIGURE / 2, y]), typeLine(entry.words, [x + FIGURE + 5, y + 3.4])];
  });
}
