/** The grid of the sheet: what is drawn faintly, and the round steps that a pointer snaps to. */
import type { Units } from "../../rules/words/lengths.ts";

const METER = 1 / 0.0254;

/** Steps that people think in, inches, finest first. */
const STEPS: Readonly<Record<"imperial" | "metric", readonly number[]>> = {
  imperial: [1 / 4, 1, 3, 6, 12, 60, 120, 600, 1200],
  metric: [0.01, 0.05, 0.1, 0.5, 1, 5, 10, 50].map((meters) => meters * METER),
};

export interface GridLines {
  /** Distance between the lines, inches. */
  readonly spacing: number;
  /** Every so many lines one is a little stronger. */
  readonly strong: number;
}

/** The drawn lines, finest first: 1, 5 or 10 ft apart and on. */
const LINES: Readonly<Record<"imperial" | "metric", readonly GridLines[]>> = {
  imperial: [
    { spacing: 12, strong: 5 },
    { spacing: 60, strong: 2 },
    { spacing: 120, strong: 5 },
    { spacing: 600, strong: 2 },
    { spacing: 1200, strong: 5 },
  ],
  metric: [
    { spacing: 0.5 * METER, strong: 2 },
    { spacing: METER, strong: 5 },
    { spacing: 5 * METER, strong: 2 },
    { spacing: 10 * METER, strong: 5 },
  ],
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

/** The lines of the grid that are drawn at so many pixels to the inch. */
export function gridLines(pixelsPerInch: number, units: Units = "ft-in"): GridLines {
  const all = LINES[systemOf(units)];
  const fitting = all.find(({ spacing }) => spacing * pixelsPerInch >= LEAST_LINE_PIXELS);
  return fitting ?? all[all.length - 1] ?? { spacing: LEAST_LINE_PIXELS / pixelsPerInch, strong: 5 };
}

function atLeast(sizes: readonly number[], least: number): number {
  return sizes.find((size) => size >= least) ?? sizes[sizes.length - 1] ?? least;
}

/** The nearest multiple of a step. */
export function toStep(value: number, step: number): number {
  return Math.round(value / step) * step + 0;
}
