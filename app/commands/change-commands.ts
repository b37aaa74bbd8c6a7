/** Undo and redo, and what is done to the selection. */
import { deleteElements } from "../edits/delete-elements.ts";
import { duplicateElements } from "../edits/duplicate-elements.ts";
import { moveElements } from "../edits/move-elements.ts";
import { setOrder } from "../edits/set-order.ts";
import { ALWAYS, type Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";
import { hasSelection, makeEdit, selectedIds, selectionWords, tidySelection } from "./selection.ts";

const undoCommand: Command = {
  id: "undo",
  label: "Undo",
  group: "Change",
  key: "Mod+Z",
  repeats: true,
  labelNow: ({ document }) => namedStep("Undo", document.getState().history.past.at(-1)?.label),
  available: ({ document }) => (document.getState().history.past.length > 0 ? true : "There is nothing to undo."),
  run: (editor) => travel(editor, "undo"),
};

const redoCommand: Command = {
  id: "redo",
  label: "Redo",
  group: "Change",
  key: "Mod+Shift+Z",
  otherKeys: ["Mod+Y"],
  repeats: true,
  labelNow: ({ document }) => namedStep("Redo", document.getState().history.future[0]?.label),
  available: ({ document }) => (document.getState().history.future.length > 0 ? true : "There is nothing to redo."),
  run: (editor) => travel(editor, "redo"),
};

const duplicateCommand: Command = {
  id: "duplicate",
  label: "Duplicate",
  group: "Change",
  key: "Mod+D",
  labelNow: (editor) => named("Duplicate", editor),
  available: hasSelection,
  run(editor) {
    const ids = selectedIds(editor);
    if (!makeEdit(editor, duplicateElements(ids))) return;
    const { elements } = editor.document.getState().history.present;
    editor.view.getState().select(elements.slice(-ids.length).map((element) => element.id));
  },
};

const deleteCommand: Command = {
  id: "delete",
  label: "Delete",
  group: "Change",
  key: "Delete",
  otherKeys: ["Backspace"],
  labelNow: (editor) => named("Delete", editor),
  available: hasSelection,
  run(editor) {
    const words = selectionWords(editor);
    if (!makeEdit(editor, deleteElements(selectedIds(editor)))) return;
    editor.view.getState().select([]);
    editor.view.getState().say(`Deleted ${words}.`);
  },
};

const onTop = orderCommand("over", "Lay on top", "}");
const underneath = orderCommand("under", "Lay underneath", "{");

const selectAll: Command = {
  id: "select-all",
  label: "Select all",
  group: "Select",
  key: "Mod+A",
  available: ({ document }) => (document.getState().history.present.elements.length > 0 ? true : "The sheet is empty."),
  run: ({ document, view }) => view.getState().select(document.getState().history.present.elements.map(({ id }) => id)),
};

/** Gives up one thing at a time, the nearest at hand first. */
const letGo: Command = {
  id: "escape",
  label: "Let go",
  group: "Select",
  key: "Escape",
  available: ALWAYS,
  run({ canvas, document, view }) {
    if (canvas?.cancel()) return;
    if (document.getState().gesture) return document.getState().cancelGesture();
    const { tool, finding, selection, part, setTool, chooseFinding, select, choosePart } = view.getState();
    if (document.getState().refusal) document.getState().clearRefusal();
    if (tool !== "select") setTool("select");
    else if (finding !== null) chooseFinding(null);
    else if (selection.length > 0) select([]);
    else if (part !== null) choosePart(null);
  },
};

export const changeCommands: readonly Command[] = [
  undoCommand,
  redoCommand,
  duplicateCommand,
  deleteCommand,
  onTop,
  underneath,
  selectAll,
  letGo,
];

/** How far an arrow key moves what is selected, inches; with Shift. */
export const NUDGE = 1;
export const BIG_NUDGE = 12;

/** Moves the selection as one step of its own. Holding a key down is one gesture: see keyboard.ts. */
export function nudge(dx: number, dy: number): Pick<Command, "available" | "run"> {
  return {
    available: hasSelection,
    run: (editor) => {
      makeEdit(editor, moveElements(selectedIds(editor), dx, dy));
    },
  };
}

function travel(editor: EditorPorts, way: "undo" | "redo"): void {
  const { document, view } = editor;
  const { history } = document.getState();
  const label = way === "undo" ? history.past.at(-1)?.label : history.future[0]?.label;
  document.getState()[way]();
  tidySelection(editor);
  if (label !== undefined) view.getState().say(`${way === "undo" ? "Undone" : "Done again"}: ${label}.`);
}

function orderCommand(place: "over" | "under", label: string, key: string): Command {
  return {
    id: place === "over" ? "lay-on-top" : "lay-underneath",
    label,
    group: "Change",
    key,
    available: (editor) => (selectedIds(editor).length === 1 ? true : "Select one element first."),
    run(editor) {
      const [id] = selectedIds(editor);
      if (id !== undefined) makeEdit(editor, setOrder(id, place));
    },
  };
}

function named(verb: string, editor: EditorPorts): string {
  return hasSelection(editor) === true ? `${verb} ${selectionWords(editor)}` : verb;
}

function namedStep(verb: string, label: string | undefined): string {
  return label === undefined ? verb : `${verb}: ${label}`;
}
