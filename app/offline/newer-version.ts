/** A newer version of the program that waits to be used. */
import { createStore } from "zustand/vanilla";

export interface NewerVersion {
  /** Starts it; the page then loads anew. */
  readonly use: (() => void) | null;
}

export const newerVersion = createStore<NewerVersion>(() => ({ use: null }));
