/** A dimension that is picked on the sheet: what is shown and typed of it, and how it is pulled. */
import { samePoint } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { type Drawn, dimensionAt, drawnDimension } from "../dimensions/dimension-at.ts";
import { type DimensionWay, wayThrough } from "../dimensions/dimension-line.ts";
import { moveDimension, removeDimension } from "../edits/dimension-edits.ts";
import type { AnyElement } from "../edits/edit.ts";
import { pointOf } from "../edits/path-ref.ts";
import type { Drag } from "./drags.ts";
import { sideAt } from "./handles.ts";
import type { Desk, Entry, OverlayShape, Pointer } from "./tool.ts";

/** The dimension that is meant by a press; null: none, or the element there is meant, whose point or edge is as near. */
export function pressedDimension(
  desk: Desk,
  { at }: Pointer,
  slack: number,
  element: AnyElement | null,
): string | null {
  const found = dimensionAt(desk.document.getState().shown, at, slack, desk.pixel());
  if (!found) return null;
  if (element && (pointOf(element) !== null || sideAt(element, at, Math.min(slack, found.away)))) return null;
  return found.id;
}

/** Pulls the line of a dimension; it stays straight from end to end, across or up, as it is. */
export function dimensionDrag(desk: Desk, id: string): Drag {
  const { document } = desk;
  document.getState().beginGesture("Move a dimension");
  let at: Point = [0, 0];
  const now = () => drawnDimension(document.getState().shown, id);
  return {
    move(pointer) {
      const drawn = now();
      at = pointer.at;
      if (!drawn || !document.getState().gesture) return;
      const { point } = desk.snap(pointer, { withoutMiddles: true });
      document.getState().preview(moveDimension(id, wayTo(drawn, point)));
    },
    overlay() {
      const drawn = now();
      if (!drawn) return [];
      return [{ kind: "words", at, lines: [`${lengthText(Math.abs(drawn.dimension.offset), desk.units())} away`] }];
    },
  };
}

function wayTo({ dimension, line: { from, to } }: Drawn, at: Point): DimensionWay {
  const { direction } = dimension;
  if (direction === undefined) return wayThrough(from, to, at, true);
  const axis = direction === "across" ? 1 : 0;
  const [low, high] = [Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])];
  return { direction, offset: at[axis] < low ? at[axis] - low : Math.max(0, at[axis] - high) };
}

/** Lays the line so many inches away, on the side where it is; why not, or null. */
export function layAway(desk: Desk, { dimension: { id, offset, direction } }: Drawn, away: number): string | null {
  const way: DimensionWay = { offset: offset < 0 ? -away : away, ...(direction === undefined ? {} : { direction }) };
  return desk.document.getState().edit(moveDimension(id, way))?.reason ?? null;
}

/** Takes it off the site. True: the key that asked for it was used, whether that could be done or not. */
export function takeHeldAway(desk: Desk, { dimension }: Drawn): true {
  const refusal = desk.document.getState().edit(removeDimension(dimension.id));
  if (refusal) desk.complain(refusal.reason);
  else desk.view.getState().pickDimension(null);
  return true;
}

export function heldEntry({ dimension }: Drawn, units: Units): Entry {
  const shown = lengthText(Math.abs(dimension.offset), units);
  return {
    fields: [{ name: "away", label: "Line away by", type: "length", shown }],
    action: "Move its line",
    finish: null,
    buttons: [{ key: "Delete", label: "Take the dimension away", hint: "Undo brings it back." }],
  };
}

export function holdDimension(desk: Desk, id: string): void {
  desk.view.getState().pickDimension(id);
  const drawn = drawnDimension(desk.document.getState().shown, id);
  if (drawn) desk.announce(heldWords(drawn, desk.units()));
}

/** What is said of a dimension that was picked. */
export function heldWords({ line }: Drawn, units: Units): string {
  return `Dimension ${lengthText(line.length, units)} is picked: Delete takes it away.`;
}

export function heldOverlay({ line: { from, to, a, b } }: Drawn): OverlayShape[] {
  const edges = (pairs: readonly (readonly [Point, Point])[]): Edge[] =>
    pairs.flatMap(([start, end]): Edge[] => (samePoint(start, end) ? [] : [{ kind: "line", from: start, to: end }]));
  return [
    {
      kind: "edges",
      edges: edges([
        [from, a],
        [to, b],
      ]),
      look: "guide",
    },
    { kind: "edges", edges: edges([[a, b]]), look: "ghost" },
    ...[a, b].map((at): OverlayShape => ({ kind: "handle", at, look: "placed" })),
  ];
}
