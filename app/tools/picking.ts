/** What a pointer can pick on the sheet: what is drawn and not locked. */
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { lockedIds, pickableElements } from "../edits/arrangement.ts";
import type { AnyElement } from "../edits/edit.ts";
import { elementsAt, elementsInside, elementsTouching } from "../hit-test/hit-test.ts";
import { drawnOf } from "../view/hidden-parts.ts";
import type { Desk } from "./tool.ts";

/** Ids of the elements under a place that can be picked, best first. */
export function pickedAt(site: Site, desk: Desk, at: Point, slack: number): readonly string[] {
  return drawn(elementsAt(pickableElements(site), at, slack), desk);
}

/** Ids of the elements in a box that can be picked: wholly inside it, or touched by it. */
export function pickedIn(site: Site, desk: Desk, box: Bounds, isTouching: boolean): readonly string[] {
  const elements = pickableElements(site);
  return drawn(isTouching ? elementsTouching(elements, box) : elementsInside(elements, box), desk);
}

/** The locked element that is drawn under a place; null when there is none. */
export function lockedAt(site: Site, at: Point, slack: number): AnyElement | null {
  const locked = lockedIds(site);
  if (locked.size === 0) return null;
  const hidden = new Set(site.arrangement?.hidden);
  const id = elementsAt(site.elements, at, slack).find((one) => locked.has(one) && !hidden.has(one));
  return site.elements.find((element) => element.id === id) ?? null;
}

function drawn(ids: readonly string[], desk: Desk): readonly string[] {
  return drawnOf(ids, desk.report(), desk.view.getState().hiddenParts);
}
