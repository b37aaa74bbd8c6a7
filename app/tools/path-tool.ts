/**
 * Draws outlines and lines corner by corner.
 *
 * States: nothing placed; drawing (one corner or more); pressing (a corner was just placed and the pointer is still
 * down: pulling it away bends the side that leads to the corner; from the first corner of an outline it stretches a
 * rectangle). A click on the first corner, a double click or Enter ends the drawing. A side is straight or an arc: smooth
 * from the one before, of a radius, or through a point that is placed before its end.
 */

import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { addElement } from "../edits/add-element.ts";
import { DRAWN_AS, type DrawingTool, draft, kindOf } from "../edits/templates.ts";
import { type Snapped, unsnapped } from "../snapping/snap.ts";
import { SIDE_KEYS, TURN_KEY } from "./entry-keys.ts";
import { placeWords } from "./measures.ts";
import { pathEntry, takesBack } from "./path-entry.ts";
import { pathOverlay, stretchedOverlay } from "./path-overlay.ts";
import { rectanglePath } from "./rectangle-path.ts";
import {
  edgeOfSide,
  radiusOf,
  SIDE_SHAPES,
  SIDE_WORDS,
  type Side,
  type SideRule,
  type SideShape,
  STRAIGHT_SIDE,
  sideTo,
} from "./side-shape.ts";
import {
  bulgePulled,
  EMPTY_SKETCH,
  firstCorner,
  lastCorner,
  linesOf,
  type Sketch,
  sidesOf,
  withCorner,
  withLastBulge,
  withoutLast,
  withSideBent,
} from "./sketch.ts";
import type { Desk, Pointer, Tool, TypedValues } from "./tool.ts";

const OCCUPIED = "There already is a corner at that place.";

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
  let rule: SideRule = STRAIGHT_SIDE;
  let isCrosshair = false;
  let press: { readonly before: Sketch; readonly at: Point } | null = null;
  /** The corner across from the first while a rectangle is stretched. */
  let across: Point | null = null;

  /** Two sides enclose an area when one of them is bent. */
  const leastCorners = () => (!isOutline ? 2 : sketch.corners.some((corner) => (corner[2] ?? 0) !== 0) ? 2 : 3);
  const canFinish = () => sketch.corners.length >= leastCorners();
  const canClose = () => mayClose && sketch.corners.length >= Math.max(leastCorners(), isOutline ? 2 : 3);

  /** Where the first corner would lie: typed values before the pointer. */
  function start({ right, up }: TypedValues): Point | null {
    const at = found?.point ?? (right === undefined && up === undefined ? null : desk.middle());
    return at && [right ?? at[0], up ?? at[1]];
  }

  /** The running side, typed values before the pointer; null before the first corner. */
  function running(typed: TypedValues = desk.typed()): Side | null {
    const last = lastCorner(sketch);
    if (!last) return null;
    const place = isClosing && firstCorner(sketch);
    return sideTo(sketch, place || (found?.point ?? last), place ? {} : typed, rule, desk.units());
  }

  /** While an arc by three points has none to pass, a click places that. */
  const awaitsThrough = () => rule.shape === "through" && rule.through === null && lastCorner(sketch) !== null;

  function track(pointer: Pointer): void {
    isCrosshair = pointer.isCrosshair;
    const first = firstCorner(sketch);
    const last = lastCorner(sketch);
    isClosing = first !== null && canClose() && distanceBetween(first, pointer.at) <= desk.slack(pointer);
    if (isClosing && first) found = { point: first, reason: "closes the outline", guides: [] };
    // Enter at the last corner ends the drawing, wherever that lies.
    else if (isCrosshair && last && samePoint(last, pointer.at)) found = unsnapped(pointer.at);
    else {
      const kind = kindOf(id);
      found = desk.snap(pointer, {
        lines: linesOf(sketch),
        ...(last && rule.shape === "straight" ? { from: last } : {}),
        sides: sidesOf(sketch),
        kind,
      });
    }
  }

  /** Places a corner. Returns why it cannot, or null. */
  function place(to: Point, bulge: number): string | null {
    const next = withCorner(sketch, to, bulge);
    if (next === sketch) return OCCUPIED;
    sketch = next;
    rule = { ...rule, through: null };
    desk.announce(`${isOutline ? "Corner" : "Point"} ${sketch.corners.length} at ${placeWords(to, desk.units())}.`);
    return null;
  }

  /** Places what the running side leads to: a first corner, a point of an arc, a corner. Returns why it cannot, or null. */
  function placeNext(typed: TypedValues): string | null {
    if (!lastCorner(sketch)) {
      const at = start(typed);
      return at ? place(at, 0) : "Point out the first corner.";
    }
    const side = running(typed);
    if (!side) return "Point out the corner.";
    if (!side.ok) return side.reason;
    if (typed.radius !== undefined && typed.radius !== 0) rule = { ...rule, radius: Math.abs(typed.radius) };
    if (!awaitsThrough()) return place(side.to, side.bulge);
    if (withCorner(sketch, side.to) === sketch) return OCCUPIED;
    rule = { ...rule, through: side.to };
    desk.announce(`The arc passes ${placeWords(side.to, desk.units())}.`);
    return null;
  }

  /** The same; the last of as many as there may be ends the drawing, and is taken back when it cannot. */
  function placeNextOrEnd(typed: TypedValues): string | null {
    const before = sketch;
    const reason = placeNext(typed);
    if (reason || sketch.corners.length < most) return reason;
    const refusal = finish(false);
    if (refusal) sketch = before;
    return refusal;
  }

  function finish(isClosed: boolean): string | null {
    if (!canFinish()) return `Place at least ${isOutline ? "three corners" : "two points"} first.`;
    const first = firstCorner(sketch);
    // An arc by radius is closed where the outline is clicked; Enter alone closes it straight or smoothly.
    const isBent = rule.shape === "smooth" || (isClosing && rule.shape !== "straight" && !awaitsThrough());
    const closing = isClosed && first && isBent ? sideTo(sketch, first, {}, rule, desk.units()) : null;
    if (closing && !closing.ok) return closing.reason;
    const ended = closing ? withLastBulge(sketch, closing.bulge) : sketch;
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

  /** By pointer or crosshair: at the place of the last corner it ends the drawing. */
  function placeOrFinish(): void {
    if (isClosing) {
      finishOrComplain(true);
      return;
    }
    const side = running();
    const last = lastCorner(sketch);
    if (side?.ok && last && samePoint(side.to, last)) {
      finishOrComplain(isOutline);
      return;
    }
    const reason = placeNextOrEnd(desk.typed());
    if (reason) desk.complain(reason);
    else desk.clearTyped();
  }

  /** What the pointer does until it is let go changes nothing any more. */
  function endPress(): void {
    press = null;
    across = null;
  }

  function reset(): void {
    sketch = EMPTY_SKETCH;
    found = null;
    isClosing = false;
    rule = STRAIGHT_SIDE;
    endPress();
  }

  function choose(shape: SideShape): void {
    rule = { ...rule, shape: rule.shape === shape ? "straight" : shape, through: null };
    desk.announce(SIDE_WORDS[rule.shape].long);
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
    endPress();
    if (rule.through) {
      rule = { ...rule, through: null };
      return;
    }
    sketch = withoutLast(sketch);
    isClosing = false;
    desk.announce(`A ${isOutline ? "corner" : "point"} is taken back: ${sketch.corners.length} left.`);
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
      const before = sketch;
      placeOrFinish();
      if (sketch.corners.length > before.corners.length) press = { before, at: pointer.at };
    },
    pointerMove(pointer) {
      if (press) pull(pointer);
      else track(pointer);
    },
    pointerUp(pointer) {
      if (press) pull(pointer);
      const [first, to] = [firstCorner(sketch), across];
      endPress();
      if (first && to) finishRectangle(first, to);
    },
    abandonPress() {
      if (press) sketch = press.before;
      endPress();
      found = null;
    },
    key({ key }) {
      if (key === "Enter") {
        if (sketch.corners.length === 0 && !found) return false;
        // With the crosshair Enter places a corner; a second Enter at the same place ends the drawing.
        if (isCrosshair || !canFinish()) placeOrFinish();
        else finishOrComplain(isOutline);
        return true;
      }
      if (sketch.corners.length === 0) return false;
      if (key === "Backspace" || key === "Delete") {
        takeBack();
        return true;
      }
      const letter = key.toUpperCase();
      const shape = SIDE_SHAPES.find((one) => SIDE_KEYS[one] === letter);
      if (mayBend && shape) choose(shape);
      else if (letter === TURN_KEY && rule.shape === "radius") rule = { ...rule, isTurned: !rule.isTurned };
      else return false;
      return true;
    },
    // A single corner is set again sooner than taken up.
    takesBack: () => takesBack(sketch, isOutline, rule),
    begun: () => (sketch.corners.length > 1 ? sketch : null),
    takeUp(begun) {
      sketch = begun as Sketch;
    },
    cancel() {
      const had = sketch.corners.length > 0;
      reset();
      return had;
    },
    entry() {
      const last = lastCorner(sketch);
      const side = running({});
      return pathEntry({
        sketch,
        isOutline,
        at: (side?.ok ? side.to : found?.point) ?? last ?? desk.middle(),
        radius: rule.shape === "radius" ? (rule.radius ?? radiusOf(side, last)) : radiusOf(side, last),
        rule: mayBend ? rule : null,
        units: desk.units(),
        finish: canFinish() && most > 2 ? (isOutline ? "Close the outline" : "End the line") : null,
      });
    },
    typed(values) {
      endPress();
      const last = lastCorner(sketch);
      if (last && values.length === undefined && values.radius === undefined) return "Type a length.";
      const isPointed = found !== null && !(last && samePoint(found.point, last));
      if (last && values.bearing === undefined && !isPointed) {
        return "Type a direction too, or point it out on the sheet.";
      }
      isClosing = false;
      const first = firstCorner(sketch);
      const side = running(values);
      if (first && side?.ok && canClose() && distanceBetween(first, side.to) <= desk.pixel() / 1000) {
        const before = sketch;
        sketch = withLastBulge(sketch, side.bulge);
        const refusal = finish(true);
        if (refusal) sketch = before;
        return refusal;
      }
      const reason = placeNextOrEnd(values);
      if (reason || !lastCorner(sketch)) return reason;
      desk.crosshairTo(rule.through ?? lastCorner(sketch) ?? desk.middle());
      return null;
    },
    overlay() {
      const first = firstCorner(sketch);
      const reason = found?.reason ?? null;
      if (first && across) return stretchedOverlay(first, across, reason, desk.units());
      const typed = desk.typed();
      const side = running(typed);
      return pathOverlay({
        sketch,
        isOutline,
        isClosing,
        canClose: canClose(),
        run: press ? null : edgeOfSide(sketch, side),
        to: side ? side.to : start(typed),
        problem: side?.ok === false ? side.reason : null,
        through: rule.through,
        isPressing: press !== null,
        guides: found?.guides ?? [],
        reason: Object.keys(typed).length > 0 ? null : reason,
        units: desk.units(),
      });
    },
    cursor: () => "crosshair",
  };
}
