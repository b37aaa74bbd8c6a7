/**
 * The page beside the sheet follows at an easy pace while something is dragged: lists that change sixty times a second
 * cannot be read, and drawing them would hold up the frames of the sheet. At all other times it follows at once.
 */
import type { StoreApi } from "zustand/vanilla";

export type Followed<T> = Pick<StoreApi<T>, "getState" | "subscribe">;

/** How often the lists follow a drag, milliseconds. */
export const SLOW_PACE = 250;

/**
 * Follows a store. A change for which `canWait` holds comes after at most SLOW_PACE milliseconds, the newest only; any
 * other at once. `hurry` is given a function that lets what waits come now.
 */
export function slowStore<T>(
  source: Followed<T>,
  canWait: (state: T, before: T) => boolean,
  hurry: (now: () => void) => void = () => undefined,
): Followed<T> & { getInitialState(): T } {
  const initial = source.getState();
  let shown = initial;
  let timer: ReturnType<typeof setTimeout> | null = null;
  const listeners = new Set<(state: T, before: T) => void>();
  const show = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const before = shown;
    shown = source.getState();
    if (shown === before) return;
    for (const listener of listeners) listener(shown, before);
  };
  source.subscribe((state) => {
    if (!canWait(state, shown)) show();
    else timer ??= setTimeout(show, SLOW_PACE);
  });
  hurry(show);
  return {
    getState: () => shown,
    getInitialState: () => initial,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
