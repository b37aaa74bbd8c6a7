/**
 * Where two edges meet: exact for lines and arcs.
 *
 * Stages. 1. An end of one edge that lies on the other is a meeting point, with the end's own numbers; for edges that
 * overlap these are the ends of the overlap. 2. The lines and circles that carry the edges are intersected, and a
 * solution counts when it lies on both edges. 3. Solutions within SAME_POINT of one already found are the same meeting.
 */
import { nearestOnEdge, powerOf, shareOfPosition } from "./edge.ts";
import { orientation } from "./orientation.ts";
import { distanceBetween, samePoint } from "./points.ts";
import { ON_CURVE, SAME_POINT, TANGENT_DEPTH } from "./tolerances.ts";
import type { ArcEdge, Edge, LineEdge, Point } from "./types.ts";

/** The points that both edges share, none twice, in no stated order. Of an overlap: its ends. */
export function crossings(a: Edge, b: Edge): Point[] {
  const found: Point[] = [];
  const add = (p: Point): void => {
    if (!found.some((known) => samePoint(known, p))) found.push(p);
  };
  for (const end of [a.from, a.to]) if (nearestOnEdge(b, end).distance === 0) add(end);
  for (const end of [b.from, b.to]) if (nearestOnEdge(a, end).distance === 0) add(end);
  for (const p of innerCrossings(a, b)) add(p);
  return found;
}

/** Stage 2 alone: meetings away from the ends. A tangent point within rounding of an end may come back a second time, beside it. */
export function innerCrossings(a: Edge, b: Edge): Point[] {
  if (a.kind === "line") return b.kind === "line" ? lineLine(a, b) : lineArc(a, b);
  return b.kind === "line" ? lineArc(b, a) : arcArc(a, b);
}

function lineLine(a: LineEdge, b: LineEdge): Point[] {
  const fromSide = orientation(b.from, b.to, a.from);
  const toSide = orientation(b.from, b.to, a.to);
  if (fromSide > 0 === toSide > 0 || fromSide === 0 || toSide === 0) return [];
  const startSide = orientation(a.from, a.to, b.from);
  const endSide = orientation(a.from, a.to, b.to);
  if (startSide > 0 === endSide > 0 || startSide === 0 || endSide === 0) return [];
  const t = fromSide / (fromSide - toSide);
  return [[a.from[0] + (a.to[0] - a.from[0]) * t, a.from[1] + (a.to[1] - a.from[1]) * t]];
}

function onArc(arc: ArcEdge, p: Point): boolean {
  return shareOfPosition(arc, p) <= 1;
}

function lineArc(line: LineEdge, arc: ArcEdge): Point[] {
  return lineCircle(line.from, line.to, arc).filter((p) => onArc(arc, p) && besideLine(line, p));
}

/** Whether the foot of `p` on the line falls between its ends. */
function besideLine(line: LineEdge, p: Point): boolean {
  const dx = line.to[0] - line.from[0];
  const dy = line.to[1] - line.from[1];
  const along = (p[0] - line.from[0]) * dx + (p[1] - line.from[1]) * dy;
  return along >= 0 && along <= dx * dx + dy * dy;
}

/**
 * Points where the endless line through a and b meets the arc's whole circle: none, the one it touches, or two.
 *
 * Walking s inches from a, the power about the circle is s * s + 2 * lean * s + power(a); the nearer root is taken from
 * the product of both, so that it keeps its digits when the other one is far away (a very flat arc).
 */
export function lineCircle(a: Point, b: Point, arc: ArcEdge): Point[] {
  const length = distanceBetween(a, b);
  const ux = (b[0] - a[0]) / length;
  const uy = (b[1] - a[1]) / length;
  const lean = ux * (a[0] - arc.center[0]) + uy * (a[1] - arc.center[1]);
  const power = powerOf(arc, a);
  const halfSquared = lean * lean - power;
  const away = Math.sqrt(Math.max(0, arc.radius * arc.radius - halfSquared));
  const dip = halfSquared / (away + arc.radius);
  if (dip < -SAME_POINT) return [];
  const at = (s: number): Point => [a[0] + ux * s, a[1] + uy * s];
  if (dip <= TANGENT_DEPTH) return [at(-lean)];
  const far = -(lean + (lean >= 0 ? 1 : -1) * Math.sqrt(halfSquared));
  const near = power / far;
  return near < far ? [at(near), at(far)] : [at(far), at(near)];
}

function arcArc(a: ArcEdge, b: ArcEdge): Point[] {
  return circleCircle(a, b).filter((p) => onArc(a, p) && onArc(b, p));
}

/**
 * Points that two circles share: none, the one where they touch, or two. Of the same circle twice: none. They lie on
 * the line of equal power about both circles, which is cut with the smaller circle.
 */
export function circleCircle(a: ArcEdge, b: ArcEdge): Point[] {
  const wx = b.center[0] - a.center[0];
  const wy = b.center[1] - a.center[1];
  const apart = distanceBetween(a.center, b.center);
  if (apart > a.radius + b.radius + SAME_POINT) return [];
  if (apart < Math.abs(a.radius - b.radius) - SAME_POINT) return [];
  if (apart <= ON_CURVE && Math.abs(a.radius - b.radius) <= ON_CURVE) return [];
  const small = a.radius <= b.radius ? a : b;
  const reference = small.from;
  // Half the difference of powers falls by `apart` for every inch along a -> b.
  const excess = (powerOf(a, reference) - powerOf(b, reference)) / (2 * apart * apart);
  const foot: Point = [reference[0] - wx * excess, reference[1] - wy * excess];
  return lineCircle(foot, [foot[0] - wy, foot[1] + wx], small);
}
