/** The box round an element, for whoever needs no more of the drawing than that. */
import { areaFrom } from "../../geometry/outline.ts";
import { boundsOfPoints } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import { isKnown } from "../../rules/measures/reading-notes.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";

/** Null for an element of an unknown kind that does not say where it lies. */
export function elementBounds(element: KnownElement | UnknownElement): Bounds | null {
  if (!isKnown(element)) {
    const at = positionOfUnknown(element);
    return at === null ? null : boundsOfPoints([at]);
  }
  if (element.kind === "pool") return areaFrom(element.outline).outer.bounds;
  const shape = shapeOf(element);
  if (shape.kind === "point") return boundsOfPoints([shape.at]);
  return shape.kind === "path" ? shape.path.bounds : shape.area.outer.bounds;
}

/** Where an element of an unknown kind lies, if it says so in one of the format's own ways. */
export function positionOfUnknown(element: UnknownElement): Point | null {
  const { at, path, outline, shape } = element as Readonly<Record<string, unknown>>;
  for (const place of [at, firstVertex(path), firstVertex(outline), firstVertex(shape)]) {
    if (!Array.isArray(place)) continue;
    const [x, y]: unknown[] = place;
    if (typeof x === "number" && typeof y === "number" && Number.isFinite(x) && Number.isFinite(y)) return [x, y];
  }
  return null;
}

function firstVertex(path: unknown): unknown {
  if (typeof path !== "object" || path === null) return null;
  const { point, vertices } = path as Readonly<Record<string, unknown>>;
  return Array.isArray(vertices) ? vertices[0] : point;
}
