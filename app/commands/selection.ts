/** What commands do with the selection. */

import type { Edit } from "../edits/edit.ts";
import { wordsFor } from "../edits/element-words.ts";
import type { EditorPorts } from "./editor-ports.ts";

/** The selected elements that the document still holds, in the order of the file. */
export function selectedIds(editor: EditorPorts): string[] {
  const selected = new Set(editor.view.getState().selection);
  return editor.document
    .getState()
    .history.present.elements.filter((element) => selected.has(element.id))
    .map((element) => element.id);
}

/** True, or that nothing is selected. */
export function hasSelection(editor: EditorPorts): true | string {
  return selectedIds(editor).length > 0 ? true : "Select something first.";
}

export function selectionWords(editor: EditorPorts): string {
  return wordsFor(editor.document.getState().history.present, selectedIds(editor));
}

/** Makes an edit as one step; a refusal is said. True when it was made. */
export function makeEdit(editor: EditorPorts, edit: Edit): boolean {
  const refusal = editor.document.getState().edit(edit);
  if (!refusal) return true;
  editor.view.getState().say(refusal.reason, "problem");
  return false;
}

/** Drops from the selection what the document no longer holds. */
export function tidySelection(editor: EditorPorts): void {
  const { selection, select } = editor.view.getState();
  const left = selectedIds(editor);
  if (left.length !== selection.length) select(left);
}
