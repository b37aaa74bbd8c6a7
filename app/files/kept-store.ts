/** Where copies are kept: a small store of named values, IndexedDB in the browser. */
import { createStore, del, get, keys, set, update } from "idb-keyval";
import type { FileHandle } from "./file-access.ts";

/** The copy of one site. */
export interface KeptRecord {
  readonly id: string;
  /** The tab that keeps it: only this one may write it. */
  readonly tab: string;
  /** The site's name, for a list. */
  readonly name: string;
  /** The file it came from or goes to; empty when it has none. */
  readonly file: string;
  /** The text of its site file. */
  readonly text: string;
  /** Whether the file on the machine holds the same. */
  readonly saved: boolean;
  /** Whether anything was changed since it was opened; a demo that was only looked at was not. */
  readonly changed: boolean;
  /** When it was kept, milliseconds since 1970. */
  readonly at: number;
  /** The file itself, where the browser lets it be written again. */
  readonly handle?: FileHandle;
  /** What the file held when it was last read or written here: see digest.ts. */
  readonly digest?: string;
}

/** A store of named values. Every method may reject with the browser's own error. */
export interface KeptStore {
  keys(): Promise<readonly string[]>;
  /** Undefined when there is none. */
  get(key: string): Promise<unknown>;
  set(key: string, value: unknown): Promise<void>;
  /** Reads and writes in one go that no other tab comes between. What `change` throws leaves the value and is passed on. */
  update(key: string, change: (now: unknown) => unknown): Promise<void>;
  delete(key: string): Promise<void>;
}

/** The browser's own store. Opened at the first use, so that a browser without one fails there, where it is told. */
export function browserStore(): KeptStore {
  const store = createStore("copperband", "kept");
  return {
    keys: async () => (await keys(store)).map(String),
    get: async (key) => get(key, store),
    set: async (key, value) => set(key, value, store),
    update: async (key, change) => update(key, change, store),
    delete: async (key) => del(key, store),
  };
}

/** True for a value that can be read as a record, its text still unread. */
export function isRecord(value: unknown): value is KeptRecord {
  if (typeof value !== "object" || value === null) return false;
  const { id, text, tab, at } = value as Readonly<Record<string, unknown>>;
  return typeof id === "string" && typeof text === "string" && typeof tab === "string" && typeof at === "number";
}

/** True for the error of a store that has no room left. */
export function isFull(error: unknown): boolean {
  return error instanceof Error && error.name === "QuotaExceededError";
}

/** What to tell the person when the store fails. */
export function storeProblem(error: unknown): string {
  const name = error instanceof Error ? error.name : "";
  if (isFull(error)) {
    return "The browser's storage is full, so no copy of this site is being kept. Save it to a file, or delete kept copies.";
  }
  if (["SecurityError", "InvalidStateError", "UnknownError", "ReferenceError", "NotFoundError"].includes(name)) {
    return "This browser window keeps no copies (it may be a private one). Save the site to a file.";
  }
  const said = error instanceof Error ? error.message : String(error);
  return `No copy of this site could be kept in the browser (${said}). Save it to a file.`;
}
