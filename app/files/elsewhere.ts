/** A site that another tab has on its sheet: looked at here, kept in step with it, or taken over. */
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { writeSite } from "../../rules/site/writer.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { FileHandle } from "./file-access.ts";
import type { Keeper } from "./keeping.ts";
import { allRecords, siteKey } from "./kept-records.ts";
import { isRecord, type KeptRecord, type KeptStore } from "./kept-store.ts";

export interface Elsewhere {
  /** `open`: another tab had it first; `taken`: it was here, and another tab took it over. */
  readonly how: "open" | "taken";
  /** True once the person chose to look only. */
  readonly isDecided: boolean;
}

interface ElsewhereOptions {
  readonly store: KeptStore;
  readonly document: DocumentStore;
  readonly keeper: Keeper;
  putKept(site: Site, record: KeptRecord, isOurs: boolean): Promise<boolean>;
  look(how: Elsewhere["how"]): void;
}

export function createElsewhere({ store, document, keeper, putKept }: ElsewhereOptions) {
  async function newest(id: string): Promise<{ site: Site; record: KeptRecord } | null> {
    const record = await store.get(siteKey(id));
    if (!isRecord(record)) return null;
    const read = readSite(record.text);
    return read.ok ? { site: read.site, record } : null;
  }

  return {
    /** Makes the site on the sheet this tab's own, as the other tab left it. */
    async takeOver(): Promise<boolean> {
      const id = keeper.recordId();
      const before = await newest(id);
      if (!before || !(await keeper.claim(before.record, true))) return false;
      const found = await newest(id);
      return found !== null && putKept(found.site, found.record, true);
    },
    /** Shows what the other tab has changed; the view stays. */
    async follow(): Promise<void> {
      const id = keeper.recordId();
      const found = await newest(id);
      const { locked, history } = document.getState();
      // Another site may have been put on the sheet meanwhile, or this one have become this tab's own.
      if (!found || locked === null || keeper.recordId() !== id || found.record.text === writeSite(history.present))
        return;
      const { site, record } = found;
      document.getState().open(site, { name: record.file, saved: record.saved ? site : null });
      document.getState().lock(locked);
    },
    /** The record of another tab that runs and has this very file on its sheet; null when there is none. */
    async recordOf(handle: FileHandle): Promise<{ site: Site; record: KeptRecord } | null> {
      for (const { record, isAside } of await allRecords(store)) {
        if (isAside || !record.handle || !(await handle.isSameEntry?.(record.handle))) continue;
        if (await keeper.isRunning(record.tab)) return newest(record.id);
      }
      return null;
    },
  };
}
