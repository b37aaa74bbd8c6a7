import type { PathData, Point } from "../../geometry/types.ts";

/** The rectangle between two opposite corners, counter-clockwise from the lower left corner. */
export function rectanglePath(a: Point, b: Point): PathData {
  const [x0, x1] = a[0] < b[0] ? [a[0], b[0]] : [b[0], a[0]];
  const [y0, y1] = a[1] < b[1] ? [a[1], b[1]] : [b[1], a[1]];
  return {
    vertices: [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
    closed: true,
  };
}
