/**
 * Where two candidate pieces of an offset meet, with some slack: crossings, grazing contact, an end that touches, and
 * both ends of an overlap. What is found twice does no harm: cuts at one place are joined afterwards.
 */
import { edgeLength, nearestOnEdge } from "./edge.ts";
import { circleCircle, lineCircle } from "./edge-crossings.ts";
import { OFFSET_JOINT, OFFSET_KEEP } from "./tolerances.ts";
import type { Edge, LineEdge, Point } from "./types.ts";

/** A common point, and how far along each edge (inches) it lies. */
export interface Meeting {
  readonly at: Point;
  readonly alongA: number;
  readonly alongB: number;
}

export function meetings(a: Edge, b: Edge): Meeting[] {
  const found: Meeting[] = [];
  const lengthA = edgeLength(a);
  const lengthB = edgeLength(b);
  const add = (p: Point): void => {
    const onA = nearestOnEdge(a, p);
    if (onA.distance > OFFSET_JOINT) return;
    const onB = nearestOnEdge(b, p);
    if (onB.distance > OFFSET_JOINT) return;
    found.push({ at: p, alongA: onA.t * lengthA, alongB: onB.t * lengthB });
  };
  const touch = (end: Point, other: Edge): void => {
    if (nearestOnEdge(other, end).distance <= OFFSET_KEEP) add(end);
  };
  touch(a.from, b);
  touch(a.to, b);
  touch(b.from, a);
  touch(b.to, a);
  for (const p of carriers(a, b)) add(p);
  return found;
}

function carriers(a: Edge, b: Edge): Point[] {
  if (a.kind === "line") return b.kind === "line" ? lineLine(a, b) : lineCircle(a.from, a.to, b);
  return b.kind === "line" ? lineCircle(b.from, b.to, a) : circleCircle(a, b);
}

/** The common point of two endless lines; none when they are parallel to the last digit. */
function lineLine(a: LineEdge, b: LineEdge): Point[] {
  const ux = a.to[0] - a.from[0];
  const uy = a.to[1] - a.from[1];
  const vx = b.to[0] - b.from[0];
  const vy = b.to[1] - b.from[1];
  const cross = ux * vy - uy * vx;
  if (cross === 0) return [];
  const t = ((b.from[0] - a.from[0]) * vy - (b.from[1] - a.from[1]) * vx) / cross;
  if (!Number.isFinite(t)) return [];
  return [[a.from[0] + ux * t, a.from[1] + uy * t]];
}
