/**
 * Selects and changes what is drawn.
 *
 * States: idle; pressing (down on something or nothing, not moved yet); dragging (elements, a corner, a side's bend);
 * boxing (a box drawn on empty ground, or wherever it is asked for). What was pressed decides: a corner or middle of the
 * selected element, then a proposed tie or the number of a finding, then a dimension, elements, the ground.
 */
import { boundsOfPoints, distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import type { TieReport } from "../../rules/report.ts";
import { drawnDimension } from "../dimensions/dimension-at.ts";
import { groupOf, lockedIds, withGroups } from "../edits/arrangement.ts";
import { deleteVertex } from "../edits/delete-vertex.ts";
import type { AnyElement, Edit } from "../edits/edit.ts";
import { calledAs } from "../edits/element-words.ts";
import { insertVertex } from "../edits/insert-vertex.ts";
import { moveVertex } from "../edits/move-vertex.ts";
import { ARROWS, BIG_STEP, STEP } from "./arrows.ts";
import {
  dimensionDrag,
  heldEntry,
  heldOverlay,
  holdDimension,
  layAway,
  pressedDimension,
  takeHeldAway,
} from "./dimension-hold.ts";
import { bendDrag, cornerDrag, type Drag, moveDrag } from "./drags.ts";
import { type Handle, handleAt, handlesOf, sideAt } from "./handles.ts";
import { lockedAt, pickedAt, pickedIn } from "./picking.ts";
import {
  type Place,
  placeEdit,
  placeEntry,
  placesOf,
  radiusEdit,
  samePlace,
  stepPlace,
  wordsOfPlace,
} from "./places.ts";
import type { Desk, OverlayShape, Pointer, Tool } from "./tool.ts";

type Pressed =
  | { readonly on: "handle"; readonly handle: Handle }
  | { readonly on: "tie"; readonly tie: TieReport }
  | { readonly on: "finding"; readonly finding: string }
  | { readonly on: "dimension"; readonly id: string }
  | { readonly on: "element"; readonly id: string; readonly wasSelected: boolean }
  | { readonly on: "ground" };

type State =
  | { readonly name: "idle"; readonly over: "handle" | "thing" | null }
  | { readonly name: "pressing"; readonly pressed: Pressed; readonly from: Pointer }
  | { readonly name: "dragging"; readonly drag: Drag }
  | { readonly name: "boxing"; readonly from: Pointer; readonly to: Point };

export function selectTool(desk: Desk): Tool {
  let state: State = { name: "idle", over: null };
  let active: Place | null = null;
  let before = desk.view.getState();

  const site = () => desk.document.getState().shown;
  const elements = () => site().elements;
  const view = () => desk.view.getState();
  /** A drag draws a box wherever it begins, and moves nothing. */
  const isBoxing = ({ mod }: Pointer) => mod || view().adding;
  const isAdding = (pointer: Pointer) => pointer.shift || isBoxing(pointer);
  const byId = (id: string): AnyElement | undefined => elements().find((element) => element.id === id);

  function handles(): Handle[] {
    const element = onlySelected();
    return element ? handlesOf(element, desk.pixel()) : [];
  }

  /** The corner or side that keys act on, as long as it is there and its element is the one selected. */
  function activePlace(): Handle | null {
    const now = active;
    const element = now && onlySelected();
    return (element && placesOf(element).find((one) => samePlace(one, now))) ?? null;
  }

  /** The one selected element, unless it is locked. */
  function onlySelected(): AnyElement | null {
    const [id, ...others] = view().selection;
    const element = id === undefined || others.length > 0 ? undefined : byId(id);
    return element && !lockedIds(site()).has(element.id) ? element : null;
  }

  const heldDimension = () => drawnDimension(site(), view().dimension);

  function stepTo(way: 1 | -1): boolean {
    const element = onlySelected();
    const next = element && stepPlace(element, activePlace(), way);
    if (!element || !next) return false;
    active = next;
    sayPlace();
    desk.reveal(next.at);
    return true;
  }

  /** Says which corner or side keys act on, and where it lies now. */
  function sayPlace(): void {
    const place = activePlace();
    const element = place && byId(place.id);
    if (element) desk.announce(`${wordsOfPlace(element, place, desk.units())}.`);
  }

  function pressedAt(pointer: Pointer): Pressed {
    const slack = desk.slack(pointer);
    const handle = isBoxing(pointer) ? null : handleAt(handles(), pointer.at, slack);
    if (handle) return { on: "handle", handle };
    // Whoever adds means elements, and not the marks that lie about them.
    if (!isAdding(pointer)) {
      const tie = desk.report()?.ties.find(({ to, present }) => !present && distanceBetween(to, pointer.at) <= slack);
      if (tie) return { on: "tie", tie };
      const finding = desk.findingAt(pointer.at, slack);
      if (finding !== null) return { on: "finding", finding };
    }
    const [id] = pickedAt(site(), desk, pointer.at, slack);
    const element = id === undefined ? null : (byId(id) ?? null);
    const dimension = isAdding(pointer) ? null : pressedDimension(desk, pointer, slack, element);
    if (dimension !== null) return { on: "dimension", id: dimension };
    return id === undefined ? { on: "ground" } : { on: "element", id, wasSelected: view().selection.includes(id) };
  }

  function begin(pressed: Pressed, from: Pointer): void {
    if (isBoxing(from)) state = { name: "boxing", from, to: from.at };
    else if (pressed.on === "handle") {
      const { handle } = pressed;
      active = handle;
      const drag = handle.kind === "corner" ? cornerDrag(desk, handle, from.at) : bendDrag(desk, handle);
      state = { name: "dragging", drag };
    } else if (pressed.on === "element") {
      const element = byId(pressed.id);
      const { selection } = view();
      if (!element || !selection.includes(pressed.id)) return;
      state = { name: "dragging", drag: moveDrag(desk, selection, element, from.at) };
    } else if (pressed.on === "dimension") {
      holdDimension(desk, pressed.id);
      state = { name: "dragging", drag: dimensionDrag(desk, pressed.id) };
    } else if (pressed.on === "ground") state = { name: "boxing", from, to: from.at };
  }

  /** Puts a corner into the side that was pressed twice; it can be pulled at once. */
  function insertAt(id: string, pointer: Pointer): boolean {
    const element = byId(id);
    const side = element && sideAt(element, pointer.at, desk.slack(pointer));
    if (!element || !side) return false;
    if (!make(insertVertex(id, side.ref, side.index, side.at))) return true;
    const handle: Handle = { id, ref: side.ref, index: side.index + 1, kind: "corner", at: side.at };
    active = handle;
    state = { name: "pressing", pressed: { on: "handle", handle }, from: { ...pointer, at: side.at } };
    return true;
  }

  function make(edit: Edit): boolean {
    const refusal = desk.document.getState().edit(edit);
    if (refusal) desk.complain(refusal.reason);
    return refusal === null;
  }

  function click(pressed: Pressed, pointer: Pointer): void {
    switch (pressed.on) {
      case "handle":
        active = pressed.handle;
        return;
      case "tie":
        desk.offerTie(pressed.tie);
        return;
      case "finding":
        view().chooseFinding(pressed.finding);
        return;
      case "dimension":
        holdDimension(desk, pressed.id);
        return;
      case "element": {
        const ids = groupOf(site(), pressed.id);
        const { selection, select } = view();
        // What a press with Shift let go of could not be dragged by it: that is for the click.
        if (isAdding(pointer) && pressed.wasSelected) select(selection.filter((id) => !ids.includes(id)));
        else if (isBoxing(pointer)) select([...selection, ...ids.filter((id) => !selection.includes(id))]);
        else if (!isAdding(pointer) && pressed.wasSelected && selection.length > 1) pick(ids);
        return;
      }
      case "ground":
        sayLocked(pointer);
        if (isAdding(pointer)) return;
        view().select([]);
        if (view().finding !== null) view().chooseFinding(null);
    }
  }

  /** Ends a gesture; what was refused last springs back, and why is said. */
  function endGesture(): void {
    const { refusal, commitGesture, clearRefusal } = desk.document.getState();
    commitGesture();
    if (!refusal) return;
    clearRefusal();
    desk.complain(refusal.reason);
  }

  /** Selects unless just that is selected. */
  function pick(ids: readonly string[]): void {
    const { selection, select } = view();
    if (ids.length !== selection.length || ids.some((id) => !selection.includes(id))) select(ids);
  }

  /** A press on something that is locked picks nothing, and says why. */
  function sayLocked(pointer: Pointer): void {
    const locked = lockedAt(site(), pointer.at, desk.slack(pointer));
    if (locked) view().say(`${calledAs(locked)} is locked: find it in the outline to unlock it.`);
  }

  function selectBox(from: Point, to: Point, isAdding: boolean): void {
    const box = boundsOfPoints([from, to]);
    const found = withGroups(site(), pickedIn(site(), desk, box, to[0] < from[0]));
    view().select(isAdding ? [...new Set([...view().selection, ...found])] : found);
    desk.announce(found.length === 1 ? "1 element selected." : `${found.length} elements selected.`);
  }

  return {
    id: "select",
    pointerDown(pointer) {
      // The end of the last press was lost, as when the pointer was let go outside of the window.
      if (state.name === "dragging") endGesture();
      desk.offerTie(null);
      before = view();
      const pressed = pressedAt(pointer);
      if (pressed.on !== "handle") active = null;
      if (pointer.isDouble && !isAdding(pointer)) {
        const id = pressed.on === "element" ? pressed.id : pressed.on === "handle" ? pressed.handle.id : null;
        const isMiddle = pressed.on === "handle" && pressed.handle.kind === "middle";
        if (id !== null && pressed.on === "element" && view().selection.length > 1 && groupOf(site(), id).length > 1) {
          // The second press of two goes into the group.
          view().select([id]);
          state = { name: "pressing", pressed: { ...pressed, wasSelected: true }, from: pointer };
          return;
        }
        if (id !== null && (pressed.on === "element" || isMiddle)) {
          if (view().selection.includes(id) && insertAt(id, pointer)) return;
          view().setPanel("element");
        }
      }
      if (pressed.on === "element" && !pressed.wasSelected && !isBoxing(pointer)) {
        const ids = groupOf(site(), pressed.id);
        const others = isAdding(pointer) ? view().selection.filter((id) => !ids.includes(id)) : [];
        view().select([...others, ...ids]);
      }
      state = { name: "pressing", pressed, from: pointer };
    },
    pointerMove(pointer) {
      if (state.name === "idle") {
        const pressed = pressedAt(pointer);
        state = { name: "idle", over: pressed.on === "handle" ? "handle" : pressed.on === "ground" ? null : "thing" };
        view().hover(pressed.on === "element" ? pressed.id : null);
        return;
      }
      if (state.name === "pressing") {
        if (distanceBetween(state.from.at, pointer.at) <= desk.slack(pointer) / 2) return;
        begin(state.pressed, state.from);
      }
      if (state.name === "dragging") state.drag.move(pointer);
      else if (state.name === "boxing") state = { ...state, to: pointer.at };
    },
    pointerUp(pointer) {
      if (state.name === "pressing") click(state.pressed, state.from);
      else if (state.name === "dragging") {
        state.drag.move(pointer);
        endGesture();
      } else if (state.name === "boxing")
        selectBox(state.from.at, pointer.at, isAdding(state.from) || isAdding(pointer));
      state = { name: "idle", over: null };
    },
    abandonPress() {
      if (state.name === "idle") return;
      if (state.name === "dragging") desk.document.getState().cancelGesture();
      view().select(before.selection);
      if (before.dimension !== null) view().pickDimension(before.dimension);
      state = { name: "idle", over: null };
    },
    key({ key, shift }) {
      if (state.name !== "idle") return false;
      if (key === "." || key === ",") return stepTo(key === "." ? 1 : -1);
      const held = heldDimension();
      if (held && (key === "Delete" || key === "Backspace")) return takeHeldAway(desk, held);
      const place = activePlace();
      const element = place && byId(place.id);
      if (!place || !element) return false;
      const edit = placeEdit(element, place, key, shift);
      if (edit) {
        if (make(edit)) sayPlace();
        return true;
      }
      if (place.kind !== "corner") return false;
      if (key === "Delete" || key === "Backspace") {
        make(deleteVertex(place.id, place.ref, place.index));
        active = null;
        return true;
      }
      const way = ARROWS[key];
      if (!way) return false;
      const size = shift ? BIG_STEP : STEP;
      const to: Point = [place.at[0] + way[0] * size, place.at[1] + way[1] * size];
      if (make(moveVertex(place.id, place.ref, place.index, to))) sayPlace();
      return true;
    },
    place: activePlace,
    cancel() {
      const had = state.name === "dragging" || state.name === "boxing" || activePlace() !== null;
      if (state.name === "dragging") desk.document.getState().cancelGesture();
      state = { name: "idle", over: null };
      active = null;
      desk.offerTie(null);
      return had;
    },
    entry() {
      const held = state.name === "idle" ? heldDimension() : null;
      if (held) return heldEntry(held, desk.units());
      const place = state.name === "idle" ? activePlace() : null;
      const element = place && byId(place.id);
      return element ? placeEntry(element, place, desk.units()) : null;
    },
    typed({ radius, away }) {
      const held = heldDimension();
      if (held && away !== undefined) return layAway(desk, held, away);
      const place = activePlace();
      if (!place || radius === undefined) return "Type a radius.";
      const refusal = desk.document.getState().edit(radiusEdit(place, radius));
      return refusal ? refusal.reason : null;
    },
    overlay() {
      if (state.name === "boxing") {
        return [{ kind: "box", from: state.from.at, to: state.to, isTouching: state.to[0] < state.from.at[0] }];
      }
      const held = heldDimension();
      if (held) return [...heldOverlay(held), ...(state.name === "dragging" ? state.drag.overlay() : [])];
      const place = activePlace();
      const others = handles().filter((one) => !place || !samePlace(one, place));
      const shapes = others.map(({ at, kind }): OverlayShape => ({ kind: "handle", at, look: kind }));
      if (place) shapes.push({ kind: "handle", at: place.at, look: "active" });
      return state.name === "dragging" ? [...shapes, ...state.drag.overlay()] : shapes;
    },
    cursor() {
      if (state.name === "dragging") return "grabbing";
      if (state.name === "boxing") return "crosshair";
      const over = state.name === "idle" ? state.over : "thing";
      return over === "handle" ? "move" : over === "thing" ? "pointer" : "default";
    },
  };
}
