/** How elements are called in undo labels, refusals and announcements. */

import type { Kind } from "../../rules/site/elements.ts";
import { KIND_LABELS } from "../../rules/site/kind-labels.ts";
import type { Site } from "../../rules/site/site.ts";
import { capitalized, elementName, givenName, sortOf } from "../../rules/words/element-names.ts";
import type { AnyElement } from "./edit.ts";

/** A short name to read: its given name, else what it is with the number of its id: `Fence 2`, `Ladder 1`. */
export function calledAs(element: AnyElement): string {
  return givenName(element) ?? capitalized(elementName(element));
}

/** The element inside a sentence: `fence 2`, `fence, south run`; a name that already says what it is stands alone. */
export function elementWords(element: AnyElement): string {
  const sort = sortOf(element);
  const name = givenName(element);
  if (name === null) return elementName(element);
  const said = name.toLowerCase();
  const saysSort = sort.split(" ").some((word) => word.length > 3 && said.includes(word.toLowerCase()));
  return saysSort ? name : `${sort}, ${name}`;
}

/** Several elements in a few words: one by its name, all of a kind by their number, else `5 elements`. */
export function elementsWords(elements: readonly AnyElement[]): string {
  const [first] = elements;
  if (first === undefined) return "nothing";
  if (elements.length === 1) return elementWords(first);
  const sameKind = elements.every((element) => element.kind === first.kind);
  const label = sameKind ? KIND_LABELS[first.kind as Kind] : undefined;
  return label === undefined ? `${elements.length} elements` : `${elements.length} ${label.plural.toLowerCase()}`;
}

/** The elements with the given ids, in the order of the file. */
export function elementsOf(site: Site, ids: Iterable<string>): AnyElement[] {
  const wanted = new Set(ids);
  return site.elements.filter((element) => wanted.has(element.id));
}

/** The words for ids, for the label of an edit made before it is applied. */
export function wordsFor(site: Site, ids: Iterable<string>): string {
  return elementsWords(elementsOf(site, ids));
}
