/** The grid of the sheet: what is drawn faintly, and the round steps that a pointer snaps to. */
import type { Units } from "../../rules/words/lengths.ts";

const METER = 1 / 0.0254;

/** Steps that people think in, inches, finest first. */
const STEPS: Readonly<Record<"imperial" | "metric", readonly number[]>> = {
  imperial: [1 / 4, 1, 3, 6, 12, 60, 120, 600, 1200],
  metric: [0.01, 0.05, 0.1, 0.5, 1, 5, 10, 50].map((meters) => meters * METER),
};

/** Distances between the drawn lines, inches, finest first. */
const LINES: Readonly<Record<"imperial" | "metric", readonly number[]>> = {
  imperial: [12, 60, 120, 600, 1200],
  metric: [0.5, 1, 5, 10, 50].map((meters) => meters * METER),
};

/** A step has to be at least this many pixels wide, so that a hand can tell it from the next. */
const LEAST_STEP_PIXELS = 8;
const LEAST_LINE_PIXELS = 12;

function systemOf(units: Units): "imperial" | "metric" {
  return units === "m" ? "metric" : "imperial";
}

/** The step that a pointer snaps to, inches, at so many pixels to the inch. */
export function gridStep(pixelsPerInch: number, units: Units = "ft-in"): number {
  return atLeast(STEPS[systemOf(units)], LEAST_STEP_PIXELS / pixelsPerInch);
}

/** The distance between the drawn grid lines, inches: 1, 5 or 10 ft and on, as the scale leaves room. */
export function gridLineSpacing(pixelsPerInch: number, units: Units = "ft-in"): number {
  return atLeast(LINES[systemOf(units)], LEAST_LINE_PIXELS / pixelsPerInch);
}

function atLeast(sizes: readonly number[], least: number): number {
  return sizes.find((size) => size >= least) ?? sizes[sizes.length - 1] ?? least;
}

/** The nearest multiple of a step. */
export function toStep(value: number, step: number): number {
  return Math.round(value / step) * step + 0;
}
