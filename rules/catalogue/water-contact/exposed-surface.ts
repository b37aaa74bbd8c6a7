/** The metal that a contact drawn for the water exposes to it, from what the site gives of it. */
import type { WaterBondElement } from "../../site/elements.ts";

/**
 * Square inches: the area itself where it is given, else a plate's face (width by height), else a tube's or rod's side
 * (pi x diameter x length, its ends left out). Null: too little is given. Source: arithmetic.
 */
export function exposedSurface({ exposedArea, width, height, diameter, length }: WaterBondElement): number | null {
  if (exposedArea !== undefined) return exposedArea;
  if (width !== undefined && height !== undefined) return width * height;
  if (diameter !== undefined && length !== undefined) return Math.PI * diameter * length;
  return null;
}
