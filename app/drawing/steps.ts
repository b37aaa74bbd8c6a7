/** Outlines of the geometry as steps of a drawing. */
import type { Area, Edge, Path, Point, Region } from "../../geometry/types.ts";
import type { Step } from "./scene.ts";

function edgeStep(edge: Edge): Step {
  if (edge.kind === "line") return { step: "line", to: edge.to };
  const { to, center, radius, startAngle, sweep } = edge;
  return { step: "arc", to, center, radius, startAngle, sweep };
}

/** The path with its true arcs. */
export function pathSteps(path: Path): Step[] {
  const [first] = path.edges;
  if (!first) return [];
  const steps: Step[] = [{ step: "move", to: first.from }, ...path.edges.map(edgeStep)];
  return path.closed ? [...steps, { step: "close" }] : steps;
}

export function areaSteps(area: Area): Step[] {
  return [area.outer, ...area.holes].flatMap(pathSteps);
}

/** A polyline; nothing for less than two points. */
export function lineSteps(points: readonly Point[], closed = false): Step[] {
  const [first, ...rest] = points;
  if (!first || rest.length === 0) return [];
  const steps: Step[] = [{ step: "move", to: first }, ...rest.map((to): Step => ({ step: "line", to }))];
  return closed ? [...steps, { step: "close" }] : steps;
}

/** Closed rings of a flattened region; the repeated first point becomes the closing. */
export function regionSteps(region: Region): Step[] {
  return region.flatMap((polygon) => polygon.flatMap((ring) => lineSteps(ring.slice(0, -1), true)));
}
