/** Whether a finger points, rather than a mouse; follows a tablet that gets or loses one. */
import { useSyncExternalStore } from "react";

const QUERY = "(pointer: coarse)";

export function useCoarsePointer(): boolean {
  return useSyncExternalStore(listen, () => matchMedia(QUERY).matches);
}

function listen(changed: () => void): () => void {
  const media = matchMedia(QUERY);
  media.addEventListener("change", changed);
  return () => media.removeEventListener("change", changed);
}
