/** How exact a drawing can be that is traced over a picture. */
import type { Placed } from "./place-underlay.ts";

/** How near to what is meant a place is pointed out, pixels. Common practice, no source. */
export const POINTED = 1;

/** Accuracies are rounded up to this share of an inch. */
const STEPS = 4;

/**
 * How far the distance between two traced places may be off, inches: each of them by a pixel, and the scale, which comes
 * from two places that were pointed out as well, by two more over a stretch as long as theirs.
 */
export function tracedAccuracy({ inchesPerPixel }: Pick<Placed, "inchesPerPixel">): number {
  return Math.ceil(4 * POINTED * inchesPerPixel * STEPS) / STEPS;
}
