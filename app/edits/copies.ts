/**
 * Copies of elements, as they stand by themselves: with ids and names of their own, naming each other where the originals
 * did, in groups where the originals were.
 */
import type { Arrangement, Dimension, Site } from "../../rules/site/site.ts";
import { withCopiedGroups } from "./arrangement.ts";
import { withAdded } from "./checked.ts";
import { namedApart, namesOn } from "./copy-names.ts";
import { withCopiedDimensions } from "./dimension-copies.ts";
import type { AnyElement, EditResult } from "./edit.ts";
import { inItsPool } from "./inset-place.ts";
import type { Motion } from "./moved.ts";
import { newIds } from "./new-id.ts";
import { takenTo } from "./place-elements.ts";

type Groups = NonNullable<Arrangement["groups"]>;

/** What copies mention beside each other: kept as it is, or let go of where the site has nothing of that name to mean. */
export type Mentions = (id: string) => boolean;

export interface CopyOptions {
  /** Which elements that were not copied may go on being named. */
  readonly keeps?: Mentions;
  /** Dimensions on the originals, to be copied along. */
  readonly dimensions?: readonly Dimension[];
}

/**
 * The site with copies at its end, each set of them where a motion takes it. The ids are the last ones of the site, set
 * by set in the order of the originals.
 */
export function withCopies(
  site: Site,
  originals: readonly AnyElement[],
  motions: readonly Motion[],
  label: string,
  groups: Groups,
  { keeps = () => true, dimensions = [] }: CopyOptions = {},
): EditResult {
  const kinds = originals.map(({ kind }) => kind);
  const fresh = newIds(
    site,
    motions.flatMap(() => kinds),
  );
  const nameFor = namesOn(site);
  const copies: AnyElement[] = [];
  const renamings: Map<string, string>[] = [];
  for (const [set, motion] of motions.entries()) {
    const renamed = new Map(originals.map(({ id }, i) => [id, fresh[set * originals.length + i] as string]));
    renamings.push(renamed);
    for (const original of originals) {
      const copy = takenTo(original, motion, "copy");
      if (!copy.ok) return copy;
      const named = namedApart(withNewIds(copy.element, renamed, keeps), nameFor);
      // A ledge copied with its pool stays in it; one that was copied alone may come to lie in another.
      copies.push(goesWithPool(original, renamed) ? named : inItsPool(site, named));
    }
  }
  const added = withAdded(site, copies, label);
  if (!added.ok) return added;
  const grouped = renamings.reduce((one, renamed) => withCopiedGroups(one, groups, renamed), added.site);
  const measured = renamings.reduce(
    (one, renamed, set) => withCopiedDimensions(one, dimensions, originals, motions[set] as Motion, renamed),
    grouped,
  );
  return { ...added, site: measured };
}

function goesWithPool(element: AnyElement, renamed: ReadonlyMap<string, string>): boolean {
  const { pool } = element as Readonly<Record<string, unknown>>;
  return typeof pool === "string" && renamed.has(pool);
}

function withNewIds(element: AnyElement, renamed: ReadonlyMap<string, string>, keeps: Mentions): AnyElement {
  const fields: Record<string, unknown> = { ...element, id: renamed.get(element.id) ?? element.id };
  const isKept = (id: unknown) => typeof id !== "string" || renamed.has(id) || keeps(id);
  const rename = (id: unknown): unknown => (typeof id === "string" ? (renamed.get(id) ?? id) : id);
  if (fields.pool !== undefined) {
    if (isKept(fields.pool)) fields.pool = rename(fields.pool);
    else delete fields.pool;
  }
  for (const field of ["joins", "serves"]) {
    const value = fields[field];
    if (value === undefined) continue;
    if (Array.isArray(value)) fields[field] = value.filter(isKept).map(rename);
    else if (isKept(value)) fields[field] = rename(value);
    else delete fields[field];
  }
  return fields as unknown as AnyElement;
}
