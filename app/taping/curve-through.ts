/**
 * A path of straight sides and smooth curves through taped points.
 *
 * Terms. A side is curved or straight. Between two curved sides the path bends without a corner: its direction there is
 * that of the circle through the point and its two neighbors. Two arcs that leave one point and reach the next in given
 * directions and meet smoothly between them: a pair.
 *
 * Stages. 1. Directions at the points between two curved sides. 2. A curved side with a direction at one end only takes
 * one arc; with both, a pair of arcs. A curved side alone, with no direction at either end, stays straight.
 */
import { distanceBetween } from "../../geometry/points.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";

/** `curved[i]`: the side that leaves point i. Points that follow each other are apart. */
export function curveThrough(points: readonly Point[], curved: readonly boolean[], closed: boolean): PathData {
  const count = points.length;
  const sides = closed ? count : count - 1;
  const isCurved = (i: number): boolean => {
    const side = closed ? (i + count) % count : i;
    return side >= 0 && side < sides && curved[side] === true;
  };
  const at = (i: number): Point => points[(i + count) % count] as Point;
  const direction = (i: number): Point | null =>
    count > 2 && isCurved(i - 1) && isCurved(i) ? circleDirection(at(i - 1), at(i), at(i + 1)) : null;
  const vertices: Vertex[] = [];
  for (let i = 0; i < count; i++) {
    const [from, to] = [at(i), at(i + 1)];
    if (!isCurved(i)) vertices.push(from);
    else vertices.push(...curve(from, direction(i), to, direction((i + 1) % count)));
  }
  return { vertices, closed };
}

/** Direction at `p` of the circle a, p, b run through in that order; along the line when they lie on one. */
function circleDirection(a: Point, p: Point, b: Point): Point | null {
  const [before, after] = [distanceBetween(a, p), distanceBetween(p, b)];
  if (before === 0 || after === 0) return null;
  // The tangent of the circle leans from each chord by the angle that the other chord is seen under.
  const u: Point = [(p[0] - a[0]) / before, (p[1] - a[1]) / before];
  const v: Point = [(b[0] - p[0]) / after, (b[1] - p[1]) / after];
  return unit([u[0] * after + v[0] * before, u[1] * after + v[1] * before]);
}

function curve(from: Point, start: Point | null, to: Point, end: Point | null): Vertex[] {
  const chord = unit([to[0] - from[0], to[1] - from[1]]);
  if (!chord || (!start && !end)) return [from];
  if (!start) return [withBulge(from, angleBetween(chord, end as Point))];
  if (!end) return [withBulge(from, angleBetween(start, chord))];
  const middle = meetingOfPair(from, start, to, end);
  const [first, second] = [unit(minus(middle, from)), unit(minus(to, middle))];
  if (!first || !second) return [withBulge(from, angleBetween(start, chord))];
  return [withBulge(from, angleBetween(start, first)), withBulge(middle, angleBetween(second, end))];
}

/** Where the two arcs of a pair with equal tangent lengths meet. */
function meetingOfPair(from: Point, start: Point, to: Point, end: Point): Point {
  const v = minus(to, from);
  const along = v[0] * (start[0] + end[0]) + v[1] * (start[1] + end[1]);
  const square = v[0] * v[0] + v[1] * v[1];
  const apart = 2 * (1 - start[0] * end[0] - start[1] * end[1]);
  // The smaller root of apart d^2 + 2 along d - square = 0, in the form that holds for parallel directions as well.
  const root = along + Math.sqrt(along * along + apart * square);
  const d = root > 0 ? square / root : Math.sqrt(square);
  return [(from[0] + to[0] + d * (start[0] - end[0])) / 2, (from[1] + to[1] + d * (start[1] - end[1])) / 2];
}

/** `lean`: the angle between an end's direction and the chord, half of what the arc turns. */
function withBulge([x, y]: Point, lean: number): Vertex {
  const bulge = Math.tan(lean / 2);
  return bulge === 0 ? [x, y] : [x, y, bulge];
}

function angleBetween(a: Point, b: Point): number {
  return Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
}

function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1]];
}

function unit([x, y]: Point): Point | null {
  const length = Math.hypot(x, y);
  return length === 0 ? null : [x / length, y / length];
}
