/**
 * How elements are handled on the sheet: locked, hidden, grouped. It lies beside the elements in the file, so that no
 * finding and no answer depends on it.
 */
import type { Arrangement, Site } from "../../rules/site/site.ts";
import { gone } from "./checked.ts";
import { type AnyElement, type Edit, type Refused, refused } from "./edit.ts";
import { calledAs, elementsOf, elementsWords } from "./element-words.ts";

type Group = NonNullable<Arrangement["groups"]>[number];

const NONE: ReadonlySet<string> = new Set();
const sets = new WeakMap<readonly string[], ReadonlySet<string>>();

function setOf(ids: readonly string[] | undefined): ReadonlySet<string> {
  if (ids === undefined) return NONE;
  const known = sets.get(ids) ?? new Set(ids);
  sets.set(ids, known);
  return known;
}

/** Ids that are locked; some may be of elements that are gone. The same set for as long as nothing is locked anew. */
export function lockedIds(site: Site): ReadonlySet<string> {
  return setOf(site.arrangement?.locked);
}

/** Ids that are not drawn. */
export function hiddenIds(site: Site): ReadonlySet<string> {
  return setOf(site.arrangement?.hidden);
}

const pickable = new WeakMap<readonly AnyElement[], { arrangement: Arrangement; left: readonly AnyElement[] }>();

/** The elements that a pointer can pick: those that are neither locked nor hidden. The same list while nothing changes. */
export function pickableElements(site: Site): readonly AnyElement[] {
  const { arrangement, elements } = site;
  if (!arrangement?.locked?.length && !arrangement?.hidden?.length) return elements;
  const known = pickable.get(elements);
  if (known?.arrangement === arrangement) return known.left;
  const [locked, hidden] = [lockedIds(site), hiddenIds(site)];
  const left = elements.filter(({ id }) => !locked.has(id) && !hidden.has(id));
  pickable.set(elements, { arrangement, left });
  return left;
}

/** The site as it is drawn: without what is hidden, save one element that is being shown. The very site when nothing is. */
export function drawnSite(site: Site, shown: string | null = null): Site {
  const hidden = hiddenIds(site);
  if (hidden.size === 0) return site;
  return { ...site, elements: site.elements.filter(({ id }) => !hidden.has(id) || id === shown) };
}

/** The ids of the elements in one group with this one, in the order of the file; itself alone when it is in none. */
export function groupOf(site: Site, id: string): readonly string[] {
  const group = site.arrangement?.groups?.find(({ elements }) => elements.includes(id));
  if (!group) return [id];
  const members = setOf(group.elements);
  return site.elements.filter((element) => members.has(element.id)).map((element) => element.id);
}

/** The ids with every other element of their groups, each once. */
export function withGroups(site: Site, ids: readonly string[]): readonly string[] {
  if (!site.arrangement?.groups?.length) return ids;
  return [...new Set(ids.flatMap((id) => groupOf(site, id)))];
}

/** Why elements may not be changed in place or taken away: one of them is locked. Null: they may. */
export function refuseLocked(site: Site, ids: Iterable<string>): Refused | null {
  const locked = lockedIds(site);
  if (locked.size === 0) return null;
  for (const id of ids) {
    const element = locked.has(id) ? site.elements.find((one) => one.id === id) : undefined;
    if (element) return refused(`${calledAs(element)} is locked. Unlock it first.`, id);
  }
  return null;
}

/** Locks elements, or lets them be picked and moved again. */
export function setLocked(ids: readonly string[], on: boolean): Edit {
  return listEdit("locked", on ? "Lock" : "Unlock", ids, on);
}

/** Takes elements off the sheet or shows them again. They are judged all the same. */
export function setHidden(ids: readonly string[], on: boolean): Edit {
  return listEdit("hidden", on ? "Hide" : "Show", ids, on);
}

/** Makes one group of elements; groups that they were in lose them. */
export function groupElements(ids: readonly string[]): Edit {
  return {
    label: "Group",
    apply(site) {
      const members = elementsOf(site, ids);
      const missing = missingId(site, ids);
      if (missing !== null) return gone(missing);
      if (members.length < 2) return refused("A group needs at least two elements.");
      const chosen = new Set(ids);
      if (groupOf(site, members[0]?.id ?? "").length === chosen.size && isOneGroup(site, chosen)) {
        return { ok: true, site };
      }
      const others = leaving(site.arrangement?.groups, chosen);
      const groups = [...others, { elements: members.map(({ id }) => id) }];
      return {
        ok: true,
        site: withArrangement(site, { ...site.arrangement, groups }),
        label: `Group ${elementsWords(members)}`,
      };
    },
  };
}

/** Takes apart every group that holds one of the elements. */
export function ungroupElements(ids: readonly string[]): Edit {
  return {
    label: "Take the group apart",
    apply(site) {
      const chosen = new Set(ids);
      const groups = site.arrangement?.groups ?? [];
      const left = groups.filter(({ elements }) => !elements.some((id) => chosen.has(id)));
      if (left.length === groups.length) return refused("Nothing of this is in a group.");
      return { ok: true, site: withArrangement(site, { ...site.arrangement, groups: left }) };
    },
  };
}

/** True when the ids are just the members of one group. */
export function isOneGroup(site: Site, ids: ReadonlySet<string>): boolean {
  const [first] = ids;
  if (first === undefined || ids.size < 2) return false;
  const members = groupOf(site, first);
  return members.length === ids.size && members.every((id) => ids.has(id));
}

/** The site after elements are gone: nothing is locked, hidden or grouped by their names any more. */
export function withoutArranged(site: Site, deleted: ReadonlySet<string>): Site {
  const { arrangement } = site;
  if (!arrangement) return site;
  const mentioned = [...(arrangement.locked ?? []), ...(arrangement.hidden ?? [])];
  for (const { elements } of arrangement.groups ?? []) mentioned.push(...elements);
  if (!mentioned.some((id) => deleted.has(id))) return site;
  return withArrangement(site, {
    ...arrangement,
    locked: arrangement.locked?.filter((id) => !deleted.has(id)),
    hidden: arrangement.hidden?.filter((id) => !deleted.has(id)),
    groups: leaving(arrangement.groups, deleted),
  });
}

/** The site with groups of copies beside those of their originals, where all of a group was copied. */
export function withCopiedGroups(site: Site, groups: readonly Group[], renamed: ReadonlyMap<string, string>): Site {
  const copies = groups
    .filter(({ elements }) => elements.length > 1 && elements.every((id) => renamed.has(id)))
    .map((group) => ({ ...group, elements: group.elements.map((id) => renamed.get(id) as string) }));
  if (copies.length === 0) return site;
  return withArrangement(site, { ...site.arrangement, groups: [...(site.arrangement?.groups ?? []), ...copies] });
}

/** The groups of which every member is among the ids; members that are gone do not count. */
export function wholeGroups(site: Site, ids: ReadonlySet<string>): Group[] {
  const there = new Set(site.elements.map(({ id }) => id));
  return (site.arrangement?.groups ?? [])
    .map((group) => ({ ...group, elements: group.elements.filter((id) => there.has(id)) }))
    .filter(({ elements }) => elements.length > 1 && elements.every((id) => ids.has(id)));
}

function listEdit(list: "locked" | "hidden", verb: string, ids: readonly string[], on: boolean): Edit {
  return {
    label: verb,
    apply(site) {
      if (ids.length === 0) return refused(`Nothing is selected to ${verb.toLowerCase()}.`);
      const missing = missingId(site, ids);
      if (missing !== null) return gone(missing);
      const before = setOf(site.arrangement?.[list]);
      const changed = [...new Set(ids)].filter((id) => before.has(id) !== on);
      if (changed.length === 0) return { ok: true, site };
      const gonePart = new Set(changed);
      const after = on ? [...before, ...changed] : [...before].filter((id) => !gonePart.has(id));
      return {
        ok: true,
        site: withArrangement(site, { ...site.arrangement, [list]: after }),
        label: `${verb} ${elementsWords(elementsOf(site, changed))}`,
      };
    },
  };
}

function leaving(groups: readonly Group[] | undefined, ids: ReadonlySet<string>): Group[] {
  return (groups ?? [])
    .map((group) => {
      const elements = group.elements.filter((id) => !ids.has(id));
      return elements.length === group.elements.length ? group : { ...group, elements };
    })
    .filter(({ elements }) => elements.length > 1);
}

/** The site with another arrangement; lists that are empty are left out, and so is an arrangement without any. */
function withArrangement(site: Site, arrangement: { readonly [field: string]: unknown }): Site {
  const kept = Object.fromEntries(
    Object.entries(arrangement).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  );
  if (Object.keys(kept).length > 0) return { ...site, arrangement: kept as Arrangement };
  const { arrangement: _, ...rest } = site;
  return rest as Site;
}

function missingId(site: Site, ids: readonly string[]): string | null {
  const there = new Set(site.elements.map(({ id }) => id));
  return ids.find((id) => !there.has(id)) ?? null;
}
