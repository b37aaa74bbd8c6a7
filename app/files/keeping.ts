/**
 * A copy of the site kept in the browser at every step, and found again after a reload.
 *
 * Each site that is opened has a record of its own, so that opening another never overwrites work. Records are written
 * one after the other; of several waiting for one record only the newest is written. A record that cannot be read is
 * set aside under another name, never deleted. Failures are told through `onState`; the next step tries again.
 *
 * Two tabs: a tab writes only records that carry its own id. One that starts takes over the newest record whose tab is
 * closed; where every tab still runs, it goes on with a copy under a record of its own.
 */
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { writeSite } from "../../rules/site/writer.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { FileHandle } from "./file-access.ts";
import { isRecord, type KeptRecord, type KeptStore, storeProblem } from "./kept-store.ts";
import type { Tab } from "./tab.ts";

/** Whether the present site is kept: `waiting` while it is being written. */
export type KeepingState =
  | { readonly state: "kept" | "waiting" }
  | { readonly state: "failed"; readonly reason: string };

/** A copy of a site other than the one on the sheet. */
export interface KeptCopy extends Pick<KeptRecord, "id" | "name" | "file" | "at"> {
  /** Why it cannot be read; null when it can. */
  readonly broken: string | null;
}

export interface Restored {
  /** The copy that was found, read; null when there is none that can be read. */
  readonly site: Site | null;
  readonly record: KeptRecord | null;
  /** Why each copy that could not be read was set aside. */
  readonly setAside: readonly string[];
  /** Why nothing could be looked for at all; null when it could. */
  readonly failure: string | null;
}

export interface KeeperOptions {
  readonly store: KeptStore;
  readonly document: DocumentStore;
  /** Which tab this is; asked once, by `restore`. */
  readonly tab: () => Promise<Tab>;
  readonly now: () => number;
  readonly newRecordId: () => string;
  readonly onState: (state: KeepingState) => void;
}

/** What the record of the site on the sheet says beside its text. */
export interface Origin {
  readonly handle: FileHandle | null;
  /** Whether it already held changes when it was put on the sheet (a copy found again). */
  readonly changed: boolean;
  /** The record to go on with; absent: a new one. */
  readonly recordId?: string;
}

export interface Keeper {
  /** Begins a record for a site that is about to be opened; the record before it stays if it holds unsaved changes. */
  begin(site: Site, origin: Origin): void;
  /** Starts keeping, after `restore`: from now on every step of the document is written. Returns what stops it. */
  start(): () => void;
  /** Finds out which tab this is and gives the copy that it left, else the newest one. */
  restore(): Promise<Restored>;
  /** Whether this tab may go on with a record: it is its own, or its tab is closed. */
  mayGoOn(record: KeptRecord): Promise<boolean>;
  setHandle(handle: FileHandle | null): void;
  handle(): FileHandle | null;
  /** True while the sheet holds changes that are in no file. */
  hasUnsavedChanges(): boolean;
  /** True while the sheet holds changes that are in no file and in no kept copy. */
  atRisk(): boolean;
  /** Resolves when nothing waits to be written. */
  settled(): Promise<void>;
  /** The other copies, newest first. */
  copies(): Promise<KeptCopy[]>;
  /** A copy, broken or not; null when it is gone. */
  copy(id: string): Promise<KeptRecord | null>;
  forget(id: string): Promise<void>;
}

const SITE = "site/";
const SET_ASIDE = "set-aside/";

export function createKeeper(options: KeeperOptions): Keeper {
  const { store, document, now, newRecordId, onState } = options;
  let tab: Tab | null = null;
  let current = { id: newRecordId(), handle: null as FileHandle | null, changed: false };
  let opened: Site = document.getState().history.present;
  /** What waits to be written, by record id; null: to be deleted. */
  const waiting = new Map<string, KeptRecord | null>();
  let running: Promise<void> | null = null;
  let state: KeepingState = { state: "kept" };

  const tell = (next: KeepingState) => {
    state = next;
    onState(next);
  };

  async function writeAll(): Promise<void> {
    for (let next = waiting.entries().next(); !next.done; next = waiting.entries().next()) {
      const [id, record] = next.value;
      waiting.delete(id);
      try {
        if (record === null) await store.delete(SITE + id);
        else await store.set(SITE + id, record);
        if (waiting.size === 0) tell({ state: "kept" });
      } catch (error) {
        tell({ state: "failed", reason: storeProblem(error) });
      }
    }
    running = null;
  }

  function put(id: string, record: KeptRecord | null): void {
    waiting.delete(id);
    waiting.set(id, record);
    if (state.state === "kept") tell({ state: "waiting" });
    running ??= writeAll();
  }

  function keep(): void {
    if (!tab) throw new Error("Keeping has to begin with a look for what is kept.");
    const { history, file } = document.getState();
    const handle = storable(current.handle);
    put(current.id, {
      id: current.id,
      tab: tab.id,
      name: history.present.name ?? "",
      file: file.name,
      text: writeSite(history.present),
      saved: file.saved === history.present,
      changed: current.changed || history.present !== opened,
      at: now(),
      ...(handle ? { handle } : {}),
    });
  }

  const unsaved = (): boolean => {
    const { history, file } = document.getState();
    return file.saved !== history.present && (current.changed || history.present !== opened);
  };

  async function records(): Promise<{ record: KeptRecord; key: string }[]> {
    const found: { record: KeptRecord; key: string }[] = [];
    for (const [key, value] of await store.entries()) if (isRecord(value)) found.push({ record: value, key });
    return found.sort((a, b) => b.record.at - a.record.at);
  }

  async function setAside(key: string, value: unknown): Promise<void> {
    await store.set(SET_ASIDE + key.slice(SITE.length), value);
    await store.delete(key);
  }

  /** Puts aside what is no record at all. */
  async function setAsideNoRecords(): Promise<string[]> {
    const reasons: string[] = [];
    for (const [key, value] of await store.entries()) {
      if (!key.startsWith(SITE) || isRecord(value)) continue;
      await setAside(key, value);
      reasons.push("It is not a copy that this program wrote.");
    }
    return reasons;
  }

  async function find(aside: string[]): Promise<Restored> {
    const here = await options.tab();
    tab = here;
    aside.push(...(await setAsideNoRecords()));
    const kept = (await records()).filter(({ key }) => key.startsWith(SITE));
    const own = kept.filter(({ record }) => record.tab === here.id);
    const others = kept.filter((other) => !own.includes(other));
    const running = await Promise.all(others.map(({ record }) => here.isRunning(record.tab)));
    const left = others.filter((_, i) => !running[i]);
    for (const { record, key } of [...own, ...left, ...others.filter((_, i) => running[i])]) {
      const read = readSite(record.text);
      if (read.ok) return { site: read.site, record, setAside: aside, failure: null };
      aside.push(read.refusal.message);
      await setAside(key, record);
    }
    return { site: null, record: null, setAside: aside, failure: null };
  }

  return {
    begin(site, origin) {
      if (!unsaved()) put(current.id, null);
      current = { id: origin.recordId ?? newRecordId(), handle: origin.handle, changed: origin.changed };
      opened = site;
    },
    start() {
      return document.subscribe((after, before) => {
        if (after.history.present !== before.history.present || after.file !== before.file) keep();
      });
    },
    async restore() {
      const aside: string[] = [];
      try {
        return await find(aside);
      } catch (error) {
        const failure = storeProblem(error);
        tell({ state: "failed", reason: failure });
        return { site: null, record: null, setAside: aside, failure };
      }
    },
    mayGoOn: async (record) => tab !== null && (record.tab === tab.id || !(await tab.isRunning(record.tab))),
    setHandle(handle) {
      current.handle = handle;
    },
    handle: () => current.handle,
    hasUnsavedChanges: unsaved,
    atRisk: () => unsaved() && state.state === "failed",
    async settled() {
      while (running) await running;
    },
    async copies() {
      const all = await records();
      return all
        .filter(({ record }) => record.id !== current.id)
        .map(({ record }) => {
          const read = readSite(record.text);
          const { id, name, file, at } = record;
          return { id, name, file, at, broken: read.ok ? null : read.refusal.message };
        });
    },
    async copy(id) {
      return (await records()).find(({ record }) => record.id === id)?.record ?? null;
    },
    async forget(id) {
      await store.delete(SITE + id);
      await store.delete(SET_ASIDE + id);
    },
  };
}

/** The handle if the browser's store takes it: only its own can be put there. */
function storable(handle: FileHandle | null): FileHandle | null {
  return handle !== null && typeof FileSystemFileHandle === "function" && handle instanceof FileSystemFileHandle
    ? handle
    : null;
}
