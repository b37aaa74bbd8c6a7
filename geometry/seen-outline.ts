/**
 * The nearest point of an outline that can be seen past barriers.
 *
 * Stages. 1. The nearest point of all, which mostly is seen. 2. Otherwise every point that can be nearest among those
 * seen: nearer than its neighbors on the outline (a foot on an edge, a vertex from which both edges lead away), or where a
 * barrier crosses the outline; nearest first, the first that is seen. Where the seen part of the outline ends at the shadow
 * of a barrier's corner, the best path bends at that corner: corner-routes.ts finds it there.
 */
import type { BarrierMap, Piece } from "./barrier-map.ts";
import { distanceToEdge, lineEdge, nearestOnEdge, tangentAt } from "./edge.ts";
import { crossings } from "./edge-crossings.ts";
import { edgeTree, visitEdgesIn, visitWithin } from "./edge-tree.ts";
import { visitFacing } from "./facing-edges.ts";
import { nearestEdge } from "./nearest-edge.ts";
import { boundsOfPoints, distanceBetween, samePoint } from "./points.ts";
import { type Cone, canSee, type Eye, turned } from "./sight.ts";
import { SIGHT_SLACK } from "./tolerances.ts";
import type { Edge, LineEdge, Path, Point } from "./types.ts";

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
  for (const path of paths) {
    for (const i of map.piecesIn(path.bounds)) {
      const { a, b } = map.pieces[i] as Piece;
      const line = lineEdge(a, b);
      visitEdgesIn(edgeTree(path), boundsOfPoints([a, b]), (edge) => {
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
  let least = Number.POSITIVE_INFINITY;
  for (const path of outline.paths) {
    const edge = nearestOf(path, p, least);
    if (edge) least = Math.min(least, distanceToEdge(edge, p));
  }
  return least;
}

/** The nearest edge of a path; of a path that is one edge, that one, however far it is. */
function nearestOf(path: Path, p: Point, within: number): Edge | undefined {
  const { edges } = path;
  return edges.length === 1 ? edges[0] : edges[nearestEdge(edgeTree(path), p, within)];
}

/** The nearest point of the outline, barriers or not, when it is at most `within` inches away. */
export function nearestOfAll(outline: Outline, p: Point, within: number): SeenPoint | null {
  let best: SeenPoint | null = null;
  for (const path of outline.paths) {
    const edge = nearestOf(path, p, (best?.distance ?? within) + SIGHT_SLACK);
    if (!edge) continue;
    const { point, distance } = nearestOnEdge(edge, p);
    if (best ? distance < best.distance : distance <= within) best = { point, distance };
  }
  return best;
}

/** The nearest point of the outline that the eye sees and that is at most `within` inches away; null when there is none. */
export function nearestSeen(map: BarrierMap, outline: Outline, eye: Eye, within: number): SeenPoint | null {
  const nearest = nearestOfAll(outline, eye.at, within);
  if (!nearest || map.pieces.length === 0) return nearest;
  if (canSee(map, outlineEye(outline, nearest.point), eye)) return nearest;
  return nearestSeenBeside(map, outline, eye, within);
}

/** The same where the nearest point of all is known not to be seen. */
export function nearestSeenBeside(map: BarrierMap, outline: Outline, eye: Eye, within: number): SeenPoint | null {
  const count = findCandidates(outline, eye.at, within);
  for (;;) {
    let next = -1;
    let distance = Number.POSITIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      if ((distances[i] as number) >= distance) continue;
      distance = distances[i] as number;
      next = i;
    }
    if (next < 0) return null;
    distances[next] = Number.POSITIVE_INFINITY;
    const point = candidateAt(next, eye.at);
    if (point && canSee(map, outlineEye(outline, point), eye)) return { point, distance };
  }
}

/**
 * The points that can be nearest among those seen, found anew for each eye: how far each is, and the edge on which it is
 * the foot, or its own position. Most are never asked for, so the foot is not made before it is.
 */
let distances = new Float64Array(64);
const places: (Edge | Point)[] = [];

/** The search under way: one runs to its end before the next begins, and a yard asks for thousands. */
const search = { path: null as Path | null, from: [0, 0] as Point, within: 0, found: 0 };

/** Finds the candidates and returns how many there are. */
function findCandidates(outline: Outline, p: Point, within: number): number {
  search.from = p;
  search.within = within;
  search.found = 0;
  for (const path of outline.paths) {
    search.path = path;
    const only = path.edges.length === 1 ? path.edges[0] : undefined;
    if (only) candidatesOn(only, 0);
    else if (path.closed) visitFacing(edgeTree(path), p, 0, within, candidatesOn);
    else visitWithin(edgeTree(path), p, within, candidatesOn);
  }
  search.path = null;
  for (const point of outline.crossed) addCandidate(point, distanceBetween(point, p));
  return search.found;
}

/** Each vertex once: where an edge starts, and where the last of an open path ends. */
function candidatesOn(edge: Edge, index: number): void {
  const { from } = search;
  const path = search.path as Path;
  if (leadsAway(path, index, from)) addCandidate(edge.from, distanceBetween(edge.from, from));
  if (!path.closed && index === path.edges.length - 1) addCandidate(edge.to, distanceBetween(edge.to, from));
  if (edge.kind === "arc" || facesLine(edge, from)) addCandidate(edge, distanceToEdge(edge, from));
}

function addCandidate(place: Edge | Point, distance: number): void {
  if (distance > search.within) return;
  const at = search.found;
  if (at === distances.length) {
    const longer = new Float64Array(2 * at);
    longer.set(distances);
    distances = longer;
  }
  distances[at] = distance;
  places[at] = place;
  search.found = at + 1;
}

/** Where candidate number `i` is; null for a foot at an end of its edge, which is a candidate of its own or none. */
function candidateAt(i: number, p: Point): Point | null {
  const place = places[i] as Edge | Point;
  if (!("kind" in place)) return place;
  const { point } = nearestOnEdge(place, p);
  return samePoint(point, place.from) || samePoint(point, place.to) ? null : point;
}

/** Whether the foot of `p` on a straight edge falls between its ends. */
function facesLine({ from, to }: LineEdge, p: Point): boolean {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const along = (p[0] - from[0]) * dx + (p[1] - from[1]) * dy;
  return along > 0 && along < dx * dx + dy * dy;
}

/** Whether no edge at the vertex where edge `index` of a path starts leads nearer to `p` at once. */
export function leadsAway(path: Path, index: number, p: Point): boolean {
  const edge = path.edges[index] as Edge;
  const x = p[0] - edge.from[0];
  const y = p[1] - edge.from[1];
  if (leadsNearer(edge, 0, x, y)) return false;
  const before = index > 0 ? path.edges[index - 1] : path.closed ? path.edges[path.edges.length - 1] : undefined;
  return !before || !leadsNearer(before, 1, x, y);
}

/** Whether the edge, walked from its start (0) or back from its end (1), turns toward the direction (x, y) by more than rounding. */
function leadsNearer(edge: Edge, end: 0 | 1, x: number, y: number): boolean {
  const way = end === 0 ? 1 : -1;
  if (edge.kind === "line") {
    const dx = edge.to[0] - edge.from[0];
    const dy = edge.to[1] - edge.from[1];
    return (x * dx + y * dy) * way > SIGHT_SLACK * (Math.abs(dx) + Math.abs(dy));
  }
  const [dx, dy] = tangentAt(edge, end);
  return (x * dx + y * dy) * way > SIGHT_SLACK;
}
