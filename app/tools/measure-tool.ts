/**
 * Measures between two places, with length and direction; nothing of it is kept.
 *
 * States: nothing placed; measuring (one end placed, the other follows the pointer); measured (both placed, until the
 * next press). Pulling from one place to the other does it in one go.
 */

import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import type { Snapped } from "../snapping/snap.ts";
import { bearingWords, placeFrom } from "./measures.ts";
import { TAKE_BACK } from "./take-back.ts";
import type { Desk, OverlayShape, Pointer, Tool, TypedValues } from "./tool.ts";

export function measureTool(desk: Desk): Tool {
  let from: Point | null = null;
  let to: Point | null = null;
  let found: Snapped | null = null;
  let pressedAt: Point | null = null;

  const isRunning = () => from !== null && to === null;
  const end = (typed: TypedValues = desk.typed()): Point | null =>
    to ?? (from && placeFrom(from, found?.point ?? from, typed));

  function track(pointer: Pointer): void {
    found = desk.snap(pointer, from && !to ? { from, lines: [{ with: from, name: "where it began" }] } : {});
  }

  function put(at: Point): void {
    if (from === null || to !== null) {
      [from, to] = [at, null];
      desk.announce("Measuring from here.");
    } else if (!samePoint(from, at)) {
      to = at;
      desk.announce(`${words(from, to).join("; ")}.`);
    }
    desk.clearTyped();
  }

  function words(a: Point, b: Point): string[] {
    const units = desk.units();
    const [dx, dy] = [Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])];
    const whole = `${lengthText(distanceBetween(a, b), units)} at ${bearingWords(a, b)}`;
    return dx === 0 || dy === 0 ? [whole] : [whole, `${lengthText(dx, units)} across, ${lengthText(dy, units)} up`];
  }

  function reset(): boolean {
    const had = from !== null;
    from = null;
    to = null;
    pressedAt = null;
    return had;
  }

  return {
    id: "measure",
    pointerDown(pointer) {
      track(pointer);
      const at = isRunning() ? end() : found?.point;
      if (!at) return;
      pressedAt = pointer.at;
      put(at);
    },
    pointerMove: track,
    pointerUp(pointer) {
      const pulled = pressedAt !== null && distanceBetween(pressedAt, pointer.at) > desk.slack(pointer);
      pressedAt = null;
      if (!pulled || !isRunning()) return;
      track(pointer);
      if (found) put(found.point);
    },
    abandonPress() {
      if (pressedAt !== null && isRunning()) reset();
      pressedAt = null;
    },
    key({ key }) {
      if (key === "Enter" && found) {
        const at = isRunning() ? end() : found.point;
        if (at) put(at);
        return true;
      }
      return (key === "Backspace" || key === "Delete") && reset();
    },
    takesBack: () => (isRunning() ? TAKE_BACK.begin : null),
    cancel: reset,
    entry() {
      if (!from || to) return null;
      const at = end({}) ?? from;
      return {
        fields: [
          {
            name: "length",
            label: "Length",
            type: "length",
            shown: lengthText(distanceBetween(from, at), desk.units()),
          },
          { name: "bearing", label: "Direction", type: "bearing", shown: bearingWords(from, at) },
        ],
        action: "Measure to there",
        finish: null,
      };
    },
    typed(values) {
      const at = end(values);
      const isPointed = from !== null && found !== null && !samePoint(found.point, from);
      const isWhole = isPointed || (values.length !== undefined && values.bearing !== undefined);
      if (!at || !from || !isWhole || samePoint(from, at))
        return "Type a length and a direction, or point at the other end.";
      put(at);
      return null;
    },
    overlay() {
      const at = from ? end() : (found?.point ?? null);
      const shapes: OverlayShape[] = [];
      if (from && at && !samePoint(from, at)) {
        shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: at }], look: "ghost" });
      }
      for (const [a, b] of to ? [] : (found?.guides ?? [])) {
        shapes.push({ kind: "edges", edges: [{ kind: "line", from: a, to: b }], look: "guide" });
      }
      for (const place of [from, to]) if (place) shapes.push({ kind: "handle", at: place, look: "placed" });
      if (!at) return shapes;
      const reason = to || Object.keys(desk.typed()).length > 0 ? null : (found?.reason ?? null);
      if (!to) shapes.push({ kind: "cursor", at, isSnapped: reason !== null });
      const lines = [...(from && !samePoint(from, at) ? words(from, at) : []), ...(reason === null ? [] : [reason])];
      return [...shapes, { kind: "words", at, lines }];
    },
    cursor: () => "crosshair",
  };
}
