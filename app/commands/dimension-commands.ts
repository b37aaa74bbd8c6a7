/** Dimensions without a pointer: one after the other is picked, and the last one drawn is taken away. */
import { drawnDimensions } from "../dimensions/dimension-at.ts";
import { removeDimension } from "../edits/dimension-edits.ts";
import { heldWords } from "../tools/dimension-hold.ts";
import type { Command } from "./command.ts";
import { makeEdit } from "./selection.ts";

const NONE = "No dimension has been drawn.";

/** Picks the dimension after the picked one, in the order of the file, and brings what it hangs on into view. */
const nextDimension: Command = {
  id: "next-dimension",
  label: "Next dimension",
  group: "Select",
  key: "Shift+Z",
  repeats: true,
  available: ({ document }) => (drawnDimensions(document.getState().shown).length > 0 ? true : NONE),
  run({ canvas, document, view }) {
    const site = document.getState().shown;
    const drawn = drawnDimensions(site);
    const { dimension, pickDimension, setTool } = view.getState();
    const at = drawn.findIndex((one) => one.dimension.id === dimension);
    const next = drawn[(at + 1) % drawn.length];
    if (!next) return;
    setTool("select");
    pickDimension(next.dimension.id);
    const ends = [next.dimension.from.element, next.dimension.to.element];
    canvas?.showElements(ends.filter((end) => end !== undefined));
    view.getState().say(heldWords(next, site.display?.units ?? "ft-in"));
  },
};

const lastDimension: Command = {
  id: "remove-dimension",
  label: "Take the last dimension away",
  group: "Change",
  available: ({ document }) => (document.getState().history.present.dimensions?.length ? true : NONE),
  run(editor) {
    const last = editor.document.getState().history.present.dimensions?.at(-1);
    if (last) makeEdit(editor, removeDimension(last.id));
  },
};

export const dimensionCommands: readonly Command[] = [nextDimension, lastDimension];
