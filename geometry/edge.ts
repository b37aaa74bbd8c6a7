/**
 * One edge: a straight line or a circular arc, in inches, y up.
 *
 * Terms. Chord: the straight segment from -> to. Sagitta: the greatest gap between chord and arc. Sweep: the arc's
 * signed angle, positive counter-clockwise. Bulge: tan(sweep / 4).
 *
 * Very flat arcs have centers so far away that `center` and `radius` alone would lose digits, therefore points and
 * distances of arcs are worked out from the chord wherever that is the steadier of the two.
 */
import { between, distanceBetween } from "./points.ts";
import { FLATTEST_BULGE, SAME_POINT } from "./tolerances.ts";
import type { ArcEdge, Edge, LineEdge, Point, Vertex } from "./types.ts";

const TURN = 2 * Math.PI;

/** A position on an edge: `t` runs 0..1 along its length, `distance` is from the position asked about, inches. */
export interface NearestOnEdge {
  readonly point: Point;
  readonly t: number;
  readonly distance: number;
}

export function lineEdge(from: Point, to: Point): LineEdge {
  return { kind: "line", from, to };
}

/** The edge that leaves vertex `v` for `next`. The bulge of `v` shapes it; one too flat to differ from its chord is a line. */
export function edgeFromVertices(v: Vertex, next: Vertex): Edge {
  return bulgedEdge([v[0], v[1]], [next[0], next[1]], v[2] ?? 0);
}

/** The edge between two positions with the bulge of the vertex at `from`. */
export function bulgedEdge(from: Point, to: Point, bulge: number): Edge {
  const half = distanceBetween(from, to) / 2;
  if (Math.abs(bulge) <= FLATTEST_BULGE || Math.abs(bulge) * half <= SAME_POINT) return { kind: "line", from, to };
  const lean = (1 - bulge * bulge) / (4 * bulge);
  const center: Point = [
    (from[0] + to[0]) / 2 - (to[1] - from[1]) * lean,
    (from[1] + to[1]) / 2 + (to[0] - from[0]) * lean,
  ];
  return {
    kind: "arc",
    from,
    to,
    center,
    radius: (half * (1 + bulge * bulge)) / (2 * Math.abs(bulge)),
    startAngle: Math.atan2(from[1] - center[1], from[0] - center[0]),
    sweep: 4 * Math.atan(bulge),
  };
}

/** The arc around `center` from a start angle through a signed sweep, |sweep| < 2 pi. `ends` fixes its end points when they are known exactly. */
export function arcAround(
  center: Point,
  radius: number,
  startAngle: number,
  sweep: number,
  ends?: { readonly from?: Point; readonly to?: Point },
): ArcEdge {
  const end = startAngle + sweep;
  return {
    kind: "arc",
    from: ends?.from ?? [center[0] + radius * Math.cos(startAngle), center[1] + radius * Math.sin(startAngle)],
    to: ends?.to ?? [center[0] + radius * Math.cos(end), center[1] + radius * Math.sin(end)],
    center,
    radius,
    startAngle,
    sweep,
  };
}

/** The bulge that stores this edge at its first vertex (0 for a line). */
export function bulgeOf(edge: Edge): number {
  return edge.kind === "line" ? 0 : Math.tan(edge.sweep / 4);
}

export function edgeLength(edge: Edge): number {
  return edge.kind === "line" ? distanceBetween(edge.from, edge.to) : edge.radius * Math.abs(edge.sweep);
}

/** The same curve walked the other way. */
export function reverseEdge(edge: Edge): Edge {
  if (edge.kind === "line") return { kind: "line", from: edge.to, to: edge.from };
  return { ...edge, from: edge.to, to: edge.from, startAngle: edge.startAngle + edge.sweep, sweep: -edge.sweep };
}

/** The position a share `t` (0..1) of the edge's length from its start. Exactly `from` at 0 and `to` at 1. */
export function pointAt(edge: Edge, t: number): Point {
  if (t === 0) return edge.from;
  if (t === 1) return edge.to;
  if (edge.kind === "line") return between(edge.from, edge.to, t);
  const { from, to, sweep } = edge;
  if (Math.abs(sweep) > Math.PI) {
    const angle = edge.startAngle + sweep * t;
    return [edge.center[0] + edge.radius * Math.cos(angle), edge.center[1] + edge.radius * Math.sin(angle)];
  }
  // A chord of angle sweep * t is the whole chord, turned back and shortened.
  const scale = Math.sin((sweep * t) / 2) / Math.sin(sweep / 2);
  const turn = (sweep * (t - 1)) / 2;
  const cos = Math.cos(turn) * scale;
  const sin = Math.sin(turn) * scale;
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  return [from[0] + dx * cos - dy * sin, from[1] + dx * sin + dy * cos];
}

/** Unit vector along the edge at share `t` of its length. */
export function tangentAt(edge: Edge, t: number): Point {
  const dx = edge.to[0] - edge.from[0];
  const dy = edge.to[1] - edge.from[1];
  const length = distanceBetween(edge.from, edge.to);
  if (edge.kind === "line") return [dx / length, dy / length];
  if (Math.abs(edge.sweep) > Math.PI) {
    const angle = edge.startAngle + edge.sweep * t;
    const way = Math.sign(edge.sweep);
    return [-Math.sin(angle) * way, Math.cos(angle) * way];
  }
  const turn = edge.sweep * (t - 0.5);
  const cos = Math.cos(turn) / length;
  const sin = Math.sin(turn) / length;
  return [dx * cos - dy * sin, dx * sin + dy * cos];
}

/** How far round the arc, as a share of its sweep, a direction from the center lies: 0..1 on the arc, above 1 off it. */
export function shareOfAngle(arc: ArcEdge, angle: number): number {
  const way = arc.sweep >= 0 ? 1 : -1;
  let turned = ((angle - arc.startAngle) * way) % TURN;
  if (turned < 0) turned += TURN;
  return turned / Math.abs(arc.sweep);
}

/** The same for the direction of a position. Taken from the arc's start, so that a far center costs no digits. */
export function shareOfPosition(arc: ArcEdge, p: Point): number {
  const rx = arc.from[0] - arc.center[0];
  const ry = arc.from[1] - arc.center[1];
  const across = (rx * (p[1] - arc.from[1]) - ry * (p[0] - arc.from[0])) * (arc.sweep >= 0 ? 1 : -1);
  const turned = Math.atan2(across, rx * (p[0] - arc.center[0]) + ry * (p[1] - arc.center[1]));
  return (turned < 0 ? turned + TURN : turned) / Math.abs(arc.sweep);
}

/** True when the direction `angle` (radians, seen from the center) falls on the arc, ends included. */
export function arcContainsAngle(arc: ArcEdge, angle: number): boolean {
  return shareOfAngle(arc, angle) <= 1;
}

/** The edge cut in two at share `t` of its length, 0 < t < 1; both parts meet at the same numbers. */
export function splitEdge(edge: Edge, t: number): [Edge, Edge] {
  return [partOfEdge(edge, 0, t), partOfEdge(edge, t, 1)];
}

/** The part of the edge between two shares of its length, 0 <= t0 < t1 <= 1. */
export function partOfEdge(edge: Edge, t0: number, t1: number): Edge {
  const from = pointAt(edge, t0);
  const to = pointAt(edge, t1);
  if (edge.kind === "line") return { kind: "line", from, to };
  return { ...edge, from, to, startAngle: edge.startAngle + edge.sweep * t0, sweep: edge.sweep * (t1 - t0) };
}

/** The edge moved `offset` inches to its left (negative: right); null when an arc has no radius left. */
export function movedSideways(edge: Edge, offset: number): Edge | null {
  const start = tangentAt(edge, 0);
  const end = tangentAt(edge, 1);
  const from: Point = [edge.from[0] - start[1] * offset, edge.from[1] + start[0] * offset];
  const to: Point = [edge.to[0] - end[1] * offset, edge.to[1] + end[0] * offset];
  if (edge.kind === "line") return { kind: "line", from, to };
  const radius = edge.sweep > 0 ? edge.radius - offset : edge.radius + offset;
  return radius > SAME_POINT ? { ...edge, from, to, radius } : null;
}

/** How far `p` lies from the edge, inches: the distance of `nearestOnEdge` without making its point. */
export function distanceToEdge(edge: Edge, p: Point): number {
  if (edge.kind === "arc") return distanceToArc(edge, p);
  const fx = edge.from[0];
  const fy = edge.from[1];
  const dx = edge.to[0] - fx;
  const dy = edge.to[1] - fy;
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : ((p[0] - fx) * dx + (p[1] - fy) * dy) / squared;
  const awayX = t <= 0 ? p[0] - fx : t >= 1 ? p[0] - edge.to[0] : p[0] - fx - dx * t;
  const awayY = t <= 0 ? p[1] - fy : t >= 1 ? p[1] - edge.to[1] : p[1] - fy - dy * t;
  return Math.sqrt(awayX * awayX + awayY * awayY);
}

function distanceToArc(arc: ArcEdge, p: Point): number {
  const { center, from, to } = arc;
  const way = arc.sweep > 0 ? 1 : -1;
  const start = (from[0] - center[0]) * (p[1] - from[1]) - (from[1] - center[1]) * (p[0] - from[0]);
  const end = (p[0] - to[0]) * (to[1] - center[1]) - (p[1] - to[1]) * (to[0] - center[0]);
  const pastStart = start * way >= 0;
  const beforeEnd = end * way >= 0;
  const facing = Math.abs(arc.sweep) <= Math.PI ? pastStart && beforeEnd : pastStart || beforeEnd;
  if (facing) return Math.abs(gapToCircle(arc, p));
  return Math.min(distanceBetween(from, p), distanceBetween(to, p));
}

/** The point of the edge nearest to `p`. A position within SAME_POINT of the edge lies on it: distance exactly 0. */
export function nearestOnEdge(edge: Edge, p: Point): NearestOnEdge {
  const found = edge.kind === "line" ? nearestOnLine(edge, p) : nearestOnArc(edge, p);
  return found.distance <= SAME_POINT ? { point: p, t: found.t, distance: 0 } : found;
}

function nearestOnLine(edge: LineEdge, p: Point): NearestOnEdge {
  const { from, to } = edge;
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / squared));
  const point = between(from, to, t);
  return { point, t, distance: distanceBetween(point, p) };
}

function nearestOnArc(arc: ArcEdge, p: Point): NearestOnEdge {
  if (p[0] === arc.center[0] && p[1] === arc.center[1]) {
    return { point: pointAt(arc, 0.5), t: 0.5, distance: arc.radius };
  }
  const share = shareOfPosition(arc, p);
  if (share <= 1) {
    const point = pointAt(arc, share);
    return { point, t: share, distance: Math.min(Math.abs(gapToCircle(arc, p)), distanceBetween(point, p)) };
  }
  const toStart = distanceBetween(arc.from, p);
  const toEnd = distanceBetween(arc.to, p);
  return toStart <= toEnd ? { point: arc.from, t: 0, distance: toStart } : { point: arc.to, t: 1, distance: toEnd };
}

/** How far `p` lies outside the arc's circle, inches, negative inside. */
export function gapToCircle(arc: ArcEdge, p: Point): number {
  const toCenter = distanceBetween(p, arc.center);
  if (Math.abs(arc.sweep) > Math.PI) return toCenter - arc.radius;
  return powerOf(arc, p) / (toCenter + arc.radius);
}

/**
 * The power of `p` about the arc's circle: distance to the center squared less radius squared. Taken about the chord, so
 * that the circle passes exactly through the arc's ends however far away the center is.
 */
export function powerOf(arc: ArcEdge, p: Point): number {
  const { from, to, center, radius, sweep } = arc;
  if (Math.abs(sweep) > Math.PI) {
    const toCenter = distanceBetween(p, center);
    return (toCenter - radius) * (toCenter + radius);
  }
  const across = (p[1] - from[1]) * (to[0] - from[0]) - (p[0] - from[0]) * (to[1] - from[1]);
  const onDiameter = (p[0] - from[0]) * (p[0] - to[0]) + (p[1] - from[1]) * (p[1] - to[1]);
  return onDiameter - (2 * apothemOf(arc) * across) / distanceBetween(from, to);
}

/** How far to the left of its chord the arc's center lies, inches. */
export function apothemOf(arc: ArcEdge): number {
  return arc.radius * Math.cos(arc.sweep / 2) * (arc.sweep > 0 ? 1 : -1);
}
