import { tangentAt } from "./edge.ts";
import { samePoint } from "./points.ts";
import { WALL_MITER_LIMIT } from "./tolerances.ts";
import type { Edge, Point } from "./types.ts";

/**
 * What happens on one side of a wall's centerline at a corner. `smooth`: both sides meet end to end. `inner`: they
 * overlap. `outer`: a gap opens, closed over the miter point in `over`, or straight across when `over` is empty.
 */
export type WallCorner =
  | { readonly kind: "smooth" | "inner" }
  | { readonly kind: "outer"; readonly over: readonly Point[] };

/** The corner between two edges of a centerline, `offset` inches to its left (negative: to its right). */
export function cornerOf(before: Edge, after: Edge, offset: number): WallCorner {
  const [ax, ay] = tangentAt(before, 1);
  const [bx, by] = tangentAt(after, 0);
  const vertex = before.to;
  const end: Point = [vertex[0] - ay * offset, vertex[1] + ax * offset];
  const start: Point = [vertex[0] - by * offset, vertex[1] + bx * offset];
  if (samePoint(end, start)) return { kind: "smooth" };
  if ((ax * by - ay * bx) * offset > 0) return { kind: "inner" };
  // The miter point lies 1 / cos(half the turn) offsets out from the vertex.
  const cosTurn = ax * bx + ay * by;
  if (2 > WALL_MITER_LIMIT * WALL_MITER_LIMIT * (1 + cosTurn)) return { kind: "outer", over: [] };
  const reach = offset / (1 + cosTurn);
  return { kind: "outer", over: [[vertex[0] - (ay + by) * reach, vertex[1] + (ax + bx) * reach]] };
}
