/**
 * The nearest point of an outline that can be seen past barriers.
 *
 * Stages. 1. The nearest point of all, which mostly is seen. 2. Otherwise every point that can be nearest among those
 * seen: the nearest of each edge, each vertex, and where a barrier crosses the outline; nearest first, the first that is
 * seen. Where the seen part of the outline ends at the shadow of a barrier's corner, the best path bends at that corner:
 * corner-routes.ts finds it there.
 */
import type { BarrierMap } from "./barrier-map.ts";
import { lineEdge, nearestOnEdge, tangentAt } from "./edge.ts";
import { crossings } from "./edge-crossings.ts";
import { edgeTree, visitEdgesIn, visitNearest, visitWithin } from "./edge-tree.ts";
import { boundsOfPoints, distanceBetween, samePoint } from "./points.ts";
import { type Cone, canSee, type Eye, turned } from "./sight.ts";
import { SIGHT_SLACK } from "./tolerances.ts";
import type { Edge, Path, Point } from "./types.ts";

/** Paths to be reached (the loops of a pool, or one object), with the points where barriers cross them. */
export interface Outline {
  readonly paths: readonly Path[];
  readonly crossed: readonly Point[];
  /** True for the loops of a pool, which have the water on their left. */
  readonly holdsWater: boolean;
}

export interface SeenPoint {
  readonly point: Point;
  readonly distance: number;
}

export function outlineAmong(map: BarrierMap, paths: readonly Path[], holdsWater: boolean): Outline {
  const crossed: Point[] = [];
  for (const piece of map.pieces) {
    const line = lineEdge(piece.a, piece.b);
    const box = boundsOfPoints([piece.a, piece.b]);
    for (const path of paths) {
      visitEdgesIn(edgeTree(path), box, (edge) => {
        for (const p of crossings(line, edge)) if (!crossed.some((other) => samePoint(other, p))) crossed.push(p);
      });
    }
  }
  return { paths, crossed, holdsWater };
}

/** A position of the outline as the start of a path. */
export function outlineEye(outline: Outline, at: Point): Eye {
  return outline.holdsWater ? { at, water: () => waterAt(outline, at) } : { at };
}

/** The directions in which the water lies at a position of a pool's edge: to the left of an edge, between the two of a corner. */
function waterAt(outline: Outline, at: Point): Cone[] {
  const box = {
    minX: at[0] - SIGHT_SLACK,
    minY: at[1] - SIGHT_SLACK,
    maxX: at[0] + SIGHT_SLACK,
    maxY: at[1] + SIGHT_SLACK,
  };
  const cones: Cone[] = [];
  for (const path of outline.paths) {
    visitEdgesIn(edgeTree(path), box, (edge, index) => {
      const { t, distance } = nearestOnEdge(edge, at);
      if (distance > SIGHT_SLACK || distanceBetween(edge.from, at) <= SIGHT_SLACK) return;
      const [dx, dy] = tangentAt(edge, t);
      if (distanceBetween(edge.to, at) > SIGHT_SLACK) {
        cones.push({ start: Math.atan2(dy, dx), span: Math.PI });
        return;
      }
      const next = path.edges[(index + 1) % path.edges.length] as Edge;
      const [ox, oy] = tangentAt(next, 0);
      cones.push({ start: Math.atan2(oy, ox), span: turned(Math.atan2(-dy, -dx) - Math.atan2(oy, ox)) });
    });
  }
  return cones;
}

/** The straight distance to the outline, barriers or not: no path is shorter. */
export function straightDistance(outline: Outline, p: Point): number {
  return nearestOfAll(outline, p, Number.POSITIVE_INFINITY)?.distance ?? Number.POSITIVE_INFINITY;
}

/** The nearest point of the outline, barriers or not, when it is at most `within` inches away. */
export function nearestOfAll(outline: Outline, p: Point, within: number): SeenPoint | null {
  let best: SeenPoint | null = null;
  let distance = within;
  for (const path of outline.paths) {
    visitNearest(edgeTree(path), p, distance, (edge) => {
      const near = nearestOnEdge(edge, p);
      if (near.distance < distance || (best === null && near.distance <= distance)) {
        distance = near.distance;
        best = { point: near.point, distance };
      }
      return distance;
    });
  }
  return best;
}

/** The nearest point of the outline that the eye sees and that is at most `within` inches away; null when there is none. */
export function nearestSeen(map: BarrierMap, outline: Outline, eye: Eye, within: number): SeenPoint | null {
  const nearest = nearestOfAll(outline, eye.at, within);
  if (!nearest || map.pieces.length === 0) return nearest;
  if (canSee(map, outlineEye(outline, nearest.point), eye)) return nearest;
  const candidates = candidatesWithin(outline, eye.at, within);
  candidates.sort((one, other) => one.distance - other.distance);
  return candidates.find((candidate) => canSee(map, outlineEye(outline, candidate.point), eye)) ?? null;
}

function candidatesWithin(outline: Outline, p: Point, within: number): SeenPoint[] {
  const candidates: SeenPoint[] = [];
  const add = (point: Point, distance: number): void => {
    if (distance <= within) candidates.push({ point, distance });
  };
  for (const path of outline.paths) {
    const last = path.closed ? -1 : path.edges.length - 1;
    visitWithin(edgeTree(path), p, within, (edge, index) => {
      const near = nearestOnEdge(edge, p);
      if (!samePoint(near.point, edge.from) && !samePoint(near.point, edge.to)) add(near.point, near.distance);
      // Each vertex once: where an edge starts, and where the last of an open path ends.
      add(edge.from, distanceBetween(edge.from, p));
      if (index === last) add(edge.to, distanceBetween(edge.to, p));
    });
  }
  for (const point of outline.crossed) add(point, distanceBetween(point, p));
  return candidates;
}
