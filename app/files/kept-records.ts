/**
 * What the store holds, by name: the copy of each site as it is now, earlier copies of it with their time, what could not
 * be read and was set aside, and the move or drawing that is under way.
 */
import { isRecord, type KeptRecord, type KeptStore } from "./kept-store.ts";

const SITE = "site/";
const EARLIER = "earlier/";
const SET_ASIDE = "set-aside/";
const UNDER_WAY = "under-way/";
const DRAWING = "drawing/";

/** Earlier copies kept of one site. */
export const MOST_EARLIER = 12;
/** Sites kept at all; beyond it the oldest that a file holds go. */
export const MOST_SITES = 60;

export const siteKey = (id: string) => SITE + id;
export const earlierKey = (id: string, at: number) => `${EARLIER}${id}/${at}`;
export const underWayKey = (id: string) => UNDER_WAY + id;
export const drawingKey = (id: string) => DRAWING + id;

export interface FoundRecord {
  readonly record: KeptRecord;
  readonly key: string;
  /** True for one that was set aside. */
  readonly isAside: boolean;
}

export interface EarlierCopy {
  readonly id: string;
  readonly at: number;
}

/** Every copy as it is now and every one set aside, newest first. */
export async function allRecords(store: KeptStore): Promise<FoundRecord[]> {
  const found: FoundRecord[] = [];
  for (const key of await store.keys()) {
    const isAside = key.startsWith(SET_ASIDE);
    if (!isAside && !key.startsWith(SITE)) continue;
    const record = await store.get(key);
    if (isRecord(record)) found.push({ record, key, isAside });
  }
  return found.sort((a, b) => b.record.at - a.record.at);
}

/** Moves a value out of the way, as it is. */
export async function setAside(store: KeptStore, key: string): Promise<void> {
  await store.set(SET_ASIDE + key.slice(SITE.length), await store.get(key));
  await store.delete(key);
}

/** Moves out of the way what is no record at all, and says why. */
export async function setAsideNoRecords(store: KeptStore): Promise<string[]> {
  const reasons: string[] = [];
  for (const key of await store.keys()) {
    if (!key.startsWith(SITE) || isRecord(await store.get(key))) continue;
    await setAside(store, key);
    reasons.push("It is not a copy that this program wrote.");
  }
  return reasons;
}

/** The earlier copies, of one site or of all, newest first. */
export async function earlierCopies(store: KeptStore, id?: string): Promise<EarlierCopy[]> {
  const start = id === undefined ? EARLIER : `${EARLIER}${id}/`;
  const found = (await store.keys()).flatMap((key) => {
    if (!key.startsWith(start)) return [];
    const slash = key.lastIndexOf("/");
    return [{ id: key.slice(EARLIER.length, slash), at: Number(key.slice(slash + 1)) }];
  });
  return found.sort((a, b) => b.at - a.at);
}

/** Keeps a copy as an earlier one and lets go of those that stand too close together. */
export async function keepEarlier(store: KeptStore, record: KeptRecord): Promise<void> {
  const { handle: _, ...plain } = record;
  await store.set(earlierKey(record.id, record.at), plain);
  const times = (await earlierCopies(store, record.id)).map(({ at }) => at);
  for (const at of surplus(times, MOST_EARLIER)) await store.delete(earlierKey(record.id, at));
}

/** Lets go of the older half of all earlier copies; false when there were none. */
export async function makeRoom(store: KeptStore): Promise<boolean> {
  const all = await earlierCopies(store);
  for (const { id, at } of all.slice(Math.floor(all.length / 2))) await store.delete(earlierKey(id, at));
  return all.length > 0;
}

/** Deletes a site's copy, what was set aside of it and its earlier copies. */
export async function forgetSite(store: KeptStore, id: string): Promise<void> {
  for (const { at } of await earlierCopies(store, id)) await store.delete(earlierKey(id, at));
  for (const key of [siteKey(id), SET_ASIDE + id, underWayKey(id), drawingKey(id)]) await store.delete(key);
}

/** Beyond MOST_SITES the oldest go, but never one with changes that no file holds. */
export async function forgetOldest(store: KeptStore): Promise<void> {
  if ((await store.keys()).filter((key) => key.startsWith(SITE)).length <= MOST_SITES) return;
  const sites = (await allRecords(store)).filter(({ isAside }) => !isAside);
  const needless = sites.slice(MOST_SITES).filter(({ record }) => record.saved || !record.changed);
  for (const { record } of needless) await forgetSite(store, record.id);
}

/**
 * The times to let go of so that `most` remain: again and again the one whose neighbors lie closest, seen from the newest
 * (recent copies may stand close together, old ones far apart). The newest and the oldest always stay.
 */
export function surplus(times: readonly number[], most: number): number[] {
  const kept = [...times].sort((a, b) => b - a);
  const gone: number[] = [];
  while (kept.length > Math.max(2, most)) {
    const newest = kept[0] ?? 0;
    let at = 1;
    let closest = Number.POSITIVE_INFINITY;
    for (let i = 1; i < kept.length - 1; i++) {
      const before = kept[i - 1] ?? 0;
      const after = kept[i + 1] ?? 0;
      const apart = (before - after) / Math.max(1, newest - after);
      if (apart <= closest) [at, closest] = [i, apart];
    }
    gone.push(...kept.splice(at, 1));
  }
  return gone;
}
