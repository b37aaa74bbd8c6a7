import { orient2d } from "robust-predicates";
import type { Point } from "./types.ts";

/**
 * On which side of the line a -> b the point c lies: positive to the left (counter-clockwise turn, y up), negative to
 * the right, exactly 0 on the line. The sign is exact; the size approximates twice the triangle's area, square inches.
 *
 * robust-predicates counts with y down, so its sign is turned over here and nowhere else.
 */
export function orientation(a: Point, b: Point, c: Point): number {
  return turnOf(a[0], a[1], b[0], b[1], c[0], c[1]);
}

/** The same from plain coordinates. */
export function turnOf(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return -orient2d(ax, ay, bx, by, cx, cy);
}
