/**
 * The shortest segment between two edges, exact for lines and arcs.
 *
 * It runs between crossing points (length 0), or from an end of one edge to the other edge, or between two inner points
 * where it is square to both: then it lies on the line through a center, square to a line or through the other center.
 * Every candidate is a pair of real points of the edges, so the least of them is the answer.
 */
import { distanceToEdge, nearestOnEdge, pointAt, shareOfAngle } from "./edge.ts";
import { innerCrossings } from "./edge-crossings.ts";
import { distanceBetween } from "./points.ts";
import type { ArcEdge, Edge, LineEdge, Point, Witness } from "./types.ts";

/** `from` on a, `to` on b. */
export function edgeToEdge(a: Edge, b: Edge): Witness {
  return edgeToEdgeWithin(a, b, Number.POSITIVE_INFINITY) as Witness;
}

/** The same, or null where it is told at a glance that it is not shorter than `within` inches. */
export function edgeToEdgeWithin(a: Edge, b: Edge, within: number): Witness | null {
  if (a.kind === "line" && b.kind === "line" && areApart(a, b)) {
    const least = Math.min(
      distanceToEdge(b, a.from),
      distanceToEdge(b, a.to),
      distanceToEdge(a, b.from),
      distanceToEdge(a, b.to),
    );
    return least > within ? null : nearestEnd(a, b);
  }
  let best = nearestEnd(a, b);
  if (best.length === 0) return best;
  const [crossing] = innerCrossings(a, b);
  if (crossing) return { length: 0, from: crossing, to: crossing };
  for (const [from, to] of squarePairs(a, b)) {
    const length = distanceBetween(from, to);
    if (length < best.length) best = { length, from, to };
  }
  return best;
}

/** Whether the boxes round two lines have nothing in common. */
function areApart({ from: [ax, ay], to: [bx, by] }: LineEdge, { from: [cx, cy], to: [dx, dy] }: LineEdge): boolean {
  return (
    Math.max(ax, bx) < Math.min(cx, dx) ||
    Math.max(cx, dx) < Math.min(ax, bx) ||
    Math.max(ay, by) < Math.min(cy, dy) ||
    Math.max(cy, dy) < Math.min(ay, by)
  );
}

/** The shortest segment that starts or ends at an end of one of the edges. */
function nearestEnd(a: Edge, b: Edge): Witness {
  const fromA = distanceToEdge(b, a.from);
  const toA = distanceToEdge(b, a.to);
  const fromB = distanceToEdge(a, b.from);
  const toB = distanceToEdge(a, b.to);
  if (Math.min(fromA, toA) <= Math.min(fromB, toB)) {
    const end = fromA <= toA ? a.from : a.to;
    const near = nearestOnEdge(b, end);
    return { length: near.distance, from: end, to: near.point };
  }
  const end = fromB <= toB ? b.from : b.to;
  const near = nearestOnEdge(a, end);
  return { length: near.distance, from: near.point, to: end };
}

/** Pairs of inner points where a segment is square to both edges (not complete for parallel lines, whose ends serve). */
function squarePairs(a: Edge, b: Edge): [Point, Point][] {
  if (a.kind === "line") return b.kind === "line" ? [] : lineArcPairs(a, b);
  if (b.kind === "line") return lineArcPairs(b, a).map(([onB, onA]) => [onA, onB]);
  const angle = Math.atan2(b.center[1] - a.center[1], b.center[0] - a.center[0]);
  const pairs: [Point, Point][] = [];
  for (const p of pointsFacing(a, angle)) for (const q of pointsFacing(b, angle)) pairs.push([p, q]);
  return pairs;
}

function lineArcPairs(line: LineEdge, arc: ArcEdge): [Point, Point][] {
  const dx = line.to[0] - line.from[0];
  const dy = line.to[1] - line.from[1];
  const squared = dx * dx + dy * dy;
  const t = ((arc.center[0] - line.from[0]) * dx + (arc.center[1] - line.from[1]) * dy) / squared;
  if (!(t > 0 && t < 1)) return [];
  const foot: Point = [line.from[0] + dx * t, line.from[1] + dy * t];
  return pointsFacing(arc, Math.atan2(dx, -dy)).map((p) => [foot, p]);
}

/** The points of an arc seen from its center at `angle` and straight opposite. */
function pointsFacing(arc: ArcEdge, angle: number): Point[] {
  const points: Point[] = [];
  for (const way of [angle, angle + Math.PI]) {
    const share = shareOfAngle(arc, way);
    if (share <= 1) points.push(pointAt(arc, share));
  }
  return points;
}
