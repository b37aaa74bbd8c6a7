/**
 * Every pair of points, one on each of two outlines, that can be the nearest among the pairs not hidden by a barrier.
 *
 * For two edges these are: their nearest pair of all, and an end of one with the nearest of the other. Every other pair
 * can be shortened by sliding along an edge, until it reaches one of these or the shadow of a barrier's corner.
 */
import { edgeBounds, nearestOnEdge } from "./edge.ts";
import { edgeToEdge } from "./edge-distance.ts";
import { boundsDistance } from "./points.ts";
import type { Edge, Path, Point } from "./types.ts";

export interface PointPair {
  readonly distance: number;
  readonly onFirst: Point;
  readonly onSecond: Point;
}

/** The pairs between the paths of `first` and the path `second` that are at most `within` inches apart, in no order. */
export function pairCandidates(first: readonly Path[], second: Path, within: number): PointPair[] {
  const pairs: PointPair[] = [];
  const seconds = second.edges.map((edge) => ({ edge, bounds: edgeBounds(edge) }));
  for (const path of first) {
    for (const one of path.edges) {
      const bounds = edgeBounds(one);
      for (const other of seconds) {
        if (boundsDistance(bounds, other.bounds) > within) continue;
        for (const pair of pairsOfEdges(one, other.edge)) if (pair.distance <= within) pairs.push(pair);
      }
    }
  }
  return pairs;
}

function pairsOfEdges(one: Edge, other: Edge): PointPair[] {
  const nearest = edgeToEdge(one, other);
  const pairs: PointPair[] = [{ distance: nearest.length, onFirst: nearest.from, onSecond: nearest.to }];
  const fromFirst = (p: Point): void => {
    const near = nearestOnEdge(other, p);
    pairs.push({ distance: near.distance, onFirst: p, onSecond: near.point });
  };
  const fromSecond = (p: Point): void => {
    const near = nearestOnEdge(one, p);
    pairs.push({ distance: near.distance, onFirst: near.point, onSecond: p });
  };
  fromFirst(one.from);
  fromFirst(one.to);
  fromSecond(other.from);
  fromSecond(other.to);
  return pairs;
}
