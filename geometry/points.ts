import { SAME_POINT } from "./tolerances.ts";
import type { Bounds, Point } from "./types.ts";

/** Straight distance between two positions, inches. */
export function distanceBetween(a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  // Several times quicker than Math.hypot, and in the inches of a site nothing overflows.
  return Math.sqrt(dx * dx + dy * dy);
}

/** True when two positions count as one vertex. */
export function samePoint(a: Point, b: Point): boolean {
  return Math.abs(a[0] - b[0]) <= SAME_POINT && Math.abs(a[1] - b[1]) <= SAME_POINT;
}

/** The position a share `t` (0..1) of the way from a to b. Exactly a at 0 and b at 1. */
export function between(a: Point, b: Point, t: number): Point {
  if (t === 1) return b;
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** The smallest box around all of the boxes. Of none: an inside-out box, which overlaps nothing. */
export function boundsUnion(boxes: Iterable<Bounds>): Bounds {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const box of boxes) {
    if (box.minX < minX) minX = box.minX;
    if (box.minY < minY) minY = box.minY;
    if (box.maxX > maxX) maxX = box.maxX;
    if (box.maxY > maxY) maxY = box.maxY;
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest box around positions. */
export function boundsOfPoints(points: readonly Point[]): Bounds {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < points.length; i++) {
    const p = points[i] as Point;
    const x = p[0];
    const y = p[1];
    if (x < minX) minX = x;
    if (y < minY) minY = y;
    if (x > maxX) maxX = x;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The box widened by `margin` inches on every side. */
export function grownBounds(box: Bounds, margin: number): Bounds {
  return { minX: box.minX - margin, minY: box.minY - margin, maxX: box.maxX + margin, maxY: box.maxY + margin };
}

/** True when the boxes share at least a point. */
export function boundsOverlap(a: Bounds, b: Bounds): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

/** The least distance that points of the two boxes can have, inches; 0 where they overlap. */
export function boundsDistance(a: Bounds, b: Bounds): number {
  const dx = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const dy = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return dx === 0 ? dy : dy === 0 ? dx : Math.hypot(dx, dy);
}

/** Whether a straight segment comes into a box (its edge counts). Slab test: T. Kay and J. Kajiya, 1986. */
export function segmentMeetsBox(a: Point, b: Point, box: Bounds): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  let enter = 0;
  let leave = 1;
  if (dx === 0) {
    if (a[0] < box.minX || a[0] > box.maxX) return false;
  } else {
    const t0 = (box.minX - a[0]) / dx;
    const t1 = (box.maxX - a[0]) / dx;
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
    if (enter > leave) return false;
  }
  if (dy === 0) return a[1] >= box.minY && a[1] <= box.maxY;
  const t0 = (box.minY - a[1]) / dy;
  const t1 = (box.maxY - a[1]) / dy;
  return Math.max(enter, Math.min(t0, t1)) <= Math.min(leave, Math.max(t0, t1));
}
