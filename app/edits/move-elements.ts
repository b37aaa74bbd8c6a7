import { gone, refuseElement } from "./checked.ts";
import { type AnyElement, type Edit, refused } from "./edit.ts";
import { calledAs, elementsWords } from "./element-words.ts";
import { moved } from "./moved.ts";

/** Moves elements by (dx, dy), inches. Heights, bulges and everything else of them stay. */
export function moveElements(ids: readonly string[], dx: number, dy: number): Edit {
  return {
    label: "Move",
    apply(site) {
      if (!Number.isFinite(dx) || !Number.isFinite(dy)) return refused("A move needs a distance.");
      if (ids.length === 0) return refused("Nothing is selected to be moved.");
      const wanted = new Set(ids);
      const before: AnyElement[] = [];
      const elements: AnyElement[] = [];
      for (const element of site.elements) {
        if (!wanted.has(element.id)) {
          elements.push(element);
          continue;
        }
        const there = moved(element, dx, dy);
        if (!there) return refused(`${calledAs(element)} is of a kind that this version cannot move.`, element.id);
        const refusal = refuseElement(there);
        if (refusal) return refusal;
        wanted.delete(element.id);
        before.push(element);
        elements.push(there);
      }
      for (const id of wanted) return gone(id);
      if (dx === 0 && dy === 0) return { ok: true, site };
      return { ok: true, site: { ...site, elements }, label: `Move ${elementsWords(before)}` };
    },
  };
}
