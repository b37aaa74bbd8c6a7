import { withAdded } from "./checked.ts";
import type { AnyElement, Edit } from "./edit.ts";
import { elementWords } from "./element-words.ts";

/** Adds an element, whole and with an id of its own (`draft` of templates.ts makes one), on top of the others. */
export function addElement(element: AnyElement): Edit {
  const label = `Draw ${elementWords(element)}`;
  return { label, apply: (site) => withAdded(site, [element], label) };
}
