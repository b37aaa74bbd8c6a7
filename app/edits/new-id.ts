/** Ids for new elements: the kind and a number, as `fence-3`. */
import type { Kind } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";

/**
 * The next free id of a kind. A number that anything in the site still names (an answer, a connection, a group, a dimension) is not given
 * again, so that nothing said about an element that is gone comes to be said about a new one.
 */
export function newId(site: Site, kind: Kind): string {
  return freeId(mentionedIds(site), kind);
}

/** Ids for several new elements at once, in order. */
export function newIds(site: Site, kinds: readonly string[]): string[] {
  const taken = mentionedIds(site);
  return kinds.map((kind) => {
    const id = freeId(taken, kind);
    taken.add(id);
    return id;
  });
}

function freeId(taken: ReadonlySet<string>, kind: string): string {
  const start = `${kind}-`;
  let highest = 0;
  for (const id of taken) {
    const digits = id.startsWith(start) ? id.slice(start.length) : "";
    if (/^\d{1,9}$/.test(digits)) highest = Math.max(highest, Number(digits));
  }
  return `${start}${highest + 1}`;
}

function mentionedIds(site: Site): Set<string> {
  const ids = new Set<string>();
  for (const element of site.elements) {
    ids.add(element.id);
    const { pool, joins, serves } = element as Readonly<Record<string, unknown>>;
    for (const named of [pool, joins, serves].flat()) if (typeof named === "string") ids.add(named);
  }
  const { locked = [], hidden = [], groups = [] } = site.arrangement ?? {};
  for (const id of [...locked, ...hidden, ...groups.flatMap(({ elements }) => elements)]) ids.add(id);
  const dimensionEnds = (site.dimensions ?? []).flatMap(({ from, to }) => [from, to]);
  for (const { element } of [...(site.answers ?? []), ...dimensionEnds]) {
    if (typeof element === "string") ids.add(element);
  }
  return ids;
}

/** An id for a dimension, unlike those that are there. */
export function newDimensionId({ dimensions = [] }: Pick<Site, "dimensions">): string {
  const numbers = dimensions.map(({ id }) => Number(/^dimension-(\d{1,9})$/.exec(id)?.[1] ?? 0));
  return `dimension-${Math.max(0, ...numbers) + 1}`;
}
