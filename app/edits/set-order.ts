/** Which of two overlapping surfaces lies on top: the later in the file. */
import { gone } from "./checked.ts";
import { type Edit, refused } from "./edit.ts";
import { elementsOf, elementsWords } from "./element-words.ts";

/** Lays elements over or under all others; among themselves they keep their order. */
export function setOrder(ids: string | readonly string[], place: "over" | "under"): Edit {
  const chosen = new Set(typeof ids === "string" ? [ids] : ids);
  return {
    label: place === "over" ? "Lay on top" : "Lay underneath",
    apply(site) {
      if (chosen.size === 0) return refused("Nothing is selected to be laid on top or underneath.");
      const laid = elementsOf(site, chosen);
      if (laid.length < chosen.size) {
        return gone([...chosen].find((id) => !laid.some((element) => element.id === id)) as string);
      }
      const others = site.elements.filter(({ id }) => !chosen.has(id));
      const elements = place === "over" ? [...others, ...laid] : [...laid, ...others];
      if (elements.every((element, i) => element === site.elements[i])) return { ok: true, site };
      const words = place === "over" ? "on top" : "underneath";
      return { ok: true, site: { ...site, elements }, label: `Lay ${elementsWords(laid)} ${words}` };
    },
  };
}
