/** Random yards: a pool with arcs, sometimes an island, among walls, houses, courtyards and rooms that touch and cross. */
import type { Barrier, PathData, Point, Vertex } from "../../geometry/types.ts";
import { chordsOf, toPolyline } from "./bulge-chords.ts";
import { covers, isSimpleRing, ringShape } from "./jsts.ts";

export interface Yard {
  readonly outline: PathData;
  readonly islands: readonly PathData[];
  readonly barriers: readonly Barrier[];
}

/** A small generator of numbers from 0 to 1, the same for the same seed on every machine (mulberry32, public domain, from memory). */
export function numbersFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Gaps that are neither closed nor open beyond doubt: a yard with one is drawn again. */
const DOUBTFUL_GAP = 1 / 16;

export function randomYard(seed: number): Yard {
  const next = numbersFrom(seed);
  for (;;) {
    const yard = drawYard(next);
    if (yard && !hasDoubtfulGap(yard.barriers)) return yard;
  }
}

function drawYard(next: () => number): Yard | null {
  const outline = drawPool(next);
  if (!isSimpleRing(chordsOf(outline, 0.01))) return null;
  const islands: PathData[] = [];
  if (next() < 0.25) {
    const island = drawBox([0, 0], 8 + next() * 40, 8 + next() * 20, next() * 3);
    const edge = chordsOf(outline, 0.01);
    if (!covers(ringShape(edge), ringShape(island))) return null;
    if (edge.some((p) => toPolyline(p, island, true) < 2)) return null;
    if (island.some((p) => toPolyline(p, edge, true) < 2)) return null;
    islands.push({ vertices: island, closed: true });
  }
  const barriers: Barrier[] = [];
  const count = 1 + Math.floor(next() * 6);
  for (let i = 0; i < count; i++) barriers.push(drawBarrier(next, `b${i}`, barriers, outline));
  return { outline, islands, barriers };
}

function drawPool(next: () => number): PathData {
  const wide = 60 + next() * 140;
  const high = 50 + next() * 70;
  if (next() < 0.35) {
    const box = drawBox([0, 0], wide, high, next() < 0.5 ? 0 : next() * 3);
    return { vertices: box, closed: true };
  }
  const corners = 3 + Math.floor(next() * 6);
  const vertices: Vertex[] = [];
  for (let i = 0; i < corners; i++) {
    const angle = ((i + next() * 0.6) * 2 * Math.PI) / corners;
    const reach = 0.6 + next() * 0.4;
    const bulge = next() < 0.4 ? 0 : next() * 1.1 - 0.35;
    vertices.push([wide * reach * Math.cos(angle), high * reach * Math.sin(angle), bulge]);
  }
  return { vertices, closed: true };
}

function drawBox(center: Point, halfWide: number, halfHigh: number, turn: number): Point[] {
  const corners: Point[] = [
    [-halfWide, -halfHigh],
    [halfWide, -halfHigh],
    [halfWide, halfHigh],
    [-halfWide, halfHigh],
  ];
  return corners.map((p) => around(center, p, turn));
}

function around(center: Point, [x, y]: Point, turn: number): Point {
  return [center[0] + x * Math.cos(turn) - y * Math.sin(turn), center[1] + x * Math.sin(turn) + y * Math.cos(turn)];
}

/** A wall from a to b with butt ends. */
function wall(a: Point, b: Point, half: number): Point[] {
  const turn = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return drawBox([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], length / 2, half, turn);
}

function drawBarrier(next: () => number, id: string, before: readonly Barrier[], pool: PathData): Barrier {
  const somewhere = (): Point => [(next() - 0.5) * 520, (next() - 0.5) * 380];
  const turn = next() < 0.4 ? 0 : next() * 3;
  const kind = Math.floor(next() * 9);
  const last = before[before.length - 1];
  const away = (from: Point, length: number): Point => around(from, [length, 0], next() * 7);
  if (kind === 0) return { id, shape: "thin", points: polyline(next, somewhere(), 1 + Math.floor(next() * 4)) };
  if (kind === 1) return { id, shape: "solid", points: drawBox(somewhere(), 20 + next() * 80, 10 + next() * 60, turn) };
  if (kind === 2) return { id, shape: "thin", points: room(next, somewhere(), 30 + next() * 60, turn) };
  if (kind === 3) return { id, shape: "thin", points: room(next, [0, 0], 215 + next() * 30, turn) };
  if (kind === 4) {
    // Across or along the edge of the pool.
    const [x, y] = pool.vertices[Math.floor(next() * pool.vertices.length)] as Vertex;
    const end = away([x, y], 20 + next() * 60);
    const start: Point = next() < 0.3 ? [x, y] : around([x, y], [-10, 0], next() * 7);
    return next() < 0.5
      ? { id, shape: "thin", points: [start, end] }
      : { id, shape: "solid", points: wall(start, end, 2 + next() * 4) };
  }
  if (kind === 5 && last) {
    // From a corner of the barrier before: walls that share a corner, and T joints.
    const corner = last.points[Math.floor(next() * last.points.length)] as Point;
    const end = away(corner, 30 + next() * 120);
    return next() < 0.5
      ? { id, shape: "thin", points: [corner, end] }
      : { id, shape: "solid", points: sharingCorner(corner, end, 3 + next() * 6) };
  }
  if (kind === 6) return { id, shape: "solid", points: courtyard(somewhere(), 40 + next() * 50, turn) };
  const a = somewhere();
  return { id, shape: "solid", points: wall(a, away(a, 30 + next() * 200), 2 + next() * 5) };
}

function sharingCorner(corner: Point, end: Point, thick: number): Point[] {
  const length = Math.hypot(end[0] - corner[0], end[1] - corner[1]);
  const x = (-(end[1] - corner[1]) / length) * thick;
  const y = ((end[0] - corner[0]) / length) * thick;
  return [corner, end, [end[0] + x, end[1] + y], [corner[0] + x, corner[1] + y]];
}

function polyline(next: () => number, start: Point, pieces: number): Point[] {
  const points = [start];
  let at = start;
  for (let i = 0; i < pieces; i++) {
    at = around(at, [20 + next() * 120, 0], next() * 7);
    points.push(at);
  }
  return points;
}

/** The outline of a room, closed or with a passage in one side. */
function room(next: () => number, center: Point, half: number, turn: number): Point[] {
  const [a, b, c, d] = drawBox(center, half, half * (0.5 + next() * 0.5), turn) as [Point, Point, Point, Point];
  if (next() < 0.3) return [a, b, c, d, a];
  const from = 0.1 + next() * 0.4;
  const to = from + 0.1 + next() * 0.3;
  const on = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  return [on(to), b, c, d, a, on(from)];
}

/** A solid wall round three sides of a yard. */
function courtyard(center: Point, half: number, turn: number): Point[] {
  const points: Point[] = [
    [-half, -half],
    [half, -half],
    [half, half],
    [half - 6, half],
    [half - 6, -half + 6],
    [-half + 6, -half + 6],
    [-half + 6, half],
    [-half, half],
  ];
  return points.map((p) => around(center, p, turn));
}

function hasDoubtfulGap(barriers: readonly Barrier[]): boolean {
  return barriers.some(({ points }, i) =>
    points.some((p) =>
      barriers.some((other, j) => {
        const gap = i === j ? 0 : toPolyline(p, other.points, other.shape === "solid");
        return gap > 1e-9 && gap < DOUBTFUL_GAP;
      }),
    ),
  );
}

/** An object along a path: a fence or a raceway of lines and arcs. */
export function drawObject(next: () => number): PathData {
  const vertices: Vertex[] = polyline(
    next,
    [(next() - 0.5) * 520, (next() - 0.5) * 380],
    1 + Math.floor(next() * 3),
  ).map(([x, y]): Vertex => [x, y, next() < 0.5 ? 0 : next() * 1.2 - 0.6]);
  return { vertices, closed: false };
}

/**
 * A yard on a lattice of 20 in.: boxes and thin lines that share corners, sides and parts of sides, cross, and close
 * rooms, round a pool whose corners lie half way between the lattice's.
 */
export function latticeYard(seed: number): Yard {
  const next = numbersFrom(seed);
  const whole = (limit: number): number => Math.floor(next() * (2 * limit + 1)) - limit;
  const at = (x: number, y: number): Point => [x * 20, y * 20];
  const barriers: Barrier[] = [];
  const count = 4 + Math.floor(next() * 16);
  for (let i = 0; i < count; i++) {
    const [x, y] = [whole(8), whole(7)];
    if (next() < 0.5) {
      const [wide, high] = next() < 0.5 ? [1 + Math.floor(next() * 5), 1] : [1, 1 + Math.floor(next() * 5)];
      const points = [at(x, y), at(x + wide, y), at(x + wide, y + high), at(x, y + high)];
      barriers.push({ id: `b${i}`, shape: "solid", points: next() < 0.5 ? points : points.reverse() });
    } else {
      const points = [at(x, y)];
      let [px, py] = [x, y];
      for (let k = 0; k < 1 + Math.floor(next() * 4); k++) {
        const step = 1 + Math.floor(next() * 4);
        const [dx, dy] = [whole(1), whole(1)];
        if (dx === 0 && dy === 0) continue;
        px += dx * step;
        py += dy * step;
        points.push(at(px, py));
      }
      if (points.length > 1) barriers.push({ id: `b${i}`, shape: "thin", points });
    }
  }
  const [wide, high] = [30 + 20 * Math.floor(next() * 4), 30 + 20 * Math.floor(next() * 3)];
  const outline: PathData = { vertices: drawBox([0, 0], wide, high, 0), closed: true };
  return { outline, islands: [], barriers };
}
