import { edgeFromVertices } from "../../geometry/edge.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";

/** The path as the `d` of an SVG path, inches, with y turned down as a screen has it. */
export function pathD({ vertices, closed }: PathData): string {
  const at = ([x, y]: Vertex | Point): string => `${x} ${-y}`;
  const [first] = vertices;
  if (!first) return "";
  const sides = closed ? vertices.length : vertices.length - 1;
  const steps = Array.from({ length: sides }, (_, i) => {
    const [v, next] = [vertices[i] as Vertex, vertices[(i + 1) % vertices.length] as Vertex];
    const edge = edgeFromVertices(v, next);
    if (edge.kind === "line") return `L${at(next)}`;
    const isLong = Math.abs(edge.sweep) > Math.PI ? 1 : 0;
    return `A${edge.radius} ${edge.radius} 0 ${isLong} ${edge.sweep > 0 ? 0 : 1} ${at(next)}`;
  });
  return `M${at(first)}${steps.join("")}${closed ? "Z" : ""}`;
}
