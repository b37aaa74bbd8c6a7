/** What has been made of single elements and goes with them: shapes, models, measurements. */
import type { Witness } from "../../geometry/types.ts";
import type { KnownElement } from "../site/elements.ts";
import type { Entry } from "./reading-notes.ts";
import type { Shape } from "./shapes.ts";

/** What is kept with one element. Measurements rest on the element and the named thing alone. */
export interface ElementMemo {
  shape: Shape | undefined;
  /** The body, surface, wall or building made of it. */
  model: unknown;
  /** The straight distance to a body of water, and to further ones. Most sites have one. */
  straightOf: object | undefined;
  straight: Witness | undefined;
  furtherStraight: Straight | undefined;
  /** Other measurements, the last first. */
  measured: Measurement | undefined;
  /** Work that reads more than the element. */
  works: { readonly name: string; entry: Entry }[] | undefined;
}

/** Chains, not lists: most elements have one or none, and a large yard has thousands of elements. */
interface Straight {
  readonly of: object;
  readonly found: Witness;
  readonly next: Straight | undefined;
}

/** A measurement by the thing that it was made with and a name. */
interface Measurement {
  readonly of: object;
  readonly name: string;
  readonly found: unknown;
  readonly next: Measurement | undefined;
}

/** More measurements than this with one element are dropped: what they were made with has gone long since. */
const MANY_MEASUREMENTS = 32;

export class ElementMemos {
  readonly #memos = new Map<KnownElement, ElementMemo>();
  /** Rules ask about one element many times before they go on to the next. */
  #last: KnownElement | null = null;
  #lastMemo: ElementMemo | null = null;

  of(element: KnownElement): ElementMemo {
    if (element === this.#last && this.#lastMemo) return this.#lastMemo;
    let memo = this.#memos.get(element);
    if (!memo) {
      memo = {
        shape: undefined,
        model: undefined,
        straightOf: undefined,
        straight: undefined,
        furtherStraight: undefined,
        measured: undefined,
        works: undefined,
      };
      this.#memos.set(element, memo);
    }
    this.#last = element;
    this.#lastMemo = memo;
    return memo;
  }

  forget(element: KnownElement): void {
    this.#memos.delete(element);
    this.#last = null;
  }

  /** The straight distance from a body of water. */
  straight(element: KnownElement, body: object): Witness | undefined {
    const memo = this.of(element);
    if (memo.straightOf === body) return memo.straight;
    for (let one = memo.furtherStraight; one; one = one.next) if (one.of === body) return one.found;
    return undefined;
  }

  keepStraight(element: KnownElement, body: object, found: Witness): Witness {
    const memo = this.of(element);
    const { straightOf, straight } = memo;
    if (straightOf && straight)
      memo.furtherStraight = { of: straightOf, found: straight, next: fewOf(memo.furtherStraight) };
    memo.straightOf = body;
    memo.straight = found;
    return found;
  }

  /** A measurement that rests on nothing but an element and one other thing. */
  measured<T>(element: KnownElement, of: object, name: string, make: () => T): T {
    for (let one = this.of(element).measured; one; one = one.next)
      if (one.of === of && one.name === name) return one.found as T;
    const found = make();
    const memo = this.of(element);
    memo.measured = { of, name, found, next: fewOf(memo.measured) };
    return found;
  }
}

/** The chain, or nothing where it has grown long. */
function fewOf<T extends { readonly next: T | undefined }>(chain: T | undefined): T | undefined {
  let length = 0;
  for (let one = chain; one; one = one.next) length += 1;
  return length >= MANY_MEASUREMENTS ? undefined : chain;
}
