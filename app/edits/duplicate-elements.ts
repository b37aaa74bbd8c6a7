/** Copies of elements, a step aside. */
import { gone, withAdded } from "./checked.ts";
import { type AnyElement, type Edit, refused } from "./edit.ts";
import { calledAs, elementsOf, elementsWords } from "./element-words.ts";
import { moved } from "./moved.ts";
import { newIds } from "./new-id.ts";

/** How far aside a copy lies, inches: seen at once, and easily typed back. */
export const DUPLICATE_STEP = 24;

/**
 * Copies elements, (dx, dy) inches aside. Copies that name each other (a light its pool, a tie what it joins) name the
 * copies; the ids of the copies are the last ones of the site, in the order of the originals.
 */
export function duplicateElements(ids: readonly string[], dx = DUPLICATE_STEP, dy = -DUPLICATE_STEP): Edit {
  return {
    label: "Duplicate",
    apply(site) {
      if (ids.length === 0) return refused("Nothing is selected to be copied.");
      const originals = elementsOf(site, ids);
      const missing = ids.find((id) => !originals.some((element) => element.id === id));
      if (missing !== undefined) return gone(missing);
      const fresh = newIds(
        site,
        originals.map((element) => element.kind),
      );
      const renamed = new Map(originals.map((element, i) => [element.id, fresh[i] as string]));
      const copies: AnyElement[] = [];
      for (const original of originals) {
        const copy = moved(original, dx, dy);
        if (!copy) return refused(`${calledAs(original)} is of a kind that this version cannot copy.`, original.id);
        copies.push(withNewNames(copy, renamed));
      }
      return withAdded(site, copies, `Duplicate ${elementsWords(originals)}`);
    },
  };
}

function withNewNames(element: AnyElement, renamed: ReadonlyMap<string, string>): AnyElement {
  const fields: Record<string, unknown> = { ...element };
  const rename = (id: unknown): unknown => (typeof id === "string" ? (renamed.get(id) ?? id) : id);
  fields.id = rename(fields.id);
  if (fields.pool !== undefined) fields.pool = rename(fields.pool);
  for (const field of ["joins", "serves"]) {
    const value = fields[field];
    if (value !== undefined) fields[field] = Array.isArray(value) ? value.map(rename) : rename(value);
  }
  return fields as unknown as AnyElement;
}
