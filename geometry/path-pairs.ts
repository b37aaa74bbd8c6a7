/**
 * Every pair of points, one on each of two outlines, that can be the nearest among the pairs not hidden by a barrier.
 *
 * For two edges these are: their nearest pair of all, and an end of one with the nearest of the other. Every other pair
 * can be shortened by sliding along an edge, until it reaches one of these or the shadow of a barrier's corner.
 */
import { edgeBounds, nearestOnEdge } from "./edge.ts";
import { edgeToEdge } from "./edge-distance.ts";
import { edgeTree, visitEdgesIn } from "./edge-tree.ts";
import { boundsDistance, grownBounds } from "./points.ts";
import type { Edge, Path, Point } from "./types.ts";

export interface PointPair {
  readonly distance: number;
  readonly onFirst: Point;
  readonly onSecond: Point;
}

/** The pairs between the closed paths of `first` and the path `second` that are at most `within` inches apart, in no order. */
export function pairCandidates(first: readonly Path[], second: Path, within: number): PointPair[] {
  const pairs: PointPair[] = [];
  const lastOfSecond = second.closed ? -1 : second.edges.length - 1;
  for (const [i, other] of second.edges.entries()) {
    const bounds = edgeBounds(other);
    const ends = i === lastOfSecond ? [other.from, other.to] : [other.from];
    for (const path of first) {
      visitEdgesIn(edgeTree(path), grownBounds(bounds, within), (one) => {
        if (boundsDistance(edgeBounds(one), bounds) > within) return;
        for (const pair of pairsOfEdges(one, other, ends)) if (pair.distance <= within) pairs.push(pair);
      });
    }
  }
  return pairs;
}

/** `ends`: those of `other` to be looked at. Each vertex is looked at once, with the edge that it starts. */
function pairsOfEdges(one: Edge, other: Edge, ends: readonly Point[]): PointPair[] {
  const nearest = edgeToEdge(one, other);
  const near = nearestOnEdge(other, one.from);
  const pairs: PointPair[] = [
    { distance: nearest.length, onFirst: nearest.from, onSecond: nearest.to },
    { distance: near.distance, onFirst: one.from, onSecond: near.point },
  ];
  for (const end of ends) {
    const { distance, point } = nearestOnEdge(one, end);
    pairs.push({ distance, onFirst: point, onSecond: end });
  }
  return pairs;
}
