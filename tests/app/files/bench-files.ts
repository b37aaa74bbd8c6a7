/** Files on a machine that exists in memory only, for tests: kept copies, pickers and tabs that can be made to fail. */

import { emptySite } from "../../../app/files/empty-site.ts";
import type { FileAccess, FileHandle, PickedFile } from "../../../app/files/file-access.ts";
import { createFiles, type Files } from "../../../app/files/files.ts";
import type { Demo } from "../../../app/files/gallery.ts";
import type { KeptDrawing } from "../../../app/files/kept-drawing.ts";
import type { KeptStore } from "../../../app/files/kept-store.ts";
import type { TabMessage } from "../../../app/files/tab.ts";
import { createDocumentStore, type DocumentStore } from "../../../app/site-document/store.ts";
import { createViewStore, type ViewStore } from "../../../app/view/view-store.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { sampleYard } from "../edits/yard.ts";

/** The browser's store, kept over "reloads" by handing it to the next page. */
export class MemoryStore implements KeptStore {
  readonly values = new Map<string, unknown>();
  /** What every call fails with; null: nothing. */
  failure: Error | null = null;
  /** Values that it has room for. */
  room = Number.POSITIVE_INFINITY;
  /** Writes of copies as they are now. */
  writes = 0;

  /** What every answer waits for; null: nothing. */
  silence: Promise<void> | null = null;

  private async answer<T>(give: () => T): Promise<T> {
    await (this.silence ?? Promise.resolve());
    if (this.failure) throw this.failure;
    return give();
  }

  keys = () => this.answer(() => [...this.values.keys()]);
  get = (key: string): Promise<unknown> => this.answer(() => structuredClone(this.values.get(key)));
  update = (key: string, change: (now: unknown) => unknown): Promise<void> =>
    this.answer(() => {
      const next = change(structuredClone(this.values.get(key)));
      if (key.startsWith("site/")) this.writes++;
      this.values.set(key, structuredClone(next));
    });
  set = (key: string, value: unknown) =>
    this.answer(() => {
      if (this.room <= this.values.size && !this.values.has(key)) throw problem("QuotaExceededError");
      this.values.set(key, structuredClone(value));
    });
  delete = (key: string) => this.answer(() => void this.values.delete(key));
}

export class MemoryFile implements FileHandle {
  failure: Error | null = null;
  closed = true;
  constructor(
    readonly name: string,
    public content: string,
  ) {}

  isSameEntry = async (other: FileHandle): Promise<boolean> => other === (this as FileHandle);
  getFile: FileHandle["getFile"] = async () => ({ text: async () => this.content });
  createWritable = async () => {
    let written = "";
    this.closed = false;
    return {
      write: async (text: string) => {
        if (this.failure) throw this.failure;
        written += text;
      },
      close: async () => {
        this.content = written;
        this.closed = true;
      },
      abort: async () => {
        this.closed = true;
      },
    };
  };
}

export interface Machine {
  readonly store: MemoryStore;
  /** Ids of tabs that run beside this one. */
  readonly running: Set<string>;
  /** What the tabs hear of each other. */
  readonly ears: Map<string, ((message: TabMessage) => void)[]>;
  /** What the person picks next; null: they cancel. */
  toOpen: PickedFile | null;
  toSave: MemoryFile | null;
  canPick: boolean;
  /** Whether a file may be read without asking. */
  mayPeek: boolean;
  pickFailure: Error | null;
  readonly downloads: { name: string; text: string }[];
  /** What the person says when asked whether to lose changes. */
  agrees: boolean;
  readonly questions: string[];
  clock: number;
  records: number;
}

export function machine(): Machine {
  return {
    store: new MemoryStore(),
    running: new Set(),
    ears: new Map(),
    toOpen: null,
    toSave: null,
    canPick: true,
    mayPeek: true,
    pickFailure: null,
    downloads: [],
    agrees: false,
    questions: [],
    clock: 1000,
    records: 0,
  };
}

export interface Page {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly files: Files;
  readonly opened: () => number;
  /** Drawings that the page was asked to go on with. */
  readonly drawings: readonly KeptDrawing[];
  said(): { readonly text: string; readonly kind: string } | null;
}

const DEMO: Demo = { id: "first", file: "first.site.json", title: "First", note: "", text: writeSite(sampleYard()) };

/** A page just loaded in a tab of the machine. */
export function page(on: Machine, tab = "tab-1", demos: readonly Demo[] | "unreachable" = [DEMO]): Page {
  const reached = async () => {
    if (demos === "unreachable") throw new Error("no network");
    return demos;
  };
  const document = createDocumentStore(emptySite(), { name: "", saved: null });
  const view = createViewStore();
  let opened = 0;
  const drawings: KeptDrawing[] = [];
  const access: FileAccess = {
    get canPickToSave() {
      return on.canPick;
    },
    async pickToOpen() {
      if (on.pickFailure) throw on.pickFailure;
      return on.toOpen;
    },
    async pickToSave() {
      if (on.pickFailure) throw on.pickFailure;
      return on.toSave;
    },
    read: async (handle) => (await handle.getFile()).text(),
    peek: async (handle) => (on.mayPeek ? (await handle.getFile()).text() : null),
    async write(handle, text) {
      const writable = await handle.createWritable();
      await writable.write(text);
      await writable.close();
    },
    download: (name, text) => on.downloads.push({ name, text }),
  };
  const files = createFiles({
    document,
    view,
    access,
    store: on.store,
    tab: async () => {
      const ears: ((message: TabMessage) => void)[] = [];
      on.ears.set(tab, ears);
      on.running.add(tab);
      return {
        id: tab,
        isRunning: async (other) => on.running.has(other) && other !== tab,
        say(message) {
          for (const [other, heard] of on.ears) {
            if (other !== tab && on.running.has(other)) for (const ear of heard) queueMicrotask(() => ear(message));
          }
        },
        hear: (listener) => ears.push(listener),
      };
    },
    gallery: {
      first: "first",
      load: async (id) => (await reached()).find((demo) => demo.id === id) ?? null,
      loadAll: async () => [...(await reached())],
    },
    now: () => on.clock++,
    newRecordId: () => `record-${++on.records}`,
    confirm(question) {
      on.questions.push(question);
      return on.agrees;
    },
    onOpened: () => opened++,
    onDrawing: (drawing) => drawings.push(drawing) > 0,
  });
  return { document, view, files, drawings, opened: () => opened, said: () => view.getState().notice };
}

export function problem(name: string, message = "It failed."): Error {
  return new DOMException(message, name);
}
