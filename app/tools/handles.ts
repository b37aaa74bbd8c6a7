/** What can be taken hold of on a selected element: its corners, and the middles of its sides. */
import { edgeFromVertices, edgeLength, nearestOnEdge, pointAt } from "../../geometry/edge.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { Edge, PathData, Point } from "../../geometry/types.ts";
import type { AnyElement } from "../edits/edit.ts";
import { hasHeights, type PathRef, pathOf, pathRefs } from "../edits/path-ref.ts";

export interface Handle {
  readonly id: string;
  readonly ref: PathRef;
  /** Of the corner, or of the corner that the side leaves. */
  readonly index: number;
  readonly kind: "corner" | "middle";
  readonly at: Point;
}

/** A side has a handle in its middle when it is at least this many pixels long. */
const LEAST_SIDE_PIXELS = 36;

/** The handles of an element; middles only of sides that leave room for them. `pixel`: inches to a screen pixel. */
export function handlesOf(element: AnyElement, pixel: number): Handle[] {
  return pathRefs(element).flatMap((ref) => {
    const path = pathOf(element, ref);
    return path ? pathHandles(element, ref, path, pixel) : [];
  });
}

function pathHandles(element: AnyElement, ref: PathRef, path: PathData, pixel: number): Handle[] {
  const { id } = element;
  const corners = path.vertices.map(
    (vertex, index): Handle => ({ id, ref, index, kind: "corner", at: [vertex[0], vertex[1]] }),
  );
  if (hasHeights(element)) return corners;
  const middles = path.vertices.flatMap((_, index): Handle[] => {
    const edge = sideOf(element, path, index);
    if (!edge || edgeLength(edge) < LEAST_SIDE_PIXELS * pixel) return [];
    return [{ id, ref, index, kind: "middle", at: pointAt(edge, 0.5) }];
  });
  return [...middles, ...corners];
}

/** The side that leaves a corner; null after the last of an open line. */
export function sideOf(element: AnyElement, path: PathData, index: number): Edge | null {
  const { vertices, closed } = path;
  const from = vertices[index];
  const to = vertices[closed ? (index + 1) % vertices.length : index + 1];
  return from && to ? edgeFromVertices(hasHeights(element) ? [from[0], from[1]] : from, to) : null;
}

/** The handle at a place: the nearest within the slack, corners before middles. */
export function handleAt(handles: readonly Handle[], at: Point, slack: number): Handle | null {
  for (const kind of ["corner", "middle"] as const) {
    let best: Handle | null = null;
    let least = slack;
    for (const handle of handles) {
      const away = handle.kind === kind ? distanceBetween(handle.at, at) : Number.POSITIVE_INFINITY;
      if (away > least) continue;
      best = handle;
      least = away;
    }
    if (best) return best;
  }
  return null;
}

/** The side of an element that lies at a place, with the nearest position on it; null when none is within the slack. */
export function sideAt(
  element: AnyElement,
  at: Point,
  slack: number,
): { readonly ref: PathRef; readonly index: number; readonly at: Point } | null {
  let best: { ref: PathRef; index: number; at: Point } | null = null;
  let least = slack;
  for (const ref of pathRefs(element)) {
    const path = pathOf(element, ref);
    for (let index = 0; path && index < path.vertices.length; index++) {
      const edge = sideOf(element, path, index);
      if (!edge) continue;
      const { point, distance } = nearestOnEdge(edge, at);
      if (distance > least) continue;
      best = { ref, index, at: point };
      least = distance;
    }
  }
  return best;
}

/** The corners next to one, for being in line with them. */
export function neighborsOf(path: PathData, index: number): { readonly with: Point; readonly name: string }[] {
  const { vertices, closed } = path;
  const count = vertices.length;
  const before = vertices[closed ? (index + count - 1) % count : index - 1];
  const after = vertices[closed ? (index + 1) % count : index + 1];
  return [
    ...(before ? [{ with: [before[0], before[1]] as Point, name: "the corner before" }] : []),
    ...(after ? [{ with: [after[0], after[1]] as Point, name: "the corner after" }] : []),
  ];
}
