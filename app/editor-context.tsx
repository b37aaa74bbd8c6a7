/** The editor within the page's components. */
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { Report } from "../rules/report.ts";
import type { Editor } from "./editor.ts";
import type { LiveState } from "./live/live-reports.ts";
import { slowStore } from "./live/slow-store.ts";
import type { DocumentState } from "./site-document/store.ts";
import type { ViewState } from "./view/view-store.ts";

export const EditorContext = createContext<Editor | null>(null);

/** The editor. An error outside of an EditorContext. */
export function useEditor(): Editor {
  const editor = useContext(EditorContext);
  if (!editor) throw new Error("this component needs an EditorContext around it");
  return editor;
}

/** The document; what a drag previews comes at an easy pace. */
export function useDocument<T>(select: (state: DocumentState) => T): T {
  return useStore(slowed(useEditor()).document, select);
}

export function useView<T>(select: (state: ViewState) => T): T {
  return useStore(useEditor().view, select);
}

/** The reports; while something is dragged they come at an easy pace. */
export function useLive<T>(select: (state: LiveState) => T): T {
  return useStore(slowed(useEditor()).live, select);
}

/** The reports as they come: for a few words only, as every frame of a drag can bring one. */
export function useLiveAtOnce<T>(select: (state: LiveState) => T): T {
  return useStore(useEditor().live, select);
}

export function useReport(): Report | null {
  return useLive((state) => state.report);
}

const slowStores = new WeakMap<Editor, ReturnType<typeof makeSlow>>();

function slowed(editor: Editor): ReturnType<typeof makeSlow> {
  const known = slowStores.get(editor);
  if (known) return known;
  const made = makeSlow(editor);
  slowStores.set(editor, made);
  return made;
}

function makeSlow({ document, live }: Pick<Editor, "document" | "live">) {
  const isPreview = (state: DocumentState, before: DocumentState) =>
    state.gesture !== null && before.gesture !== null && state.refusal === before.refusal;
  return {
    document: slowStore(document, isPreview),
    live: slowStore(
      live,
      (state, before) => document.getState().gesture !== null && state.failure === before.failure,
      (now) =>
        document.subscribe((state, before) => {
          if (state.gesture === null && before.gesture !== null) now();
        }),
    ),
  };
}
