/**
 * An area with holes as one ring, for what knows solids only by their outline: each hole is joined to the rest by a bridge
 * of no width, along which the ring runs to the hole, round it and back. Nothing lies between the two sides of a bridge.
 *
 * Stages. 1. Outline and holes as chords. 2. Again and again the hole that is nearest to the ring so far is taken in where
 * the two are nearest to each other: such a bridge crosses neither of them, nor a hole that is farther off.
 */
import { pathToPath } from "./distance.ts";
import { lineEdge, nearestOnEdge } from "./edge.ts";
import { flattenPath, pathFrom } from "./outline.ts";
import { samePoint } from "./points.ts";
import type { Area, Path, Point, Witness } from "./types.ts";

/** The ring (first position not repeated), counter-clockwise round the area and clockwise round its holes. */
export function keyholeRing({ outer, holes }: Area, tolerance: number): Point[] {
  let ring = flattenPath(outer, tolerance);
  let waiting = holes.map((hole) => flattenPath(hole, tolerance));
  while (waiting.length > 0) {
    const path = chordPath(ring);
    const bridges = waiting.map((hole) => ({ hole, bridge: pathToPath(path, chordPath(hole)) }));
    const nearest = bridges.reduce((best, one) => (one.bridge.length < best.bridge.length ? one : best));
    ring = joined(ring, nearest.hole, nearest.bridge);
    waiting = waiting.filter((hole) => hole !== nearest.hole);
  }
  return ring;
}

function joined(ring: readonly Point[], hole: readonly Point[], { from, to }: Witness): Point[] {
  const round = startingFrom(ring, from);
  const inner = startingFrom(hole, to);
  return [...round, from, ...inner, to].filter((p, i, all) => !samePoint(p, all[(i + 1) % all.length] as Point));
}

/** The ring walked from a position on it. */
function startingFrom(ring: readonly Point[], p: Point): Point[] {
  let best = Number.POSITIVE_INFINITY;
  let before = 0;
  for (const [i, a] of ring.entries()) {
    const { distance } = nearestOnEdge(lineEdge(a, ring[(i + 1) % ring.length] as Point), p);
    if (distance >= best) continue;
    best = distance;
    before = i;
  }
  return [p, ...ring.slice(before + 1), ...ring.slice(0, before + 1)];
}

function chordPath(ring: readonly Point[]): Path {
  return pathFrom({ vertices: ring.map(([x, y]) => [x, y]), closed: true });
}
