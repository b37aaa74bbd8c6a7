/**
 * Every pair of points, one on each of two outlines, that can be the nearest among the pairs not hidden by a barrier.
 *
 * For two edges these are: their nearest pair of all, and an end of one with the nearest of the other. Every other pair
 * can be shortened by sliding along an edge, until it reaches one of these or the shadow of a barrier's corner. So can a
 * pair that ends at a vertex from which an edge leads nearer: it is left out.
 */
import { nearestOnEdge } from "./edge.ts";
import { edgeBounds } from "./edge-boxes.ts";
import { edgeToEdge } from "./edge-distance.ts";
import { edgeToBoxSquared, edgeTree } from "./edge-tree.ts";
import { visitFacing } from "./facing-edges.ts";
import { samePoint } from "./points.ts";
import { leadsAway } from "./seen-outline.ts";
import { SIGHT_SLACK } from "./tolerances.ts";
import type { Edge, LineEdge, Path, Point } from "./types.ts";

export interface PointPair {
  readonly distance: number;
  readonly onFirst: Point;
  readonly onSecond: Point;
}

/** The pairs between the closed paths of `first` and the path `second` that are at most `within` inches apart, in no order. */
export function pairCandidates(first: readonly Path[], second: Path, within: number): PointPair[] {
  const pairs: PointPair[] = [];
  const lastOfSecond = second.closed ? -1 : second.edges.length - 1;
  for (let i = 0; i < second.edges.length; i++) {
    const other = second.edges[i] as Edge;
    const bounds = edgeBounds(other);
    const middle: Point = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
    const spread = Math.hypot(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY) / 2;
    for (const path of first) {
      const tree = edgeTree(path);
      visitFacing(tree, middle, spread, within, (one, index) => {
        if (!canFace(path, index, other) || edgeToBoxSquared(tree, index, bounds) > within * within) return;
        const add = (distance: number, onFirst: Point, onSecond: Point): void => {
          if (distance > within) return;
          if (samePoint(onFirst, one.from) && !leadsAway(path, index, onSecond)) return;
          if (samePoint(onSecond, other.from) && !leadsAway(second, i, onFirst)) return;
          pairs.push({ distance, onFirst, onSecond });
        };
        const nearest = edgeToEdge(one, other);
        add(nearest.length, nearest.from, nearest.to);
        const near = nearestOnEdge(other, one.from);
        add(near.distance, one.from, near.point);
        // Each vertex of the second is looked at once, with the edge that it starts.
        const toStart = nearestOnEdge(one, other.from);
        add(toStart.distance, toStart.point, other.from);
        if (i !== lastOfSecond) return;
        const toEnd = nearestOnEdge(one, other.to);
        add(toEnd.distance, toEnd.point, other.to);
      });
    }
  }
  return pairs;
}

/**
 * False when no point of an edge of a closed path, its end left out, is nearer to any point of `other` than its neighbors
 * on the path are: told for straight edges only.
 */
function canFace(path: Path, index: number, other: Edge): boolean {
  const edge = path.edges[index] as Edge;
  const before = path.edges[(index > 0 ? index : path.edges.length) - 1] as Edge;
  if (edge.kind !== "line" || before.kind !== "line" || other.kind !== "line") return true;
  const [x, y] = edge.from;
  const along = (line: LineEdge, p: Point): number =>
    (p[0] - x) * (line.to[0] - line.from[0]) + (p[1] - y) * (line.to[1] - line.from[1]);
  const [first, last] = [along(edge, other.from), along(edge, other.to)];
  const squared = along(edge, edge.to);
  const slack = SIGHT_SLACK * (1 + squared);
  if (Math.min(first, last) > squared + slack) return false;
  if (Math.max(first, last) >= -slack) return true;
  return Math.max(along(before, other.from), along(before, other.to)) >= -slack;
}
