/**
 * Every pair of points, one on each of two outlines, that can be the nearest among the pairs not hidden by a barrier.
 *
 * For two edges these are: an end of one with the nearest of the other, and pairs square to both (the nearest pair of
 * all, and for arcs those on the line through the center). Other pairs can only be shortened by sliding along an edge.
 */
import { edgeBounds, nearestOnEdge } from "./edge.ts";
import { edgeToEdge } from "./edge-distance.ts";
import { boundsDistance, distanceBetween } from "./points.ts";
import type { ArcEdge, Edge, Path, Point } from "./types.ts";

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
  if (one.kind === "arc") for (const p of squarePoints(one, other)) fromFirst(p);
  if (other.kind === "arc") for (const p of squarePoints(other, one)) fromSecond(p);
  return pairs;
}

/** Points of the arc on the line through its center that is square to the other edge. */
function squarePoints(arc: ArcEdge, other: Edge): Point[] {
  const { center } = arc;
  const toward: Point = other.kind === "arc" ? other.center : footOnLine(other.from, other.to, center);
  const away = distanceBetween(center, toward);
  if (away === 0) return [];
  const ux = ((toward[0] - center[0]) / away) * arc.radius;
  const uy = ((toward[1] - center[1]) / away) * arc.radius;
  const points: Point[] = [
    [center[0] + ux, center[1] + uy],
    [center[0] - ux, center[1] - uy],
  ];
  return points.map((p) => nearestOnEdge(arc, p).point);
}

function footOnLine(a: Point, b: Point, p: Point): Point {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const share = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy);
  return [a[0] + dx * share, a[1] + dy * share];
}
