/**
 * Draws a rectangle: press at one corner and let go at the other, or click both, or type width and length.
 *
 * States: waiting for the first corner; stretching. While it stretches the document previews it, so that ring and
 * findings follow before it is drawn.
 */

import type { Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { type DrawingTool, draft, kindOf } from "../edits/templates.ts";
import type { Snapped } from "../snapping/snap.ts";
import { placeWords, sizeWords } from "./measures.ts";
import { rectanglePath } from "./rectangle-path.ts";
import { TAKE_BACK } from "./take-back.ts";
import type { Desk, OverlayShape, Pointer, Tool, TypedValues } from "./tool.ts";

const ENDED = "Another change has kept the rectangle as it was drawn. Place the first corner of the next one.";

export function rectangleTool(desk: Desk, id: DrawingTool): Tool {
  let first: Point | null = null;
  let found: Snapped | null = null;
  let pressedAt: Point | null = null;
  let isPreviewing = false;

  /** The corner across from the first: typed sizes go before the pointer and grow toward it. */
  function opposite(typed: TypedValues): Point | null {
    if (!first) return null;
    const at = found?.point ?? first;
    const side = (axis: 0 | 1, size: number | undefined): number => {
      const start = first?.[axis] ?? 0;
      return size === undefined ? at[axis] : start + (at[axis] < start ? -size : size);
    };
    return [side(0, typed.width), side(1, typed.length)];
  }

  function preview(): void {
    const to = opposite(desk.typed());
    const { document } = desk;
    if (!first || !to || to[0] === first[0] || to[1] === first[1]) return;
    if (!document.getState().gesture) document.getState().beginGesture("Draw");
    isPreviewing = true;
    const start = document.getState().gesture?.start;
    if (start) document.getState().preview(addElement(draft(start, id, { path: rectanglePath(first, to) })));
  }

  /** Another change has ended the preview, as an answer given meanwhile: it stays as it was drawn then. */
  function isEndedElsewhere(): boolean {
    if (!isPreviewing || desk.document.getState().gesture) return false;
    reset();
    return true;
  }

  function put(to: Point): string | null {
    const { document } = desk;
    if (!first) return "Place the first corner on the sheet.";
    if (to[0] === first[0] || to[1] === first[1]) return "A rectangle needs a width and a length above zero.";
    document.getState().cancelGesture();
    isPreviewing = false;
    const element = draft(document.getState().history.present, id, { path: rectanglePath(first, to) });
    const refusal = document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    reset();
    desk.finish(element.id);
    return null;
  }

  function reset(): void {
    first = null;
    found = null;
    pressedAt = null;
    isPreviewing = false;
  }

  function track(pointer: Pointer): void {
    isEndedElsewhere();
    found = desk.snap(pointer, { kind: kindOf(id), ...(first ? { origin: first } : {}) });
    if (first) preview();
  }

  function begin(at: Point): void {
    first = at;
    desk.announce(`First corner at ${placeWords(at, desk.units())}.`);
  }

  function putOrComplain(): void {
    const to = opposite(desk.typed());
    const reason = to && put(to);
    if (reason) desk.complain(reason);
  }

  return {
    id,
    pointerDown(pointer) {
      track(pointer);
      if (!first && found) {
        pressedAt = pointer.at;
        begin(found.point);
      }
    },
    pointerMove: track,
    pointerUp(pointer) {
      track(pointer);
      if (!first || !found) return;
      const moved = pressedAt && Math.hypot(pointer.at[0] - pressedAt[0], pointer.at[1] - pressedAt[1]);
      const isClick = moved !== null && moved <= desk.slack(pointer) / 2;
      pressedAt = null;
      // A first click only places the corner; a second one, or the end of a drag, ends the rectangle.
      if (!isClick) putOrComplain();
    },
    abandonPress() {
      if (pressedAt === null) return;
      desk.document.getState().cancelGesture();
      reset();
    },
    key({ key }) {
      if (isEndedElsewhere()) return key === "Enter" || key === "Backspace";
      if (key === "Enter" && found) {
        if (first) putOrComplain();
        else begin(found.point);
        return true;
      }
      if (key !== "Backspace" || !first) return false;
      this.cancel();
      return true;
    },
    cancel() {
      const had = first !== null;
      if (had) desk.document.getState().cancelGesture();
      reset();
      return had;
    },
    entry() {
      const to = opposite({});
      const size = (axis: 0 | 1) => lengthText(first && to ? Math.abs(to[axis] - first[axis]) : 0, desk.units());
      return {
        fields: [
          { name: "width", label: "Width across", type: "length", shown: size(0) },
          { name: "length", label: "Length up", type: "length", shown: size(1) },
        ],
        action: "Draw the rectangle",
        finish: null,
      };
    },
    takesBack: () => (first === null ? null : TAKE_BACK.firstCorner),
    retyped() {
      if (!isEndedElsewhere() && found) preview();
    },
    typed(values) {
      if (isEndedElsewhere()) return ENDED;
      const { width, length } = values;
      if (!first) {
        if (width === undefined || length === undefined) return "Type both the width and the length.";
        const [x, y] = desk.middle();
        first = [x - width / 2, y - length / 2];
        found = null;
        const reason = put([first[0] + width, first[1] + length]);
        if (reason) first = null;
        return reason;
      }
      const to = opposite(values);
      return to && put(to);
    },
    overlay() {
      const shapes: OverlayShape[] = [];
      const typed = desk.typed();
      const to = opposite(typed);
      const reason = Object.keys(typed).length > 0 ? null : (found?.reason ?? null);
      if (first && to) {
        shapes.push({ kind: "handle", at: first, look: "placed" });
        const lines = [sizeWords(first, to, desk.units()), ...(reason === null ? [] : [reason])];
        shapes.push({ kind: "cursor", at: to, isSnapped: reason !== null }, { kind: "words", at: to, lines });
      } else if (found) {
        shapes.push({ kind: "cursor", at: found.point, isSnapped: reason !== null });
        if (reason !== null) shapes.push({ kind: "words", at: found.point, lines: [reason] });
      }
      for (const guide of reason === null ? [] : (found?.guides ?? [])) {
        shapes.push({ kind: "edges", edges: [{ kind: "line", from: guide[0], to: guide[1] }], look: "guide" });
      }
      return shapes;
    },
    cursor: () => "crosshair",
  };
}
