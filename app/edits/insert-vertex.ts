/** A new corner on a side, which keeps the side's shape until the corner is moved. */
import { bulgeOf, edgeFromVertices, nearestOnEdge, splitEdge } from "../../geometry/edge.ts";
import type { Point, Vertex } from "../../geometry/types.ts";
import { changePath, noCorner } from "./change-path.ts";
import { type Edit, refused } from "./edit.ts";
import { hasHeights, type PathRef } from "./path-ref.ts";

/**
 * Puts a corner into the side that leaves corner `index`, at `at`. An arc is split where it is nearest to `at` and its
 * two parts keep their curve; a height is taken between those of the side's ends. The new corner has number `index + 1`.
 */
export function insertVertex(id: string, ref: PathRef, index: number, at: Point): Edit {
  return changePath("Add a corner to", id, ref, (path, element) => {
    const { vertices, closed } = path;
    const from = vertices[index];
    const to = vertices[closed ? (index + 1) % vertices.length : index + 1];
    if (!from) return noCorner(element, index, path);
    if (!to) return refused("No side leaves the last corner of an open line.", id, ref.field);
    const edge = edgeFromVertices(hasHeights(element) ? [from[0], from[1]] : from, to);
    const { t } = nearestOnEdge(edge, at);
    if (hasHeights(element)) {
      const z = from[2] === undefined || to[2] === undefined ? undefined : from[2] + (to[2] - from[2]) * t;
      const vertex: Vertex = z === undefined ? [at[0], at[1]] : [at[0], at[1], z];
      return { ...path, vertices: vertices.toSpliced(index + 1, 0, vertex) };
    }
    if (edge.kind === "line" || t <= 0 || t >= 1) {
      return { ...path, vertices: vertices.toSpliced(index, 1, [from[0], from[1]], [at[0], at[1]]) };
    }
    const [before, after] = splitEdge(edge, t);
    const first: Vertex = [from[0], from[1], bulgeOf(before)];
    const second: Vertex = [at[0], at[1], bulgeOf(after)];
    return { ...path, vertices: vertices.toSpliced(index, 1, first, second) };
  });
}
