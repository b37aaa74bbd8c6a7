/**
 * What lies under the pointer.
 *
 * Stages. 1. A packed tree over the boxes of all elements gives those near the place. 2. Exact distances to true arcs
 * keep those within the slack. 3. Order: points before lines before areas; among points and lines the nearest first,
 * among areas the smallest, so that a pool is found on its deck; equals: the later in the file, which lies on top.
 */
import { pointToPath } from "../../geometry/distance.ts";
import { areaOf, contains, flattenPath } from "../../geometry/outline.ts";
import { boundsDistance, boundsOverlap, distanceBetween, grownBounds, segmentMeetsBox } from "../../geometry/points.ts";
import { type BoxIndex, boxIndex } from "../../geometry/spatial-index.ts";
import type { Bounds, Path, Point } from "../../geometry/types.ts";
import type { Shape } from "../../rules/measures/shapes.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";
import { halfWidthOf, keptShape, shapeBounds } from "./kept-shape.ts";

type AnyElement = KnownElement | UnknownElement;

interface Entry {
  readonly id: string;
  readonly shape: Shape;
  readonly bounds: Bounds;
  readonly halfWidth: number;
}

interface HitIndex {
  readonly entries: readonly Entry[];
  readonly boxes: BoxIndex;
}

const indexes = new WeakMap<readonly AnyElement[], HitIndex>();
const areas = new WeakMap<Shape, number>();

/** The index over a site's elements, built once for a list of elements. */
function indexOf(elements: readonly AnyElement[]): HitIndex {
  const known = indexes.get(elements);
  if (known) return known;
  const entries = elements.flatMap((element): Entry[] => {
    const shape = keptShape(element);
    if (shape === null) return [];
    const halfWidth = halfWidthOf(element);
    return [{ id: element.id, shape, bounds: grownBounds(shapeBounds(shape), halfWidth), halfWidth }];
  });
  const index = { entries, boxes: boxIndex(entries.map(({ bounds }) => bounds)) };
  indexes.set(elements, index);
  return index;
}

interface Hit {
  readonly id: string;
  readonly rank: 0 | 1 | 2;
  readonly size: number;
  readonly order: number;
}

/** Ids of the elements under a place, best first. `slack`: inches that count as on it. */
export function elementsAt(elements: readonly AnyElement[], at: Point, slack: number): string[] {
  const { entries, boxes } = indexOf(elements);
  const here = grownBounds({ minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] }, slack);
  const hits: Hit[] = [];
  for (const order of boxes.search(here)) {
    const entry = entries[order];
    const hit = entry && hitOf(entry, order, at, slack);
    if (hit) hits.push(hit);
  }
  hits.sort((a, b) => a.rank - b.rank || a.size - b.size || b.order - a.order);
  return hits.map(({ id }) => id);
}

function hitOf(entry: Entry, order: number, at: Point, slack: number): Hit | null {
  const { id, shape, halfWidth } = entry;
  if (shape.kind === "point") {
    const away = distanceBetween(shape.at, at);
    return away <= slack ? { id, rank: 0, size: away, order } : null;
  }
  if (shape.kind === "path") {
    const away = Math.max(0, pointToPath(at, shape.path).length - halfWidth);
    return away <= slack ? { id, rank: 1, size: away, order } : null;
  }
  const isNear = contains(shape.area, at) || [shape.area.outer, ...shape.area.holes].some(nearTo(at, slack));
  return isNear ? { id, rank: 2, size: keptArea(shape), order } : null;
}

function nearTo(at: Point, slack: number): (path: Path) => boolean {
  const here = { minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] };
  return (path) => boundsDistance(path.bounds, here) <= slack && pointToPath(at, path).length <= slack;
}

function keptArea(shape: Shape & { kind: "area" }): number {
  const known = areas.get(shape);
  if (known !== undefined) return known;
  const size = areaOf(shape.area);
  areas.set(shape, size);
  return size;
}

/** Ids of elements that lie wholly inside a box, in the order of the file. */
export function elementsInside(elements: readonly AnyElement[], box: Bounds): string[] {
  const { entries, boxes } = indexOf(elements);
  return boxes.search(box).flatMap((order) => {
    const entry = entries[order];
    return entry && isWithin(shapeBounds(entry.shape), box) ? [entry.id] : [];
  });
}

/** Ids of elements of which any part lies in a box, in the order of the file. An area that holds the whole box is not meant. */
export function elementsTouching(elements: readonly AnyElement[], box: Bounds): string[] {
  const { entries, boxes } = indexOf(elements);
  return boxes.search(box).flatMap((order) => {
    const entry = entries[order];
    return entry && isTouched(entry.shape, box) ? [entry.id] : [];
  });
}

function isTouched(shape: Shape, box: Bounds): boolean {
  if (shape.kind === "point") return isWithin(shapeBounds(shape), box);
  const paths = shape.kind === "path" ? [shape.path] : [shape.area.outer, ...shape.area.holes];
  return paths.some((path) => {
    if (!boundsOverlap(path.bounds, box)) return false;
    const points = flattenPath(path);
    const last = path.closed ? points.length : points.length - 1;
    for (let i = 0; i < last; i++) {
      const [a, b] = [points[i], points[(i + 1) % points.length]];
      if (a && b && segmentMeetsBox(a, b, box)) return true;
    }
    return false;
  });
}

function isWithin(inner: Bounds, box: Bounds): boolean {
  return inner.minX >= box.minX && inner.minY >= box.minY && inner.maxX <= box.maxX && inner.maxY <= box.maxY;
}
