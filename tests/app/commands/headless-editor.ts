/** An editor without a page, for tests of commands: real document and view, and a record of what was asked of the rest. */
import { createClipboard } from "../../../app/clipboard/clipboard.ts";
import type { CanvasPort, EditorPorts } from "../../../app/commands/editor-ports.ts";
import type { Files } from "../../../app/files/files.ts";
import { createDocumentStore } from "../../../app/site-document/store.ts";
import { createViewStore } from "../../../app/view/view-store.ts";
import type { Finding, Report } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";

export interface HeadlessEditor extends EditorPorts {
  canvas: CanvasPort | null;
  /** What was asked of canvas, files and page, in order. */
  readonly asked: string[];
  /** Whether a tool has begun something that `cancel` gives up. */
  begun: boolean;
  /** Corners of the drawing that is under way. */
  corners: number;
  report: Report | null;
  said(): string | null;
}

export function headlessEditor(site: Site): HeadlessEditor {
  const asked: string[] = [];
  const view = createViewStore();
  const files = new Proxy({} as Files, {
    get: (_, name) => async () => {
      asked.push(`files.${String(name)}`);
      return true;
    },
  });
  const editor: HeadlessEditor = {
    document: createDocumentStore(site, { name: "", saved: null }),
    view,
    files,
    clipboard: createClipboard(null),
    live: { getState: () => ({ report: editor.report }) },
    asked,
    begun: false,
    corners: 0,
    report: null,
    canvas: {
      fit: () => asked.push("fit"),
      zoomBy: (factor) => asked.push(`zoom ${factor}`),
      panBy: (dx, dy) => asked.push(`pan ${dx} ${dy}`),
      showElements: (ids) => asked.push(`show ${ids.join(" ")}`),
      cancel() {
        const { begun } = editor;
        editor.begun = false;
        return begun;
      },
      takesBack: () => (editor.corners > 0 ? "Take back the last corner" : null),
      takeBack() {
        editor.corners -= 1;
      },
    },
    openDialog: (name) => asked.push(`dialog ${name}`),
    print: () => asked.push("print"),
    startWalk: () => asked.push("walk"),
    focusPart: (which) => asked.push(`focus ${which}`),
    said: () => view.getState().notice?.text ?? null,
  };
  return editor;
}

/** A finding with what the commands read of it. */
export function finding(id: string, section: string): Finding {
  return {
    id,
    rule: id,
    section,
    alsoSections: [],
    element: null,
    body: null,
    outcome: "review",
    measured: {},
    required: {},
    margin: null,
    witness: [],
    basis: "judgement",
    why: `Why of ${id}.`,
    remedy: "",
  };
}
