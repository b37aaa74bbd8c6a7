/**
 * Arcs that go on smoothly from one another, and closed outlines of them.
 *
 * Terms. The points are where the arcs meet. An outline starts in a direction; from there each next arc starts in the
 * direction that the last one ended with, so that its end alone shapes it. A pair: two arcs that leave one point and
 * reach another in given directions and meet smoothly between them.
 *
 * Stages. 1. The start's direction: that of the circle through the first three points, or along the chord while there
 * are two. 2. Arc by arc. 3. To close, a pair from the last point back to the first, in the direction it began with.
 */
import { distanceBetween } from "./points.ts";
import { SAME_CORNER } from "./tolerances.ts";
import type { PathData, Point, Vertex } from "./types.ts";

/** A way over the sheet, of length 1. */
export type Way = readonly [x: number, y: number];

/** The sharpest that one arc turns: nearly a whole circle. */
const MOST_TURN = 1.96 * Math.PI;

/** The way in which an outline through these points starts. */
export function startWay([a, b, c]: readonly Point[]): Way | null {
  if (!a || !b) return null;
  const chord = wayTo(a, b);
  const next = c && wayTo(b, c);
  if (!c || !chord || !next) return chord;
  const last = wayTo(a, c);
  // The tangent of a circle leans from a chord by the angle that the chord is seen under from the circle.
  return last ? turned(chord, -leaning(last, next)) : chord;
}

/** The bulge of the arc that leaves `from` in a way and ends at `to`; null where it would be more than nearly a whole circle. */
export function bulgeFrom(from: Point, way: Way, to: Point): number | null {
  const chord = wayTo(from, to);
  if (!chord) return null;
  const half = leaning(way, chord);
  return Math.abs(2 * half) > MOST_TURN ? null : Math.tan(half / 2);
}

/** The way in which that arc ends: its chord's way, leaned as far again. */
export function wayAfter(from: Point, way: Way, to: Point): Way {
  const chord = wayTo(from, to);
  return chord ? turned(chord, leaning(way, chord)) : way;
}

/** The open line of arcs through the points, each tangent to the last; null when one would have to turn right round. */
export function arcsThrough(
  points: readonly Point[],
  start: Way,
): { readonly vertices: readonly Vertex[]; readonly way: Way } | null {
  let way = start;
  const vertices: Vertex[] = [];
  for (const [i, from] of points.entries()) {
    const to = points[i + 1];
    if (!to) {
      vertices.push([from[0], from[1]]);
      continue;
    }
    const bulge = bulgeFrom(from, way, to);
    if (bulge === null) return null;
    vertices.push([from[0], from[1], bulge]);
    way = wayAfter(from, way, to);
  }
  return { vertices, way };
}

/** The closed outline without a corner; null with fewer than three points, or where an arc would have to turn right round. */
export function closedArcs(points: readonly Point[], start: Way): PathData | null {
  const [first, last] = [points[0], points.at(-1)];
  const open = points.length < 3 ? null : arcsThrough(points, start);
  if (!first || !last || !open) return null;
  const middle = meetingOfPair(last, open.way, first, start);
  const out = bulgeFrom(last, open.way, middle);
  const home = bulgeFrom(middle, wayAfter(last, open.way, middle), first);
  if (out === null || home === null) return null;
  return {
    vertices: [...open.vertices.slice(0, -1), [last[0], last[1], out], [middle[0], middle[1], home]],
    closed: true,
  };
}

/** The place on the circle that touches a way, `angle` radians on; a positive angle bends left. */
export function alongCircle(from: Point, way: Way, radius: number, angle: number): Point {
  const half = angle / 2;
  const chord = 2 * radius * Math.sin(Math.abs(half));
  const [x, y] = turned(way, half);
  return [from[0] + chord * x, from[1] + chord * y];
}

/** Where the two arcs of a pair with equal tangent lengths meet. */
export function meetingOfPair(from: Point, out: Way, to: Point, home: Way): Point {
  const v: Point = [to[0] - from[0], to[1] - from[1]];
  const along = v[0] * (out[0] + home[0]) + v[1] * (out[1] + home[1]);
  const square = v[0] * v[0] + v[1] * v[1];
  const apart = 2 * (1 - out[0] * home[0] - out[1] * home[1]);
  // The tangent length d solves apart d^2 + 2 along d = square; this form of the root stands for ways that agree too.
  const root = Math.sqrt(along * along + apart * square);
  const length = along + root > 0 ? square / (along + root) : (root - along) / apart;
  return [(from[0] + to[0] + length * (out[0] - home[0])) / 2, (from[1] + to[1] + length * (out[1] - home[1])) / 2];
}

export function wayTo(from: Point, to: Point): Way | null {
  const length = distanceBetween(from, to);
  return length <= SAME_CORNER ? null : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

/** The angle from one way to another, radians, counter-clockwise. */
export function leaning(from: Way, to: Way): number {
  return Math.atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]);
}

function turned([x, y]: Way, angle: number): Way {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
}
