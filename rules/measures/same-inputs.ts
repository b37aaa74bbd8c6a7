/**
 * Results of pure geometry, kept from one state of a site to the next for as long as the very same things go in.
 *
 * Kept work (kept-work.ts) is done again when an element changes that it has read: a deck that is dragged may have changed
 * the level from which a wall's height counts. Mostly it has not. `steady` gives back the list made before where the new
 * one says the same, and `of` leaves out work whose inputs are all the same objects.
 */
export class SameInputs {
  readonly #made = new Map<string, { readonly inputs: readonly unknown[]; readonly value: unknown }>();
  readonly #steady = new Map<string, unknown>();

  /** What `make` gives: it must rest on nothing but the inputs, which must never be changed in place. */
  of<T>(key: string, inputs: readonly unknown[], make: () => T): T {
    const before = this.#made.get(key);
    if (before && sameList(before.inputs, inputs)) return before.value as T;
    const value = make();
    this.#made.set(key, { inputs, value });
    return value;
  }

  /** The value given under this key before, when it says the same as this one. */
  steady<T>(key: string, value: T): T {
    const before = this.#steady.get(key);
    if (before !== undefined && sameContent(before, value)) return before as T;
    this.#steady.set(key, value);
    return value;
  }
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((one, i) => Object.is(one, b[i]));
}

/** Whether two values of numbers, texts, lists, sets and plain records hold the same. */
export function sameContent(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a)) {
    if (!Array.isArray(b) || a.length !== b.length) return false;
    for (let i = 0; i < a.length; i++) if (!sameContent(a[i], b[i])) return false;
    return true;
  }
  if (a instanceof Set) return b instanceof Set && a.size === b.size && [...a].every((one) => b.has(one));
  const names = Object.keys(a);
  if (Array.isArray(b) || b instanceof Set || names.length !== Object.keys(b).length) return false;
  return names.every(
    (name) => name in b && sameContent((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]),
  );
}
