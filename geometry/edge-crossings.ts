/**
 * Where two edges meet: exact for lines and arcs.
 *
 * Stages. 1. An end of one edge that lies on the other is a meeting point, with the end's own numbers; for edges that
 * overlap these are the ends of the overlap. 2. The lines and circles that carry the edges are intersected, and a
 * solution counts when it lies on both edges. 3. Solutions within SAME_POINT of one already found are the same meeting.
 */
import { gapToCircle, nearestOnEdge, shareOfAngle } from "./edge.ts";
import { orientation } from "./orientation.ts";
import { distanceBetween, samePoint } from "./points.ts";
import { ON_CURVE, SAME_POINT } from "./tolerances.ts";
import type { ArcEdge, Edge, LineEdge, Point } from "./types.ts";

/** The points that both edges share, none twice, in no stated order. Of an overlap: its ends. */
export function crossings(a: Edge, b: Edge): Point[] {
  const found: Point[] = [];
  const add = (p: Point): void => {
    if (!found.some((known) => samePoint(known, p))) found.push(p);
  };
  for (const end of [a.from, a.to]) if (nearestOnEdge(b, end).distance === 0) add(end);
  for (const end of [b.from, b.to]) if (nearestOnEdge(a, end).distance === 0) add(end);
  for (const p of carrierCrossings(a, b)) add(p);
  return found;
}

/** Crossings away from the ends. A tangent point within rounding of an end may come back a second time, beside it. */
function carrierCrossings(a: Edge, b: Edge): Point[] {
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
  return shareOfAngle(arc, Math.atan2(p[1] - arc.center[1], p[0] - arc.center[0])) <= 1;
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

/** Points where the endless line through a and b meets the arc's whole circle: none, the one it touches, or two. */
export function lineCircle(a: Point, b: Point, arc: ArcEdge): Point[] {
  const length = distanceBetween(a, b);
  const ux = (b[0] - a[0]) / length;
  const uy = (b[1] - a[1]) / length;
  const foot = footOn(a, ux, uy, arc.center);
  const away = distanceBetween(foot, arc.center);
  // Half the chord from the power of the foot, which keeps its digits when the line all but touches a far circle.
  const halfSquared = -gapToCircle(arc, foot) * (away + arc.radius);
  if (halfSquared <= 0) return gapToCircle(arc, foot) <= SAME_POINT ? [foot] : [];
  const half = Math.sqrt(halfSquared);
  return [
    [foot[0] - ux * half, foot[1] - uy * half],
    [foot[0] + ux * half, foot[1] + uy * half],
  ];
}

function footOn(a: Point, ux: number, uy: number, p: Point): Point {
  const along = (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
  return [a[0] + ux * along, a[1] + uy * along];
}

function arcArc(a: ArcEdge, b: ArcEdge): Point[] {
  return circleCircle(a, b).filter((p) => onArc(a, p) && onArc(b, p));
}

/** Points that two circles share: none, the one where they touch, or two. Of the same circle twice: none. */
export function circleCircle(a: ArcEdge, b: ArcEdge): Point[] {
  const apart = distanceBetween(a.center, b.center);
  if (apart > a.radius + b.radius + SAME_POINT) return [];
  if (apart < Math.abs(a.radius - b.radius) - SAME_POINT) return [];
  if (apart <= ON_CURVE && Math.abs(a.radius - b.radius) <= ON_CURVE) return [];
  const ux = (b.center[0] - a.center[0]) / apart;
  const uy = (b.center[1] - a.center[1]) / apart;
  const along = (apart + ((a.radius - b.radius) * (a.radius + b.radius)) / apart) / 2;
  const foot: Point = [a.center[0] + ux * along, a.center[1] + uy * along];
  const halfSquared = (a.radius - along) * (a.radius + along);
  if (halfSquared <= 0) return [foot];
  const half = Math.sqrt(halfSquared);
  return [
    [foot[0] - uy * half, foot[1] + ux * half],
    [foot[0] + uy * half, foot[1] - ux * half],
  ];
}
