/** The editor, put together once when the page loads: document, view, reports, files and commands. */
import { createStore, type StoreApi } from "zustand/vanilla";
import { hostOf } from "./canvas/host-of.ts";
import { goOnWith, keepDrawings } from "./canvas/keep-drawing.ts";
import { browserClipboardStore, createClipboard } from "./clipboard/clipboard.ts";
import { COMMANDS, type CommandList } from "./commands/commands.ts";
import type { CanvasPort, DialogName, EditorPorts } from "./commands/editor-ports.ts";
import { createBrowserFiles } from "./files/browser-files.ts";
import { emptySite } from "./files/empty-site.ts";
import type { Files } from "./files/files.ts";
import { followDocument, type LiveStore, type WorkerPort } from "./live/live-reports.ts";
import { focusPagePartSoon } from "./panels/page-parts.ts";
import { createDocumentStore, type DocumentStore } from "./site-document/store.ts";
import { createViewStore, type ViewStore } from "./view/view-store.ts";
import { createWalkStore, type WalkStore } from "./walk/walk-state.ts";

export interface Editor extends EditorPorts {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly live: LiveStore;
  readonly files: Files;
  readonly commands: CommandList;
  /** What is open over the sheet. */
  readonly dialogs: StoreApi<{ readonly open: DialogName | null }>;
  readonly walk: WalkStore;
  canvas: CanvasPort | null;
}

/** Elements of a selection whose findings follow a drag at once. */
const MOST_WATCHED = 20;

/** Builds the editor on an empty sheet; `files.start()` then puts the last site on it. */
export function createEditor(page: Window): Editor {
  const document = createDocumentStore(emptySite(), { name: "", saved: null });
  const view = createViewStore();
  const dialogs = createStore<{ open: DialogName | null }>(() => ({ open: null }));
  const live = followDocument(
    document,
    () =>
      new Worker(new URL("./workers/recompute.worker.ts", import.meta.url), {
        type: "module",
      }) as unknown as WorkerPort,
    () => {
      const { finding, selection } = view.getState();
      return [...(finding === null ? [] : [finding]), ...selection.slice(0, MOST_WATCHED)];
    },
  );
  const editor: Editor = {
    document,
    view,
    live,
    commands: COMMANDS,
    clipboard: createClipboard(browserClipboardStore(page)),
    dialogs,
    walk: createWalkStore(),
    canvas: null,
    files: createBrowserFiles(page, document, view, {
      onOpened: () => editor.canvas?.fit(),
      onDrawing: (drawing) => goOnWith(drawing, hostOf(editor), view),
    }),
    openDialog: (open) => dialogs.setState({ open }),
    focusPart: (which) => focusPagePartSoon(page.document, which),
    async startWalk() {
      const { beginWalk } = await import("./walk/walk.ts");
      await beginWalk(editor);
    },
    print: () => dialogs.setState({ open: "print" }),
  };
  keepDrawings(hostOf(editor), (drawing) => editor.files.keepDrawing(drawing));
  return editor;
}
