import { changePath, noCorner } from "./change-path.ts";
import { type Edit, refused } from "./edit.ts";
import { hasHeights } from "./path-ref.ts";

/** Sets the height of one point of an overhead line, inches above the datum; `undefined` makes it unknown. */
export function setHeight(id: string, index: number, z: number | undefined): Edit {
  return changePath("Set a height of", id, { field: "path" }, (path, element) => {
    const vertex = path.vertices[index];
    if (!vertex) return noCorner(element, index, path);
    if (!hasHeights(element))
      return refused("Only the points of an overhead line have heights of their own.", id, "path");
    if (vertex[2] === z) return path;
    const [x, y] = vertex;
    return { ...path, vertices: path.vertices.with(index, z === undefined ? [x, y] : [x, y, z]) };
  });
}
