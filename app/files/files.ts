/**
 * Sites coming onto the sheet and leaving it: new, open, demos, save, and the copies kept in the browser. Whatever goes
 * wrong is said as a notice and, where the person has to decide, kept in `state`; what is on the sheet stays as it is then.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import { type Refusal, readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import type { DocumentStore, FileState } from "../site-document/store.ts";
import { FRESH_LOOK, type ViewStore } from "../view/view-store.ts";
import { digestOf } from "./digest.ts";
import { createElsewhere, type Elsewhere } from "./elsewhere.ts";
import { emptySite } from "./empty-site.ts";
import type { FileAccess, FileHandle } from "./file-access.ts";
import { copyName } from "./file-name.ts";
import type { Demo } from "./gallery.ts";
import { createKeeper, type KeepingState, type Origin } from "./keeping.ts";
import { type CopyShelf, createCopyShelf } from "./kept-copies.ts";
import { createDrawingKeeper, type KeptDrawing } from "./kept-drawing.ts";
import { type KeptRecord, type KeptStore, storeProblem } from "./kept-store.ts";
import { type ChangedFile, createSaving, messageOf, type Saving } from "./saving.ts";
import { createStart, timeWords } from "./start.ts";
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
  /** Set while the site on the sheet is another tab's and only looked at here. */
  readonly elsewhere: Elsewhere | null;
  /** A file that could not be written because it was changed since; null once that is decided. */
  readonly changedFile: ChangedFile | null;
}

export interface Files extends CopyShelf, Pick<Saving, "save" | "saveAs" | "lookAtFile"> {
  readonly state: StoreApi<FilesState>;
  /** Puts the copy of the last session on the sheet, or else the first demo, and begins to keep copies. */
  start(): Promise<"kept" | "demo" | "empty">;
  /** Each of these is false when nothing was opened. */
  newSite(): boolean;
  openText(text: string, file: string, handle?: FileHandle | null): boolean;
  openByPicker(): Promise<boolean>;
  openFile(file: Pick<File, "name" | "text">): Promise<boolean>;
  openDemo(id: string): Promise<boolean>;
  /** Every demo; none where they cannot be loaded, which is said. */
  demos(): Promise<readonly Demo[]>;
  /** True when the sheet holds changes that no file holds. */
  hasUnsavedChanges(): boolean;
  /** True when those changes are in no kept copy either: leaving now would lose them. */
  atRisk(): boolean;
  /** Puts a kept copy on the sheet. `at`: an earlier one, which then is a site of its own. */
  openCopy(id: string, at?: number): Promise<boolean>;
  /** Makes the site that another tab has on its sheet this tab's own. */
  takeOver(): Promise<boolean>;
  /** Goes on here with a copy of the site that another tab has on its sheet. */
  workOnCopy(): boolean;
  /** Keeps on looking only. */
  lookOnly(): void;
  /** Goes on with a copy of the site on the sheet, kept under a name of its own; what was there stays as a kept copy. */
  duplicateSite(): Promise<boolean>;
  /** Writes over the file that was changed since it was opened; what it holds stays as a kept copy. */
  overwriteChangedFile(): Promise<boolean>;
  /** Opens that file as it is now; what is on the sheet stays as a kept copy. */
  openChangedFile(): Promise<boolean>;
  dismissChangedFile(): void;
  dismissRefusal(): void;
  /** Keeps what is being drawn and not ended; null: nothing is. */
  keepDrawing(drawing: KeptDrawing | null): void;
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
  /** Goes on with a drawing that was under way when the page went; false when it cannot be. */
  readonly onDrawing?: (drawing: KeptDrawing) => boolean;
  /** Called after a site was put on the sheet, as to fit it into view. */
  readonly onOpened?: () => void;
}

const LOOKING = "This site is open in another tab. Here it is only looked at until you work on it here or open a copy.";
const LOSING =
  "The changes on the sheet are in no file, and the browser keeps no copy of them. Open another site and lose them?";
const UNFINISHED =
  "A drawing was under way on this site. It is here as far as it went: go on with it, or Escape gives it up.";

export function createFiles(options: FilesOptions): Files {
  const { document, view, access, gallery } = options;
  const state = createStore<FilesState>(() => ({
    refused: null,
    keeping: { state: "kept" },
    elsewhere: null,
    changedFile: null,
  }));
  const { say } = view.getState();
  /** How many sites were put on the sheet. */
  let openings = 0;

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
        say(keeping.reason, "problem", ["save", "gallery"]);
      }
      if (keeping.state === "kept" && before.state === "failed") say("Copies are being kept in the browser again.");
    },
    onTaken() {
      look("taken");
      say("This site was taken over by another tab. All that was done here is kept there.");
    },
    onChangedElsewhere: () => void elsewhere.follow(),
  });
  const { store, newRecordId, now } = options;
  const { shelf, find, keepText } = createCopyShelf({ store, keeper, access, newRecordId, now, say });
  const saving = createSaving({ document, view, access, keeper, state });
  const elsewhere = createElsewhere({ store, document, keeper, putKept: putBack, look });

  const drawings = createDrawingKeeper({
    store,
    recordId: () => (state.getState().elsewhere === null ? keeper.recordId() : null),
    tellFailed: (reason) => keeper.tellFailed(reason),
    takeUp: (drawing) => options.onDrawing?.(drawing) === true,
  });
  const goOnDrawing = (record: string) => guarded(() => drawings.goOn(record), false);

  /** From now on the site on the sheet is only looked at. */
  function look(how: Elsewhere["how"]): void {
    document.getState().lock(LOOKING);
    state.setState({ elsewhere: { how, isDecided: false } });
  }

  function put(site: Site, file: FileState, origin: Origin): boolean {
    if (keeper.atRisk() && !options.confirm(LOSING)) return false;
    openings += 1;
    keeper.begin(site, origin, drawings.leave());
    document.getState().open(site, file);
    view.setState(FRESH_LOOK);
    state.setState({ refused: null, elsewhere: null, changedFile: null });
    options.onOpened?.();
    return true;
  }

  const start = createStart({
    keeper,
    document,
    say,
    put,
    putKept,
    openFirstDemo: (isWanted) => openDemo(gallery.first, isWanted),
    claim: (record) => guarded<boolean | null>(() => keeper.claim(record), null),
    goOnDrawing,
    openings: () => openings,
    isDrawing: () => drawings.isUnderWay(),
  });

  /** Puts a kept copy on the sheet; one that another tab has on its own is only looked at. */
  async function putKept(site: Site, record: KeptRecord, isOurs: boolean): Promise<boolean> {
    const { file, saved, changed, handle = null, digest = null } = record;
    const origin = { handle, digest, changed, recordId: record.id, isElsewhere: !isOurs };
    const opened = put(site, { name: file, saved: saved ? site : null }, origin);
    if (opened && !isOurs) look("open");
    return opened;
  }

  /** The same in the midst of work: with the drawing that was under way when it left the sheet. */
  async function putBack(site: Site, record: KeptRecord, isOurs: boolean): Promise<boolean> {
    const opened = await putKept(site, record, isOurs);
    if (opened && isOurs && (await goOnDrawing(record.id))) say(UNFINISHED);
    return opened;
  }

  /** Told in a window of its own, which stays until it is read. */
  function refuse(file: string, refusal: Refusal): false {
    state.setState({ refused: { file, refusal } });
    return false;
  }

  function openText(
    text: string,
    file: string,
    handle: FileHandle | null = null,
    digest: string | null = null,
  ): boolean {
    const read = readSite(text);
    if (!read.ok) return refuse(file, read.refusal);
    const isSaved = read.migratedFrom === undefined;
    const opened = put(
      read.site,
      { name: file, saved: isSaved ? read.site : null },
      {
        handle,
        digest,
        changed: !isSaved,
      },
    );
    if (opened && !isSaved) say(`${file} was brought up from version ${read.migratedFrom}; save it to keep it so.`);
    return opened;
  }

  /** Loads of the demos, which may be out of reach; their failure is a notice. */
  async function loaded<T, U>(load: () => Promise<T>, otherwise: U): Promise<T | U> {
    try {
      return await load();
    } catch (error) {
      say(`The demo sites could not be loaded: ${messageOf(error)}.`, "problem");
      return otherwise;
    }
  }

  async function openDemo(id: string, isWanted = () => true): Promise<boolean> {
    const demo = await loaded(() => gallery.load(id), false as const);
    if (demo === false || !isWanted()) return false;
    if (!demo) {
      say(`There is no demo "${id}".`, "problem");
      return false;
    }
    const read = readSite(demo.text);
    if (!read.ok) return refuse(demo.file, read.refusal);
    return put(read.site, { name: "", saved: null }, { handle: null, changed: false });
  }

  async function openCopy(id: string, at?: number): Promise<boolean> {
    const record = await find(id, at);
    if (!record) return false;
    const read = readSite(record.text);
    if (!read.ok) return refuse("The kept copy", read.refusal);
    if (at === undefined) return putBack(read.site, record, await keeper.claim(record));
    if (!put(read.site, { name: record.file, saved: null }, { handle: null, changed: true })) return false;
    say(`This is the site as it was on ${timeWords(at)}. What was on the sheet stays as a kept copy.`);
    return true;
  }

  /** Opens a file that may be written again; one that another tab has on its sheet is only looked at. */
  async function openHandle(text: string, file: string, handle: FileHandle): Promise<boolean> {
    const other = await guarded(() => elsewhere.recordOf(handle), null);
    if (other !== null) return putKept(other.site, other.record, false);
    return openText(text, file, handle, await digestOf(text));
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
        if (picked === null) return false;
        const { text, name, handle } = picked;
        return handle ? await openHandle(text, name, handle) : openText(text, name);
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
    openDemo: (id) => openDemo(id),
    demos: () => loaded(gallery.loadAll, []),
    save: saving.save,
    saveAs: saving.saveAs,
    lookAtFile: saving.lookAtFile,
    hasUnsavedChanges: () => keeper.hasUnsavedChanges(),
    atRisk: () => keeper.atRisk(),
    ...shelf,
    openCopy: (id, at) => guarded(() => openCopy(id, at), false),
    takeOver: () => guarded(elsewhere.takeOver, false),
    workOnCopy() {
      const site = document.getState().history.present;
      return put(site, { name: "", saved: null }, { handle: null, changed: true });
    },
    async duplicateSite() {
      document.getState().commitGesture();
      const site = document.getState().history.present;
      const taken = await guarded(shelf.copies, []);
      const name = copyName(site.name ?? "", new Set(taken.map((copy) => copy.name)));
      if (document.getState().history.present !== site) return false;
      if (!put({ ...site, name }, { name: "", saved: null }, { handle: null, changed: true })) return false;
      say(`This is a copy of the site, kept as “${name}”. The site it was made from stays as it was.`);
      return true;
    },
    lookOnly: () => state.setState(({ elsewhere: now }) => ({ elsewhere: now && { ...now, isDecided: true } })),
    async overwriteChangedFile() {
      const { changedFile } = state.getState();
      if (!changedFile) return false;
      const { text, name } = changedFile;
      const isKept = await guarded(() => keepText(text, name).then(() => true), false);
      if (state.getState().changedFile !== changedFile) return false;
      if (isKept) return saving.overwrite();
      say(`${name} was not written over: what it holds could not be kept. Save the site as another file.`, "problem", [
        "save-as",
      ]);
      return false;
    },
    async openChangedFile() {
      const { changedFile } = state.getState();
      if (!changedFile) return false;
      const { text, name, handle } = changedFile;
      return openText(text, name, handle, await digestOf(text));
    },
    dismissChangedFile: () => state.setState({ changedFile: null }),
    dismissRefusal: () => state.setState({ refused: null }),
    keepDrawing: (drawing) => drawings.keep(drawing),
    settled: () => keeper.settled(),
  };
}
