/** What every edit of one path shares: finding it, changing it, checking the element that comes of it. */
import type { PathData } from "../../geometry/types.ts";
import { reattached } from "../dimensions/anchors.ts";
import { refuseLocked } from "./arrangement.ts";
import { gone, withChecked } from "./checked.ts";
import { type AnyElement, type Edit, type Refused, refused } from "./edit.ts";
import { elementWords } from "./element-words.ts";
import { refuseLeavingPool } from "./inset-place.ts";
import { type PathRef, pathOf, withPath } from "./path-ref.ts";

/**
 * An edit of the path at `ref` of element `id`. `change` gives the new path (the same object: nothing changes), or a
 * refusal. `verb` opens the undo label: "Move a corner of".
 */
export function changePath(
  verb: string,
  id: string,
  ref: PathRef,
  change: (path: PathData, element: AnyElement) => PathData | Refused,
): Edit {
  return {
    label: verb.replace(/ of$/, ""),
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      const path = pathOf(element, ref);
      if (!path) return refused(`This ${elementWords(element)} has no such outline.`, id, ref.field);
      const refusal = refuseLocked(site, [id]);
      if (refusal) return refusal;
      const changed = change(path, element);
      if ("ok" in changed) return changed;
      if (changed === path) return { ok: true, site };
      const next = withPath(element, ref, changed);
      const outside = refuseLeavingPool(site, element, site, next);
      if (outside) return outside;
      const result = withChecked(site, next, `${verb} ${elementWords(element)}`);
      const more = changed.vertices.length - path.vertices.length;
      if (!result.ok || more === 0) return result;
      // Dimensions stay with the places that they are on; with a corner taken out they go.
      return { ...result, site: reattached(site, result.site, [id], [id], more > 0) };
    },
  };
}

/** The refusal for a corner that a path does not have. */
export function noCorner(element: AnyElement, index: number, path: PathData): Refused {
  const count = path.vertices.length;
  return refused(`There is no corner ${index + 1}: the line has ${count} of them.`, element.id);
}
