/** Names of copies: those of their originals with a number of their own, so that findings and lists tell them apart. */
import type { Site } from "../../rules/site/site.ts";
import { givenName } from "../../rules/words/element-names.ts";
import type { AnyElement } from "./edit.ts";

/** A number that a name ends with counts within its series: `Light 2`. Longer ones are no count, as of a type. */
const NUMBERED = /^(.*\S) (\d{1,4})$/;

interface Series {
  readonly base: string;
  readonly number: number;
}

function seriesOf(name: string): Series {
  const [, base, digits] = NUMBERED.exec(name) ?? [];
  return base === undefined || digits === undefined ? { base: name, number: 1 } : { base, number: Number(digits) };
}

/**
 * Gives names on a site, one after the other: a name that is free as it is, else the next number of its series (a name
 * without one is the first). Capital and small letters are the same name.
 */
export function namesOn(site: Site): (name: string) => string {
  const taken = new Set<string>();
  const highest = new Map<string, number>();
  const take = (name: string) => {
    const { base, number } = seriesOf(name);
    const key = base.toLowerCase();
    taken.add(name.toLowerCase());
    highest.set(key, Math.max(highest.get(key) ?? 0, number));
  };
  for (const element of site.elements) {
    const name = givenName(element);
    if (name !== null) take(name);
  }
  return (name) => {
    const { base } = seriesOf(name);
    let number = highest.get(base.toLowerCase()) ?? 1;
    let free = name;
    while (taken.has(free.toLowerCase())) free = `${base} ${++number}`;
    take(free);
    return free;
  };
}

/** The copy under a name of its own; one that has none stays without. */
export function namedApart<T extends AnyElement>(copy: T, nameFor: (name: string) => string): T {
  const name = givenName(copy);
  return name === null ? copy : { ...copy, name: nameFor(name) };
}
