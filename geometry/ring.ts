/**
 * The even ring: the curve at one distance from the water, round every body that shares a perimeter, on the pool side of
 * barriers.
 *
 * Stages. 1. The exact offset (offset.ts). Barriers farther away than it, and keep-outs that it does not cross, change
 * nothing. 2. With a barrier nearer than the offset: the edge of the ground that is reached straight (reach.ts), a
 * polygon. 3. Wherever that polygon runs along the exact offset, the exact curve takes its place. 4. The stretches that
 * a barrier pushed nearer to the water than allowed are measured.
 *
 * Terms. Detour: a stretch where the ring leaves the offset to stay on the pool side of a barrier.
 */
import { contains } from "./contains.ts";
import { pathToArea, pathToPath } from "./distance.ts";
import { lineEdge } from "./edge.ts";
import { edgeTree } from "./edge-tree.ts";
import { lengthWithin } from "./length-within.ts";
import { nearestEdgeToLine } from "./nearest-edge.ts";
import { type OffsetLoop, offsetCurves } from "./offset.ts";
import { pathFrom, pathLength, signedArea } from "./outline.ts";
import { pointToPath } from "./point-distance.ts";
import { between, samePoint } from "./points.ts";
import { waterAndDirectReach } from "./reach.ts";
import { detouredLoop, type MarkedPoint } from "./ring-detours.ts";
import { unitedGround, withoutSpikes } from "./ring-spikes.ts";
import { LIMIT_TOLERANCE, OFFSET_LEFTOVER, RING_ON_OFFSET, RING_SEAM } from "./tolerances.ts";
import type { Area, Barrier, Path, Point } from "./types.ts";

export interface EvenRingRequest {
  /** The bodies that share a perimeter. */
  readonly bodies: readonly Area[];
  /** Distance from the inside walls, inches, above 0. */
  readonly offset: number;
  /** What the ring has to stay on the pool side of: walls and buildings. */
  readonly barriers: readonly Barrier[];
  /** What it only may not run through: one wholly inside the ring does not matter. */
  readonly keepOuts?: readonly Barrier[];
  /** Nearest that a ring may lie to the water, inches: what comes nearer is reported. */
  readonly min: number;
}

export interface RingLoopPath {
  /** Numbers of the bodies it goes round; round a pocket of ground: those whose outline it follows. */
  readonly bodies: readonly number[];
  /** Water to its left: counter-clockwise round bodies, clockwise round ground. */
  readonly path: Path;
  readonly length: number;
}

export interface EvenRing {
  readonly loops: readonly RingLoopPath[];
  /** Stretches nearer to the water than `min` because of a barrier. */
  readonly tooClose: readonly { readonly path: Path; readonly length: number }[];
  /** False where the exact construction had to be replaced by a fine polygon. */
  readonly exact: boolean;
}

/** The even ring. No bodies: no loops. */
export function evenRing(request: EvenRingRequest): EvenRing {
  const { bodies, offset, barriers, keepOuts = [], min } = request;
  const curves = offsetCurves(bodies, offset);
  let blocking = barriers.filter((barrier) => reaches(barrier, bodies, offset));
  let loops = curves.loops.map((loop) => ringLoop(loop.path, loop.area, loop.bodies, bodies));
  let tooClose: EvenRing["tooClose"] = [];
  const waiting = keepOuts.filter((keepOut) => reaches(keepOut, bodies, offset) || crossesAny(keepOut, loops));
  for (let round = 0; round <= waiting.length; round++) {
    const crossed = waiting.filter((one) => !blocking.includes(one) && crossesAny(one, loops));
    if (crossed.length === 0 && (round > 0 || blocking.length === 0)) break;
    blocking = [...blocking, ...crossed];
    ({ loops, tooClose } = detouredRing(bodies, offset, blocking, curves.loops, min));
  }
  return { loops, tooClose, exact: curves.exact };
}

function barrierPath({ shape, points }: Barrier): Path {
  const distinct = points.filter((p, i) => {
    const before = points[i - 1];
    return !before || !samePoint(before, p);
  });
  return pathFrom({ vertices: distinct, closed: shape === "solid" });
}

/** Whether a barrier comes nearer to the water of one of the bodies than `offset` inches. */
export function reaches(barrier: Barrier, bodies: readonly Area[], offset: number): boolean {
  const path = barrierPath(barrier);
  return path.edges.length > 0 && bodies.some((body) => pathToArea(path, body).length < offset - LIMIT_TOLERANCE);
}

/** Whether a ring runs into a keep-out, or wholly inside it. */
function crossesAny(keepOut: Barrier, loops: readonly RingLoopPath[]): boolean {
  const path = barrierPath(keepOut);
  const ground = keepOut.shape === "solid" ? { outer: path, holes: [] } : null;
  return loops.some((loop) => {
    const start = loop.path.edges[0]?.from;
    return pathToPath(loop.path, path).length === 0 || (ground && start && contains(ground, start));
  });
}

function ringLoop(path: Path, area: number, follows: readonly number[], bodies: readonly Area[]): RingLoopPath {
  return { bodies: area > 0 ? bodiesInside(path, bodies) : follows, path, length: pathLength(path) };
}

/** A body is inside with all of its corners, but for those beside which a barrier makes the ring run along the water. */
function bodiesInside(path: Path, bodies: readonly Area[]): number[] {
  const inside: Area = { outer: path, holes: [] };
  return bodies.flatMap((body, i) => (body.outer.edges.some(({ from }) => contains(inside, from)) ? [i] : []));
}

/** Stages 2 to 4. */
function detouredRing(
  bodies: readonly Area[],
  offset: number,
  blocking: readonly Barrier[],
  curves: readonly OffsetLoop[],
  min: number,
): { loops: RingLoopPath[]; tooClose: { path: Path; length: number }[] } {
  const region = unitedGround(bodies.flatMap((body) => waterAndDirectReach(body, offset, blocking)));
  const exactPaths = curves.map((loop) => loop.path);
  const loops: RingLoopPath[] = [];
  const tooClose: { path: Path; length: number }[] = [];
  for (const ring of region.flat()) {
    const points = withoutSpikes(ring.slice(0, -1));
    if (points.length === 0) continue;
    const marked = markedRing(points, bodies, offset);
    const polygon = pathFrom({ vertices: points, closed: true });
    const area = signedArea(polygon);
    // The edge of a barrier that stands free on reached ground is no ring: nothing of it is at the offset.
    if (area < 0 && !marked.some(({ on }) => on)) continue;
    const { path, detours } = detouredLoop(marked, exactPaths);
    const follows = [...new Set(points.map((p) => nearestBody(p, bodies).body))].sort((a, b) => a - b);
    loops.push(ringLoop(path, area, follows, bodies));
    for (const detour of detours) {
      bodies.forEach((body, i) => {
        for (const piece of lengthWithin(detour, body, min - RING_SEAM).pieces) {
          const length = pathLength(piece);
          if (length <= OFFSET_LEFTOVER || nearestBody(middleOf(piece), bodies).body !== i) continue;
          tooClose.push({ path: piece, length });
        }
      });
    }
  }
  return { loops: loops.filter((loop) => loop.bodies.length > 0), tooClose };
}

/**
 * The ring's corners, on the offset or off it. A barrier longer than the side it stands along leaves a straight edge with
 * both ends on the offset: its middle, off it, is a corner too.
 */
function markedRing(points: readonly Point[], bodies: readonly Area[], offset: number): MarkedPoint[] {
  const onOffset = (distance: number): boolean => distance >= offset - RING_ON_OFFSET;
  const corners = points.map((at) => ({ at, on: onOffset(nearestBody(at, bodies).distance) }));
  const shores = bodies.flatMap((body) => [body.outer, ...body.holes]);
  return corners.flatMap((corner, i) => {
    const next = corners[(i + 1) % corners.length];
    if (!next || !corner.on || !next.on) return [corner];
    const edge = lineEdge(corner.at, next.at);
    const isOn = shores.every((shore) => nearestEdgeToLine(edgeTree(shore), edge, offset - RING_ON_OFFSET) < 0);
    return isOn ? [corner] : [corner, { at: between(corner.at, next.at, 1 / 2), on: false }];
  });
}

function middleOf(path: Path): Point {
  const edge = path.edges[Math.floor(path.edges.length / 2)];
  return edge ? between(edge.from, edge.to, 1 / 2) : [Number.NaN, Number.NaN];
}

function nearestBody(p: Point, bodies: readonly Area[]): { distance: number; body: number } {
  let distance = Number.POSITIVE_INFINITY;
  let nearest = 0;
  bodies.forEach((body, i) => {
    for (const path of [body.outer, ...body.holes]) {
      const { length } = pointToPath(p, path);
      if (length >= distance) continue;
      distance = length;
      nearest = i;
    }
  });
  return { distance, body: nearest };
}
