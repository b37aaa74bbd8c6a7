/** Paths cut at places on them, as plain data. A place is a share of a side: its number and 0 up to 1. */
import { bulgeOf, edgeFromVertices, nearestOnEdge, pointAt, splitEdge } from "../../geometry/edge.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Edge, PathData, Point, Vertex } from "../../geometry/types.ts";

export interface PathPlace {
  /** Of the corner that the side leaves. */
  readonly index: number;
  /** Share of the side's length. */
  readonly share: number;
}

/** The place of a path nearest to a point. `flat`: third numbers are heights, not bends. */
export function placeOn(path: PathData, at: Point, flat = false): PathPlace & { readonly distance: number } {
  let best = { index: 0, share: 0, distance: Number.POSITIVE_INFINITY };
  for (const [index, edge] of sidesOf(path, flat).entries()) {
    const { t, distance } = nearestOnEdge(edge, at);
    if (distance < best.distance) best = { index, share: t, distance };
  }
  return best;
}

export function sidesOf({ vertices, closed }: PathData, flat = false): Edge[] {
  const count = closed ? vertices.length : vertices.length - 1;
  return vertices.slice(0, count).map((from, i) => {
    const to = vertices[(i + 1) % vertices.length] as Vertex;
    return edgeFromVertices(flat ? [from[0], from[1]] : from, to);
  });
}

export function pointOfPlace(path: PathData, { index, share }: PathPlace, flat = false): Point | null {
  const edge = sidesOf(path, flat)[index];
  if (edge) return pointAt(edge, share);
  const vertex = path.vertices[index];
  return vertex ? [vertex[0], vertex[1]] : null;
}

/** The path with a corner at the place, and that corner's number: an existing one where the place is at one. */
export function withCornerAt(
  path: PathData,
  place: PathPlace,
  flat = false,
): { readonly path: PathData; readonly index: number } {
  const { vertices, closed } = path;
  const count = vertices.length;
  const edge = sidesOf(path, flat)[place.index];
  const from = vertices[place.index];
  const to = vertices[(place.index + 1) % count];
  if (!edge || !from || !to) return { path, index: place.index };
  const length = edgeSize(edge);
  if (place.share * length <= SAME_CORNER) return { path, index: place.index };
  if ((1 - place.share) * length <= SAME_CORNER) {
    return { path, index: closed ? (place.index + 1) % count : place.index + 1 };
  }
  const [before, after] = splitEdge(edge, place.share);
  const [x, y] = before.to;
  const first: Vertex = flat ? from : vertexOf([from[0], from[1]], bulgeOf(before));
  const second: Vertex = flat ? heightBetween([x, y], from, to, place.share) : vertexOf([x, y], bulgeOf(after));
  return { path: { ...path, vertices: vertices.toSpliced(place.index, 1, first, second) }, index: place.index + 1 };
}

/** The corners from one to another along a path, as an open path; a closed one goes on past its first corner. */
export function stretch({ vertices, closed }: PathData, from: number, to: number, flat = false): PathData {
  const count = vertices.length;
  const last = closed && to <= from ? to + count : to;
  const found: Vertex[] = [];
  for (let i = from; i <= last; i++) found.push(vertices[i % count] as Vertex);
  const end = found.at(-1);
  if (end && !flat) found[found.length - 1] = [end[0], end[1]];
  return { vertices: found, closed: false };
}

/** The same path walked the other way. */
export function reversed({ vertices, closed }: PathData, flat = false): PathData {
  const count = vertices.length;
  const turned = vertices.map((_, i): Vertex => {
    const vertex = vertices[count - 1 - i] as Vertex;
    if (flat) return vertex;
    // The side that leaves it now is the one that came to it before.
    const before = vertices[(2 * count - 2 - i) % count];
    const isEnd = !closed && i === count - 1;
    return vertexOf([vertex[0], vertex[1]], isEnd ? 0 : -(before?.[2] ?? 0));
  });
  return { vertices: turned, closed };
}

export function vertexOf([x, y]: Point, bulge: number): Vertex {
  return bulge === 0 ? [x, y] : [x, y, bulge];
}

function heightBetween([x, y]: Point, from: Vertex, to: Vertex, share: number): Vertex {
  if (from[2] === undefined || to[2] === undefined) return [x, y];
  return [x, y, from[2] + (to[2] - from[2]) * share];
}

function edgeSize(edge: Edge): number {
  if (edge.kind === "arc") return edge.radius * Math.abs(edge.sweep);
  return Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]);
}
