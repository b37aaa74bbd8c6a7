/**
 * Puts the exact offset back into a ring that was clipped as a polygon.
 *
 * Stages. 1. The polygon's positions are marked: on the offset, or off it (a detour round a barrier). 2. Each run of
 * positions on the offset is found again on the exact curve by how far along it both ends lie, and replaced by that part
 * where the two lengths agree; where they do not, the polygon stays.
 */
import { edgeLength, lineEdge, partOfEdge } from "./edge.ts";
import { distanceAlongPath, pathLength, pathOfEdges, pointAlong } from "./outline.ts";
import { pointToPath } from "./point-distance.ts";
import { distanceBetween, samePoint } from "./points.ts";
import { OFFSET_JOINT, RING_ON_OFFSET } from "./tolerances.ts";
import type { Edge, Path, Point } from "./types.ts";

export interface MarkedPoint {
  readonly at: Point;
  readonly on: boolean;
}

export interface DetouredLoop {
  readonly path: Path;
  /** The parts of the path off the offset, each an open path. */
  readonly detours: readonly Path[];
}

/** A closed ring of marked positions (first not repeated), with its runs on the offset made exact. */
export function detouredLoop(marked: readonly MarkedPoint[], exact: readonly Path[]): DetouredLoop {
  const turn = marked.findIndex(({ on }, i) => on && !marked[(i + marked.length - 1) % marked.length]?.on);
  if (turn < 0) return unbroken(marked, exact);
  const ring = [...marked.slice(turn), ...marked.slice(0, turn)];
  const parts: { edges: Edge[]; on: boolean }[] = [];
  for (let i = 0; i < ring.length; ) {
    const on = (ring[i] as MarkedPoint).on;
    let end = i;
    while (end < ring.length && (ring[end] as MarkedPoint).on === on) end++;
    const run = ring.slice(i, end).map(({ at }) => at);
    if (on) parts.push({ edges: exactRun(run, exact), on });
    else parts.push({ edges: lines(run), on });
    i = end;
  }
  return joined(ring, parts);
}

function unbroken(marked: readonly MarkedPoint[], exact: readonly Path[]): DetouredLoop {
  const points = marked.map(({ at }) => at);
  const first = points[0];
  const edges = first ? lines([...points, first]) : [];
  const polygon = pathOfEdges(edges, true);
  if (!first) return { path: polygon, detours: [] };
  if (!marked[0]?.on) return { path: polygon, detours: [polygon] };
  const curve = nearestPath(first, exact);
  return { path: curve && lengthsAgree(pathLength(curve), pathLength(polygon)) ? curve : polygon, detours: [] };
}

/** Runs and detours in turn, joined by straight lines from each to the next, which belong to the detours. */
function joined(ring: readonly MarkedPoint[], parts: readonly { edges: Edge[]; on: boolean }[]): DetouredLoop {
  const edges: Edge[] = [];
  const detours: Path[] = [];
  let detour: Edge[] = [];
  const endOfDetour = (): void => {
    if (detour.length > 0) detours.push(pathOfEdges(detour, false));
    detour = [];
  };
  const add = (edge: Edge, on: boolean): void => {
    edges.push(edge);
    if (!on) detour.push(edge);
  };
  // Where the loop begins: a first run of one position has no edge of its own.
  const begin = parts[0]?.edges[0]?.from ?? ring[0]?.at;
  const linkTo = (p: Point): void => {
    const last = edges[edges.length - 1];
    const from = last?.to ?? begin;
    if (from && !samePoint(from, p)) add(lineEdge(from, p), false);
    else if (last) edges[edges.length - 1] = { ...last, to: p };
  };
  let at = 0;
  for (const { edges: run, on } of parts) {
    const start = run[0]?.from ?? ring[at]?.at;
    if (start) linkTo(start);
    if (on) endOfDetour();
    for (const edge of run) add(edge, on);
    at += on ? countOf(ring, at, true) : countOf(ring, at, false);
  }
  if (begin) linkTo(begin);
  endOfDetour();
  return { path: pathOfEdges(edges, true), detours };
}

function countOf(ring: readonly MarkedPoint[], from: number, on: boolean): number {
  let n = 0;
  while (from + n < ring.length && ring[from + n]?.on === on) n++;
  return n;
}

function lines(points: readonly Point[]): Edge[] {
  return points.flatMap((to, i) => {
    const from = points[i - 1];
    return from ? [lineEdge(from, to)] : [];
  });
}

function exactRun(run: readonly Point[], exact: readonly Path[]): Edge[] {
  const polygon = lines(run);
  const [first, last] = [run[0], run[run.length - 1]];
  const curve = first && nearestPath(first, exact);
  if (!first || !last || !curve || run.length < 2) return polygon;
  const total = pathLength(curve);
  const from = distanceAlongPath(curve, first);
  const length = (((distanceAlongPath(curve, last) - from) % total) + total) % total;
  const walked = polygon.reduce((sum, edge) => sum + edgeLength(edge), 0);
  return lengthsAgree(length, walked) ? partOfPath(curve, from, length) : polygon;
}

function nearestPath(p: Point, paths: readonly Path[]): Path | null {
  let best: Path | null = null;
  let away = 2 * RING_ON_OFFSET;
  for (const path of paths) {
    const { length } = pointToPath(p, path);
    if (length > away) continue;
    best = path;
    away = length;
  }
  return best;
}

/** Chords are shorter than their arcs by less than one part in 100, and each end may lie off by the polygon's rounding. */
function lengthsAgree(exact: number, chords: number): boolean {
  return Math.abs(exact - chords) <= chords / 100 + 2 * RING_ON_OFFSET;
}

/** The part of a closed path from `from` inches along it, `length` inches long. */
export function partOfPath(path: Path, from: number, length: number): Edge[] {
  const edges: Edge[] = [];
  const count = path.edges.length;
  let start = 0;
  for (let i = 0; i < 2 * count; i++) {
    const edge = path.edges[i % count] as Edge;
    const size = edgeLength(edge);
    const t0 = Math.max(0, (from - start) / size);
    const t1 = Math.min(1, (from + length - start) / size);
    if ((t1 - t0) * size > OFFSET_JOINT) {
      const part = partOfEdge(edge, t0, t1);
      const last = edges[edges.length - 1];
      edges.push(last ? { ...part, from: last.to } : part);
    }
    start += size;
  }
  const last = edges[edges.length - 1];
  if (!last) {
    const [a, b] = [pointAlong(path, from), pointAlong(path, from + length)];
    return distanceBetween(a, b) > 0 ? [lineEdge(a, b)] : [];
  }
  return edges;
}
