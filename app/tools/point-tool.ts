/** Places one element at a point: where the pointer is let go, at the crosshair, or at typed coordinates. */
import type { Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { type DrawingTool, draft, kindOf } from "../edits/templates.ts";
import type { Snapped } from "../snapping/snap.ts";
import type { Desk, Pointer, Tool } from "./tool.ts";

export function pointTool(desk: Desk, id: DrawingTool): Tool {
  let found: Snapped | null = null;
  let isPressed = false;

  /** Typed coordinates go before the pointer. */
  function place(): Point | null {
    const { right, up } = desk.typed();
    const at = found?.point ?? (right === undefined && up === undefined ? null : desk.middle());
    return at && [right ?? at[0], up ?? at[1]];
  }

  function put(at: Point): string | null {
    const element = draft(desk.document.getState().history.present, id, { point: at });
    const refusal = desk.document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    found = null;
    desk.finish(element.id);
    return null;
  }

  function putOrComplain(at: Point | null): void {
    const reason = at && put(at);
    if (reason) desk.complain(reason);
  }

  const track = (pointer: Pointer) => {
    found = desk.snap(pointer, { kind: kindOf(id) });
  };

  return {
    id,
    pointerDown(pointer) {
      track(pointer);
      isPressed = true;
    },
    pointerMove: track,
    pointerUp(pointer) {
      if (!isPressed) return;
      isPressed = false;
      track(pointer);
      putOrComplain(place());
    },
    abandonPress() {
      isPressed = false;
      found = null;
    },
    key({ key }) {
      if (key !== "Enter" || !found) return false;
      putOrComplain(place());
      return true;
    },
    cancel: () => false,
    entry() {
      const at = found?.point ?? desk.middle();
      const units = desk.units();
      return {
        fields: [
          { name: "right", label: "Right", type: "level", shown: lengthText(at[0], units) },
          { name: "up", label: "Up", type: "level", shown: lengthText(at[1], units) },
        ],
        action: "Place it",
        finish: null,
      };
    },
    typed() {
      const at = place();
      return at ? put(at) : "Type how far to the right and up it stands.";
    },
    overlay() {
      const at = place();
      if (!at) return [];
      const reason = found?.reason ?? null;
      const isTyped = Object.keys(desk.typed()).length > 0;
      return [
        { kind: "cursor", at, isSnapped: reason !== null && !isTyped },
        { kind: "words", at, lines: reason === null || isTyped ? [] : [reason] },
      ];
    },
    cursor: () => "crosshair",
  };
}
