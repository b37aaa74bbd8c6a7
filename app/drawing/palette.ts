/**
 * Colors and line weights by role. The hues are the Okabe-Ito set (published, told apart by color-blind eyes), each with
 * one meaning; shape, line pattern or word always says the same. Weights and dashes in points of paper.
 *
 * Meanings: vermillion copper and what needs it · orange the perimeter band · yellow a question · purple the reach of
 * fixed metal · blue a measurement · sky blue water · green meets · ink everything drawn, and a conflict.
 */
import type { HatchName } from "./hatches.ts";

export type Role =
  | "surface"
  | "lawn"
  | "surface-unknown"
  | "band"
  | "reach"
  | "keep-out"
  | "water"
  | "inside-wall"
  | "water-line"
  | "inset"
  | "building"
  | "building-open"
  | "wall"
  | "wall-line"
  | "fence"
  | "opening-gap"
  | "opening"
  | "structure"
  | "underground"
  | "overhead"
  | "extension"
  | "dimension"
  | "grid-proposed"
  | "ring-proposed"
  | "branch-proposed"
  | "tie-proposed"
  | "link-proposed"
  | "too-close"
  | "copper-recorded"
  | "grid-recorded"
  | "tail-recorded"
  | "tie-recorded"
  | "metal"
  | "metal-area"
  | "equipment"
  | "device"
  | "light"
  | "copper-symbol"
  | "unknown-kind"
  | "witness"
  | "focus"
  | "focus-rest"
  | "veil"
  | "limit"
  | "leader"
  | "frame"
  | "rule-line"
  | "ink-fill"
  | "paper-fill"
  | "mark-bond"
  | "mark-missing"
  | "mark-conflict"
  | "mark-review"
  | "mark-meets"
  | "mark-exempt";

export type TextRole =
  | "ink"
  | "faint"
  | "on-water"
  | "on-building"
  | "copper"
  | "measure"
  | "mark-light"
  | "mark-dark"
  | "mark-copper"
  | "mark-meets"
  | "mark-exempt";

export interface LineStyle {
  readonly stroke?: string;
  readonly weight?: number;
  readonly dash?: readonly number[];
  readonly cap?: "butt" | "round";
  readonly fill?: string;
  /** Of the whole item; 1 when absent. */
  readonly opacity?: number;
}

export type PaletteName = "sheet" | "projector" | "plain";
export const PALETTE_NAMES: readonly PaletteName[] = ["sheet", "projector", "plain"];

export interface Palette {
  readonly name: PaletteName;
  readonly paper: string;
  readonly roles: Readonly<Record<Role, LineStyle>>;
  readonly texts: Readonly<Record<TextRole, string>>;
  readonly hatches: Readonly<Record<HatchName, string>>;
}

/** The colors that a palette is made from. */
interface Inks {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly faint: string;
  readonly ground: string;
  readonly grass: string;
  readonly water: string;
  readonly waterEdge: string;
  readonly waterText: string;
  readonly house: string;
  readonly copper: string;
  readonly band: string;
  readonly question: string;
  readonly reach: string;
  readonly measure: string;
  readonly meets: string;
  /** Factor on every line weight. */
  readonly heavier: number;
}

const SHEET: Inks = {
  paper: "#fcfbf7",
  ink: "#18222b",
  soft: "#4c5863",
  faint: "#8d969c",
  ground: "#f1ede4",
  grass: "#eef2e6",
  water: "#dcecf4",
  waterEdge: "#56b4e9",
  waterText: "#1d4f6b",
  house: "#e6e2d8",
  copper: "#c44f00",
  band: "#e69f00",
  question: "#f0e442",
  reach: "#b0578a",
  measure: "#0072b2",
  meets: "#007a58",
  heavier: 1,
};

const PROJECTOR: Inks = {
  paper: "#0d151c",
  ink: "#f6f3ea",
  soft: "#c9d1d6",
  faint: "#7f8d97",
  ground: "#17212a",
  grass: "#122019",
  water: "#113a4f",
  waterEdge: "#56b4e9",
  waterText: "#a6dcf7",
  house: "#222e39",
  copper: "#ff9350",
  band: "#ffc04a",
  question: "#f0e442",
  reach: "#ecabd0",
  measure: "#7cc4ff",
  meets: "#4fd6ae",
  heavier: 1.7,
};

const PLAIN: Inks = {
  paper: "#ffffff",
  ink: "#000000",
  soft: "#222222",
  faint: "#777777",
  ground: "#ffffff",
  grass: "#ffffff",
  water: "#f1f1f1",
  waterEdge: "#777777",
  waterText: "#000000",
  house: "#ffffff",
  copper: "#000000",
  band: "#777777",
  question: "#ffffff",
  reach: "#444444",
  measure: "#000000",
  meets: "#000000",
  heavier: 1,
};

function paletteOf(name: PaletteName, inks: Inks): Palette {
  const { paper, ink, soft, faint, copper } = inks;
  const line = (stroke: string, weight: number, dash?: readonly number[], cap?: "round"): LineStyle => ({
    stroke,
    weight: weight * inks.heavier,
    ...(dash ? { dash: dash.map((length) => length * (inks.heavier > 1 ? 1.3 : 1)) } : {}),
    ...(cap ? { cap } : {}),
  });
  const fill = (color: string, edge?: LineStyle): LineStyle => ({ ...edge, fill: color });
  const roles: Record<Role, LineStyle> = {
    surface: fill(inks.ground, line(soft, 0.5)),
    lawn: fill(inks.grass, line(faint, 0.3)),
    "surface-unknown": fill(inks.ground, line(soft, 0.5, [3, 2])),
    band: line(inks.band, 0.6),
    reach: line(inks.reach, 0.7, [6, 2.5]),
    "keep-out": fill(paper, line(ink, 0.6, [4, 1.6, 1, 1.6])),
    water: fill(inks.water),
    "inside-wall": line(ink, 1.7),
    "water-line": line(inks.waterEdge, 0.4),
    inset: line(inks.waterText, 0.4, [2, 1.4]),
    building: fill(inks.house, line(ink, 1.1)),
    "building-open": line(ink, 1.1),
    wall: fill(paper, line(ink, 0.8)),
    "wall-line": line(ink, 1.4),
    fence: line(ink, 0.7),
    "opening-gap": line(paper, 2.6),
    opening: line(ink, 0.45),
    structure: fill(paper, line(ink, 0.8)),
    underground: line(soft, 0.6, [7, 2, 1.2, 2, 1.2, 2]),
    overhead: line(soft, 0.6, [12, 2.5, 2, 2.5]),
    extension: line(faint, 0.3),
    dimension: line(soft, 0.4),
    "grid-proposed": line(copper, 0.35, [2, 1.4]),
    "ring-proposed": line(copper, 1.35, [6, 3]),
    "branch-proposed": line(copper, 0.8, [4, 2]),
    "tie-proposed": line(copper, 1.1, [2.4, 1.4]),
    "link-proposed": line(copper, 1.1, [4, 2]),
    "too-close": line(ink, 2, [1.2, 1.6]),
    "copper-recorded": line(copper, 1.5),
    "grid-recorded": line(copper, 0.5),
    "tail-recorded": line(copper, 1),
    "tie-recorded": line(copper, 1.1),
    metal: fill(paper, line(ink, 0.7)),
    "metal-area": line(ink, 0.8),
    equipment: fill(paper, line(ink, 0.7)),
    device: fill(paper, line(ink, 0.7)),
    light: fill(paper, line(ink, 0.7)),
    "copper-symbol": fill(paper, line(copper, 0.9)),
    "unknown-kind": fill(paper, line(ink, 0.6, [1.5, 1.5])),
    witness: line(inks.measure, 0.6),
    focus: line(inks.measure, 2.2, undefined, "round"),
    "focus-rest": line(inks.measure, 0.9),
    veil: { fill: paper, opacity: 0.62 },
    limit: line(inks.measure, 0.8, [1.2, 2], "round"),
    leader: line(soft, 0.35),
    frame: line(ink, 0.9),
    "rule-line": line(faint, 0.35),
    "ink-fill": fill(ink),
    "paper-fill": fill(paper),
    "mark-bond": fill(paper, line(copper, 0.9)),
    "mark-missing": fill(copper, line(copper, 0.9)),
    "mark-conflict": fill(ink, line(ink, 0.7)),
    "mark-review": fill(inks.question, line(ink, 0.7)),
    "mark-meets": fill(paper, line(inks.meets, 1.3)),
    "mark-exempt": fill(paper, line(faint, 0.5)),
  };
  const texts: Record<TextRole, string> = {
    ink,
    faint: soft,
    "on-water": inks.waterText,
    "on-building": soft,
    copper,
    measure: inks.measure,
    "mark-light": paper,
    "mark-dark": name === "projector" ? paper : ink,
    "mark-copper": copper,
    "mark-meets": inks.meets,
    "mark-exempt": soft,
  };
  return { name, paper, roles, texts, hatches: hatchColors(name, inks) };
}

function hatchColors(name: PaletteName, inks: Inks): Record<HatchName, string> {
  const surface = name === "sheet" ? "#bdb4a2" : name === "projector" ? "#55636e" : "#9a9a9a";
  const green = name === "sheet" ? "#a9bd96" : name === "projector" ? "#456350" : "#9a9a9a";
  return {
    concrete: surface,
    pavers: surface,
    stone: surface,
    tile: surface,
    wood: surface,
    composite: surface,
    plastic: surface,
    gravel: surface,
    soil: surface,
    lawn: green,
    "artificial-turf": green,
    building: name === "sheet" ? "#bbb4a6" : surface,
    wall: inks.ink,
    band: inks.band,
    "keep-out": inks.faint,
  };
}

export const PALETTES: Readonly<Record<PaletteName, Palette>> = {
  sheet: paletteOf("sheet", SHEET),
  projector: paletteOf("projector", PROJECTOR),
  plain: paletteOf("plain", PLAIN),
};
