/** Straight-sided rings by themselves; the first position may be repeated at the end or not. */
import { distanceBetween } from "./points.ts";
import type { Point } from "./types.ts";

/** Signed area of a ring, square units: positive counter-clockwise. */
export function ringArea(ring: readonly Point[]): number {
  const first = ring[0];
  if (!first) return 0;
  const [x, y] = first;
  let twice = 0;
  let x0 = 0;
  let y0 = 0;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i] as Point;
    const x1 = p[0] - x;
    const y1 = p[1] - y;
    twice += x0 * y1 - x1 * y0;
    x0 = x1;
    y0 = y1;
  }
  return twice / 2;
}

export function ringPerimeter(ring: readonly Point[]): number {
  let sum = 0;
  for (let i = 0, before = ring.length - 1; i < ring.length; before = i, i++)
    sum += distanceBetween(ring[before] as Point, ring[i] as Point);
  return sum;
}

/** True when the ring holds `p`; on the ring itself either answer is possible. */
export function ringContains(ring: readonly Point[], p: Point): boolean {
  let inside = false;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a && a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1])) {
      inside = !inside;
    }
    a = b;
  }
  return inside;
}

/** How often the ring runs round `p`, counter-clockwise positive; on the ring itself any answer is possible. */
export function ringWinding(ring: readonly Point[], p: Point): number {
  let winding = 0;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a && a[1] > p[1] !== b[1] > p[1]) {
      const side = (b[0] - a[0]) * (p[1] - a[1]) - (p[0] - a[0]) * (b[1] - a[1]);
      if (b[1] > a[1] && side > 0) winding++;
      else if (b[1] < a[1] && side < 0) winding--;
    }
    a = b;
  }
  return winding;
}
