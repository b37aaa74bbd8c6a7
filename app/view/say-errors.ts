/** Mistakes of the program that nobody caught: said on the sheet, once for each, so that nobody goes on unaware. */
import type { ViewStore } from "./view-store.ts";

/** Listens on the whole page. Returns what stops it. */
export function sayErrors(page: Window, view: ViewStore): () => void {
  const said = new Set<string>();
  const say = (reason: unknown) => {
    // What a browser only notes, as of a layout that it had to do twice, comes without an error.
    if (!(reason instanceof Error) || said.has(reason.message)) return;
    said.add(reason.message);
    const text = `Something in the program broke: ${reason.message}. Check the last change, and save the site to a file.`;
    view.getState().say(text, "problem", ["save"]);
  };
  const broke = (event: ErrorEvent) => say(event.error);
  const rejected = (event: PromiseRejectionEvent) => say(event.reason);
  page.addEventListener("error", broke);
  page.addEventListener("unhandledrejection", rejected);
  return () => {
    page.removeEventListener("error", broke);
    page.removeEventListener("unhandledrejection", rejected);
  };
}
