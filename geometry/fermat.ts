/** The point with the least sum of distances to others, where three wires are best joined. */
import { distanceBetween } from "./points.ts";
import type { Point } from "./types.ts";

const SIXTY_COS = 0.5;
const SIXTY_SIN = Math.sqrt(3) / 2;

/**
 * Of a triangle (Fermat's point, by Torricelli's construction): the point that sees its sides under 120 degrees each, or
 * the corner whose angle is 120 degrees or more. Corners that coincide or lie in line give the middle one.
 */
export function fermatPoint(a: Point, b: Point, c: Point): Point {
  if (isWide(a, b, c)) return a;
  if (isWide(b, c, a)) return b;
  if (isWide(c, a, b)) return c;
  const p = apex(b, c, a);
  const q = apex(c, a, b);
  const ux = p[0] - a[0];
  const uy = p[1] - a[1];
  const vx = q[0] - b[0];
  const vy = q[1] - b[1];
  const cross = ux * vy - uy * vx;
  const t = ((b[0] - a[0]) * vy - (b[1] - a[1]) * vx) / cross;
  return Number.isFinite(t) ? [a[0] + ux * t, a[1] + uy * t] : a;
}

/** True when the angle at `at` is 120 degrees or more, or has no size because a side has none. */
function isWide(at: Point, b: Point, c: Point): boolean {
  const ux = b[0] - at[0];
  const uy = b[1] - at[1];
  const vx = c[0] - at[0];
  const vy = c[1] - at[1];
  const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
  return ux * vx + uy * vy <= -SIXTY_COS * size;
}

/** The third corner of the equilateral triangle on b-c that lies away from a. */
function apex(b: Point, c: Point, a: Point): Point {
  const dx = c[0] - b[0];
  const dy = c[1] - b[1];
  const side = dx * (a[1] - b[1]) - dy * (a[0] - b[0]) > 0 ? -1 : 1;
  return [b[0] + dx * SIXTY_COS - dy * SIXTY_SIN * side, b[1] + dy * SIXTY_COS + dx * SIXTY_SIN * side];
}

/** Steps after which the sum of distances changes by less than anybody could lay. */
const STEPS = 60;

/** Of any number of points (Weiszfeld's steps from `start`). */
export function leastSumPoint(points: readonly Point[], start: Point): Point {
  const [a, b, c] = points;
  if (points.length === 3 && a && b && c) return fermatPoint(a, b, c);
  let at = start;
  for (let step = 0; step < STEPS; step++) {
    let x = 0;
    let y = 0;
    let weight = 0;
    for (const p of points) {
      const distance = distanceBetween(p, at);
      if (distance === 0) return at;
      x += p[0] / distance;
      y += p[1] / distance;
      weight += 1 / distance;
    }
    at = [x / weight, y / weight];
  }
  return at;
}
