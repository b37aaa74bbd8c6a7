/** Puts taped things on the sheet: one step for the whole table. */

import type { KnownElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { withAdded } from "../edits/checked.ts";
import { type Edit, refused } from "../edits/edit.ts";
import { elementWords } from "../edits/element-words.ts";
import { checkedHead } from "../edits/set-site-field.ts";
import { draft } from "../edits/templates.ts";
import type { SolvedTaping } from "./solve-taping.ts";
import { drawableOf, type Taping } from "./taping.ts";

/** `accuracy`: what the site's accuracy becomes, inches; null leaves it. */
export function drawTaped(taping: Taping, solved: SolvedTaping, accuracy: number | null): Edit {
  return {
    label: "Draw what was taped",
    apply(site) {
      let grown: Site = site;
      const added: KnownElement[] = [];
      const add = (element: KnownElement) => {
        added.push(element);
        grown = { ...grown, elements: [...grown.elements, element] };
      };
      for (const [i, thing] of taping.things.entries()) {
        const { rows, path } = solved.things[i] ?? { rows: [], path: null };
        const fields = thing.name.trim() === "" ? {} : { name: thing.name.trim() };
        if (path) add(draft(grown, thing.tool, { path }, fields));
        else if (drawableOf(thing.tool).as === "points") {
          for (const { at } of rows) if (at) add(draft(grown, thing.tool, { point: at }, fields));
        }
      }
      const [first] = added;
      if (!first) return refused("There are not enough points to draw anything yet.");
      const words = added.length === 1 ? elementWords(first) : `${added.length} elements`;
      const drawn = withAdded(site, added, `Draw ${words} as taped`);
      if (!drawn.ok || accuracy === null) return drawn;
      const checked = checkedHead({ ...drawn.site, accuracy }, "accuracy", "Accuracy");
      return checked.ok && drawn.label !== undefined ? { ...checked, label: drawn.label } : checked;
    },
  };
}
