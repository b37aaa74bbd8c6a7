/** Takes a corner out: two arcs of one circle become one again, anything else a straight side. */
import { bulgeOf, edgeFromVertices } from "../../geometry/edge.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Edge, Vertex } from "../../geometry/types.ts";
import { changePath, noCorner } from "./change-path.ts";
import { type Edit, refused } from "./edit.ts";
import { hasHeights, type PathRef } from "./path-ref.ts";

export function deleteVertex(id: string, ref: PathRef, index: number): Edit {
  return changePath("Take a corner out of", id, ref, (path, element) => {
    const { vertices, closed } = path;
    const vertex = vertices[index];
    if (!vertex) return noCorner(element, index, path);
    if (vertices.length <= 2) return refused("A line needs at least two corners; delete the whole of it instead.", id);
    const count = vertices.length;
    const before = closed ? (index + count - 1) % count : index - 1;
    const from = vertices[before];
    const to = vertices[closed ? (index + 1) % count : index + 1];
    if (!from || hasHeights(element)) return { ...path, vertices: vertices.toSpliced(index, 1) };
    const joined: Vertex = to ? joinedSide(from, vertex, to) : [from[0], from[1]];
    return { ...path, vertices: vertices.with(before, joined).toSpliced(index, 1) };
  });
}

/** The corner `from` with the bulge of the one side that takes the place of from-through and through-to. */
function joinedSide(from: Vertex, through: Vertex, to: Vertex): Vertex {
  const first = edgeFromVertices(from, through);
  const second = edgeFromVertices(through, to);
  const [x, y] = from;
  if (first.kind !== "arc" || second.kind !== "arc" || !sameCircle(first, second)) return [x, y];
  const sweep = first.sweep + second.sweep;
  if (Math.abs(sweep) >= 2 * Math.PI) return [x, y];
  return [x, y, bulgeOf({ ...first, sweep })];
}

function sameCircle(a: Edge & { kind: "arc" }, b: Edge & { kind: "arc" }): boolean {
  return (
    Math.sign(a.sweep) === Math.sign(b.sweep) &&
    distanceBetween(a.center, b.center) <= SAME_CORNER &&
    Math.abs(a.radius - b.radius) <= SAME_CORNER
  );
}
