/**
 * Two outlines that lie edge to edge, as one.
 *
 * Stages. 1. Both are walked counter-clockwise. 2. Each gets the other's corners that lie on its sides. 3. Sides that
 * run along one another, one way and back, are found: they have to be one stretch of both. 4. What is left of the one
 * goes on into what is left of the other. 5. The two corners where they met go, where the sides go straight on or along
 * the same circle there.
 */
import { pointAt, tangentAt } from "../../geometry/edge.ts";
import { pathFrom, signedArea } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Edge, PathData, Point, Vertex } from "../../geometry/types.ts";
import { placeOn, reversed, sidesOf, vertexOf, withCornerAt } from "./cut-path.ts";

/** Directions whose sine differs by less than this go on into one another. */
const SAME_WAY = 1e-6;

/** The one outline, or why there is none in plain words. */
export function joinedOutline(first: PathData, second: PathData): PathData | string {
  const [one, other] = [counterClockwise(first), counterClockwise(second)];
  const a = withCornersOf(one, other);
  const b = withCornersOf(other, one);
  const [sidesA, sidesB] = [sidesOf(a), sidesOf(b)];
  const met = sidesA.map((side) => sidesB.findIndex((back) => isBack(side, back)));
  const count = met.filter((at) => at >= 0).length;
  if (count === 0 || count === sidesA.length || count === sidesB.length) {
    return "They have no side in common: put them edge to edge first.";
  }
  // The sides of the first at which a stretch in common begins.
  const begins = met.flatMap((at, i) => (at >= 0 && (met.at(i - 1) ?? -1) < 0 ? [i] : []));
  const [begin, ...others] = begins;
  if (begin === undefined || others.length > 0)
    return "They meet along more than one stretch: joined, they would close round a gap.";
  const end = (begin + count) % sidesA.length;
  const start = (met[begin] ?? 0) + 1;
  const kept = around(a, end, sidesA.length - count);
  const added = around(b, start, sidesB.length - count);
  const vertices = withoutSeam(withoutSeam([...kept, ...added], kept.length), 0);
  return { vertices, closed: true };
}

function counterClockwise(path: PathData): PathData {
  return signedArea(pathFrom(path)) < 0 ? reversed(path) : path;
}

/** The outline with a corner wherever a corner of the other lies on one of its sides. */
function withCornersOf(path: PathData, other: PathData): PathData {
  let found = path;
  for (const [x, y] of other.vertices) {
    const place = placeOn(found, [x, y]);
    if (place.distance <= SAME_CORNER) found = withCornerAt(found, place).path;
  }
  return found;
}

/** True for a side that runs along another, the other way. */
function isBack(side: Edge, back: Edge): boolean {
  if (!isSame(side.from, back.to) || !isSame(side.to, back.from)) return false;
  return isSame(pointAt(side, 0.5), pointAt(back, 0.5));
}

function isSame(a: Point, b: Point): boolean {
  return distanceBetween(a, b) <= SAME_CORNER;
}

/** So many corners of an outline from one on, each with the bend of the side that leaves it. */
function around({ vertices }: PathData, from: number, count: number): Vertex[] {
  return Array.from({ length: count }, (_, i) => vertices[(from + i) % vertices.length] as Vertex);
}

/** The corners without one at which two sides go on into one another. */
function withoutSeam(vertices: readonly Vertex[], at: number): readonly Vertex[] {
  const sides = sidesOf({ vertices, closed: true });
  const [before, after] = [sides.at(at - 1), sides[at]];
  const from = vertices.at(at - 1);
  if (!before || !after || !from || vertices.length < 4) return vertices;
  const [[ux, uy], [vx, vy]] = [tangentAt(before, 1), tangentAt(after, 0)];
  if (Math.abs(ux * vy - uy * vx) > SAME_WAY || ux * vx + uy * vy < 0) return vertices;
  const bulge = bulgeOver(before, after);
  if (bulge === null) return vertices;
  const turned = vertices.with((at - 1 + vertices.length) % vertices.length, vertexOf([from[0], from[1]], bulge));
  return turned.toSpliced(at, 1);
}

/** The bend of the one side that two make; null where they are of different circles, or more than half of one. */
function bulgeOver(before: Edge, after: Edge): number | null {
  if (before.kind === "line" && after.kind === "line") return 0;
  if (before.kind === "line" || after.kind === "line" || !isSame(before.center, after.center)) return null;
  const sweep = before.sweep + after.sweep;
  return Math.abs(sweep) > Math.PI ? null : Math.tan(sweep / 4);
}
