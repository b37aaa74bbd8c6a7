/**
 * Keeps a copy of the site on the sheet in the browser, at every step, so that nothing is lost when the page goes.
 *
 * Every site on the sheet has a record of its own. A record belongs to the tab that writes it: a write finds out, in one
 * go with the writing, whether it still does; if another tab has taken it over, this one stops writing and says so. Writes
 * follow one another; of steps that come while one runs, only the newest is written. Now and then, and before the first
 * change, what the record held stays as an earlier copy. While a move runs, what it has changed is kept beside the record.
 */
import type { Site } from "../../rules/site/site.ts";
import { writeSite } from "../../rules/site/writer.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { FileHandle } from "./file-access.ts";
import { earlierCopies, forgetOldest, keepEarlier, makeRoom, siteKey, underWayKey } from "./kept-records.ts";
import { isFull, isRecord, type KeptRecord, type KeptStore, storeProblem } from "./kept-store.ts";
import { findKept, type Restored } from "./restore.ts";
import type { Tab } from "./tab.ts";
import { underWay } from "./under-way.ts";

/** Whether the present site is kept: `waiting` while it is being written. */
export type KeepingState =
  | { readonly state: "kept" | "waiting" }
  | { readonly state: "failed"; readonly reason: string };

export interface KeeperOptions {
  readonly store: KeptStore;
  readonly document: DocumentStore;
  /** Which tab this is; asked once, by `restore`. */
  readonly tab: () => Promise<Tab>;
  readonly now: () => number;
  readonly newRecordId: () => string;
  readonly onState: (state: KeepingState) => void;
  /** Another tab has taken the site on the sheet over; all that was done here is written. */
  readonly onTaken: () => void;
  /** The site on the sheet, only looked at here, was changed in the tab that keeps it. */
  readonly onChangedElsewhere: (record: string) => void;
}

/** What the record of the site on the sheet says beside its text. */
export interface Origin {
  readonly handle: FileHandle | null;
  /** Whether it already held changes when it was put on the sheet (a copy found again). */
  readonly changed: boolean;
  /** The record to go on with; absent: a new one. */
  readonly recordId?: string;
  /** The record belongs to another tab: it is not written here. */
  readonly isElsewhere?: boolean;
  /** What the file held when it was read. */
  readonly digest?: string | null;
}

export interface Keeper {
  /**
   * Begins a record for a site that is about to be opened; the record before it stays if anything was ever changed, or if
   * something is being drawn there.
   */
  begin(site: Site, origin: Origin, isDrawing: boolean): void;
  /** Starts keeping, after `restore`: from now on every step of the document is written. Returns what stops it. */
  start(): () => void;
  /** Finds out which tab this is and gives the copy that it left, else the newest one. */
  restore(): Promise<Restored>;
  /** Makes a record this tab's own: false when a tab that runs has it. `byForce` asks that tab for it and takes it. */
  claim(record: KeptRecord, byForce?: boolean): Promise<boolean>;
  isRunning(tab: string): Promise<boolean>;
  recordId(): string;
  setFile(handle: FileHandle | null, digest: string | null): void;
  handle(): FileHandle | null;
  digest(): string | null;
  /** True while the sheet holds changes that are in no file. */
  hasUnsavedChanges(): boolean;
  /** True while the sheet holds changes that are in no file and in no kept copy. */
  atRisk(): boolean;
  /** Tries again what could not be written. */
  tryAgain(): void;
  /** Says that nothing is kept, for a reason that no write has met. */
  tellFailed(reason: string): void;
  /** Resolves when nothing waits to be written. */
  settled(): Promise<void>;
}

/** Time between earlier copies, and between writings of a move under way, milliseconds. */
export const EARLIER_EVERY = 3 * 60_000;
const UNDER_WAY_EVERY = 250;
/** How long another tab has to write what it holds before its record is taken, milliseconds. */
const PATIENCE = 2000;

/** Thrown inside a write when the record has become another tab's. */
class TakenOver extends Error {}

export function createKeeper(options: KeeperOptions): Keeper {
  const { store, document, now, newRecordId, onState } = options;
  let tab: Tab | null = null;
  let current = begun(newRecordId(), { handle: null, changed: false });
  const atFirst: Site = document.getState().history.present;
  let opened = atFirst;
  /** What waits to be done to records, by their id. */
  const waiting = new Map<string, () => Promise<void>>();
  let running: Promise<void> | null = null;
  let state: KeepingState = { state: "kept" };
  let keptAt = 0;
  let moveTimer: ReturnType<typeof setTimeout> | null = null;
  /** The name of the move that the store may hold. */
  let moveKey: string | null = null;
  let hasLooked = false;
  const given = new Map<string, () => void>();

  const tell = (next: KeepingState) => {
    state = next;
    onState(next);
  };

  async function writeAll(): Promise<void> {
    for (let next = waiting.entries().next(); !next.done; next = waiting.entries().next()) {
      const [id, work] = next.value;
      waiting.delete(id);
      try {
        await work();
        if (waiting.size === 0) tell({ state: "kept" });
      } catch (error) {
        if (error instanceof TakenOver) {
          if (id === current.id) taken();
        } else tell({ state: "failed", reason: storeProblem(error) });
      }
    }
    running = null;
  }

  function queue(id: string, work: () => Promise<void>): void {
    waiting.delete(id);
    waiting.set(id, work);
    if (state.state === "kept") tell({ state: "waiting" });
    running ??= writeAll();
  }

  function taken(): void {
    if (current.isElsewhere) return;
    current.isElsewhere = true;
    options.onTaken();
  }

  /** Writes the record, if it is this tab's, and what it held before as an earlier copy where one is due. */
  async function write(record: KeptRecord, site: typeof current): Promise<void> {
    let before: KeptRecord | null = null;
    const put = () =>
      store.update(siteKey(record.id), (held) => {
        before = isRecord(held) ? held : null;
        if (before !== null && before.tab !== record.tab) throw new TakenOver();
        return record;
      });
    try {
      await put();
    } catch (error) {
      if (!isFull(error) || !(await makeRoom(store))) throw error;
      await put();
    }
    const was = before as KeptRecord | null;
    if (was === null || was.text === record.text) return;
    site.earlierAt ??= (await earlierCopies(store, record.id))[0]?.at ?? Number.NEGATIVE_INFINITY;
    if (record.at - site.earlierAt < EARLIER_EVERY) return;
    site.earlierAt = record.at;
    try {
      await keepEarlier(store, was);
    } catch (error) {
      // The copy itself is kept; without room for earlier ones there are none.
      if (!isFull(error)) throw error;
    }
  }

  function keep(): void {
    if (!hasLooked) throw new Error("Keeping has to begin with a look for what is kept.");
    // Without knowing which tab this is nothing is kept; that was told when it failed.
    if (!tab || current.isElsewhere) return;
    const { history, file } = document.getState();
    const handle = storable(current.handle);
    const site = current;
    keptAt = Math.max(now(), keptAt + 1);
    const record = {
      id: current.id,
      tab: tab.id,
      name: history.present.name ?? "",
      file: file.name,
      saved: file.saved === history.present,
      changed: current.changed || history.present !== opened,
      at: keptAt,
      ...(handle ? { handle } : {}),
      ...(current.digest === null ? {} : { digest: current.digest }),
    };
    const { present } = history;
    // The text is written out only when its turn comes: of quick steps, only the newest is.
    queue(current.id, async () => {
      await write({ ...record, text: writeSite(present) }, site);
      tab?.say({ say: "kept", record: record.id });
    });
    forgetMove();
  }

  /** Keeps what the running move has changed so far. */
  async function keepMove(): Promise<void> {
    moveTimer = null;
    const { gesture, shown } = document.getState();
    const moved = gesture && !current.isElsewhere ? underWay(keptAt, gesture.label, gesture.start, shown) : null;
    if (moved === null) return;
    moveKey = underWayKey(current.id);
    try {
      await store.set(moveKey, moved);
    } catch (error) {
      tell({ state: "failed", reason: storeProblem(error) });
    }
  }

  function forgetMove(): void {
    if (moveTimer !== null) clearTimeout(moveTimer);
    moveTimer = null;
    const key = moveKey;
    moveKey = null;
    if (key !== null) queue(key, () => store.delete(key));
  }

  /** Gives up a record that was only looked at; one with earlier copies stays with them. */
  function letGo(id: string, own: string | undefined): void {
    queue(id, async () => {
      const held = await store.get(siteKey(id));
      if (!isRecord(held) || held.tab !== own || (await earlierCopies(store, id)).length > 0) return;
      await store.delete(siteKey(id));
    });
  }

  const changed = (): boolean => current.changed || document.getState().history.present !== opened;

  const unsaved = (): boolean => {
    const { history, file } = document.getState();
    return !current.isElsewhere && file.saved !== history.present && changed();
  };

  function listen(here: Tab): void {
    here.hear((message) => {
      if (message.say === "given" && message.by === here.id) given.get(message.record)?.();
      if (message.say === "kept" && current.isElsewhere && message.record === current.id) {
        options.onChangedElsewhere(message.record);
      }
      if (message.say !== "take" || message.record !== current.id || current.isElsewhere) return;
      document.getState().commitGesture();
      void settled().then(() => {
        if (message.record === current.id) taken();
        here.say({ say: "given", record: message.record, by: message.by });
      });
    });
  }

  async function askFor(record: KeptRecord, here: Tab): Promise<void> {
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, PATIENCE);
      given.set(record.id, () => {
        clearTimeout(timer);
        resolve();
      });
      here.say({ say: "take", record: record.id, by: here.id });
    });
    given.delete(record.id);
  }

  async function settled(): Promise<void> {
    while (running) await running;
  }

  return {
    begin(site, origin, isDrawing) {
      forgetMove();
      if (!current.isElsewhere && !changed() && !isDrawing) letGo(current.id, tab?.id);
      current = begun(origin.recordId ?? newRecordId(), origin);
      opened = site;
    },
    start() {
      // A file that was dropped while the copies were looked for.
      if (document.getState().history.present !== atFirst) keep();
      return document.subscribe((after, before) => {
        if (after.history.present !== before.history.present || after.file !== before.file) keep();
        else if (after.gesture !== null && after.shown !== before.shown) {
          if (!current.isElsewhere) moveTimer ??= setTimeout(() => void keepMove(), UNDER_WAY_EVERY);
        } else if (before.gesture !== null && after.gesture === null) forgetMove();
      });
    },
    async restore() {
      hasLooked = true;
      try {
        tab = await options.tab();
        listen(tab);
        await forgetOldest(store);
        const found = await findKept(store, tab);
        if (found.record && !found.isElsewhere) moveKey = underWayKey(found.record.id);
        return found;
      } catch (error) {
        const failure = storeProblem(error);
        tell({ state: "failed", reason: failure });
        return { site: null, record: null, isElsewhere: false, setAside: [], earlierAt: null, move: null, failure };
      }
    },
    async claim(record, byForce = false) {
      const here = tab;
      if (!here) return false;
      if (record.tab !== here.id && !byForce && (await here.isRunning(record.tab))) return false;
      if (record.tab !== here.id && byForce && (await here.isRunning(record.tab))) await askFor(record, here);
      let isOurs = true;
      await store.update(siteKey(record.id), (held) => {
        const owner = isRecord(held) ? held.tab : record.tab;
        isOurs = byForce || owner === record.tab || owner === here.id;
        return isOurs ? { ...(isRecord(held) ? held : record), tab: here.id } : held;
      });
      return isOurs;
    },
    isRunning: async (other) => tab !== null && other !== tab.id && (await tab.isRunning(other)),
    recordId: () => current.id,
    setFile(handle, digest) {
      current.handle = handle;
      current.digest = digest;
    },
    handle: () => current.handle,
    digest: () => current.digest,
    hasUnsavedChanges: unsaved,
    atRisk: () => unsaved() && state.state === "failed",
    tryAgain() {
      if (state.state === "failed" && tab) keep();
    },
    tellFailed: (reason) => tell({ state: "failed", reason }),
    settled,
  };
}

function begun(id: string, { handle, changed, isElsewhere = false, digest = null }: Origin) {
  return { id, handle, changed, isElsewhere, digest, earlierAt: null as number | null };
}

/** The handle if the browser's store takes it: only its own can be put there. */
function storable(handle: FileHandle | null): FileHandle | null {
  return handle !== null && typeof FileSystemFileHandle === "function" && handle instanceof FileSystemFileHandle
    ? handle
    : null;
}
