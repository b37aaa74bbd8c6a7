/** The editor within the page's components. */
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { Report } from "../rules/report.ts";
import type { Editor } from "./editor.ts";
import type { LiveState } from "./live/live-reports.ts";
import type { DocumentState } from "./site-document/store.ts";
import type { ViewState } from "./view/view-store.ts";

export const EditorContext = createContext<Editor | null>(null);

/** The editor. An error outside of an EditorContext. */
export function useEditor(): Editor {
  const editor = useContext(EditorContext);
  if (!editor) throw new Error("this component needs an EditorContext around it");
  return editor;
}

export function useDocument<T>(select: (state: DocumentState) => T): T {
  return useStore(useEditor().document, select);
}

export function useView<T>(select: (state: ViewState) => T): T {
  return useStore(useEditor().view, select);
}

export function useLive<T>(select: (state: LiveState) => T): T {
  return useStore(useEditor().live, select);
}

export function useReport(): Report | null {
  return useLive((state) => state.report);
}
