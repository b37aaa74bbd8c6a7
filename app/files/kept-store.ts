/** Where copies are kept: a small store of named values, IndexedDB in the browser. */
import { createStore, del, entries, set } from "idb-keyval";
import type { FileHandle } from "./file-access.ts";

/** The copy of one site. */
export interface KeptRecord {
  readonly id: string;
  /** The tab that keeps it. */
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
}

/** A store of named values. Every method may reject with the browser's own error. */
export interface KeptStore {
  entries(): Promise<readonly (readonly [string, unknown])[]>;
  set(key: string, value: unknown): Promise<void>;
  delete(key: string): Promise<void>;
}

/** The browser's own store. Opened at the first use, so that a browser without one fails there, where it is told. */
export function browserStore(): KeptStore {
  const store = createStore("copperband", "kept");
  return {
    entries: async () => (await entries<string, unknown>(store)).map(([key, value]) => [String(key), value] as const),
    set: async (key, value) => set(key, value, store),
    delete: async (key) => del(key, store),
  };
}

/** True for a value that can be read as a record, its text still unread. */
export function isRecord(value: unknown): value is KeptRecord {
  if (typeof value !== "object" || value === null) return false;
  const { id, text, tab, at } = value as Readonly<Record<string, unknown>>;
  return typeof id === "string" && typeof text === "string" && typeof tab === "string" && typeof at === "number";
}

/** What to tell the person when the store fails. */
export function storeProblem(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") {
    return "The browser's storage is full, so no copy of this site is being kept. Save it to a file.";
  }
  if (["SecurityError", "InvalidStateError", "UnknownError", "ReferenceError", "NotFoundError"].includes(name)) {
    return "This browser window keeps no copies (it may be a private one). Save the site to a file.";
  }
  const said = error instanceof Error ? error.message : String(error);
  return `No copy of this site could be kept in the browser (${said}). Save it to a file.`;
}
