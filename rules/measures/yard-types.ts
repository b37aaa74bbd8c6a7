/** What the measured yard gives: bodies, paths round barriers, bands split by surface. */
import type { Area, Region, Route } from "../../geometry/types.ts";
import type { PoolElement } from "../site/elements.ts";

/** A body of water. */
export interface Body {
  readonly id: string;
  readonly element: PoolElement;
  readonly water: Area;
  readonly region: Region;
  /** Maximum water level, inches above the datum. */
  readonly waterLevel: number;
}

/** A shortest path to a body's inside wall round the barriers of one measure. */
export interface PathMeasure {
  /** Round the barriers that count. Null: there is none (or none within the asked limit). */
  readonly counted: Route | null;
  /** The same without barriers that rest on a level the drawing does not give; equal to `counted` when none do. */
  readonly surely: Route | null;
  /** The same with barriers whose permanence or height is not given; equal to `counted` when there are none. */
  readonly atMost: Route | null;
  /** The facts that are not given and that make those differ. */
  readonly openFacts: readonly { readonly element: string; readonly field: string }[];
}

/** Which barriers of a measure: those that count, those that surely do, or also those that possibly do. */
export type BarrierChoice = "counted" | "surely" | "at most";

/** A part of the perimeter band on one surface; `surface` null = ground that nothing covers. */
export interface BandPiece {
  readonly surface: string | null;
  readonly region: Region;
  readonly area: number;
}

export interface Band {
  readonly region: Region;
  readonly area: number;
  readonly pieces: readonly BandPiece[];
}
