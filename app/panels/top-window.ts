/**
 * The window that stands over the page and keeps the focus. The rest of the page can then be neither pressed nor heard: what
 * it has to say meanwhile is said in the window.
 */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";

const windows = createStore<{ readonly open: readonly HTMLElement[] }>(() => ({ open: [] }));

/** A window has come up over the page and those before it. Returns what says that it has gone. */
export function comesUp(box: HTMLElement): () => void {
  windows.setState(({ open }) => ({ open: [...open, box] }));
  return () => windows.setState(({ open }) => ({ open: open.filter((one) => one !== box) }));
}

/** The uppermost window; null: none. */
export function useTopWindow(): HTMLElement | null {
  return useStore(windows, ({ open }) => open.at(-1) ?? null);
}
