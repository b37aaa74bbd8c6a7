/** Remembers that the walk was taken or left. A browser that keeps nothing, as in a private window, offers it again. */
const KEY = "copperband-walk-seen";

type Keep = Pick<Storage, "getItem" | "setItem">;

/** The page's own storage; null where the browser denies it. */
export function walkStorage(page: Window): Keep | null {
  try {
    return page.localStorage;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

export function hasSeenWalk(storage: Keep | null): boolean {
  return storage?.getItem(KEY) === "yes";
}

/** False where it could not be kept. */
export function rememberWalk(storage: Keep | null): boolean {
  if (storage === null) return false;
  try {
    storage.setItem(KEY, "yes");
    return true;
  } catch (error) {
    // Storage that is full or denied says so by this kind of error.
    if (error instanceof DOMException) return false;
    throw error;
  }
}
