/**
 * Sites coming onto the sheet and leaving it: new, open, demos, save, and the copies kept in the browser. Whatever goes
 * wrong is said as a notice and, for a file that was refused, kept in `state` with every problem; what is on the sheet
 * stays as it is then.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import { type Refusal, readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { writeSite } from "../../rules/site/writer.ts";
import type { DocumentStore, FileState } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";
import { emptySite } from "./empty-site.ts";
import type { FileAccess, FileHandle } from "./file-access.ts";
import { fileNameFor } from "./file-name.ts";
import type { Demo } from "./gallery.ts";
import { createKeeper, type KeepingState, type KeptCopy, type Origin } from "./keeping.ts";
import { type KeptRecord, type KeptStore, storeProblem } from "./kept-store.ts";
import type { Tab } from "./tab.ts";

/** A file that was refused, with everything that is wrong with it. */
export interface RefusedFile {
  readonly file: string;
  readonly refusal: Refusal;
}

export interface FilesState {
  /** The last file that could not be opened; null once it is dismissed or another opens. */
  readonly refused: RefusedFile | null;
  readonly keeping: KeepingState;
}

export interface Files {
  readonly state: StoreApi<FilesState>;
  /** Puts the copy of the last session on the sheet, or else the first demo, and begins to keep copies. */
  start(): Promise<"kept" | "demo" | "empty">;
  /** Each of these is false when nothing was opened. */
  newSite(): boolean;
  openText(text: string, file: string, handle?: FileHandle | null): boolean;
  openByPicker(): Promise<boolean>;
  openFile(file: Pick<File, "name" | "text">): Promise<boolean>;
  openDemo(id: string): Promise<boolean>;
  demos(): Promise<Demo[]>;
  /** False when nothing was written (the person cancelled, or it failed and a notice says why). */
  save(): Promise<boolean>;
  saveAs(): Promise<boolean>;
  /** True when the sheet holds changes that no file holds. */
  hasUnsavedChanges(): boolean;
  /** True when those changes are in no kept copy either: leaving now would lose them. */
  atRisk(): boolean;
  /** Copies of other sites that the browser keeps, newest first. */
  copies(): Promise<KeptCopy[]>;
  openCopy(id: string): Promise<boolean>;
  /** Writes a copy to a file just as it was kept, readable or not. */
  downloadCopy(id: string): Promise<boolean>;
  forgetCopy(id: string): Promise<void>;
  dismissRefusal(): void;
  /** Resolves when every step so far is kept (or has failed to be). */
  settled(): Promise<void>;
}

export interface FilesOptions {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly access: FileAccess;
  readonly store: KeptStore;
  readonly tab: () => Promise<Tab>;
  readonly gallery: { readonly first: string; load(id: string): Promise<Demo | null>; loadAll(): Promise<Demo[]> };
  readonly now: () => number;
  readonly newRecordId: () => string;
  /** Asks before something would be lost; true: go on. */
  readonly confirm: (question: string) => boolean;
  /** Called after a site was put on the sheet, as to fit it into view. */
  readonly onOpened?: () => void;
}

const LOSING =
  "The changes on the sheet are in no file, and the browser keeps no copy of them. Open another site and lose them?";

export function createFiles(options: FilesOptions): Files {
  const { document, view, access, gallery } = options;
  const state = createStore<FilesState>(() => ({ refused: null, keeping: { state: "kept" } }));
  const say = (text: string, kind: "plain" | "problem" = "plain") => view.getState().say(text, kind);

  const keeper = createKeeper({
    store: options.store,
    document,
    tab: options.tab,
    now: options.now,
    newRecordId: options.newRecordId,
    onState(keeping) {
      const before = state.getState().keeping;
      state.setState({ keeping });
      if (keeping.state === "failed" && !(before.state === "failed" && before.reason === keeping.reason)) {
        say(keeping.reason, "problem");
      }
      if (keeping.state === "kept" && before.state === "failed") say("Copies are being kept in the browser again.");
    },
  });

  function put(site: Site, file: FileState, origin: Origin): boolean {
    if (keeper.atRisk() && !options.confirm(LOSING)) return false;
    keeper.begin(site, origin);
    document.getState().open(site, file);
    view.setState({ selection: [], hovered: null, part: null, finding: null, tool: "select" });
    state.setState({ refused: null });
    options.onOpened?.();
    return true;
  }

  /** Puts a kept copy on the sheet; its record goes on here unless another tab still writes it. */
  async function putKept(site: Site, record: KeptRecord): Promise<boolean> {
    const goesOn = await keeper.mayGoOn(record);
    const { file, saved, changed, handle = null } = record;
    const origin = { handle, changed, ...(goesOn ? { recordId: record.id } : {}) };
    return put(site, { name: file, saved: saved ? site : null }, origin);
  }

  function refuse(file: string, refusal: Refusal): false {
    state.setState({ refused: { file, refusal } });
    say(`${file} was not opened. ${refusal.message}`, "problem");
    return false;
  }

  function openText(text: string, file: string, handle: FileHandle | null = null): boolean {
    const read = readSite(text);
    if (!read.ok) return refuse(file, read.refusal);
    const isSaved = read.migratedFrom === undefined;
    const opened = put(read.site, { name: file, saved: isSaved ? read.site : null }, { handle, changed: !isSaved });
    if (opened && !isSaved) say(`${file} was brought up from version ${read.migratedFrom}; save it to keep it so.`);
    return opened;
  }

  async function openDemo(id: string): Promise<boolean> {
    const demo = await gallery.load(id);
    if (!demo) {
      say(`There is no demo "${id}".`, "problem");
      return false;
    }
    const read = readSite(demo.text);
    if (!read.ok) return refuse(demo.file, read.refusal);
    return put(read.site, { name: "", saved: null }, { handle: null, changed: false });
  }

  async function start(): Promise<"kept" | "demo" | "empty"> {
    const { site, record, setAside } = await keeper.restore();
    for (const reason of setAside)
      say(`A copy kept in this browser cannot be read and was set aside. ${reason}`, "problem");
    keeper.start();
    if (site && record) {
      await putKept(site, record);
      return "kept";
    }
    return (await openDemo(gallery.first)) ? "demo" : "empty";
  }

  async function write(handle: FileHandle): Promise<boolean> {
    const site = document.getState().history.present;
    try {
      await access.write(handle, writeSite(site));
    } catch (error) {
      say(`${handle.name} could not be written: ${messageOf(error)}. Nothing is lost; try "Save as".`, "problem");
      return false;
    }
    keeper.setHandle(handle);
    document.getState().markSaved(handle.name, site);
    say(`Saved to ${handle.name}.`);
    return true;
  }

  async function saveAs(): Promise<boolean> {
    const site = document.getState().history.present;
    const name = document.getState().file.name || fileNameFor(site);
    if (!access.canPickToSave) {
      access.download(name, writeSite(site));
      document.getState().markSaved(name, site);
      say(`Saved to the downloads as ${name}.`);
      return true;
    }
    try {
      const handle = await access.pickToSave(name);
      return handle !== null && (await write(handle));
    } catch (error) {
      say(`The site could not be saved: ${messageOf(error)}.`, "problem");
      return false;
    }
  }

  /** Runs something of the browser's store; its failure is a notice. */
  async function guarded<T>(action: () => Promise<T>, otherwise: T): Promise<T> {
    try {
      return await action();
    } catch (error) {
      say(storeProblem(error), "problem");
      return otherwise;
    }
  }

  return {
    state,
    start,
    newSite: () => put(emptySite(), { name: "", saved: null }, { handle: null, changed: false }),
    openText,
    async openByPicker() {
      try {
        const picked = await access.pickToOpen();
        return picked !== null && openText(picked.text, picked.name, picked.handle);
      } catch (error) {
        say(`The file could not be read: ${messageOf(error)}.`, "problem");
        return false;
      }
    },
    async openFile(file) {
      try {
        return openText(await file.text(), file.name);
      } catch (error) {
        say(`${file.name} could not be read: ${messageOf(error)}.`, "problem");
        return false;
      }
    },
    openDemo,
    demos: () => gallery.loadAll(),
    async save() {
      const handle = keeper.handle();
      return handle ? write(handle) : saveAs();
    },
    saveAs,
    hasUnsavedChanges: () => keeper.hasUnsavedChanges(),
    atRisk: () => keeper.atRisk(),
    copies: () => guarded(() => keeper.copies(), []),
    openCopy: (id) =>
      guarded(async () => {
        const record = await keeper.copy(id);
        if (!record) return false;
        const read = readSite(record.text);
        if (!read.ok) return refuse("The kept copy", read.refusal);
        return putKept(read.site, record);
      }, false),
    downloadCopy: (id) =>
      guarded(async () => {
        const record = await keeper.copy(id);
        if (!record) return false;
        access.download(`kept-copy-${id}.site.json`, record.text);
        return true;
      }, false),
    forgetCopy: (id) => guarded(() => keeper.forget(id), undefined),
    dismissRefusal: () => state.setState({ refused: null }),
    settled: () => keeper.settled(),
  };
}

function messageOf(error: unknown): string {
  const text = error instanceof Error || error instanceof DOMException ? error.message : String(error);
  return text.replace(/\.$/, "");
}
