/**
 * An outline or line being drawn, as plain data: the corners placed and the bends of the sides between them.
 *
 * Terms. A corner's bulge shapes the side that leaves it, as in the site file. The running side goes from the last
 * corner to the pointer. An arc that goes on smoothly starts in the direction that the side before ended with.
 */
import { edgeFromVertices, tangentAt } from "../../geometry/edge.ts";
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Edge, Point, Vertex } from "../../geometry/types.ts";
import type { SnapLine } from "../snapping/snap.ts";

export interface Sketch {
  readonly corners: readonly Vertex[];
}

export const EMPTY_SKETCH: Sketch = { corners: [] };

/** The largest bend that a drawing hand gives a side: nearly a whole circle. */
export const LARGEST_BULGE = 8;

export function firstCorner({ corners }: Sketch): Point | null {
  const first = corners[0];
  return first ? [first[0], first[1]] : null;
}

export function lastCorner({ corners }: Sketch): Point | null {
  const last = corners[corners.length - 1];
  return last ? [last[0], last[1]] : null;
}

/** What the next corner can be in line with. */
export function linesOf(sketch: Sketch): SnapLine[] {
  const [last, first] = [lastCorner(sketch), firstCorner(sketch)];
  return [
    ...(last ? [{ with: last, name: "the last corner" }] : []),
    ...(first ? [{ with: first, name: "the first corner" }] : []),
  ];
}

/** The sketch with one more corner; `bulge` bends the side that leads to it. The same sketch when the corner lies on the last one. */
export function withCorner(sketch: Sketch, at: Point, bulge = 0): Sketch {
  const last = lastCorner(sketch);
  if (last && samePoint(last, at)) return sketch;
  return { corners: [...withLastBulge(sketch, bulge).corners, [at[0], at[1]]] };
}

/** The sketch with the side that leaves its last corner bent: the side that closes it. */
export function withLastBulge({ corners }: Sketch, bulge: number): Sketch {
  const last = corners[corners.length - 1];
  if (!last) return { corners };
  const vertex: Vertex = bulge === 0 ? [last[0], last[1]] : [last[0], last[1], bulge];
  return { corners: [...corners.slice(0, -1), vertex] };
}

/** The sketch with the side that leads to its last corner bent. */
export function withSideBent({ corners }: Sketch, bulge: number): Sketch {
  const index = corners.length - 2;
  const from = corners[index];
  if (!from) return { corners };
  return { corners: corners.with(index, bulge === 0 ? [from[0], from[1]] : [from[0], from[1], bulge]) };
}

/** The sketch without its last corner; the side that led to it goes with it. */
export function withoutLast({ corners }: Sketch): Sketch {
  return withLastBulge({ corners: corners.slice(0, -1) }, 0);
}

/** The sides between the corners placed. */
export function sidesOf({ corners }: Sketch): Edge[] {
  const sides: Edge[] = [];
  for (let i = 1; i < corners.length; i++) {
    const [a, b] = [corners[i - 1], corners[i]];
    if (a && b) sides.push(edgeFromVertices(a, b));
  }
  return sides;
}

/** The bulge of a side from `from` to `to` that passes through `through`; 0 when that is one of its ends, or between them in line within a hair. */
export function bulgeThrough(from: Point, to: Point, through: Point): number {
  if ([distanceBetween(from, to), distanceBetween(from, through), distanceBetween(through, to)].some(isNone)) return 0;
  const a = Math.atan2(through[1] - from[1], through[0] - from[0]);
  const b = Math.atan2(to[1] - through[1], to[0] - through[0]);
  // The angle that the path turns by at `through` is half of the arc's angle (inscribed angle theorem).
  let turn = b - a;
  while (turn > Math.PI) turn -= 2 * Math.PI;
  while (turn < -Math.PI) turn += 2 * Math.PI;
  return clampBulge(Math.tan(turn / 2));
}

/** The bulge that a hand gives a side by pulling its middle to `pulled`: only the distance from the chord counts. */
export function bulgePulled(from: Point, to: Point, pulled: Point): number {
  const chord = distanceBetween(from, to);
  if (chord <= SAME_CORNER) return 0;
  const off = ((to[0] - from[0]) * (from[1] - pulled[1]) - (from[0] - pulled[0]) * (to[1] - from[1])) / chord;
  // Height of the bow over half the chord: the tangent of a quarter of the angle.
  return clampBulge((2 * off) / chord);
}

/** The bulge of a side to `to` that goes on smoothly from the side before; 0 where there is none before. */
export function smoothBulge(sketch: Sketch, to: Point): number {
  const last = lastCorner(sketch);
  const before = sidesOf(sketch).at(-1);
  if (!last || !before || samePoint(last, to)) return 0;
  const [tx, ty] = tangentAt(before, 1);
  const [cx, cy] = [to[0] - last[0], to[1] - last[1]];
  // The chord leaves the tangent by half of the arc's angle.
  const half = Math.atan2(tx * cy - ty * cx, tx * cx + ty * cy);
  return clampBulge(Math.tan(half / 2));
}

function isNone(length: number): boolean {
  return length <= SAME_CORNER;
}

function clampBulge(bulge: number): number {
  return Math.min(LARGEST_BULGE, Math.max(-LARGEST_BULGE, bulge));
}
