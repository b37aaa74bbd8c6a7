/**
 * Whether an area holds a position: exact on lines and arcs, the boundary counts as inside.
 *
 * Stages. 1. A position within SAME_POINT of the boundary is inside. 2. Otherwise count the edges that a ray to the
 * right meets; odd is inside. Arcs are first cut at their top and bottom, so that each piece climbs or falls and meets
 * the ray at most once; the heights compared are stored numbers, so a ray through a vertex counts it once.
 */
import { gapToCircle, nearestOnEdge, pointAt, shareOfAngle } from "./edge.ts";
import { edgeTree, visitEdgesIn } from "./edge-tree.ts";
import { orientation } from "./orientation.ts";
import { grownBounds } from "./points.ts";
import { SAME_POINT } from "./tolerances.ts";
import type { ArcEdge, Area, Edge, Path, Point } from "./types.ts";

/** True when `p` lies inside the area or on its boundary. Inside a hole is outside. */
export function contains(area: Area, p: Point): boolean {
  const { bounds } = area.outer;
  if (p[0] < bounds.minX - SAME_POINT || p[0] > bounds.maxX + SAME_POINT) return false;
  if (p[1] < bounds.minY - SAME_POINT || p[1] > bounds.maxY + SAME_POINT) return false;
  if (onPath(area.outer, p) || area.holes.some((hole) => onPath(hole, p))) return true;
  return insidePath(area.outer, p) && !area.holes.some((hole) => insidePath(hole, p));
}

function onPath(path: Path, p: Point): boolean {
  let on = false;
  const box = grownBounds({ minX: p[0], minY: p[1], maxX: p[0], maxY: p[1] }, SAME_POINT);
  visitEdgesIn(edgeTree(path), box, (edge) => {
    if (!on && nearestOnEdge(edge, p).distance === 0) on = true;
  });
  return on;
}

/** Whether a position off the boundary lies inside a closed path of either direction. */
export function insidePath(path: Path, p: Point): boolean {
  let inside = false;
  const ray = { minX: p[0], minY: p[1], maxX: Number.POSITIVE_INFINITY, maxY: p[1] };
  visitEdgesIn(edgeTree(path), ray, (edge) => {
    if (raysMet(edge, p) % 2 === 1) inside = !inside;
  });
  return inside;
}

function raysMet(edge: Edge, p: Point): number {
  if (edge.kind === "line") return leftOfChord(edge.from, edge.to, p) ? 1 : 0;
  let met = 0;
  let start = edge.from;
  let startShare = 0;
  for (const turn of turnsOf(edge)) {
    if (pieceMeetsRay(edge, start, startShare, turn.at, turn.share, p)) met++;
    start = turn.at;
    startShare = turn.share;
  }
  if (pieceMeetsRay(edge, start, startShare, edge.to, 1, p)) met++;
  return met;
}

/** True when `p` is level with the segment a -> b (upper end left out) and to its left on the page. */
function leftOfChord(a: Point, b: Point, p: Point): boolean {
  if (a[1] > p[1] === b[1] > p[1]) return false;
  const side = orientation(a, b, p);
  return b[1] > a[1] ? side > 0 : side < 0;
}

interface Turn {
  readonly at: Point;
  readonly share: number;
}

/** The arc's top and bottom where it passes them, in the order of travel. */
function turnsOf(arc: ArcEdge): Turn[] {
  const turns: Turn[] = [];
  for (const angle of [Math.PI / 2, -Math.PI / 2]) {
    const share = shareOfAngle(arc, angle);
    if (share <= 1) turns.push({ at: pointAt(arc, share), share });
  }
  return turns.sort((one, other) => one.share - other.share);
}

/**
 * Whether the ray to the right of `p` meets the piece of an arc from `a` to `b` (at two shares of the sweep), which only
 * climbs or only falls. On the circle's right half the piece lies to the right of its chord, on the left half to its left.
 */
function pieceMeetsRay(arc: ArcEdge, a: Point, shareA: number, b: Point, shareB: number, p: Point): boolean {
  if (a[1] > p[1] === b[1] > p[1]) return false;
  const beforeChord = leftOfChord(a, b, p);
  const onRightHalf = Math.cos(arc.startAngle + (arc.sweep * (shareA + shareB)) / 2) >= 0;
  if (onRightHalf) return beforeChord || gapToCircle(arc, p) < 0;
  return beforeChord && gapToCircle(arc, p) > 0;
}
