/**
 * What to put on the sheet when the page loads: the copy that this tab left, else the newest one. A copy that cannot be
 * read is set aside, and the newest earlier copy of the same site that can be read takes its place.
 */
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { allRecords, earlierCopies, earlierKey, setAside, setAsideNoRecords, underWayKey } from "./kept-records.ts";
import { isRecord, type KeptRecord, type KeptStore } from "./kept-store.ts";
import type { Tab } from "./tab.ts";
import { withUnderWay } from "./under-way.ts";

export interface Restored {
  /** The copy that was found, read; null when there is none that can be read. */
  readonly site: Site | null;
  readonly record: KeptRecord | null;
  /** Whether a tab that runs has it on its sheet. */
  readonly isElsewhere: boolean;
  /** Why each copy that could not be read was set aside. */
  readonly setAside: readonly string[];
  /** The time of the earlier copy that stands in for one that could not be read; null: it is the newest. */
  readonly earlierAt: number | null;
  /** A move that was under way when the page went, and the site with it. */
  readonly move: { readonly label: string; readonly site: Site } | null;
  /** Why nothing could be looked for at all; null when it could. */
  readonly failure: string | null;
}

export async function findKept(store: KeptStore, here: Tab): Promise<Restored> {
  const aside = await setAsideNoRecords(store);
  const kept = (await allRecords(store)).filter(({ isAside }) => !isAside);
  const own = kept.filter(({ record }) => record.tab === here.id);
  const found = { setAside: aside, failure: null, earlierAt: null, move: null, isElsewhere: false };
  for (const { record, key } of [...own, ...kept.filter((other) => !own.includes(other))]) {
    const isElsewhere = record.tab !== here.id && (await here.isRunning(record.tab));
    const read = readSite(record.text);
    if (read.ok) {
      const move = isElsewhere ? null : withUnderWay(read.site, record.at, await store.get(underWayKey(record.id)));
      return { ...found, site: read.site, record, isElsewhere, move };
    }
    aside.push(read.refusal.message);
    await setAside(store, key);
    const earlier = await newestReadable(store, record.id);
    if (earlier) return { ...found, ...earlier };
  }
  return { ...found, site: null, record: null };
}

/** The newest earlier copy of a site that can be read. */
async function newestReadable(
  store: KeptStore,
  id: string,
): Promise<{ site: Site; record: KeptRecord; earlierAt: number } | null> {
  for (const { at } of await earlierCopies(store, id)) {
    const record = await store.get(earlierKey(id, at));
    if (!isRecord(record)) continue;
    const read = readSite(record.text);
    if (read.ok) return { site: read.site, record, earlierAt: at };
  }
  return null;
}
