/**
 * Draws outlines and lines corner by corner.
 *
 * States: nothing placed; drawing (one corner or more); pressing (a corner was just placed and the pointer is still
 * down: pulling it away bends the side that leads to the corner; from the first corner of an outline it stretches a
 * rectangle). A click on the first corner, a double click or Enter ends the drawing. With arcs on, a side goes on smoothly
 * from the one before.
 */
import { edgeFromVertices } from "../../geometry/edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { DRAWN_AS, type DrawingTool, draft, kindOf } from "../edits/templates.ts";
import { type SnapLine, type Snapped, unsnapped } from "../snapping/snap.ts";
import { bearingWords, placeFrom, placeWords, sideWords, sizeWords } from "./measures.ts";
import { rectanglePath } from "./rectangle-path.ts";
import {
  bulgePulled,
  EMPTY_SKETCH,
  firstCorner,
  lastCorner,
  type Sketch,
  sidesOf,
  smoothBulge,
  withCorner,
  withLastBulge,
  withoutLast,
  withSideBent,
} from "./sketch.ts";
import type { Desk, Entry, OverlayShape, Pointer, Tool, TypedValues } from "./tool.ts";

/** A rectangle being stretched, with its size. */
function stretched(first: Point, to: Point, reason: string | null, units: Units): OverlayShape[] {
  return [
    { kind: "edges", edges: pathFrom(rectanglePath(first, to)).edges, look: "ghost" },
    { kind: "handle", at: first, look: "placed" },
    { kind: "cursor", at: to, isSnapped: reason !== null },
    { kind: "words", at: to, lines: [sizeWords(first, to, units), ...(reason === null ? [] : [reason])] },
  ];
}

function linesFrom(last: Point | null, first: Point | null): SnapLine[] {
  return [
    ...(last ? [{ with: last, name: "the last corner" }] : []),
    ...(first ? [{ with: first, name: "the first corner" }] : []),
  ];
}

/** The first side of a drawing that begins with an arc is a quarter circle. */
const QUARTER_CIRCLE = Math.tan(Math.PI / 8);

export function pathTool(desk: Desk, id: DrawingTool): Tool {
  const as = DRAWN_AS[id];
  const isOutline = as === "outline";
  const mayClose = as !== "open";
  const mayBend = kindOf(id) !== "overhead-line" && id !== "opening";
  /** A door or window has two ends. */
  const most = id === "opening" ? 2 : Number.POSITIVE_INFINITY;

  let sketch: Sketch = EMPTY_SKETCH;
  let found: Snapped | null = null;
  let isClosing = false;
  let isArc = false;
  let isCrosshair = false;
  let press: { readonly before: Sketch; readonly at: Point } | null = null;
  /** The corner across from the first while a rectangle is stretched. */
  let across: Point | null = null;

  /** Two sides enclose an area when one of them is bent. */
  const leastCorners = () => (!isOutline ? 2 : sketch.corners.some((corner) => (corner[2] ?? 0) !== 0) ? 2 : 3);
  const canFinish = () => sketch.corners.length >= leastCorners();
  const canClose = () => mayClose && sketch.corners.length >= Math.max(leastCorners(), isOutline ? 2 : 3);

  /** Where the running side ends: typed values before the pointer. */
  function running(typed: TypedValues = desk.typed()): Point | null {
    const last = lastCorner(sketch);
    if (!last) {
      const { right, up } = typed;
      const at = found?.point ?? (right === undefined && up === undefined ? null : desk.middle());
      return at && [right ?? at[0], up ?? at[1]];
    }
    return placeFrom(last, found?.point ?? last, typed);
  }

  function bulgeTo(at: Point): number {
    if (!isArc) return 0;
    return sidesOf(sketch).length === 0 ? QUARTER_CIRCLE : smoothBulge(sketch, at);
  }

  function track(pointer: Pointer): void {
    isCrosshair = pointer.isCrosshair;
    const first = firstCorner(sketch);
    const last = lastCorner(sketch);
    isClosing = first !== null && canClose() && distanceBetween(first, pointer.at) <= desk.slack(pointer);
    if (isClosing && first) found = { point: first, reason: "closes the outline", guides: [] };
    else if (isCrosshair) found = unsnapped(pointer.at);
    else found = desk.snap(pointer, { lines: linesFrom(last, first) });
  }

  /** Places a corner; false when there is one already at that place. */
  function place(at: Point): boolean {
    const next = withCorner(sketch, at, bulgeTo(at));
    if (next === sketch) return false;
    sketch = next;
    desk.announce(`Corner ${sketch.corners.length} at ${placeWords(at, desk.units())}.`);
    return true;
  }

  function finish(isClosed: boolean): string | null {
    if (!canFinish()) return `Place at least ${isOutline ? "three corners" : "two points"} first.`;
    const first = firstCorner(sketch);
    const ended = isClosed && first && isArc ? withLastBulge(sketch, bulgeTo(first)) : sketch;
    const path = { vertices: ended.corners, closed: isClosed };
    const element = draft(desk.document.getState().history.present, id, { path });
    const refusal = desk.document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    reset();
    desk.finish(element.id);
    return null;
  }

  function finishOrComplain(isClosed: boolean): void {
    const reason = finish(isClosed);
    if (reason) desk.complain(reason);
  }

  function placeOrFinish(at: Point): void {
    if (isClosing) finishOrComplain(true);
    else if (!place(at)) finishOrComplain(isOutline);
    else if (sketch.corners.length >= most) finishOrComplain(false);
  }

  function reset(): void {
    sketch = EMPTY_SKETCH;
    found = null;
    isClosing = false;
    isArc = false;
    press = null;
    across = null;
  }

  /** While a corner is being placed, the pointer bends the side that leads to it, or stretches a rectangle from the first. */
  function pull(pointer: Pointer): void {
    const [from, to] = [press && lastCorner(press.before), lastCorner(sketch)];
    if (!press || !to || distanceBetween(press.at, pointer.at) <= desk.slack(pointer)) return;
    if (from && mayBend) sketch = withSideBent(sketch, bulgePulled(from, to, pointer.at));
    else if (!from && isOutline) {
      found = desk.snap(pointer, { origin: to });
      across = found.point;
    }
  }

  /** Ends a rectangle that was stretched; one without width or length stays its first corner. */
  function finishRectangle(first: Point, to: Point): void {
    if (first[0] === to[0] || first[1] === to[1]) return;
    const { vertices } = rectanglePath(first, to);
    sketch = { corners: vertices };
    finishOrComplain(true);
  }

  function takeBack(): void {
    sketch = withoutLast(sketch);
    isClosing = false;
    const last = lastCorner(sketch);
    if (isCrosshair && last) desk.crosshairTo(last);
  }

  return {
    id,
    pointerDown(pointer) {
      track(pointer);
      if (pointer.isDouble && canFinish()) {
        finishOrComplain(isOutline);
        return;
      }
      const at = running();
      if (!at) return;
      const before = sketch;
      placeOrFinish(at);
      if (sketch.corners.length > before.corners.length) press = { before, at: pointer.at };
    },
    pointerMove(pointer) {
      if (press) pull(pointer);
      else track(pointer);
    },
    pointerUp(pointer) {
      if (press) pull(pointer);
      const [first, to] = [firstCorner(sketch), across];
      press = null;
      across = null;
      if (first && to) finishRectangle(first, to);
    },
    abandonPress() {
      if (press) sketch = press.before;
      press = null;
      across = null;
      found = null;
    },
    key({ key }) {
      if (key === "Enter") {
        if (sketch.corners.length === 0 && !found) return false;
        const at = running();
        // With the crosshair Enter places a corner; a second Enter at the same place ends the drawing.
        if (at && (isCrosshair || !canFinish())) placeOrFinish(at);
        else finishOrComplain(isOutline);
        return true;
      }
      if (sketch.corners.length === 0) return false;
      if (key === "Backspace" || key === "Delete") {
        takeBack();
        return true;
      }
      if (key.toLowerCase() === "a" && mayBend) {
        isArc = !isArc;
        return true;
      }
      return false;
    },
    cancel() {
      const had = sketch.corners.length > 0;
      reset();
      return had;
    },
    entry: () => entry(),
    typed(values) {
      const last = lastCorner(sketch);
      const at = running(values);
      if (!at) return "Type how far to the right and up the first corner lies.";
      if (last && values.length === undefined) return "Type a length.";
      if (last && values.bearing === undefined && (!found || samePoint(found.point, last))) {
        return "Type a direction too, or point it out on the sheet.";
      }
      isClosing = false;
      const first = firstCorner(sketch);
      if (first && canClose() && distanceBetween(first, at) <= desk.pixel() / 1000) return finish(true);
      if (!place(at)) return "There already is a corner at that place.";
      if (sketch.corners.length >= most) return finish(false);
      desk.crosshairTo(at);
      return null;
    },
    overlay: () => overlay(),
    cursor: () => "crosshair",
  };

  function entry(): Entry {
    const units = desk.units();
    const last = lastCorner(sketch);
    const at = found?.point ?? last ?? desk.middle();
    const finishWords = isOutline ? "Close the outline" : "End the line";
    return {
      fields: last
        ? [
            { name: "length", label: "Length", type: "length", shown: lengthText(distanceBetween(last, at), units) },
            { name: "bearing", label: "Direction", type: "bearing", shown: bearingWords(last, at) },
          ]
        : [
            { name: "right", label: "Right", type: "level", shown: lengthText(at[0], units) },
            { name: "up", label: "Up", type: "level", shown: lengthText(at[1], units) },
          ],
      action: last ? "Place the corner" : "Begin here",
      isArc: mayBend && last ? isArc : null,
      finish: canFinish() && most > 2 ? finishWords : null,
      canTakeBack: last !== null,
    };
  }

  function overlay(): OverlayShape[] {
    const shapes: OverlayShape[] = [];
    const units = desk.units();
    const corner = firstCorner(sketch);
    if (corner && across) return stretched(corner, across, found?.reason ?? null, units);
    const [first, last, to] = [firstCorner(sketch), lastCorner(sketch), running()];
    const sides = sidesOf(sketch);
    const run = runningSide(press ? null : to);
    const ghost = run ? [...sides, run] : sides;
    if (ghost.length > 0) shapes.push({ kind: "edges", edges: ghost, look: "ghost" });
    if (isOutline && first && ghost.length > 1 && !isClosing) {
      const from = ghost[ghost.length - 1]?.to ?? first;
      shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: first }], look: "closing" });
    }
    for (const [from, end] of found?.guides ?? []) {
      shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: end }], look: "guide" });
    }
    for (const corner of sketch.corners) shapes.push({ kind: "handle", at: [corner[0], corner[1]], look: "placed" });
    if (first && canClose()) shapes.push({ kind: "handle", at: first, look: isClosing ? "active" : "corner" });
    const measured = press ? sides[sides.length - 1] : run;
    if (measured && !isClosing) shapes.push({ kind: "measure", edge: measured, text: sideWords(measured, units) });
    if (!to || press) return shapes;
    const isTyped = Object.keys(desk.typed()).length > 0;
    const reason = isTyped ? null : (found?.reason ?? null);
    shapes.push({ kind: "cursor", at: to, isSnapped: reason !== null });
    if (last || reason !== null) shapes.push({ kind: "words", at: to, lines: reason === null ? [] : [reason] });
    return shapes;
  }

  function runningSide(to: Point | null): Edge | null {
    const last = sketch.corners[sketch.corners.length - 1];
    if (!last || !to || samePoint([last[0], last[1]], to)) return null;
    const bulge = bulgeTo(to);
    return edgeFromVertices(bulge === 0 ? [last[0], last[1]] : [last[0], last[1], bulge], to);
  }
}
