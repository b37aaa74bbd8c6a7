/**
 * Cuts an element in two: a line where it is pressed, an outline between two places of it.
 *
 * States: aiming; from (one place of an outline is pressed, the cut runs to the pointer).
 */

import type { Point } from "../../geometry/types.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import type { PathPlace } from "../edits/cut-path.ts";
import { calledAs } from "../edits/element-words.ts";
import { isOutline, splitLine, splitOutline } from "../edits/split-element.ts";
import { type Aimed, lockedReason, pathUnder, placeUnder } from "./aimed-path.ts";
import { TAKE_BACK } from "./take-back.ts";
import type { Desk, OverlayShape, Pointer, Tool } from "./tool.ts";

type Place = PathPlace & { readonly at: Point };

export function splitTool(desk: Desk): Tool {
  let aimed: Aimed | null = null;
  let place: Place | null = null;
  let from: { readonly aimed: Aimed; readonly place: Place } | null = null;
  let pointed: Point | null = null;
  /** Why nothing is aimed at, where what lies there is locked. */
  let whyLocked = (): string | null => null;

  function track(pointer: Pointer): void {
    // Places are counted along an outline: one that has changed meanwhile is cut anew.
    if (from && !desk.document.getState().shown.elements.includes(from.aimed.element)) {
      desk.announce(`${capitalized(calledAs(from.aimed.element))} has changed: begin the cut again.`);
      from = null;
    }
    const at = desk.snap(pointer).point;
    pointed = at;
    const slack = 2 * desk.slack(pointer);
    aimed = pathUnder(desk, at, slack) ?? pathUnder(desk, pointer.at, slack);
    whyLocked = () => lockedReason(desk, at, slack);
    if (from && aimed?.element.id !== from.aimed.element.id) aimed = null;
    place = aimed && placeUnder(aimed, at);
  }

  function cut(): void {
    if (!aimed || !place) {
      desk.complain(
        from
          ? `End the cut on the edge of ${calledAs(from.aimed.element)}.`
          : (whyLocked() ?? "Press on a line or on an edge."),
      );
      return;
    }
    if (!from && isOutline(aimed.element)) {
      from = { aimed, place };
      desk.announce("The cut begins here. Press where it ends.");
      return;
    }
    const { id } = aimed.element;
    const before = desk.document.getState().history.present.elements.length;
    const edit = from ? splitOutline(id, from.place, place) : splitLine(id, place);
    const refusal = desk.document.getState().edit(edit);
    from = null;
    if (refusal) {
      desk.complain(refusal.reason);
      return;
    }
    const { elements } = desk.document.getState().history.present;
    const at = elements.findIndex((element) => element.id === id);
    const parts = elements.slice(at, at + 1 + elements.length - before).map((element) => element.id);
    desk.announce(parts.length > 1 ? "Cut in two." : "Opened.");
    desk.view.getState().select(parts);
    desk.view.getState().setTool("select");
  }

  function reset(): boolean {
    const had = from !== null;
    from = null;
    return had;
  }

  return {
    id: "split",
    pointerDown(pointer) {
      track(pointer);
      cut();
    },
    pointerMove: track,
    pointerUp() {},
    abandonPress() {
      reset();
    },
    key({ key }) {
      if (key === "Enter" && pointed) {
        cut();
        return true;
      }
      return (key === "Backspace" || key === "Delete") && reset();
    },
    takesBack: () => (from ? TAKE_BACK.begin : null),
    cancel: reset,
    entry: () => null,
    typed: () => null,
    overlay() {
      const shapes: OverlayShape[] = [];
      const start = from?.place.at ?? null;
      const end = place?.at ?? pointed;
      if (start) shapes.push({ kind: "handle", at: start, look: "placed" });
      if (start && end) shapes.push({ kind: "edges", edges: [{ kind: "line", from: start, to: end }], look: "ghost" });
      if (place) shapes.push({ kind: "handle", at: place.at, look: "active" });
      if (!end) return shapes;
      const lines = aimed ? [from ? "cut to here" : `cut ${calledAs(aimed.element)} here`] : [];
      return [...shapes, { kind: "words", at: end, lines }];
    },
    cursor: () => "crosshair",
  };
}
