/**
 * Boxes round edges: of one, written into a flat array, round many. An arc reaches beyond the box of its ends only where it
 * passes a point straight right, above, left or below of its center.
 */
import { pointAt, shareOfAngle } from "./edge.ts";
import type { ArcEdge, Bounds, Edge, Point } from "./types.ts";

const QUARTER = Math.PI / 2;

/** The smallest box around an edge by itself. */
export function edgeBounds(edge: Edge): Bounds {
  const { from, to } = edge;
  let minX = Math.min(from[0], to[0]);
  let minY = Math.min(from[1], to[1]);
  let maxX = Math.max(from[0], to[0]);
  let maxY = Math.max(from[1], to[1]);
  if (edge.kind === "arc" && passesQuarter(edge)) {
    for (const p of quarterPoints(edge)) {
      minX = Math.min(minX, p[0]);
      minY = Math.min(minY, p[1]);
      maxX = Math.max(maxX, p[0]);
      maxY = Math.max(maxY, p[1]);
    }
  }
  return { minX, minY, maxX, maxY };
}

/** Writes the box around an edge into place `at` of flat boxes: minX, minY, maxX, maxY. */
export function writeEdgeBounds(edge: Edge, boxes: Float64Array, at: number): void {
  const { from, to } = edge;
  const i = at * 4;
  if (edge.kind === "line" || !passesQuarter(edge)) {
    boxes[i] = Math.min(from[0], to[0]);
    boxes[i + 1] = Math.min(from[1], to[1]);
    boxes[i + 2] = Math.max(from[0], to[0]);
    boxes[i + 3] = Math.max(from[1], to[1]);
    return;
  }
  const box = edgeBounds(edge);
  boxes[i] = box.minX;
  boxes[i + 1] = box.minY;
  boxes[i + 2] = box.maxX;
  boxes[i + 3] = box.maxY;
}

/** The smallest box around all of the edges. Of none: an inside-out box, which overlaps nothing. */
export function boundsOfEdges(edges: readonly Edge[]): Bounds {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const edge of edges) {
    const { from, to } = edge;
    minX = Math.min(minX, from[0], to[0]);
    minY = Math.min(minY, from[1], to[1]);
    maxX = Math.max(maxX, from[0], to[0]);
    maxY = Math.max(maxY, from[1], to[1]);
    if (edge.kind === "line" || !passesQuarter(edge)) continue;
    const box = edgeBounds(edge);
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/** Whether the arc may have a point straight right, above, left or below of its center. */
function passesQuarter({ startAngle, sweep }: ArcEdge): boolean {
  return Math.floor(startAngle / QUARTER) !== Math.floor((startAngle + sweep) / QUARTER);
}

/** The points of the arc straight right, above, left and below of its center, those it has. */
function quarterPoints(arc: ArcEdge): Point[] {
  const points: Point[] = [];
  for (let quarter = 0; quarter < 4; quarter++) {
    const share = shareOfAngle(arc, quarter * QUARTER);
    if (share <= 1) points.push(pointAt(arc, share));
  }
  return points;
}
