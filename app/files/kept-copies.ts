/** The copies that the browser keeps, as a list shows them: of other sites, and earlier ones with their time. */
import { readSite } from "../../rules/site/reader.ts";
import type { ViewState } from "../view/view-store.ts";
import type { FileAccess } from "./file-access.ts";
import type { Keeper } from "./keeping.ts";
import { allRecords, type EarlierCopy, earlierCopies, earlierKey, forgetSite, siteKey } from "./kept-records.ts";
import { isRecord, type KeptRecord, type KeptStore, storeProblem } from "./kept-store.ts";

/** A copy of a site other than the one on the sheet. */
export interface KeptCopy extends Pick<KeptRecord, "id" | "name" | "file" | "at"> {
  /** Why it cannot be read; null when it can. */
  readonly broken: string | null;
}

export interface CopyShelf {
  /** Copies of other sites that the browser keeps, newest first. */
  copies(): Promise<KeptCopy[]>;
  /** Earlier copies of every site, newest first. */
  earlierCopies(): Promise<readonly EarlierCopy[]>;
  /** The id under which the site on the sheet is kept. */
  recordId(): string;
  /** Writes a copy to a file just as it was kept, readable or not. `at`: an earlier one. */
  downloadCopy(id: string, at?: number): Promise<boolean>;
  /** Deletes a copy and the earlier ones of the same site; not one that a tab that runs has on its sheet. Gives why it was not deleted. */
  forgetCopy(id: string): Promise<string | null>;
}

interface ShelfOptions {
  readonly store: KeptStore;
  readonly keeper: Keeper;
  readonly access: FileAccess;
  readonly newRecordId: () => string;
  readonly now: () => number;
  readonly say: ViewState["say"];
}

export function createCopyShelf({ store, keeper, access, newRecordId, now, say }: ShelfOptions) {
  async function guarded<T>(action: () => Promise<T>, otherwise: T): Promise<T> {
    try {
      return await action();
    } catch (error) {
      say(storeProblem(error), "problem");
      return otherwise;
    }
  }

  /** A copy, broken or not; null when it is gone. `at`: an earlier one. */
  async function find(id: string, at?: number): Promise<KeptRecord | null> {
    if (at !== undefined) {
      const earlier = await store.get(earlierKey(id, at));
      return isRecord(earlier) ? earlier : null;
    }
    return (await allRecords(store)).find(({ record }) => record.id === id)?.record ?? null;
  }

  const shelf: CopyShelf = {
    copies: () =>
      guarded(async () => {
        const all = await allRecords(store);
        return all
          .filter(({ record, isAside }) => isAside || record.id !== keeper.recordId())
          .map(({ record }) => {
            const read = readSite(record.text);
            const { id, name = "", file = "", at } = record;
            return { id, name, file, at, broken: read.ok ? null : read.refusal.message };
          });
      }, []),
    earlierCopies: () => guarded(() => earlierCopies(store), []),
    recordId: () => keeper.recordId(),
    downloadCopy: (id, at) =>
      guarded(async () => {
        const record = await find(id, at);
        if (!record) return false;
        access.download(`kept-copy-${id}.site.json`, record.text);
        return true;
      }, false),
    async forgetCopy(id) {
      try {
        const held = await store.get(siteKey(id));
        if (isRecord(held) && (await keeper.isRunning(held.tab))) {
          return "This site is open in another tab, which goes by this copy. Close it there first.";
        }
        await forgetSite(store, id);
      } catch (error) {
        return storeProblem(error);
      }
      keeper.tryAgain();
      return null;
    },
  };

  return {
    shelf,
    find,
    /** Keeps a text that is about to be written over. */
    async keepText(text: string, file: string): Promise<void> {
      const read = readSite(text);
      const name = read.ok ? (read.site.name ?? "") : "";
      const record = { id: newRecordId(), tab: "", name, file, text, saved: false, changed: true, at: now() };
      await store.set(siteKey(record.id), record);
    },
  };
}
