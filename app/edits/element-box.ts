/** The box that an element takes on the plan, a wall with its thickness; and what is lined up as one. */
import { pathFrom } from "../../geometry/outline.ts";
import { boundsUnion } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import { wallFootprint } from "../../geometry/wall-footprint.ts";
import { isKnown } from "../../rules/measures/reading-notes.ts";
import type { Site } from "../../rules/site/site.ts";
import { elementBounds } from "../drawing/element-bounds.ts";
import { groupOf } from "./arrangement.ts";
import { type AnyElement, type Refused, refused } from "./edit.ts";
import { calledAs, elementsOf } from "./element-words.ts";

export interface Unit {
  readonly ids: readonly string[];
  readonly box: Bounds;
}

/** Null for an element of an unknown kind that says no place. */
export function boxOf(element: AnyElement): Bounds | null {
  if (isKnown(element) && element.kind === "wall" && (element.thickness ?? 0) > 0) {
    return wallFootprint(pathFrom(element.path), element.thickness ?? 0).outer.bounds;
  }
  return elementBounds(element);
}

/** The box round several elements; null when none of them has a place. */
export function boxRound(elements: readonly AnyElement[]): Bounds | null {
  const boxes = elements.flatMap((element) => boxOf(element) ?? []);
  return boxes.length === 0 ? null : boundsUnion(boxes);
}

export function middleOf({ minX, minY, maxX, maxY }: Bounds): Point {
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** The chosen elements as what is moved as one: each group together, every other by itself. In the order of the file. */
export function unitsOf(site: Site, ids: readonly string[]): Unit[] | Refused {
  const chosen = new Set(ids);
  const done = new Set<string>();
  const units: Unit[] = [];
  for (const element of elementsOf(site, ids)) {
    if (done.has(element.id)) continue;
    const members = groupOf(site, element.id).filter((id) => chosen.has(id));
    for (const id of members) done.add(id);
    const box = boxRound(elementsOf(site, members));
    if (!box) return refused(`${calledAs(element)} is of a kind that this version cannot move.`, element.id);
    units.push({ ids: members, box });
  }
  return units;
}
