/** Which of two overlapping surfaces lies on top: the later in the file. */
import { gone } from "./checked.ts";
import type { Edit } from "./edit.ts";
import { elementWords } from "./element-words.ts";

/** Lays an element over or under all others. */
export function setOrder(id: string, place: "over" | "under"): Edit {
  return {
    label: place === "over" ? "Lay on top" : "Lay underneath",
    apply(site) {
      const at = site.elements.findIndex((element) => element.id === id);
      const element = site.elements[at];
      if (!element) return gone(id);
      const to = place === "over" ? site.elements.length - 1 : 0;
      if (at === to) return { ok: true, site };
      const others = site.elements.toSpliced(at, 1);
      const elements = place === "over" ? [...others, element] : [element, ...others];
      const words = place === "over" ? "on top" : "underneath";
      return { ok: true, site: { ...site, elements }, label: `Lay ${elementWords(element)} ${words}` };
    },
  };
}
