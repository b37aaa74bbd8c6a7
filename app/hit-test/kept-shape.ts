/** Shapes of elements, worked out once for as long as an element is unchanged. */
import { boundsOfPoints } from "../../geometry/points.ts";
import type { Bounds } from "../../geometry/types.ts";
import { isKnown } from "../../rules/measures/reading-notes.ts";
import { type Shape, shapeOf } from "../../rules/measures/shapes.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";
import { elementBounds } from "../drawing/element-bounds.ts";

const shapes = new WeakMap<object, Shape | null>();

/** The plan shape of an element; one of an unknown kind is a point where it says that it lies, or null. */
export function keptShape(element: KnownElement | UnknownElement): Shape | null {
  const known = shapes.get(element);
  if (known !== undefined) return known;
  const shape = isKnown(element) ? shapeOf(element) : shapeOfUnknown(element);
  shapes.set(element, shape);
  return shape;
}

function shapeOfUnknown(element: UnknownElement): Shape | null {
  const box = elementBounds(element);
  return box === null ? null : { kind: "point", at: [box.minX, box.minY] };
}

/** Half the width that an element takes beside its line, inches: a wall's half thickness. */
export function halfWidthOf(element: KnownElement | UnknownElement): number {
  return isKnown(element) && element.kind === "wall" ? (element.thickness ?? 0) / 2 : 0;
}

export function shapeBounds(shape: Shape): Bounds {
  if (shape.kind === "point") return boundsOfPoints([shape.at]);
  return shape.kind === "path" ? shape.path.bounds : shape.area.outer.bounds;
}
