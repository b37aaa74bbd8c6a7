/** What lies under the pointer: exact distances to outlines, smallest things first, areas last. */

import { pointToPath } from "../../geometry/distance.ts";
import { areaOf, contains } from "../../geometry/outline.ts";
import { boundsDistance, distanceBetween } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import { type Shape, shapeOf } from "../../rules/measures/shapes.ts";
import { isKnown } from "../../rules/measures/yard.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";

const shapes = new WeakMap<object, Shape>();

/** The plan shape of an element, worked out once for as long as the element is unchanged. */
export function keptShape(element: KnownElement): Shape {
  const known = shapes.get(element);
  if (known) return known;
  const shape = shapeOf(element);
  shapes.set(element, shape);
  return shape;
}

/** Ids under a place, best first: points, then lines and edges within the slack, then areas by size. */
export function elementsAt(elements: readonly (KnownElement | UnknownElement)[], at: Point, slack: number): string[] {
  const found: { id: string; rank: number; size: number; order: number }[] = [];
  elements.forEach((element, order) => {
    if (!isKnown(element)) return;
    const shape = keptShape(element);
    const here = { minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] };
    if (shape.kind === "point") {
      const away = distanceBetween(shape.at, at);
      if (away <= slack) found.push({ id: element.id, rank: 0, size: away, order });
      return;
    }
    const path = shape.kind === "path" ? shape.path : shape.area.outer;
    if (boundsDistance(path.bounds, here) > slack) return;
    const away = pointToPath(at, path).length;
    if (away <= slack) found.push({ id: element.id, rank: 1, size: away, order });
    else if (shape.kind === "area" && contains(shape.area, at))
      found.push({ id: element.id, rank: 2, size: areaOf(shape.area), order });
  });
  found.sort((a, b) => a.rank - b.rank || (a.rank === 2 ? b.order - a.order : a.size - b.size));
  return found.map(({ id }) => id);
}

/** Ids of elements that lie wholly inside a box. */
export function elementsInside(elements: readonly (KnownElement | UnknownElement)[], box: Bounds): string[] {
  return elements.filter(isKnown).flatMap((element) => {
    const shape = keptShape(element);
    const inside =
      shape.kind === "point"
        ? within(box, shape.at[0], shape.at[1], shape.at[0], shape.at[1])
        : boundsWithin(box, shape.kind === "path" ? shape.path.bounds : shape.area.outer.bounds);
    return inside ? [element.id] : [];
  });
}

function boundsWithin(box: Bounds, { minX, minY, maxX, maxY }: Bounds): boolean {
  return within(box, minX, minY, maxX, maxY);
}

function within(box: Bounds, minX: number, minY: number, maxX: number, maxY: number): boolean {
  return minX >= box.minX && minY >= box.minY && maxX <= box.maxX && maxY <= box.maxY;
}
