/**
 * The plan as plain data: the one source of the screen's canvas, the `draw` file and the printed page.
 *
 * Positions are site inches, y up. What must stay the same size whatever the scale (symbols, type, line weights, number
 * marks) is given in points of paper, 1/72 in. Nothing here knows a color: roles are resolved by a palette.
 */
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Outcome } from "../../rules/report.ts";
import type { HatchName } from "./hatches.ts";
import type { Role, TextRole } from "./palette.ts";
import type { SymbolName } from "./symbols.ts";

/** One step of an outline. An arc runs from where the step before ended; `sweep` is signed, radians, positive counter-clockwise. */
export type Step =
  | { readonly step: "move"; readonly to: Point }
  | { readonly step: "line"; readonly to: Point }
  | {
      readonly step: "arc";
      readonly to: Point;
      readonly center: Point;
      readonly radius: number;
      readonly startAngle: number;
      readonly sweep: number;
    }
  | { readonly step: "close" };

/** What an item stands for, so that a pointer or a list can find it. */
interface About {
  readonly element?: string;
  readonly findings?: readonly string[];
}

/** Lines and areas. Filled by the even-odd rule; the role says whether it is stroked, filled or both. */
export interface ShapeItem extends About {
  readonly kind: "shape";
  readonly role: Role;
  readonly steps: readonly Step[];
  /** Drawn over the fill. */
  readonly hatch?: HatchName;
}

/** A drawing of constant paper size. `turn` in degrees, counter-clockwise. */
export interface SymbolItem extends About {
  readonly kind: "symbol";
  readonly symbol: SymbolName;
  readonly at: Point;
  readonly turn: number;
  readonly role: Role;
  /** A letter code set into the symbol. */
  readonly letters?: string;
}

/** The type sizes of the sheet, points. */
export type TextSize = "title" | "heading" | "body" | "small";
export type Anchor = "start" | "middle" | "end";

/** A line of type; its baseline passes `at`. `turn` in degrees, counter-clockwise. */
export interface TextItem extends About {
  readonly kind: "text";
  readonly at: Point;
  readonly text: string;
  readonly size: TextSize;
  readonly role: TextRole;
  readonly anchor: Anchor;
  readonly turn: number;
  readonly strong?: boolean;
  /** Letters set apart, as names of areas are. */
  readonly spaced?: boolean;
  /** On a plate of the paper's color, so that lines beneath do not cross it. */
  readonly plate?: boolean;
  /**
   * The place on the site that it stands beside, and by how much, points of paper to the right and up: `at` is just that at
   * the scale that the scene was made for. While the view is zoomed it stays as near.
   */
  readonly beside?: { readonly of: Point; readonly by: Point };
  /** The number of the tie that it names, counted from 0 as in the report. */
  readonly tie?: number;
}

/** The number of a finding in the shape of its outcome, centered on `at`; `from` is what its leader points to. */
export interface MarkItem extends About {
  readonly kind: "mark";
  readonly at: Point;
  readonly from: Point | null;
  readonly number: number;
  readonly outcome: Outcome;
  /** The same as of a line of type; `from` is where its leader begins, as far from there. */
  readonly beside?: { readonly of: Point; readonly by: Point; readonly from: Point };
}

export type Item = ShapeItem | SymbolItem | TextItem | MarkItem;

/** From the ground up: later layers are drawn over earlier ones. */
export const LAYERS = [
  "surfaces",
  "buildings",
  "band",
  "reach",
  "keep-outs",
  "water",
  "walls",
  "fences",
  "structures",
  "underground",
  "overhead",
  "dimensions",
  "grid",
  "ring",
  "branches",
  "recorded",
  "ties",
  "witnesses",
  "metal",
  "equipment",
  "devices",
  "lights",
  "focus",
  "names",
  "marks",
] as const;

export type LayerName = (typeof LAYERS)[number];

export interface Layer {
  readonly name: LayerName;
  readonly items: readonly Item[];
}

export type MarkChoice = "all" | "open" | "none";

export interface Scene {
  readonly layers: readonly Layer[];
  /** Box of everything the site holds, inches; null where it is empty. */
  readonly bounds: Bounds | null;
  /** Points of paper to one inch of the site that type and marks were placed for. */
  readonly pointsPerInch: number;
  /** Which findings got a number on the plan: all asked for, those that are not settled, or none. */
  readonly marks: MarkChoice;
  /** Numbers of findings that have a place on the plan but found no room there. */
  readonly unmarked: readonly number[];
}

/** Sizes of type, points of paper. */
export const TEXT_POINTS: Readonly<Record<TextSize, number>> = { title: 13, heading: 9, body: 7.5, small: 6 };

/** Letter spacing of `spaced` text, in shares of its size. */
export const LETTER_SPACING = 0.16;
