/** What commands do with the selection. */

import { drawnDimension } from "../dimensions/dimension-at.ts";
import { groupOf, lockedIds, pickableElements } from "../edits/arrangement.ts";
import type { Edit } from "../edits/edit.ts";
import { wordsFor } from "../edits/element-words.ts";
import { drawnOf } from "../view/hidden-parts.ts";
import type { Command } from "./command.ts";
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

/** Makes an edit that adds elements at the end of the site, and selects what it added. True when it was made. */
export function makeCopies(editor: EditorPorts, edit: Edit): boolean {
  const before = editor.document.getState().history.present.elements.length;
  if (!makeEdit(editor, edit)) return false;
  const { elements } = editor.document.getState().history.present;
  editor.view.getState().select(elements.slice(before).map(({ id }) => id));
  return true;
}

/** Drops from what is chosen what the document no longer holds. */
export function tidySelection(editor: EditorPorts): void {
  const { selection, dimension, select, pickDimension } = editor.view.getState();
  if (dimension !== null && !drawnDimension(editor.document.getState().history.present, dimension)) pickDimension(null);
  const left = selectedIds(editor);
  if (left.length !== selection.length) select(left);
}

const hasElements = ({ document }: EditorPorts): true | string =>
  document.getState().history.present.elements.length > 0 ? true : "The sheet is empty.";

/** Selects what of these is drawn: what nobody sees is not changed by the way. Says how many, and how many stay out. */
function choose(editor: EditorPorts, pickable: readonly string[], among: number): void {
  const { select, say, hiddenParts } = editor.view.getState();
  const ids = drawnOf(pickable, editor.live.getState().report, hiddenParts);
  select(ids);
  const left = among - ids.length;
  const words = ids.length === 1 ? "1 element selected" : `${ids.length} elements selected`;
  say(left > 0 ? `${words}; ${left} locked or hidden left out.` : `${words}.`);
}

const selectAll: Command = {
  id: "select-all",
  label: "Select all",
  group: "Select",
  key: "Mod+A",
  available: hasElements,
  run(editor) {
    const site = editor.document.getState().history.present;
    const ids = pickableElements(site).map(({ id }) => id);
    choose(editor, ids, site.elements.length);
  },
};

const selectKind: Command = {
  id: "select-kind",
  label: "Select all of this kind",
  group: "Select",
  key: "Z",
  available: hasSelection,
  run(editor) {
    const site = editor.document.getState().history.present;
    const chosen = new Set(selectedIds(editor));
    const kinds = new Set(site.elements.filter(({ id }) => chosen.has(id)).map(({ kind }) => kind));
    const alike = site.elements.filter(({ kind }) => kinds.has(kind));
    const ids = pickableElements(site)
      .filter(({ kind }) => kinds.has(kind))
      .map(({ id }) => id);
    choose(editor, ids, alike.length);
  },
};

const invertSelection: Command = {
  id: "select-others",
  label: "Select everything else",
  group: "Select",
  key: "Shift+I",
  available: hasElements,
  run(editor) {
    const site = editor.document.getState().history.present;
    const chosen = new Set(selectedIds(editor));
    const ids = pickableElements(site).flatMap(({ id }) => (chosen.has(id) ? [] : [id]));
    choose(editor, ids, site.elements.length - chosen.size);
  },
};

const selectGroup: Command = {
  id: "select-group",
  label: "Select the whole group",
  group: "Select",
  available(editor) {
    const site = editor.document.getState().history.present;
    const isGrouped = selectedIds(editor).some((id) => groupOf(site, id).length > 1);
    return isGrouped ? true : "Nothing selected is in a group.";
  },
  run(editor) {
    const site = editor.document.getState().history.present;
    editor.view.getState().select([...new Set(selectedIds(editor).flatMap((id) => groupOf(site, id)))]);
  },
};

const addToSelection: Command = {
  id: "select-more",
  label: "Add what is picked to the selection",
  group: "Select",
  labelNow: ({ view }) =>
    view.getState().adding ? "Pick one thing at a time again" : "Add what is picked to the selection",
  available: hasElements,
  run(editor) {
    const { adding, setAdding, setTool, say } = editor.view.getState();
    setTool("select");
    setAdding(!adding);
    say(
      adding
        ? "What is picked next stands alone."
        : "What is picked next is added to the selection; picked again, it is taken out.",
    );
  },
};

const find: Command = {
  id: "find",
  label: "Find an element by name",
  group: "Select",
  key: "Mod+F",
  available: hasElements,
  run(editor) {
    const { setPanel, showColumn, askToFind } = editor.view.getState();
    setPanel("outline");
    showColumn("details");
    askToFind();
  },
};

export const selectCommands: readonly Command[] = [
  selectAll,
  selectKind,
  invertSelection,
  selectGroup,
  addToSelection,
  find,
];

/** True when everything that is selected is locked. */
export function isAllLocked(editor: EditorPorts): boolean {
  const locked = lockedIds(editor.document.getState().history.present);
  const ids = selectedIds(editor);
  return ids.length > 0 && ids.every((id) => locked.has(id));
}
