/**
 * The ground between a ring and one ring inside it, closed by triangles as a zip closes, and the string pulled tight round
 * the inner ring: what most strips are, for much less than a mesh of any polygon (taut-mesh.ts) costs.
 *
 * Stages. 1. Begin with the lowest corner of the inner ring, which the string surely bends round, and the outer corner
 * nearest to it. 2. Triangle by triangle go on to the next corner of the one ring or of the other, whichever makes a
 * triangle that runs counter-clockwise; of two, the one with the shorter side across. Where neither does: null. 3. The
 * funnel (taut-loop.ts) runs through the sides across.
 *
 * Why that is enough. Triangles that all run counter-clockwise and have the two rings for their edge cover every position
 * as often as the rings wind round it: with rings that cross neither themselves nor each other, those between the two once,
 * all others never. So none overlaps another.
 *
 * Terms. Side across: a side of a triangle from the inner ring to the outer one.
 */
import { turnOf } from "./orientation.ts";
import { distanceBetween } from "./points.ts";
import { funnel } from "./taut-loop.ts";
import { jitters } from "./taut-mesh.ts";
import type { Point } from "./types.ts";

/** The string, counter-clockwise, and its length; null where the zip does not close. The rings may run either way. */
export function zippedString(
  outer: readonly Point[],
  inner: readonly Point[],
): { readonly path: readonly Point[]; readonly length: number } | null {
  const sizes = outer.length + inner.length;
  if (outer.length < 3 || inner.length < 3) return null;
  const coordinates = new Float64Array(2 * sizes);
  const moves = jitters(sizes);
  const put = (ring: readonly Point[], first: number): void => {
    for (let i = 0; i < ring.length; i++) {
      const p = ring[i] as Point;
      const at = 2 * (first + i);
      coordinates[at] = p[0] + (moves[at] as number);
      coordinates[at + 1] = p[1] + (moves[at + 1] as number);
    }
  };
  put(outer, 0);
  put(inner, outer.length);
  const outerStep = ringWay(coordinates, 0, outer.length);
  const innerStep = ringWay(coordinates, outer.length, inner.length);
  const start = lowest(coordinates, outer.length, sizes);
  const across = zip(coordinates, outer.length, inner.length, outerStep, innerStep, start);
  if (!across) return null;
  const loop = funnel(coordinates, across.outer, across.inner, start).reverse();
  const path = loop.map((corner): Point => [coordinates[2 * corner] as number, coordinates[2 * corner + 1] as number]);
  let length = 0;
  for (let i = 0; i < path.length; i++)
    length += distanceBetween(path[i] as Point, path[i + 1 === path.length ? 0 : i + 1] as Point);
  return { path, length };
}

/** 1 where the corners from number `first` on run counter-clockwise, else -1. */
function ringWay(coordinates: Float64Array, first: number, count: number): 1 | -1 {
  const x = coordinates[2 * first] as number;
  const y = coordinates[2 * first + 1] as number;
  let twice = 0;
  for (let i = 1; i + 1 < count; i++) {
    const at = 2 * (first + i);
    twice +=
      ((coordinates[at] as number) - x) * ((coordinates[at + 3] as number) - y) -
      ((coordinates[at + 2] as number) - x) * ((coordinates[at + 1] as number) - y);
  }
  return twice < 0 ? -1 : 1;
}

function lowest(coordinates: Float64Array, from: number, to: number): number {
  let best = from;
  for (let i = from + 1; i < to; i++) {
    const below = (coordinates[2 * i + 1] as number) - (coordinates[2 * best + 1] as number);
    if (below < 0 || (below === 0 && (coordinates[2 * i] as number) < (coordinates[2 * best] as number))) best = i;
  }
  return best;
}

/** The ends of the sides across, those from corner `start` left out, clockwise. */
function zip(
  coordinates: Float64Array,
  outerCount: number,
  innerCount: number,
  outerStep: 1 | -1,
  innerStep: 1 | -1,
  start: number,
): { outer: Int32Array; inner: Int32Array } | null {
  const x = (corner: number): number => coordinates[2 * corner] as number;
  const y = (corner: number): number => coordinates[2 * corner + 1] as number;
  const squared = (a: number, b: number): number => (x(a) - x(b)) ** 2 + (y(a) - y(b)) ** 2;
  const turns = (a: number, b: number, c: number): boolean => turnOf(x(a), y(a), x(b), y(b), x(c), y(c)) > 0;
  const nextOuter = (i: number): number => (i + outerStep + outerCount) % outerCount;
  const nextInner = (i: number): number => outerCount + ((i - outerCount + innerStep + innerCount) % innerCount);
  let o = 0;
  for (let i = 1; i < outerCount; i++) if (squared(i, start) < squared(o, start)) o = i;
  let n = start;
  let outerLeft = outerCount;
  let innerLeft = innerCount;
  const outer: number[] = [];
  const inner: number[] = [];
  while (outerLeft + innerLeft > 0) {
    const o1 = nextOuter(o);
    const n1 = nextInner(n);
    const outerFirst = innerLeft === 0 || (outerLeft > 0 && squared(n, o1) < squared(n1, o));
    const wanted = turns(n, o, outerFirst ? o1 : n1);
    if (!wanted && ((outerFirst ? innerLeft : outerLeft) === 0 || !turns(n, o, outerFirst ? n1 : o1))) return null;
    if (outerFirst === wanted) {
      o = o1;
      outerLeft -= 1;
    } else {
      n = n1;
      innerLeft -= 1;
    }
    if (n === start) continue;
    outer.push(o);
    inner.push(n);
  }
  return { outer: Int32Array.from(outer).reverse(), inner: Int32Array.from(inner).reverse() };
}
