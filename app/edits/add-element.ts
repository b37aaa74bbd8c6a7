import { withAdded } from "./checked.ts";
import type { AnyElement, Edit } from "./edit.ts";
import { elementWords } from "./element-words.ts";
import { refuseOutsidePool } from "./inset-place.ts";

/** Adds an element, whole and with an id of its own (`draft` of templates.ts makes one), on top of the others. */
export function addElement(element: AnyElement): Edit {
  const label = `Draw ${elementWords(element)}`;
  return { label, apply: (site) => refuseOutsidePool(site, element) ?? withAdded(site, [element], label) };
}
