/** Islands of a pool and openings of a surface: outlines inside an outline. */
import type { PathData } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { innerOutlineFields } from "../../rules/site/geometry-fields.ts";
import { reattached } from "../dimensions/anchors.ts";
import { refuseLocked } from "./arrangement.ts";
import { gone, withChecked } from "./checked.ts";
import { type AnyElement, type Edit, refused } from "./edit.ts";
import { elementWords } from "./element-words.ts";

/** Adds an island to a pool or an opening to a surface. */
export function addInnerOutline(id: string, outline: PathData): Edit {
  return {
    label: "Add an outline inside",
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      const locked = refuseLocked(site, [id]);
      if (locked) return locked;
      const field = isKnownKind(element.kind) ? innerOutlineFields(element.kind)[0] : undefined;
      if (!field) return refused(`Nothing can be cut out of ${elementWords(element)}.`, id);
      const list = innerList(element, field);
      const word = field === "islands" ? "an island to" : "an opening to";
      return withChecked(
        site,
        { ...element, [field]: [...list, outline] } as AnyElement,
        `Add ${word} ${elementWords(element)}`,
      );
    },
  };
}

/** Takes an island or opening away; the field goes with its last one. */
export function removeInnerOutline(id: string, field: "islands" | "holes", index: number): Edit {
  return {
    label: "Take an outline away",
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      const locked = refuseLocked(site, [id]);
      if (locked) return locked;
      const list = innerList(element, field);
      if (!list[index]) return refused(`There is no such outline in ${elementWords(element)} any more.`, id, field);
      const { [field]: _, ...others } = element as Readonly<Record<string, unknown>>;
      const rest = list.toSpliced(index, 1);
      const changed = rest.length === 0 ? others : { ...element, [field]: rest };
      const word = field === "islands" ? "an island from" : "an opening from";
      const result = withChecked(site, changed as AnyElement, `Take ${word} ${elementWords(element)}`);
      // The numbers of the outlines after it have changed.
      return result.ok ? { ...result, site: reattached(site, result.site, [id], [id]) } : result;
    },
  };
}

function innerList(element: AnyElement, field: "islands" | "holes"): readonly PathData[] {
  const list = (element as Readonly<Record<string, unknown>>)[field];
  return Array.isArray(list) ? (list as PathData[]) : [];
}
