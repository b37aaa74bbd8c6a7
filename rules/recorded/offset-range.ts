/**
 * How near to the inside walls a recorded conductor comes, and how far off it gets: exact on lines and arcs.
 *
 * Stages of the greatest offset. 1. Vertices, middles and samples give a first greatest distance. 2. The stretches that are
 * farther off than that (cut exactly, length-within.ts) are searched for their own greatest distance. 3. Again until no
 * stretch is farther off than the last by more than LIMIT_TOLERANCE: then that is the greatest.
 *
 * Term. Stretch: a part of one edge of the path between two shares of its length, on one side of every limit.
 */
import { lengthWithin, pathToArea, pointToArea } from "../../geometry/distance.ts";
import { edgeLength, nearestOnEdge, partOfEdge, pointAt } from "../../geometry/edge.ts";
import { pathOfEdges } from "../../geometry/outline.ts";
import { boundsDistance } from "../../geometry/points.ts";
import { LIMIT_TOLERANCE, SAME_POINT } from "../../geometry/tolerances.ts";
import type { Area, Edge, Path, Point, Witness } from "../../geometry/types.ts";

export interface OffsetRange {
  /** Starts at the inside wall; 0 where the path touches the water. */
  readonly min: Witness;
  readonly max: Witness;
}

export interface Stretch {
  readonly edge: number;
  readonly from: number;
  readonly to: number;
  readonly path: Path;
  readonly length: number;
}

/** Least and greatest distance of a path from the nearest of the waters; null without water or edges. */
export function offsetRange(path: Path, waters: readonly Area[]): OffsetRange | null {
  if (waters.length === 0 || path.edges.length === 0) return null;
  const min = nearestOf(waters.map((water) => pathToArea(path, water)));
  let max = nearestWater((path.edges[0] as Edge).from, waters);
  for (const edge of path.edges) {
    for (let i = 0; i <= FIRST_SAMPLES; i++) max = farther(max, nearestWater(pointAt(edge, i / FIRST_SAMPLES), waters));
  }
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const beyond = stretchesBetween(path, waters, max.length + 2 * LIMIT_TOLERANCE, Number.POSITIVE_INFINITY);
    if (beyond.length === 0) break;
    for (const { path: stretch } of beyond)
      for (const edge of stretch.edges) max = farther(max, farthestOn(edge, waters));
  }
  return { min, max };
}

/** Samples of each edge before the exact rounds. */
const FIRST_SAMPLES = 8;
/** Each round rises by more than LIMIT_TOLERANCE and searches what is left; two or three are usual. */
const MOST_ROUNDS = 64;
/** Halvings of a bracket in the search for the farthest point of a stretch. */
const SEARCH_STEPS = 60;
const SEARCH_SAMPLES = 16;

/** The stretches of a path whose distance to the nearest water lies from `min` to `max` inches (within LIMIT_TOLERANCE). */
export function stretchesBetween(path: Path, waters: readonly Area[], min: number, max: number): Stretch[] {
  const found: Stretch[] = [];
  // Water that is farther off than `max` decides nothing.
  const near = waters.filter((water) => boundsDistance(water.outer.bounds, path.bounds) <= max + LIMIT_TOLERANCE);
  if (near.length === 0) return found;
  for (const [index, edge] of path.edges.entries()) {
    const shares = [0, 1];
    const length = edgeLength(edge);
    // A cut at an end of the edge is that end: rounding there must not part this edge from its neighbor.
    const settled = (t: number) => (t * length <= SAME_POINT ? 0 : (1 - t) * length <= SAME_POINT ? 1 : t);
    for (const water of near) for (const limit of [min, max]) shares.push(...cutsAt(edge, water, limit).map(settled));
    shares.sort((a, b) => a - b);
    const kept: [from: number, to: number][] = [];
    for (let i = 0; i + 1 < shares.length; i++) {
      const from = shares[i] as number;
      const to = shares[i + 1] as number;
      if ((to - from) * length <= SAME_POINT) continue;
      const away = nearestWater(pointAt(edge, (from + to) / 2), near).length;
      if (away < min - LIMIT_TOLERANCE || away > max + LIMIT_TOLERANCE) continue;
      const last = kept[kept.length - 1];
      if (last && (from - last[1]) * length <= SAME_POINT) last[1] = to;
      else kept.push([from, to]);
    }
    for (const [from, to] of kept) found.push(stretchOf(edge, index, from, to));
  }
  return found;
}

function stretchOf(edge: Edge, index: number, from: number, to: number): Stretch {
  const part = from === 0 && to === 1 ? edge : partOfEdge(edge, from, to);
  return { edge: index, from, to, path: pathOfEdges([part], false), length: edgeLength(part) };
}

/** Shares of the edge where its distance to the water passes a limit. */
function cutsAt(edge: Edge, water: Area, limit: number): number[] {
  if (!Number.isFinite(limit) || limit < 0) return [];
  return lengthWithin(pathOfEdges([edge], false), water, limit).pieces.flatMap((piece) => {
    const first = piece.edges[0];
    const last = piece.edges[piece.edges.length - 1];
    return [first?.from, last?.to].flatMap((end) => (end ? [nearestOnEdge(edge, end).t] : []));
  });
}

/** The point of an edge farthest from the nearest water: sampled, then the best bracket narrowed by golden section. */
function farthestOn(edge: Edge, waters: readonly Area[]): Witness {
  const at = (t: number) => nearestWater(pointAt(edge, t), waters);
  let best = 0;
  let witness = at(0);
  for (let i = 1; i <= SEARCH_SAMPLES; i++) {
    const here = at(i / SEARCH_SAMPLES);
    if (here.length > witness.length) {
      witness = here;
      best = i;
    }
  }
  let lo = Math.max(0, (best - 1) / SEARCH_SAMPLES);
  let hi = Math.min(1, (best + 1) / SEARCH_SAMPLES);
  for (let i = 0; i < SEARCH_STEPS; i++) {
    const third = (hi - lo) / 3;
    const left = at(lo + third);
    const right = at(hi - third);
    witness = farther(farther(witness, left), right);
    if (left.length < right.length) lo += third;
    else hi -= third;
  }
  return witness;
}

function nearestWater(p: Point, waters: readonly Area[]): Witness {
  const here = { minX: p[0], minY: p[1], maxX: p[0], maxY: p[1] };
  let best: Witness | null = null;
  for (const water of waters) {
    if (best && boundsDistance(water.outer.bounds, here) > best.length) continue;
    const found = pointToArea(p, water);
    if (!best || found.length < best.length) best = found;
  }
  return best ?? { length: Number.POSITIVE_INFINITY, from: p, to: p };
}

function nearestOf(witnesses: readonly Witness[]): Witness {
  return witnesses.reduce((a, b) => (b.length < a.length ? b : a));
}

function farther(a: Witness, b: Witness): Witness {
  return b.length > a.length ? b : a;
}
