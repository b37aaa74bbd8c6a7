/**
 * How much of a path lies within a straight distance of an area: exact, arcs included.
 *
 * Stages. 1. The curve at `limit` from the area's boundary consists of pieces of the boundary's edges moved sideways by
 * `limit` and of circles round its vertices; every edge of the path is cut wherever it meets one of them (at limit 0:
 * the boundary itself). 2. Between two cuts the distance stays on one side of the limit, so the middle of each piece
 * decides. 3. Pieces that follow each other are joined again.
 */
import { arcAround, edgeLength, nearestOnEdge, partOfEdge, pointAt, tangentAt } from "./edge.ts";
import { edgeBounds } from "./edge-boxes.ts";
import { crossings } from "./edge-crossings.ts";
import { edgeTree, visitEdgesIn } from "./edge-tree.ts";
import { pathOfEdges } from "./outline.ts";
import { pointToArea } from "./point-distance.ts";
import { grownBounds, samePoint } from "./points.ts";
import { LIMIT_TOLERANCE, SAME_POINT } from "./tolerances.ts";
import type { Area, Edge, Path, Point } from "./types.ts";

export interface LengthWithin {
  /** Inches of the path within the limit. */
  readonly length: number;
  /** Those stretches, in the order of the path. */
  readonly pieces: readonly Path[];
}

/**
 * The portions of `path` whose straight distance to `area` (0 inside) is at most `limit` inches. A stretch that runs
 * exactly at the limit counts (within LIMIT_TOLERANCE).
 */
export function lengthWithin(path: Path, area: Area, limit: number): LengthWithin {
  const pieces: Edge[][] = [];
  let open: Edge[] | null = null;
  let length = 0;
  for (const edge of path.edges) {
    const cuts = cutsOf(edge, area, limit);
    for (let i = 0; i + 1 < cuts.length; i++) {
      const t0 = cuts[i] as number;
      const t1 = cuts[i + 1] as number;
      const middle = pointAt(edge, (t0 + t1) / 2);
      if (pointToArea(middle, area).length > limit + LIMIT_TOLERANCE) {
        open = null;
        continue;
      }
      length += edgeLength(edge) * (t1 - t0);
      if (!open) {
        open = [];
        pieces.push(open);
      }
      open.push(partOfEdge(edge, t0, t1));
    }
  }
  return {
    length,
    pieces: joinRoundStart(path, pieces, length).map(({ edges, closed }) => pathOfEdges(edges, closed)),
  };
}

/** On a closed path the last piece may run on into the first. */
function joinRoundStart(path: Path, pieces: Edge[][], length: number): { edges: Edge[]; closed: boolean }[] {
  const first = pieces[0];
  const last = pieces[pieces.length - 1];
  const start = path.edges[0]?.from;
  const head = first?.[0]?.from;
  const tail = last?.[last.length - 1]?.to;
  if (path.closed && first && last && start && head && tail && samePoint(head, start) && samePoint(tail, start)) {
    if (first === last) return [{ edges: first, closed: length > 0 }];
    pieces[0] = [...last, ...first];
    pieces.pop();
  }
  return pieces.map((edges) => ({ edges, closed: false }));
}

/** Shares of the edge, 0 and 1 included, between which its distance to the area does not pass the limit. */
function cutsOf(edge: Edge, area: Area, limit: number): number[] {
  const box = grownBounds(edgeBounds(edge), limit + SAME_POINT);
  const cuts = [0, 1];
  for (const path of [area.outer, ...area.holes]) {
    visitEdgesIn(edgeTree(path), box, (side) => {
      for (const curve of curvesAt(side, limit)) {
        for (const p of crossings(edge, curve)) cuts.push(nearestOnEdge(edge, p).t);
      }
    });
  }
  return withoutRepeats(
    cuts.sort((a, b) => a - b),
    edgeLength(edge),
  );
}

function withoutRepeats(cuts: number[], length: number): number[] {
  const kept = [0];
  for (const t of cuts) if ((t - (kept[kept.length - 1] as number)) * length > SAME_POINT) kept.push(t);
  if (kept.length > 1 && (1 - (kept[kept.length - 1] as number)) * length <= SAME_POINT) kept.pop();
  kept.push(1);
  return kept;
}

/** Everything at distance `limit` from an edge that can be nearest to it: both parallels and the circle round its start. */
function curvesAt(side: Edge, limit: number): Edge[] {
  if (limit <= SAME_POINT) return [side];
  const curves: Edge[] = [...circleRound(side.from, limit), ...circleRound(side.to, limit)];
  if (side.kind === "line") {
    const [ux, uy] = tangentAt(side, 0);
    for (const way of [limit, -limit]) {
      const from: Point = [side.from[0] - uy * way, side.from[1] + ux * way];
      const to: Point = [side.to[0] - uy * way, side.to[1] + ux * way];
      curves.push({ kind: "line", from, to });
    }
    return curves;
  }
  for (const radius of [side.radius + limit, side.radius - limit, limit - side.radius]) {
    if (radius <= SAME_POINT) continue;
    const start = radius === limit - side.radius ? side.startAngle + Math.PI : side.startAngle;
    curves.push(arcAround(side.center, radius, start, side.sweep));
  }
  return curves;
}

function circleRound(center: Point, radius: number): Edge[] {
  return [arcAround(center, radius, 0, Math.PI), arcAround(center, radius, Math.PI, Math.PI)];
}
