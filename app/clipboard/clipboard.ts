/**
 * What was copied, to be pasted on this sheet or another, in this tab or another: kept by the browser where it may be,
 * else for as long as the page is open.
 */
import { readTaken, type Taken, takenText } from "../edits/paste-elements.ts";

export interface Clipboard {
  put(taken: Taken): void;
  /** What was copied last, in whichever tab; null when nothing was, or nothing that can be read. */
  get(): Taken | null;
  /** How often this has been pasted beside its originals already; counts one more. */
  nextPaste(): number;
}

/** The part of the browser's store that is needed. */
export type ClipboardStore = Pick<Storage, "getItem" | "setItem">;

const KEY = "copperband-copied";

/** `store` null: only this page. */
export function createClipboard(store: ClipboardStore | null): Clipboard {
  let text: string | null = null;
  let read: { readonly text: string; readonly taken: Taken | null } | null = null;
  let pastes = 0;
  /** False once the browser keeps an older text than this page does: it had no room for the newest. */
  let isStoreNewest = store !== null;

  function newest(): string | null {
    if (!store || !isStoreNewest) return text;
    const kept = stored(() => store.getItem(KEY));
    return kept ?? text;
  }

  return {
    put(taken) {
      text = takenText(taken);
      pastes = 0;
      const kept = text;
      isStoreNewest = stored(() => store?.setItem(KEY, kept)) !== null && store !== null;
    },
    get() {
      const now = newest();
      if (now === null) return null;
      if (read?.text !== now) {
        read = { text: now, taken: readTaken(now) };
        if (now !== text) pastes = 0;
        text = now;
      }
      return read.taken;
    },
    nextPaste: () => ++pastes,
  };
}

/** The browser's store throws where it is full or switched off; the page then goes on by itself. */
function stored<T>(action: () => T): T | null {
  try {
    return action();
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

/** The browser's own store, or null where even asking for it is forbidden. */
export function browserClipboardStore(page: Window): ClipboardStore | null {
  return stored(() => page.localStorage);
}
