/** What arrow keys do on the sheet. */
import type { Point } from "../../geometry/types.ts";

/** How far an arrow key moves the crosshair or a corner, inches; with Shift. */
export const STEP = 1;
export const BIG_STEP = 12;

/** The way that each of them goes. */
export const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
