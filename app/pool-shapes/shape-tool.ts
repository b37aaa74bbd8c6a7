/**
 * Places a pool of the chosen shape: its outline follows the pointer, sized by what is typed or else by what each
 * dimension starts with. A click or Enter places it.
 *
 * Terms. The held point is the point of the outline that lies at the pointer: its middle, or one of its corners in turn.
 */
import { pathFrom } from "../../geometry/outline.ts";
import { samePoint } from "../../geometry/points.ts";
import type { PathData, Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { draft } from "../edits/templates.ts";
import type { Snapped } from "../snapping/snap.ts";
import type { Desk, EntryField, OverlayShape, Tool, TypedValues } from "../tools/tool.ts";
import { placed } from "./placing.ts";
import { type Dimensions, fullDimensions, type Shaped } from "./shape.ts";
import { SHAPES } from "./shapes.ts";

const MIDDLE: Point = [0, 0];
const QUARTER = 90;

export function shapeTool(desk: Desk): Tool {
  let found: Snapped | null = null;
  /** A pointer has pressed on the sheet. */
  let isPressed = false;
  let turn = 0;
  let isMirrored = false;
  /** Which corner is held, counted from 1; 0 for the middle. */
  let held = 0;

  const shape = () => SHAPES[desk.view.getState().shape];
  const sizes = (typed: TypedValues): Dimensions => fullDimensions(shape(), typed);
  const shaped = (typed: TypedValues): Shaped => shape().outline(sizes(typed), desk.units());
  const degrees = (typed: TypedValues) => typed.turn ?? turn;

  function holdOf({ vertices }: PathData): Point {
    const vertex = held === 0 ? undefined : vertices[(held - 1) % vertices.length];
    return vertex ? [vertex[0], vertex[1]] : MIDDLE;
  }

  /** The outline where it would be placed, or why it cannot be. */
  function standing(typed: TypedValues): Shaped {
    const made = shaped(typed);
    if (!made.ok) return made;
    const at = found?.point ?? desk.middle();
    const outline = placed(made.outline, { at, turn: degrees(typed), isMirrored, hold: holdOf(made.outline) });
    return { ok: true, outline };
  }

  function put(typed: TypedValues): string | null {
    const made = standing(typed);
    if (!made.ok) return made.reason;
    const { document } = desk;
    const element = draft(document.getState().history.present, "pool-shape", { path: made.outline });
    const refusal = document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    found = null;
    desk.finish(element.id);
    return null;
  }

  function putOrComplain(): void {
    const reason = put(desk.typed());
    if (reason) desk.complain(reason);
  }

  function holdNext(): void {
    const made = shaped(desk.typed());
    const count = made.ok ? made.outline.vertices.length : 0;
    held = held >= count ? 0 : held + 1;
    desk.announce(`Held at ${held === 0 ? "its middle" : `corner ${held}`}.`);
  }

  const track: Tool["pointerMove"] = (pointer) => {
    found = desk.snap(pointer);
  };

  return {
    id: "pool-shape",
    pointerDown(pointer) {
      track(pointer);
      isPressed = true;
    },
    pointerMove: track,
    pointerUp(pointer) {
      if (!isPressed) return;
      isPressed = false;
      track(pointer);
      putOrComplain();
    },
    pointerLeave() {
      // It goes back to the middle of the view, where it is seen beside the fields.
      found = null;
    },
    abandonPress() {
      isPressed = false;
      found = null;
    },
    key({ key }) {
      switch (key.toLowerCase()) {
        case "enter":
          putOrComplain();
          return true;
        case "q":
          turn = (turn + QUARTER) % 360;
          desk.announce(`Turned to ${turn} degrees.`);
          return true;
        case "v":
          isMirrored = !isMirrored;
          desk.announce(isMirrored ? "Mirrored." : "No longer mirrored.");
          return true;
        case "n":
          holdNext();
          return true;
        default:
          return false;
      }
    },
    cancel() {
      const had = turn !== 0 || isMirrored || held !== 0;
      turn = 0;
      isMirrored = false;
      held = 0;
      found = null;
      return had;
    },
    entry() {
      const typed = desk.typed();
      const full = sizes(typed);
      const units = desk.units();
      const fields = shape().fields.map(({ name, label, type, help }): EntryField => {
        const size = full[name] ?? 0;
        return { name, label, type, help, shown: type === "angle" ? `${size} deg` : lengthText(size, units) };
      });
      return {
        fields: [
          ...fields,
          { name: "turn", label: "Turned by", type: "angle", shown: `${turn} deg`, help: "Counter-clockwise." },
        ],
        action: "Place the pool",
        buttons: [
          { key: "q", label: "Turn", hint: "A quarter turn to the left." },
          { key: "v", label: "Mirror", hint: "Swaps its top for its bottom.", isPressed: isMirrored },
          {
            key: "n",
            label: held === 0 ? "Held at: middle" : `Held at: corner ${held}`,
            hint: "The point of the outline that lies at the pointer: its middle or a corner.",
          },
        ],
        finish: null,
        canTakeBack: false,
      };
    },
    typed: put,
    overlay() {
      const typed = desk.typed();
      const made = standing(typed);
      const at = found?.point ?? desk.middle();
      if (!made.ok) return [{ kind: "words", at, lines: [made.reason], isProblem: true }];
      const { edges, bounds } = pathFrom(made.outline);
      const shapes: OverlayShape[] = [{ kind: "edges", edges, look: "ghost" }];
      for (const vertex of made.outline.vertices) {
        const corner: Point = [vertex[0], vertex[1]];
        shapes.push({ kind: "handle", at: corner, look: samePoint(corner, at) ? "active" : "placed" });
      }
      const reason = found?.reason ?? null;
      shapes.push({ kind: "cursor", at, isSnapped: reason !== null });
      for (const [from, to] of found?.guides ?? []) {
        shapes.push({ kind: "edges", edges: [{ kind: "line", from, to }], look: "guide" });
      }
      const [across, up] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
      const size = `${lengthText(across, desk.units())} across, ${lengthText(up, desk.units())} up`;
      shapes.push({ kind: "words", at, lines: reason === null ? [size] : [size, reason] });
      return shapes;
    },
    cursor: () => "crosshair",
  };
}
