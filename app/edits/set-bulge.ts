import { changePath, noCorner } from "./change-path.ts";
import { type Edit, refused } from "./edit.ts";
import { hasHeights, type PathRef } from "./path-ref.ts";

/**
 * Bends the edge that leaves corner `index`: tangent of a quarter of its arc's included angle, positive
 * counter-clockwise, 0 straight.
 */
export function setBulge(id: string, ref: PathRef, index: number, bulge: number): Edit {
  const verb = bulge === 0 ? "Straighten a side of" : "Bend a side of";
  return changePath(verb, id, ref, (path, element) => {
    const vertex = path.vertices[index];
    if (!vertex) return noCorner(element, index, path);
    if (hasHeights(element)) return refused("An overhead line runs straight between its points.", id, ref.field);
    if (!path.closed && index === path.vertices.length - 1) {
      return refused("No side leaves the last corner of an open line.", id, ref.field);
    }
    if ((vertex[2] ?? 0) === bulge) return path;
    const [x, y] = vertex;
    return { ...path, vertices: path.vertices.with(index, bulge === 0 ? [x, y] : [x, y, bulge]) };
  });
}
