/** What figures that are typed would make, before it is done: the places of all elements that would be new or elsewhere. */
import { shapeOf } from "../../rules/measures/shapes.ts";
import { isKnown } from "../../rules/measures/yard.ts";
import type { Site } from "../../rules/site/site.ts";
import type { Edit } from "../edits/edit.ts";
import type { Foreseen } from "../view/view-store.ts";

/** More than this would hide the plan beneath. */
const MOST = 300;

/** Nothing where the edit is refused, changes nothing, or touches too much to be shown. */
export function foreseenBy(site: Site, edit: Edit): readonly Foreseen[] {
  const result = edit.apply(site);
  if (!result.ok) return [];
  const before = new Set(site.elements);
  const moved = result.site.elements.filter((element) => !before.has(element)).filter(isKnown);
  if (moved.length > MOST) return [];
  return moved.map((element): Foreseen => {
    const shape = shapeOf(element);
    if (shape.kind === "point") return { at: shape.at };
    return { edges: shape.kind === "path" ? shape.path.edges : shape.area.outer.edges };
  });
}
