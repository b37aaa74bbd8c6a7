/**
 * Whether an outline crosses or touches itself, tested on its arcs.
 *
 * Terms. Neighbors: edges that follow each other and so share a vertex. They may share that vertex and nothing else.
 *
 * Stages. 1. Pairs of edges with touching boxes are gone through in order. 2. Edges that are no neighbors may share no
 * point at all. 3. Neighbors fail when an end of one lies on the other away from the shared vertex (a spike, an overlap)
 * or when their carriers meet a second time on both. That second meeting is found by mirroring the shared vertex, not by
 * solving anew, so a tangent join does not show up as a crossing beside the vertex.
 */
import { nearestOnEdge, pointAt, shareOfPosition } from "./edge.ts";
import { edgeBounds } from "./edge-boxes.ts";
import { crossings } from "./edge-crossings.ts";
import { edgeTree, visitEdgesIn } from "./edge-tree.ts";
import { pathFrom } from "./outline.ts";
import { distanceBetween, grownBounds, samePoint } from "./points.ts";
import { ON_CURVE, SAME_POINT } from "./tolerances.ts";
import type { ArcEdge, Edge, LineEdge, Path, PathData, Point } from "./types.ts";

export interface SelfCrossing {
  /** Numbers of the two edges, counted from 0 by their first vertex, edgeA < edgeB. */
  readonly edgeA: number;
  readonly edgeB: number;
  /** A point they share. */
  readonly at: Point;
}

/**
 * The first place where the outline meets itself other than at the vertices its edges share in turn, or null. An open
 * path whose two ends coincide is not taken for a crossing. Edges of no length have to be refused before.
 */
export function findSelfCrossing(data: PathData): SelfCrossing | null {
  return findPathCrossing(pathFrom(data));
}

/** The same for a path already built. */
export function findPathCrossing(path: Path): SelfCrossing | null {
  const { edges } = path;
  const tree = edgeTree(path);
  for (const [edgeA, a] of edges.entries()) {
    let found: SelfCrossing | null = null;
    visitEdgesIn(tree, grownBounds(edgeBounds(a), SAME_POINT), (b, edgeB) => {
      if (edgeB <= edgeA || (found && found.edgeB < edgeB)) return;
      const at = meeting(a, b, sharedVertices(path, edgeA, edgeB));
      if (at) found = { edgeA, edgeB, at };
    });
    if (found) return found;
  }
  return null;
}

/** The vertices that edges number a < b share by their order in the path, and the ends of an open path that coincide. */
function sharedVertices(path: Path, a: number, b: number): Point[] {
  const [edgeA, edgeB] = [path.edges[a] as Edge, path.edges[b] as Edge];
  const shared: Point[] = [];
  if (b === a + 1) shared.push(edgeA.to);
  const lastAndFirst = a === 0 && b === path.edges.length - 1;
  if (lastAndFirst && (path.closed || samePoint(edgeA.from, edgeB.to))) shared.push(edgeA.from);
  return shared;
}

function meeting(a: Edge, b: Edge, shared: readonly Point[]): Point | null {
  const isShared = (p: Point): boolean => shared.some((vertex) => distanceBetween(vertex, p) <= ON_CURVE);
  const vertex = shared[0];
  if (!vertex) return crossings(a, b)[0] ?? null;
  for (const end of [a.from, a.to]) if (!isShared(end) && liesOn(b, end)) return end;
  for (const end of [b.from, b.to]) if (!isShared(end) && liesOn(a, end)) return end;
  const middle = pointAt(a, 0.5);
  if (liesOn(b, middle)) return middle;
  const second = secondMeeting(a, b, vertex);
  return second && !isShared(second) ? second : null;
}

function liesOn(edge: Edge, p: Point): boolean {
  return nearestOnEdge(edge, p).distance === 0;
}

/** Where the carriers of two edges meet besides `vertex`, when that lies on both edges. */
function secondMeeting(a: Edge, b: Edge, vertex: Point): Point | null {
  const p = mirroredVertex(a, b, vertex);
  return p && within(a, p) && within(b, p) ? p : null;
}

function mirroredVertex(a: Edge, b: Edge, vertex: Point): Point | null {
  if (a.kind === "line") return b.kind === "line" ? null : mirroredOverNormal(a, b, vertex);
  return b.kind === "line" ? mirroredOverNormal(b, a, vertex) : mirroredOverCenters(a, b, vertex);
}

/** The other end of the circle's chord that starts at `vertex` along the line. */
function mirroredOverNormal(line: LineEdge, arc: ArcEdge, vertex: Point): Point {
  const length = distanceBetween(line.from, line.to);
  const ux = (line.to[0] - line.from[0]) / length;
  const uy = (line.to[1] - line.from[1]) / length;
  const along = 2 * (ux * (arc.center[0] - vertex[0]) + uy * (arc.center[1] - vertex[1]));
  return [vertex[0] + ux * along, vertex[1] + uy * along];
}

/** The vertex mirrored over the line of centers; null for the same circle twice. */
function mirroredOverCenters(a: ArcEdge, b: ArcEdge, vertex: Point): Point | null {
  const wx = b.center[0] - a.center[0];
  const wy = b.center[1] - a.center[1];
  const apart = Math.hypot(wx, wy);
  if (apart <= ON_CURVE && Math.abs(a.radius - b.radius) <= ON_CURVE) return null;
  const across = ((vertex[1] - a.center[1]) * wx - (vertex[0] - a.center[0]) * wy) / apart;
  return [vertex[0] + (2 * across * wy) / apart, vertex[1] - (2 * across * wx) / apart];
}

/** Whether a point of the carrier lies between the edge's ends. */
function within(edge: Edge, p: Point): boolean {
  if (edge.kind === "arc") return shareOfPosition(edge, p) <= 1;
  const dx = edge.to[0] - edge.from[0];
  const dy = edge.to[1] - edge.from[1];
  const along = (p[0] - edge.from[0]) * dx + (p[1] - edge.from[1]) * dy;
  return along >= 0 && along <= dx * dx + dy * dy;
}
