/** Files wired to the browser that the page runs in. */
import type { DocumentStore } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";
import { browserFiles } from "./file-access.ts";
import { createFiles, type Files, type FilesOptions } from "./files.ts";
import { FIRST_DEMO, loadDemo, loadDemos } from "./gallery.ts";
import { browserStore } from "./kept-store.ts";
import { browserTab, randomId } from "./tab.ts";

/** Call once, when the page loads; then `start()` puts the last site on the sheet. */
export function createBrowserFiles(
  page: Window,
  document: DocumentStore,
  view: ViewStore,
  parts: Pick<FilesOptions, "onOpened" | "onDrawing"> = {},
): Files {
  return createFiles({
    document,
    view,
    access: browserFiles(page),
    store: browserStore(),
    tab: () => browserTab(page),
    gallery: { first: FIRST_DEMO, load: loadDemo, loadAll: loadDemos },
    now: () => Date.now(),
    newRecordId: randomId,
    confirm: (question) => page.confirm(question),
    ...parts,
  });
}
