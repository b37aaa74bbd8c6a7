/** The line or outline that a tool works on: of the one selected element, else of the element under the pointer. */
import type { PathData, Point } from "../../geometry/types.ts";
import { hiddenIds, lockedIds } from "../edits/arrangement.ts";
import { type PathPlace, placeOn, pointOfPlace } from "../edits/cut-path.ts";
import type { AnyElement } from "../edits/edit.ts";
import { calledAs } from "../edits/element-words.ts";
import { hasHeights, pathOf, pathRefs } from "../edits/path-ref.ts";
import { pickedAt } from "./picking.ts";
import type { Desk } from "./tool.ts";

export interface Aimed {
  readonly element: AnyElement;
  /** In plan: the heights of an overhead line are no bends. */
  readonly path: PathData;
}

/** The selected element's own path; null when nothing, several things, a point or something locked is selected. */
export function selectedPath(desk: Desk): Aimed | null {
  const [id, ...others] = desk.view.getState().selection;
  return id === undefined || others.length > 0 ? null : aimedAt(desk, id);
}

/** The path under a place: the nearest line or edge, the selected element's before others. */
export function pathUnder(desk: Desk, at: Point, slack: number): Aimed | null {
  const selected = selectedPath(desk);
  if (selected && placeOn(selected.path, at).distance <= slack) return selected;
  const { shown } = desk.document.getState();
  let best: Aimed | null = null;
  let least = slack;
  for (const id of pickedAt(shown, desk, at, slack)) {
    const aimed = aimedAt(desk, id);
    if (!aimed) continue;
    const { distance } = placeOn(aimed.path, at);
    if (distance > least || (best !== null && distance === least)) continue;
    best = aimed;
    least = distance;
  }
  return best;
}

/** Why nothing is under a place where a line or edge is drawn that is locked; null where none is. */
export function lockedReason(desk: Desk, at: Point, slack: number): string | null {
  const { shown } = desk.document.getState();
  const [locked, hidden] = [lockedIds(shown), hiddenIds(shown)];
  const found = shown.elements.find((element) => {
    if (!locked.has(element.id) || hidden.has(element.id)) return false;
    const path = planPath(element);
    return path ? placeOn(path, at).distance <= slack : false;
  });
  return found ? `${calledAs(found)} is locked: find it in the outline to unlock it.` : null;
}

function aimedAt(desk: Desk, id: string): Aimed | null {
  const { shown } = desk.document.getState();
  const element = shown.elements.find((one) => one.id === id);
  if (!element || lockedIds(shown).has(id)) return null;
  const path = planPath(element);
  return path && { element, path };
}

function planPath(element: AnyElement): PathData | null {
  const [ref] = pathRefs(element);
  const path = ref && pathOf(element, ref);
  if (!path || !hasHeights(element)) return path ?? null;
  return { ...path, vertices: path.vertices.map(([x, y]) => [x, y] as const) };
}

/** The place of a path nearest to a point, with where it lies. */
export function placeUnder({ path }: Aimed, at: Point): PathPlace & { readonly at: Point } {
  const place = placeOn(path, at);
  return { index: place.index, share: place.share, at: pointOfPlace(path, place) ?? at };
}
