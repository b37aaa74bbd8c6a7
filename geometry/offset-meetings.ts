/**
 * Where two candidate pieces of an offset meet, with some slack: crossings, grazing contact, an end that touches, and
 * both ends of an overlap. What is found twice does no harm: cuts at one place are joined afterwards.
 */
import { distanceToEdge, edgeLength, nearestOnEdge } from "./edge.ts";
import { circleCircle, lineCircle } from "./edge-crossings.ts";
import { OFFSET_JOINT, OFFSET_KEEP } from "./tolerances.ts";
import type { Edge, LineEdge, Point } from "./types.ts";

/** A common point, and how far along each edge (inches) it lies. */
export interface Meeting {
  readonly at: Point;
  readonly alongA: number;
  readonly alongB: number;
}

/** Mostly there are none: that is found out without making anything. */
const NONE: readonly Meeting[] = [];

export function meetings(a: Edge, b: Edge): readonly Meeting[] {
  let found: Meeting[] | null = null;
  const add = (p: Point): void => {
    if (distanceToEdge(a, p) > 2 * OFFSET_JOINT || distanceToEdge(b, p) > 2 * OFFSET_JOINT) return;
    const onA = nearestOnEdge(a, p);
    if (onA.distance > OFFSET_JOINT) return;
    const onB = nearestOnEdge(b, p);
    if (onB.distance > OFFSET_JOINT) return;
    found ??= [];
    found.push({ at: p, alongA: onA.t * edgeLength(a), alongB: onB.t * edgeLength(b) });
  };
  if (distanceToEdge(b, a.from) <= OFFSET_KEEP) add(a.from);
  if (distanceToEdge(b, a.to) <= OFFSET_KEEP) add(a.to);
  if (distanceToEdge(a, b.from) <= OFFSET_KEEP) add(b.from);
  if (distanceToEdge(a, b.to) <= OFFSET_KEEP) add(b.to);
  if (a.kind !== "line" || b.kind !== "line") for (const p of carriers(a, b)) add(p);
  else if (mayCross(a, b)) for (const p of lineLine(a, b)) add(p);
  return found ?? NONE;
}

/** False where one of two lines lies wholly to one side of the other, farther than rounding. */
function mayCross(a: LineEdge, b: LineEdge): boolean {
  return !isBeside(a, b) && !isBeside(b, a);
}

function isBeside(a: LineEdge, b: LineEdge): boolean {
  const ux = a.to[0] - a.from[0];
  const uy = a.to[1] - a.from[1];
  const slack = 2 * OFFSET_JOINT * (Math.abs(ux) + Math.abs(uy));
  const from = ux * (b.from[1] - a.from[1]) - uy * (b.from[0] - a.from[0]);
  const to = ux * (b.to[1] - a.from[1]) - uy * (b.to[0] - a.from[0]);
  return (from > slack && to > slack) || (from < -slack && to < -slack);
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
