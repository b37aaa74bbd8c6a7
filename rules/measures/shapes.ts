/** The geometry of an element, whatever its kind. */
import { pathToArea, pointToArea } from "../../geometry/distance.ts";
import { areaFrom, flattenPath, pathFrom } from "../../geometry/outline.ts";
import type { Area, Path, Point, Witness } from "../../geometry/types.ts";
import type { KnownElement, MetalElement } from "../site/elements.ts";

export type Shape =
  | { readonly kind: "point"; readonly at: Point }
  | { readonly kind: "path"; readonly path: Path }
  | { readonly kind: "area"; readonly area: Area };

/** The plan shape of an element. Overhead lines drop their heights. A wall is its center line. */
export function shapeOf(element: KnownElement): Shape {
  switch (element.kind) {
    case "pool":
      return { kind: "area", area: areaFrom(element.outline, element.islands) };
    case "surface":
      return { kind: "area", area: areaFrom(element.outline, element.holes) };
    case "inset":
    case "building":
    case "structure":
    case "keep-out":
      return { kind: "area", area: areaFrom(element.outline) };
    case "wall":
    case "fence":
    case "opening":
    case "conductor":
    case "underground-run":
      return { kind: "path", path: pathFrom(element.path) };
    case "overhead-line":
      return {
        kind: "path",
        path: pathFrom({ closed: false, vertices: element.path.vertices.map(([x, y]) => [x, y] as const) }),
      };
    case "metal":
      return metalShape(element);
    case "equipment":
    case "underwater-light":
    case "device":
    case "water-bond":
    case "tie":
      return { kind: "point", at: element.at };
  }
}

function metalShape(element: MetalElement): Shape {
  const { shape } = element;
  if ("point" in shape) return { kind: "point", at: shape.point as Point };
  if (shape.closed && shape.line !== true) return { kind: "area", area: areaFrom(shape) };
  return { kind: "path", path: pathFrom(shape) };
}

/** Straight distance in plan from the water to the shape, 0 inside the outline; the witness starts at the water. */
export function straightToWater(shape: Shape, water: Area): Witness {
  switch (shape.kind) {
    case "point":
      return pointToArea(shape.at, water);
    case "path":
      return pathToArea(shape.path, water);
    case "area": {
      // The nearest point of an area is on its edge unless the area covers part of the water.
      const toEdge = pathToArea(shape.area.outer, water);
      if (toEdge.length === 0) return toEdge;
      const seed = water.outer.edges[0]?.from;
      if (seed && pointToArea(seed, shape.area).length === 0) return { length: 0, from: seed, to: seed };
      return toEdge;
    }
  }
}

/** Positions along the shape for drawing and for where a branch may meet it. */
export function positionsOf(shape: Shape): Point[] {
  switch (shape.kind) {
    case "point":
      return [shape.at];
    case "path":
      return flattenPath(shape.path);
    case "area":
      return flattenPath(shape.area.outer);
  }
}
