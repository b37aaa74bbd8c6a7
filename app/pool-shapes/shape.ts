/** What a pool shape is: fields for its dimensions, and a pure function from those to the outline of its inside wall. */
import { findSelfCrossing } from "../../geometry/self-crossing.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { PathData } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import type { PoolShapeId } from "./shape-names.ts";

/** Inches, or degrees for an angle, by field name. */
export type Dimensions = Readonly<Record<string, number>>;

export interface ShapeField {
  readonly name: string;
  readonly label: string;
  readonly type: "length" | "angle";
  /** What it is while nothing is typed: a usual size, or one that follows from the dimensions before it. */
  readonly start: number | ((before: Dimensions) => number);
  /** One sentence on where it is measured. */
  readonly help: string;
}

/** The outline, or which dimension cannot be and why, in a plain sentence. */
export type Shaped =
  | { readonly ok: true; readonly outline: PathData }
  | { readonly ok: false; readonly field: string; readonly reason: string };

export interface PoolShape {
  readonly id: PoolShapeId;
  readonly label: string;
  readonly fields: readonly ShapeField[];
  /**
   * The closed outline with true arcs, counter-clockwise, in inches, about the middle of its length and width, its
   * length along x. `units` are for the words of a refusal.
   */
  outline(dimensions: Dimensions, units: Units): Shaped;
}

/** The dimensions with a value for every field: what is typed, else what it starts with. */
export function fullDimensions(shape: PoolShape, typed: Dimensions): Dimensions {
  const full: Record<string, number> = {};
  for (const { name, start } of shape.fields) {
    full[name] = typed[name] ?? (typeof start === "number" ? start : start(full));
  }
  return full;
}

/** A dimension that has been given: shapes read only fields of their own. */
export function sizeOf(dimensions: Dimensions, name: string): number {
  const value = dimensions[name];
  if (value === undefined) throw new RangeError(`The shape was given no dimension "${name}".`);
  return value;
}

export interface Span {
  readonly least?: number;
  readonly most?: number;
  /** The least itself is not allowed. */
  readonly isAbove?: boolean;
  /** Why the limit stands there, as "half of the width". */
  readonly because?: string;
}

/**
 * A refusal when a dimension lies outside its span; null when it fits. By less than would tell two corners apart it may
 * lie outside of an end that is allowed: the same length typed in two units differs in its last digit.
 */
export function outside(shape: PoolShape, d: Dimensions, name: string, span: Span, units: Units): Shaped | null {
  const value = sizeOf(d, name);
  const { least = 0, most = Number.POSITIVE_INFINITY, isAbove = false, because } = span;
  const fits = isAbove ? value > least + SAME_CORNER : value >= least - SAME_CORNER;
  if (fits && value <= most + SAME_CORNER) return null;
  const words = (size: number, apartFrom: number) =>
    size === 0 ? "zero" : sizeWords(shape, name, size, units, apartFrom);
  const [low, high] = [words(least, value), words(most, value)];
  const from = isAbove ? `above ${low}` : `at least ${low}`;
  const both = isAbove ? `${from} and at most ${high}` : `between ${low} and ${high}`;
  const range = most === Number.POSITIVE_INFINITY ? from : both;
  const given = words(value, value > most ? most : least);
  return refuse(shape, name, `has to be ${range}${because === undefined ? "" : ` (${because})`}; it is ${given}.`);
}

/** A refusal that names the field first. */
export function refuse(shape: PoolShape, name: string, what: string): Shaped {
  const label = shape.fields.find((field) => field.name === name)?.label ?? name;
  return { ok: false, field: name, reason: `${label} ${what}` };
}

/** The first refusal of several checks; null when there is none. */
export function firstOf(...refusals: readonly (Shaped | null)[]): Shaped | null {
  return refusals.find((refusal) => refusal !== null) ?? null;
}

/** The outline unless its sides would meet: then a refusal that names the dimension to change. */
export function uncrossed(shape: PoolShape, outline: PathData, name: string, what: string): Shaped {
  return findSelfCrossing(outline) === null ? { ok: true, outline } : refuse(shape, name, what);
}

function sizeWords(shape: PoolShape, name: string, value: number, units: Units, apartFrom: number): string {
  const type = shape.fields.find((field) => field.name === name)?.type;
  return type === "angle" ? `${Math.round(value * 10) / 10} degrees` : lengthText(value, units, apartFrom);
}
