/** How results about a site are kept: for one state of it (once-work.ts) or from each state to the next (kept-work.ts). */
import type { Kind, KnownElement, UnknownElement } from "../site/elements.ts";
import type { Site } from "../site/site.ts";
import type { ElementMemos } from "./element-memos.ts";
import { isKnown } from "./reading-notes.ts";
import type { SameInputs } from "./same-inputs.ts";

export interface Work {
  readonly byId: ReadonlyMap<string, KnownElement>;
  readonly byKind: ReadonlyMap<Kind, readonly KnownElement[]>;
  readonly unknown: readonly UnknownElement[];
  readonly memos: ElementMemos;
  readonly same: SameInputs;
  /** What has been made of verdicts, kept as long as they are, under the same head of the site; null: nothing is kept. */
  readonly ofVerdicts: Map<object, unknown> | null;
  /** Takes up a site, or the next state of it. `as`: whatever else the results hang on, as a text. */
  follow(site: Site, as: string): void;
  /** Notes that whatever runs now reads all elements of these kinds. */
  read(bits: number): void;
  readUnknown(): void;
  /** For results that go on reading the yard after they are made: they hang on everything. */
  readEverything(): void;
  /** Notes that whatever runs now reads the element of this id, or that there is none. */
  readOne(id: string, element: KnownElement | undefined): void;
  /** A piece of work by its key. `about`: the elements, other than bodies of water, that the key names. */
  kept<T>(key: string, make: () => T, about?: readonly KnownElement[]): T;
  /** A piece of work about one element, by its name. */
  keptOf<T>(element: KnownElement, name: string, make: () => T): T;
  /**
   * What a rule makes of each element of a kind, in file order. What the rule itself has read so far counts for each; what
   * it has made of other elements must not be used.
   */
  each<K extends KnownElement, T>(
    slot: string,
    kind: Kind,
    elements: readonly K[],
    make: (element: K) => readonly T[],
  ): T[];
}

/** The elements of a site by id and by kind, in file order. */
export interface SortedElements {
  readonly byId: Map<string, KnownElement>;
  readonly byKind: Map<Kind, KnownElement[]>;
  readonly unknown: UnknownElement[];
}

export function sortedElements(elements: Site["elements"]): SortedElements {
  const byId = new Map<string, KnownElement>();
  const byKind = new Map<Kind, KnownElement[]>();
  const unknown: UnknownElement[] = [];
  for (const element of elements) {
    if (!isKnown(element)) {
      unknown.push(element);
      continue;
    }
    byId.set(element.id, element);
    const list = byKind.get(element.kind);
    if (list) list.push(element);
    else byKind.set(element.kind, [element]);
  }
  return { byId, byKind, unknown };
}
