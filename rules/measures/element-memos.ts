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
  /** Straight distances to bodies of water. */
  straight: { readonly of: object; readonly found: Witness }[] | undefined;
  /** Other measurements: by the thing they were made with and a name. */
  measured: { readonly of: object; readonly name: string; readonly found: unknown }[] | undefined;
  /** Work that reads more than the element. */
  works: { readonly name: string; entry: Entry }[] | undefined;
}

/** More measurements than this with one element are cleared: what they were made with has gone long since. */
const MANY_MEASUREMENTS = 32;

export class ElementMemos {
  readonly #memos = new Map<KnownElement, ElementMemo>();

  of(element: KnownElement): ElementMemo {
    const known = this.#memos.get(element);
    if (known) return known;
    const memo: ElementMemo = {
      shape: undefined,
      model: undefined,
      straight: undefined,
      measured: undefined,
      works: undefined,
    };
    this.#memos.set(element, memo);
    return memo;
  }

  forget(element: KnownElement): void {
    this.#memos.delete(element);
  }

  /** The straight distance from a body of water. */
  straight(element: KnownElement, body: object, make: () => Witness): Witness {
    const memo = this.of(element);
    if (memo.straight) for (const one of memo.straight) if (one.of === body) return one.found;
    const found = make();
    if (!memo.straight || memo.straight.length >= MANY_MEASUREMENTS) memo.straight = [{ of: body, found }];
    else memo.straight.push({ of: body, found });
    return found;
  }

  /** A measurement that rests on nothing but an element and one other thing. */
  measured<T>(element: KnownElement, of: object, name: string, make: () => T): T {
    const memo = this.of(element);
    if (memo.measured) for (const one of memo.measured) if (one.of === of && one.name === name) return one.found as T;
    const found = make();
    if (!memo.measured || memo.measured.length >= MANY_MEASUREMENTS) memo.measured = [{ of, name, found }];
    else memo.measured.push({ of, name, found });
    return found;
  }
}
