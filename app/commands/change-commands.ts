/** Undo and redo, and what is done to the selection. */
import { drawnDimension } from "../dimensions/dimension-at.ts";
import { deleteElements } from "../edits/delete-elements.ts";
import { removeDimension } from "../edits/dimension-edits.ts";
import { moveElements } from "../edits/move-elements.ts";
import { ALWAYS, type Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";
import { hasSelection, makeEdit, selectedIds, selectionWords, tidySelection } from "./selection.ts";

const undoCommand: Command = {
  id: "undo",
  label: "Undo",
  group: "Change",
  key: "Mod+Z",
  repeats: true,
  labelNow: (editor) => takesBack(editor) ?? namedStep("Undo", nextBack(editor)),
  available: (editor) => {
    if (takesBack(editor) !== null) return true;
    const { locked } = editor.document.getState();
    return locked ?? (nextBack(editor) === undefined ? "There is nothing to undo." : true);
  },
  run(editor) {
    // What is being drawn is nearer at hand than the steps behind it.
    if (takesBack(editor) !== null) editor.canvas?.takeBack();
    else travel(editor, "undo");
  },
};

const redoCommand: Command = {
  id: "redo",
  label: "Redo",
  group: "Change",
  key: "Mod+Shift+Z",
  otherKeys: ["Mod+Y"],
  repeats: true,
  labelNow: ({ document }) => namedStep("Redo", document.getState().history.future[0]?.label),
  available: ({ document }) => {
    const { locked, history } = document.getState();
    return locked ?? (history.future.length > 0 ? true : "There is nothing to redo.");
  },
  run: (editor) => travel(editor, "redo"),
};

const deleteCommand: Command = {
  id: "delete",
  label: "Delete",
  group: "Change",
  key: "Delete",
  otherKeys: ["Backspace"],
  labelNow: (editor) => (pickedDimension(editor) ? "Take the dimension away" : named("Delete", editor)),
  available: (editor) => (pickedDimension(editor) ? true : hasSelection(editor)),
  run(editor) {
    const picked = pickedDimension(editor);
    if (picked) {
      if (makeEdit(editor, removeDimension(picked.dimension.id))) editor.view.getState().pickDimension(null);
      return;
    }
    if (!makeEdit(editor, deleteElements(selectedIds(editor)))) return;
    editor.view.getState().select([]);
    const done = editor.document.getState().history.past.at(-1)?.label ?? "Delete";
    editor.view.getState().say(`${done.replace(/^Delete/, "Deleted")}.`);
  },
};

const stepsCommand: Command = {
  id: "steps",
  label: "Steps taken",
  group: "Change",
  key: "Shift+H",
  available: ALWAYS,
  run: (editor) => editor.openDialog("steps"),
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
    const { tool, adding, finding, selection, part } = view.getState();
    const { setTool, setAdding, pickDimension, chooseFinding, select, choosePart } = view.getState();
    if (document.getState().refusal) document.getState().clearRefusal();
    if (tool !== "select") setTool("select");
    else if (adding) setAdding(false);
    else if (pickedDimension({ document, view })) pickDimension(null);
    else if (finding !== null) chooseFinding(null);
    else if (selection.length > 0) select([]);
    else if (part !== null) choosePart(null);
  },
};

export const changeCommands: readonly Command[] = [undoCommand, redoCommand, stepsCommand, deleteCommand, letGo];

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

/** What undo does, and is called, while something is being drawn; null: nothing is. */
function takesBack({ canvas }: EditorPorts): string | null {
  return canvas?.takesBack() ?? null;
}

function pickedDimension({ document, view }: Pick<EditorPorts, "document" | "view">) {
  return drawnDimension(document.getState().history.present, view.getState().dimension);
}

/** The label of what undo would take back: the move under way, else the last step. */
function nextBack({ document }: EditorPorts): string | undefined {
  const { gesture, history } = document.getState();
  return gesture?.label ?? history.past.at(-1)?.label;
}

function travel(editor: EditorPorts, way: "undo" | "redo"): void {
  const { document, view } = editor;
  const label = way === "undo" ? nextBack(editor) : document.getState().history.future[0]?.label;
  document.getState()[way]();
  tidySelection(editor);
  if (label !== undefined) view.getState().say(`${way === "undo" ? "Undone" : "Done again"}: ${label}.`);
}

function named(verb: string, editor: EditorPorts): string {
  return hasSelection(editor) === true ? `${verb} ${selectionWords(editor)}` : verb;
}

function namedStep(verb: string, label: string | undefined): string {
  return label === undefined ? verb : `${verb}: ${label}`;
}
