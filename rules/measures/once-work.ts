/** Work on one state of a site that nobody will ask about again: each piece once, without notes of what it reads. */
import type { Kind, KnownElement, UnknownElement } from "../site/elements.ts";
import type { Site } from "../site/site.ts";
import { ElementMemos } from "./element-memos.ts";
import { SameInputs } from "./same-inputs.ts";
import { sortedElements, type Work } from "./work.ts";

export class OnceWork implements Work {
  byId: ReadonlyMap<string, KnownElement> = new Map();
  byKind: ReadonlyMap<Kind, readonly KnownElement[]> = new Map();
  unknown: readonly UnknownElement[] = [];
  readonly memos = new ElementMemos();
  readonly same = new SameInputs();
  readonly ofVerdicts = null;
  readonly #kept = new Map<string, unknown>();

  follow({ elements }: Site): void {
    const { byId, byKind, unknown } = sortedElements(elements);
    this.byId = byId;
    this.byKind = byKind;
    this.unknown = unknown;
  }

  read(): void {}

  readUnknown(): void {}

  readEverything(): void {}

  readOne(): void {}

  kept<T>(key: string, make: () => T): T {
    const known = this.#kept.get(key);
    // What is undefined is made again: that is right, too.
    if (known !== undefined) return known as T;
    const value = make();
    this.#kept.set(key, value);
    return value;
  }

  keptOf<T>(element: KnownElement, name: string, make: () => T): T {
    return this.memos.measured(element, element, name, make);
  }

  each<K extends KnownElement, T>(
    _slot: string,
    _kind: Kind,
    elements: readonly K[],
    make: (element: K) => readonly T[],
  ): T[] {
    const all: T[] = [];
    for (const element of elements) for (const one of make(element)) all.push(one);
    return all;
  }
}
