/** Where the ends of dimensions lie now: on elements as they are, and what happens to them when an element changes its corners. */
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Point } from "../../geometry/types.ts";
import type { Dimension, DimensionAnchor, Site } from "../../rules/site/site.ts";
import { placeOn, pointOfPlace } from "../edits/cut-path.ts";
import type { AnyElement } from "../edits/edit.ts";
import { hasHeights, type PathRef, pathOf, pathRefs, pointOf } from "../edits/path-ref.ts";

/** The place of an anchor now; null where what it was on is gone. */
export function anchorPlace(anchor: DimensionAnchor, find: (id: string) => AnyElement | undefined): Point | null {
  if (anchor.element === undefined) return anchor.at;
  const element = find(anchor.element);
  if (!element) return null;
  if (anchor.ref === "at" || anchor.corner === undefined) return pointOf(element);
  const path = pathOf(element, refOf(anchor));
  const place = { index: anchor.corner, share: anchor.share ?? 0 };
  return path && pointOfPlace(path, place, hasHeights(element));
}

/** The anchor for a place: on the element whose corner, side or point lies there, the first of those; else free. */
export function anchorAt(at: Point, elements: readonly AnyElement[]): DimensionAnchor {
  let found: { anchor: DimensionAnchor; rank: number } | null = null;
  for (const element of elements) {
    const anchor = anchorOn(at, element, SAME_CORNER);
    if (!anchor) continue;
    // A corner or point before a place on a side.
    const rank = anchor.share === undefined ? 0 : 1;
    if (!found || rank < found.rank) found = { anchor, rank };
  }
  return found?.anchor ?? { at: [at[0], at[1]] };
}

/** The anchor on one element nearest to a place, within `reach` inches; null: none. */
export function anchorOn(at: Point, element: AnyElement, reach: number): DimensionAnchor | null {
  const point = pointOf(element);
  if (point) return distanceBetween(point, at) <= reach ? { element: element.id, ref: "at", at: [at[0], at[1]] } : null;
  let best: DimensionAnchor | null = null;
  let least = reach;
  const flat = hasHeights(element);
  for (const ref of pathRefs(element)) {
    const path = pathOf(element, ref);
    if (!path) continue;
    const start: DimensionAnchor = {
      element: element.id,
      ref: ref.field,
      ...(ref.index === undefined ? {} : { index: ref.index }),
      at: [at[0], at[1]],
    };
    for (const [corner, [x, y]] of path.vertices.entries()) {
      const away = distanceBetween([x, y], at);
      if (away > least || (best !== null && away === least)) continue;
      best = { ...start, corner };
      least = away;
    }
    const { index, share, distance } = placeOn(path, at, flat);
    if (best === null ? distance <= least : distance < least - SAME_CORNER) {
      best = { ...start, corner: index, share };
      least = distance;
    }
  }
  return best;
}

/**
 * The dimensions after elements have changed their corners: an end on one of `ids` (as it was in `before`) goes to the
 * same place of one of `heirs`. Where none passes there it goes with its dimension, or, with `isNear`, to the nearest place.
 */
export function reattached(
  before: Site,
  after: Site,
  ids: readonly string[],
  heirs: readonly string[],
  isNear = false,
): Site {
  const { dimensions } = before;
  const concerned = new Set(ids);
  if (!dimensions?.some(({ from, to }) => isOn(from, concerned) || isOn(to, concerned))) return after;
  const old = finder(before);
  const now = after.elements.filter(({ id }) => heirs.includes(id));
  const move = (anchor: DimensionAnchor): DimensionAnchor | null => {
    if (!isOn(anchor, concerned)) return anchor;
    const at = anchorPlace(anchor, old);
    if (!at) return anchor;
    const reach = isNear ? Number.POSITIVE_INFINITY : SAME_CORNER;
    const found = now.map((element) => anchorOn(at, element, reach)).filter((one) => one !== null);
    const place = finder(after);
    const away = (one: DimensionAnchor) => distanceBetween(anchorPlace(one, place) ?? at, at);
    return found.sort((a, b) => away(a) - away(b))[0] ?? null;
  };
  const left = dimensions.flatMap((dimension): Dimension[] => {
    const [from, to] = [move(dimension.from), move(dimension.to)];
    if (!from || !to) return [];
    return [from === dimension.from && to === dimension.to ? dimension : { ...dimension, from, to }];
  });
  return withDimensions(after, left);
}

/** The site without the dimensions that are attached to elements that are gone. */
export function withoutDimensionsOn(site: Site, deleted: ReadonlySet<string>): Site {
  const { dimensions } = site;
  if (!dimensions) return site;
  const left = dimensions.filter(({ from, to }) => !isOn(from, deleted) && !isOn(to, deleted));
  return left.length === dimensions.length ? site : withDimensions(site, left);
}

/** The site with other dimensions; none leave no empty list behind. */
export function withDimensions(site: Site, dimensions: Dimension[]): Site {
  if (dimensions.length > 0) return { ...site, dimensions };
  const { dimensions: _, ...rest } = site;
  return rest as Site;
}

export function finder({ elements }: Pick<Site, "elements">): (id: string) => AnyElement | undefined {
  const byId = new Map(elements.map((element) => [element.id, element]));
  return (id) => byId.get(id);
}

function isOn({ element }: DimensionAnchor, ids: ReadonlySet<string>): boolean {
  return element !== undefined && ids.has(element);
}

function refOf({ ref, index }: DimensionAnchor): PathRef {
  const field = ref === undefined || ref === "at" ? "outline" : ref;
  return index === undefined ? { field } : { field, index };
}
