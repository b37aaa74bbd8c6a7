/** Outlines that the tests of this folder share. Invented; inches. */
import type { PathData, Vertex } from "../../geometry/types.ts";

const closed = (...vertices: Vertex[]): PathData => ({ vertices, closed: true });

/** 32 by 16 ft. */
export const rectangle = closed([0, 0], [384, 0], [384, 192], [0, 192]);

/** 30 by 16 ft with a 10 ft half-round end sticking out of the right side. */
export const romanEnd = closed([0, 0], [360, 0], [360, 36, 1], [360, 156], [360, 192], [0, 192]);

/** A full circle of radius 100 as two half circles. */
export const circle = closed([-100, 0, 1], [100, 0, 1]);

/** Straight sides with half-round ends, tangent to them. */
export const stadium = closed([-100, -60], [100, -60, 1], [100, 60], [-100, 60, 1]);

/** Rounded corners outside, one inward curve, one end of more than a half circle. */
export const kidney = closed([0, 0, -0.35], [140, 10], [200, 10, 1.6], [200, 90], [140, 95, 0.5], [0, 110, 0.8]);

/** An L with a rounded inner corner. */
export const ell = closed(
  [0, 0],
  [240, 0],
  [240, 96],
  [120, 96, -Math.tan(Math.PI / 8)],
  [96, 120],
  [96, 240],
  [0, 240],
);

export const samples: readonly (readonly [string, PathData])[] = [
  ["rectangle", rectangle],
  ["Roman end", romanEnd],
  ["circle", circle],
  ["stadium", stadium],
  ["kidney", kidney],
  ["L", ell],
];

/** A square of side 40 round [x, y], walked clockwise. */
export function squareAt(x: number, y: number): PathData {
  return closed([x - 20, y - 20], [x - 20, y + 20], [x + 20, y + 20], [x + 20, y - 20]);
}
