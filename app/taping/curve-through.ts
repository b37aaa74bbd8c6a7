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
import { bulgeFrom, meetingOfPair, startWay, type Way, wayAfter, wayTo } from "../../geometry/tangent-arcs.ts";
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
  const direction = (i: number): Way | null =>
    count > 2 && isCurved(i - 1) && isCurved(i) ? circleWay(at(i - 1), at(i), at(i + 1)) : null;
  const vertices: Vertex[] = [];
  for (let i = 0; i < count; i++) {
    const [from, to] = [at(i), at(i + 1)];
    if (!isCurved(i)) vertices.push(from);
    else vertices.push(...curve(from, direction(i), to, direction((i + 1) % count)));
  }
  return { vertices, closed };
}

/** The way in which the circle through a, p and b passes p; along the line when they lie on one. */
function circleWay(a: Point, p: Point, b: Point): Way | null {
  const start = startWay([a, p, b]);
  return start && wayAfter(a, start, p);
}

function curve(from: Point, start: Way | null, to: Point, end: Way | null): Vertex[] {
  const chord = wayTo(from, to);
  if (!chord || (!start && !end)) return [from];
  if (!start) {
    // Seen from its other end it begins in that direction.
    const [x, y] = end as Way;
    const back = bulgeFrom(to, [-x, -y], from);
    return [bent(from, back && -back)];
  }
  if (!end) return [bent(from, bulgeFrom(from, start, to))];
  const middle = meetingOfPair(from, start, to, end);
  const first = bulgeFrom(from, start, middle);
  const second = bulgeFrom(middle, wayAfter(from, start, middle), to);
  return first === null || second === null
    ? [bent(from, bulgeFrom(from, start, to))]
    : [bent(from, first), bent(middle, second)];
}

/** A side that no arc can be bent to stays straight. */
function bent([x, y]: Point, bulge: number | null): Vertex {
  return bulge === null || bulge === 0 ? [x, y] : [x, y, bulge];
}
