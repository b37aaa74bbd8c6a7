/**
 * Arcs that go on smoothly from circle to circle, for outlines made of round ends.
 *
 * Terms. An end is a circle of the outline, walked counter-clockwise. A joining circle touches two ends: from outside
 * when the outline bends inward there (its arc runs clockwise), from inside when it bows outward.
 */
import type { Point, Vertex } from "../../geometry/types.ts";

export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** Of two circles on the x axis: the joining circle with its center below or above it; null when there is none. */
export function joiningCircle(
  a: Circle,
  b: Circle,
  radius: number,
  way: "inward" | "outward",
  side: -1 | 1,
): Circle | null {
  const sign = way === "inward" ? 1 : -1;
  // Distances of its center from theirs.
  const [toA, toB] = [Math.abs(radius + sign * a.radius), Math.abs(radius + sign * b.radius)];
  const apart = b.center[0] - a.center[0];
  const along = (apart * apart + toA * toA - toB * toB) / (2 * apart);
  const square = toA * toA - along * along;
  if (!(square >= 0)) return null;
  return { center: [a.center[0] + along, side * Math.sqrt(square)], radius };
}

/** Where a joining circle touches an end. */
export function touching(end: Circle, joining: Circle, way: "inward" | "outward"): Point {
  const [dx, dy] = [joining.center[0] - end.center[0], joining.center[1] - end.center[1]];
  const far = Math.hypot(dx, dy);
  const share = (way === "inward" ? end.radius : -end.radius) / far;
  return [end.center[0] + dx * share, end.center[1] + dy * share];
}

/** The vertex that an arc round a center leaves from, to another point of it. */
export function arcVertex(center: Point, from: Point, to: Point, way: "inward" | "outward"): Vertex {
  const start = Math.atan2(from[1] - center[1], from[0] - center[0]);
  const end = Math.atan2(to[1] - center[1], to[0] - center[0]);
  let sweep = end - start;
  if (way === "outward") while (sweep <= 0) sweep += 2 * Math.PI;
  else while (sweep >= 0) sweep -= 2 * Math.PI;
  return [from[0], from[1], Math.tan(sweep / 4)];
}
