/** What is done to one corner or side of the selected element, and to two lines that meet. */
import type { PoolElement } from "../../rules/site/elements.ts";
import { hostOf } from "../canvas/host-of.ts";
import { refuseLocked } from "../edits/arrangement.ts";
import { calledAs } from "../edits/element-words.ts";
import { joinPaths } from "../edits/join-paths.ts";
import { TAKE_UP } from "../tools/given-up.ts";
import type { Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";
import { makeEdit, selectedIds } from "./selection.ts";

const stepCommand = (id: string, label: string, key: string): Command => ({
  id,
  label,
  group: "Change",
  key,
  repeats: true,
  available: (editor) => (selectedIds(editor).length === 1 ? true : "Select one element first."),
  run(editor) {
    editor.view.getState().setTool("select");
    if (!hostOf(editor).key({ key, shift: false })) {
      editor.view.getState().say("That has no corners to choose from.", "problem");
    }
  },
});

function placeOf(editor: EditorPorts): "corner" | "middle" | null {
  return hostOf(editor).tool.place?.()?.kind ?? null;
}

const corner = (editor: EditorPorts): true | string =>
  placeOf(editor) === "corner" ? true : "Choose a corner of the selected element first: click it, or press the period.";
const side = (editor: EditorPorts): true | string =>
  placeOf(editor) === "middle"
    ? true
    : "Choose a side of the selected element first: click its middle, or press the period.";

const pressed = (id: string, label: string, key: string, available: Command["available"]): Command => ({
  id,
  label,
  group: "Change",
  available,
  run: (editor) => hostOf(editor).press(key),
});

/** Commands that ask for a radius put the keys into its field. */
const asking = (id: string, label: string, available: Command["available"]): Command => ({
  id,
  label,
  group: "Change",
  available,
  run: (editor) => hostOf(editor).askForText(),
});

const joinCommand: Command = {
  id: "join-lines",
  label: "Join lines or outlines that meet",
  group: "Change",
  key: "Shift+V",
  available(editor) {
    const count = selectedIds(editor).length;
    return count === 1 || count === 2
      ? true
      : "Select two lines that end at one place, two outlines that lie edge to edge, or one line whose ends meet.";
  },
  run(editor) {
    const [first, second = first] = selectedIds(editor);
    if (first === undefined || second === undefined) return;
    if (makeEdit(editor, joinPaths(first, second))) editor.view.getState().select([first]);
  },
};

/** The one selected pool. */
function selectedPool(editor: EditorPorts): PoolElement | null {
  const [id, ...others] = selectedIds(editor);
  const { elements } = editor.document.getState().history.present;
  const element = others.length > 0 ? undefined : elements.find((one) => one.id === id);
  return element?.kind === "pool" ? (element as PoolElement) : null;
}

const poolDimensions: Command = {
  id: "pool-dimensions",
  label: "Change the pool's dimensions",
  group: "Change",
  key: "Shift+X",
  available: (editor) => (selectedPool(editor) ? true : "Select one pool first."),
  async run(editor) {
    const pool = selectedPool(editor);
    if (!pool) return;
    const { view, document } = editor;
    const refusal = refuseLocked(document.getState().history.present, [pool.id]);
    if (refusal) {
      view.getState().say(refusal.reason, "problem");
      return;
    }
    const { recognized } = await import("../pool-shapes/recognize.ts");
    // Whoever went on meanwhile, on this site or another, has something else in hand.
    if (selectedPool(editor) !== pool) return;
    const found = recognized(pool.outline);
    if (!found) {
      view
        .getState()
        .say(
          `${calledAs(pool)} has a free outline, which no shape's dimensions give. Pull its corners, or type them under Facts.`,
          "problem",
        );
      return;
    }
    const { shape, sizes, first, isClockwise } = found;
    const { at, turn, isMirrored } = found.placing;
    view.getState().reshapePool({ id: pool.id, shape, sizes, at, turn, isMirrored, first, isClockwise });
    editor.canvas?.showElements([pool.id]);
    hostOf(editor).askForText();
  },
};

const takeUpDrawing: Command = {
  id: TAKE_UP,
  label: "Take the drawing up again",
  group: "Draw",
  available: (editor) => (hostOf(editor).canTakeUp ? true : "No drawing was given up on this sheet."),
  run(editor) {
    hostOf(editor).takeUp();
    editor.view.getState().unsay();
  },
};

export const reshapeCommands: readonly Command[] = [
  stepCommand("next-place", "Next corner or side", "."),
  stepCommand("previous-place", "Corner or side before", ","),
  asking("round-corner", "Round the corner by a radius", corner),
  pressed("remove-corner", "Take the corner out", "Delete", corner),
  asking("bend-side", "Bend the side by a radius", side),
  pressed("arc-side", "Make the side an arc, or straight", "a", side),
  pressed("put-corner", "Put a corner into the side", "Insert", side),
  pressed("cut-at-place", "Cut the line at this place", "Shift+C", (editor) =>
    placeOf(editor) ? true : String(corner(editor)),
  ),
  poolDimensions,
  joinCommand,
  takeUpDrawing,
];
