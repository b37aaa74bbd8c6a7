import type { Point } from "../../geometry/types.ts";
import { changePath, noCorner } from "./change-path.ts";
import type { Edit } from "./edit.ts";
import { type PathRef, vertexAt } from "./path-ref.ts";

/** Moves one corner of a path to `to`, inches; the bulge of the edge that leaves it (or its height) stays. */
export function moveVertex(id: string, ref: PathRef, index: number, to: Point): Edit {
  return changePath("Move a corner of", id, ref, (path, element) => {
    const vertex = path.vertices[index];
    if (!vertex) return noCorner(element, index, path);
    if (vertex[0] === to[0] && vertex[1] === to[1]) return path;
    return { ...path, vertices: path.vertices.with(index, vertexAt(vertex, to)) };
  });
}
