/**
 * The shortest ring by brute force, sharing nothing with the project's own way: both limits are buffers made by jsts, every
 * pair of their corners that see each other is an edge, and the shortest closed walk that winds once round a point in
 * the water is found by Dijkstra's method from the lowest corners of the inner limit, counting windings.
 */
import type { Point } from "../../geometry/types.ts";
import { buffer, ringShape } from "./jsts.ts";

// biome-ignore lint/suspicious/noExplicitAny: the package's types do not know these
const coordinatesOf = (shape: any): Point[][] => {
  const polygon = shape.getGeometryN(0);
  const read = (ring: { getCoordinates(): { x: number; y: number }[] }): Point[] =>
    ring
      .getCoordinates()
      .slice(1)
      .map(({ x, y }): Point => [x, y]);
  const rings = [read(polygon.getExteriorRing())];
  for (let i = 0; i < polygon.getNumInteriorRing(); i++) rings.push(read(polygon.getInteriorRingN(i)));
  return rings;
};

const side = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function inside(p: Point, rings: readonly Point[][]): boolean {
  let odd = false;
  for (const ring of rings) {
    ring.forEach((b, i) => {
      const a = ring[(i + ring.length - 1) % ring.length] as Point;
      if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1])) odd = !odd;
    });
  }
  return odd;
}

/**
 * Length of the shortest closed curve round `water` between `min` and `max` from it, whose limits have one outer ring
 * each. `center` lies in the water. `segments`: chords to a quarter turn.
 */
export function searchedRing(
  water: readonly Point[],
  min: number,
  max: number,
  center: Point,
  segments: number,
): number {
  const near = coordinatesOf(buffer(ringShape(water), min, segments))[0] as Point[];
  const far = coordinatesOf(buffer(ringShape(water), max, segments))[0] as Point[];
  const rings = [near, far];
  const corners: { p: Point; ring: number }[] = [];
  const clockwise = (ring: Point[]): boolean =>
    ring.reduce((sum, b, i) => sum + side([0, 0], ring[(i + ring.length - 1) % ring.length] as Point, b), 0) < 0;
  rings.forEach((ring, r) => {
    const way = clockwise(ring) ? -1 : 1;
    ring.forEach((p, i) => {
      const before = ring[(i + ring.length - 1) % ring.length] as Point;
      const after = ring[(i + 1) % ring.length] as Point;
      // The string bends only round corners that stick out of the near limit or into the strip from the far one.
      if (side(before, p, after) * way * (r === 0 ? 1 : -1) > 0) corners.push({ p, ring: r });
    });
  });
  const edges = rings.flatMap((ring) =>
    ring.map((b, i) => [ring[(i + ring.length - 1) % ring.length] as Point, b] as const),
  );
  const sees = (a: Point, b: Point): boolean => {
    for (const [c, d] of edges) {
      const [s1, s2] = [side(a, b, c), side(a, b, d)];
      if (!((s1 > 1e-9 && s2 < -1e-9) || (s1 < -1e-9 && s2 > 1e-9))) continue;
      const [s3, s4] = [side(c, d, a), side(c, d, b)];
      if ((s3 > 1e-9 && s4 < -1e-9) || (s3 < -1e-9 && s4 > 1e-9)) return false;
    }
    return [0.31, 0.5, 0.77].every((t) => {
      const p: Point = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      return inside(p, rings) || edges.some(([c, d]) => onSegment(p, c, d));
    });
  };
  const winds = (a: Point, b: Point): number => {
    if (a[1] > center[1] === b[1] > center[1]) return 0;
    const x = a[0] + ((b[0] - a[0]) * (center[1] - a[1])) / (b[1] - a[1]);
    return x < center[0] ? 0 : b[1] > a[1] ? 1 : -1;
  };
  const links = corners.map((): { to: number; length: number; winds: number }[] => []);
  corners.forEach(({ p: a }, i) => {
    for (let j = i + 1; j < corners.length; j++) {
      const b = (corners[j] as { p: Point }).p;
      if (!sees(a, b)) continue;
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      links[i]?.push({ to: j, length, winds: winds(a, b) });
      links[j]?.push({ to: i, length, winds: -winds(a, b) });
    }
  });
  // A shortest ring cannot hang below the near limit: its lowest point is a corner of it. The lowest dozen are tried.
  let best = Number.POSITIVE_INFINITY;
  const starts = corners.map(({ ring, p }, i) => ({ ring, y: p[1], i })).filter(({ ring }) => ring === 0);
  for (const { i } of starts.sort((a, b) => a.y - b.y).slice(0, 12)) best = Math.min(best, roundTrip(links, i, best));
  return best;
}

function onSegment(p: Point, a: Point, b: Point): boolean {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (Math.abs(side(a, b, p)) > 1e-7 * length) return false;
  const t = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / (length * length);
  return t >= 0 && t <= 1;
}

const LAYERS = 4;

/** Shortest walk from `start`, layer 1, to `start`, layer 2 (a layer up for every winding). */
function roundTrip(
  links: readonly (readonly { to: number; length: number; winds: number }[])[],
  start: number,
  limit: number,
): number {
  const count = links.length;
  const distance = new Float64Array(count * LAYERS).fill(Number.POSITIVE_INFINITY);
  const done = new Uint8Array(count * LAYERS);
  distance[count + start] = 0;
  for (;;) {
    let at = -1;
    let least = limit;
    distance.forEach((d, i) => {
      if (!done[i] && d < least) {
        least = d;
        at = i;
      }
    });
    if (at < 0) return Number.POSITIVE_INFINITY;
    if (at === 2 * count + start) return least;
    done[at] = 1;
    const layer = Math.floor(at / count);
    for (const { to, length, winds } of links[at % count] ?? []) {
      const next = layer + winds;
      if (next < 0 || next >= LAYERS) continue;
      const place = next * count + to;
      if (least + length < (distance[place] as number)) distance[place] = least + length;
    }
  }
}
