/**
 * Draws dimensions: one end, the other end, then where the line runs. An end on a corner, a side or a part stays on it.
 *
 * States: nothing placed; one end; both ends (the line follows the pointer). The tool stays in hand for the next one.
 */

import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { anchorAt } from "../dimensions/anchors.ts";
import { type DimensionWay, lineBetween, wayThrough } from "../dimensions/dimension-line.ts";
import { addDimension } from "../edits/dimension-edits.ts";
import type { Snapped } from "../snapping/snap.ts";
import { bearingWords } from "./measures.ts";
import { TAKE_BACK } from "./take-back.ts";
import type { Desk, OverlayShape, Pointer, Tool, TypedValues } from "./tool.ts";

/** How far the line lies from what is measured when only its ends are given by keys: room for its lettering, pixels. */
const USUAL_PIXELS = 28;

export function dimensionTool(desk: Desk): Tool {
  let from: Point | null = null;
  let to: Point | null = null;
  let found: Snapped | null = null;
  let isStraight = false;

  function track(pointer: Pointer): void {
    isStraight = pointer.shift;
    if (from && to) found = desk.snap(pointer, { withoutMiddles: true });
    else found = desk.snap(pointer, from ? { from, lines: [{ with: from, name: "the other end" }] } : {});
  }

  function way(typed: TypedValues = desk.typed()): DimensionWay | null {
    if (!from || !to) return null;
    const usual = USUAL_PIXELS * desk.pixel();
    const pulled = found ? wayThrough(from, to, found.point, isStraight) : { offset: usual };
    return typed.away === undefined ? pulled : { ...pulled, offset: pulled.offset < 0 ? -typed.away : typed.away };
  }

  function put(at: Point): string | null {
    if (!from) {
      from = at;
      desk.announce("One end of the dimension is placed.");
      return null;
    }
    if (!to) {
      if (samePoint(from, at)) return "A dimension goes from one place to another.";
      to = at;
      desk.announce(`${lengthText(distanceBetween(from, to), desk.units())}. Now place its line.`);
      return null;
    }
    return place(desk.typed());
  }

  function place(typed: TypedValues): string | null {
    const run = way(typed);
    if (!from || !to || !run) return "Place both ends first.";
    const { elements } = desk.document.getState().history.present;
    const edit = addDimension({ from: anchorAt(from, elements), to: anchorAt(to, elements), ...run });
    const refusal = desk.document.getState().edit(edit);
    if (refusal) return refusal.reason;
    desk.announce("The dimension is drawn.");
    reset();
    return null;
  }

  function putOrComplain(at: Point): void {
    const reason = put(at);
    if (reason) desk.complain(reason);
  }

  function reset(): boolean {
    const had = from !== null;
    from = null;
    to = null;
    return had;
  }

  function takeBack(): boolean {
    if (to) to = null;
    else return reset();
    return true;
  }

  return {
    id: "dimension",
    pointerDown(pointer) {
      track(pointer);
      if (found) putOrComplain(found.point);
    },
    pointerMove: track,
    pointerUp() {},
    abandonPress() {
      takeBack();
    },
    key({ key }) {
      if (key === "Enter" && found) {
        putOrComplain(found.point);
        return true;
      }
      return (key === "Backspace" || key === "Delete") && takeBack();
    },
    takesBack: () => (to ? TAKE_BACK.end : from ? TAKE_BACK.begin : null),
    cancel: reset,
    entry() {
      if (!from || !to) return null;
      const run = way({});
      return {
        fields: [
          {
            name: "away",
            label: "Line away by",
            type: "length",
            shown: lengthText(Math.abs(run?.offset ?? 0), desk.units()),
          },
        ],
        action: "Draw the dimension",
        finish: null,
      };
    },
    typed: (values) => place(values),
    overlay() {
      const at = found?.point ?? null;
      const shapes: OverlayShape[] = [];
      for (const place of [from, to]) if (place) shapes.push({ kind: "handle", at: place, look: "placed" });
      const run = way();
      const line = from && to && run ? lineBetween(from, to, run) : null;
      if (line) {
        const { a, b } = line;
        const extensions = [
          [line.from, a],
          [line.to, b],
        ] as const;
        for (const [start, end] of extensions) {
          if (!samePoint(start, end))
            shapes.push({ kind: "edges", edges: [{ kind: "line", from: start, to: end }], look: "guide" });
        }
        shapes.push({ kind: "edges", edges: [{ kind: "line", from: a, to: b }], look: "ghost" });
        shapes.push({
          kind: "measure",
          edge: { kind: "line", from: a, to: b },
          text: lengthText(line.length, desk.units()),
        });
        return shapes;
      }
      if (from && at && !samePoint(from, at)) {
        shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: at }], look: "closing" });
      }
      for (const [a, b] of found?.guides ?? []) {
        shapes.push({ kind: "edges", edges: [{ kind: "line", from: a, to: b }], look: "guide" });
      }
      if (!at) return shapes;
      const reason = found?.reason ?? null;
      shapes.push({ kind: "cursor", at, isSnapped: reason !== null });
      const measured =
        from && !samePoint(from, at)
          ? [`${lengthText(distanceBetween(from, at), desk.units())} at ${bearingWords(from, at)}`]
          : [];
      return [...shapes, { kind: "words", at, lines: [...measured, ...(reason === null ? [] : [reason])] }];
    },
    cursor: () => "crosshair",
  };
}
