/** Whether the walk is on the page; all else of it is loaded when it is. */
import { createStore, type StoreApi } from "zustand/vanilla";

export interface WalkState {
  /** The step that is shown, from 0; null while there is no walk. */
  readonly step: number | null;
  /** Whether it was asked for, so that the focus goes to it; on the first visit the focus stays where it is. */
  readonly isAsked: boolean;
}

export type WalkStore = StoreApi<WalkState>;

export function createWalkStore(): WalkStore {
  return createStore<WalkState>(() => ({ step: null, isAsked: false }));
}
