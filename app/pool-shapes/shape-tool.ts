/**
 * Places a pool of the chosen shape: its outline follows the pointer, sized by what is typed or else by what each
 * dimension starts with. A click or Enter places it. Where a pool that stands is given other dimensions, they start with
 * what it has, the outline stays where it is, and only Enter or the button changes it.
 *
 * Terms. The held point is the point of the outline that lies at the pointer, or stays where it is: its middle, or one
 * of its corners in turn.
 */
import { pathFrom } from "../../geometry/outline.ts";
import { samePoint } from "../../geometry/points.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { calledAs } from "../edits/element-words.ts";
import { insetsOf, poolAround } from "../edits/inset-place.ts";
import { setPath } from "../edits/set-path.ts";
import { draft } from "../edits/templates.ts";
import type { Snapped } from "../snapping/snap.ts";
import type { Desk, EntryField, OverlayShape, Tool, TypedValues } from "../tools/tool.ts";
import type { PoolReshaping } from "../view/view-store.ts";
import { placed, placedPoint, walkedBack } from "./placing.ts";
import { type Dimensions, fullDimensions, type Shaped } from "./shape.ts";
import { SHAPES } from "./shapes.ts";

const MIDDLE: Point = [0, 0];
const QUARTER = 90;

export function shapeTool(desk: Desk): Tool {
  const { reshaping } = desk.view.getState();
  const outlineNow = (id: string) =>
    desk.document.getState().history.present.elements.find((element) => element.id === id)?.outline;
  /** Of the pool that is given other dimensions, when that began. */
  const begun = reshaping && outlineNow(reshaping.id);
  let found: Snapped | null = null;
  /** A pointer has pressed on the sheet. */
  let isPressed = false;
  let turn = reshaping?.turn ?? 0;
  let isMirrored = reshaping?.isMirrored ?? false;
  /** Which corner is held, counted from 1; 0 for the middle. */
  let held = 0;

  const shape = () => SHAPES[desk.view.getState().shape];
  const sizes = (typed: TypedValues): Dimensions => fullDimensions(shape(), { ...kept(), ...typed });
  const shaped = (typed: TypedValues): Shaped => shape().outline(sizes(typed), desk.units());
  const degrees = (typed: TypedValues) => typed.turn ?? turn;

  /** What the pool is drawn by now; of another shape only how long and wide it is. */
  function kept(): Dimensions {
    if (!reshaping) return {};
    if (shape().id === reshaping.shape) return reshaping.sizes;
    const { length, width } = reshaping.sizes;
    return { ...(length === undefined ? {} : { length }), ...(width === undefined ? {} : { width }) };
  }

  /** Where the held point lies. */
  function place(): Point {
    if (!reshaping) return found?.point ?? desk.middle();
    const drawn = SHAPES[reshaping.shape].outline(reshaping.sizes, desk.units());
    const isSame = shape().id === reshaping.shape;
    return drawn.ok && isSame ? placedPoint(holdOf(drawn.outline), { ...reshaping, hold: MIDDLE }) : reshaping.at;
  }

  /** The number of the held corner among so many; 0 for the middle. */
  const heldOf = (count: number) => (held === 0 || count === 0 ? 0 : ((held - 1) % count) + 1);

  function holdOf({ vertices }: PathData): Point {
    const vertex = vertices[heldOf(vertices.length) - 1];
    return vertex ? [vertex[0], vertex[1]] : MIDDLE;
  }

  /** The outline where it would be placed, or why it cannot be. */
  function standing(typed: TypedValues): Shaped {
    const made = shaped(typed);
    if (!made.ok) return made;
    const at = place();
    const outline = placed(made.outline, { at, turn: degrees(typed), isMirrored, hold: holdOf(made.outline) });
    return { ok: true, outline };
  }

  function put(typed: TypedValues): string | null {
    const made = standing(typed);
    if (!made.ok) return made.reason;
    if (reshaping) return change(reshaping, made.outline);
    const { document } = desk;
    const element = draft(document.getState().history.present, "pool-shape", { path: made.outline });
    const refusal = document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    found = null;
    desk.finish(element.id);
    return null;
  }

  /** Corners keep their numbers, so that what hangs on them stays there. */
  function change({ id, shape: was, first, isClockwise }: PoolReshaping, outline: PathData): string | null {
    const numbered = shape().id === was ? numberedAs(outline, first, isClockwise) : outline;
    const { document, view } = desk;
    if (outlineNow(id) !== begun) {
      const pool = document.getState().history.present.elements.find((element) => element.id === id);
      return `${pool ? capitalized(calledAs(pool)) : "The pool"} has changed meanwhile: give it its dimensions anew.`;
    }
    const lay = insetsInside(document.getState().history.present, id);
    const refusal = document.getState().edit(setPath(id, { field: "outline" }, numbered, "Change the dimensions of"));
    if (refusal) return refusal.reason;
    const lie = new Set(insetsInside(document.getState().history.present, id));
    const { elements } = document.getState().history.present;
    const left = elements.filter((one) => lay.includes(one.id) && !lie.has(one.id));
    desk.finish(id);
    if (left.length > 0) {
      const names = left.map((one) => calledAs(one)).join(", ");
      view.getState().say(`Outside the pool now: ${names}. Move or change what lies outside.`, "problem");
    }
    return null;
  }

  function putOrComplain(): void {
    const reason = put(desk.typed());
    if (reason) desk.complain(reason);
  }

  function holdNext(): void {
    const made = shaped(desk.typed());
    const count = made.ok ? made.outline.vertices.length : 0;
    held = heldOf(count) >= count ? 0 : heldOf(count) + 1;
    desk.announce(`Held at ${held === 0 ? "its middle" : `corner ${held}`}.`);
  }

  const track: Tool["pointerMove"] = (pointer) => {
    if (!reshaping) found = desk.snap(pointer);
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
      if (reshaping) desk.announce("Press Enter to change the pool.");
      else putOrComplain();
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
      const before = { turn: reshaping?.turn ?? 0, isMirrored: reshaping?.isMirrored ?? false };
      const had = isPressed || turn !== before.turn || isMirrored !== before.isMirrored || held !== 0;
      ({ turn, isMirrored } = before);
      held = 0;
      found = null;
      isPressed = false;
      return had;
    },
    entry() {
      const typed = desk.typed();
      const full = sizes(typed);
      const made = shaped(typed);
      const at = made.ok ? heldOf(made.outline.vertices.length) : held;
      const units = desk.units();
      const fields = shape().fields.map(({ name, label, type, help }): EntryField => {
        const size = full[name] ?? 0;
        return { name, label, type, help, shown: type === "angle" ? degreesText(size) : lengthText(size, units) };
      });
      return {
        fields: [
          ...fields,
          { name: "turn", label: "Turned by", type: "angle", shown: degreesText(turn), help: "Counter-clockwise." },
        ],
        action: reshaping ? "Change the pool" : "Place the pool",
        buttons: [
          { key: "q", label: "Turn", hint: "A quarter turn to the left." },
          { key: "v", label: "Mirror", hint: "Swaps its top for its bottom.", isPressed: isMirrored },
          {
            key: "n",
            label: at === 0 ? "Held at: middle" : `Held at: corner ${at}`,
            hint: reshaping
              ? "The point of the outline that stays where it is: its middle or a corner."
              : "The point of the outline that lies at the pointer: its middle or a corner.",
          },
        ],
        finish: null,
      };
    },
    typed: put,
    overlay() {
      const typed = desk.typed();
      const made = standing(typed);
      const at = place();
      if (!made.ok) return [{ kind: "words", at, lines: [made.reason], isProblem: true }];
      const { edges, bounds } = pathFrom(made.outline);
      const shapes: OverlayShape[] = [{ kind: "edges", edges, look: "ghost" }];
      for (const vertex of made.outline.vertices) {
        const corner: Point = [vertex[0], vertex[1]];
        shapes.push({ kind: "handle", at: corner, look: samePoint(corner, at) ? "active" : "placed" });
      }
      const reason = found?.reason ?? null;
      if (!reshaping) shapes.push({ kind: "cursor", at, isSnapped: reason !== null });
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

function degreesText(degrees: number): string {
  return `${Math.round(degrees * 1e4) / 1e4} deg`;
}

/** The outline with its corners numbered as those of the one that it takes the place of, where it has as many. */
function numberedAs(outline: PathData, first: number, isClockwise: boolean): PathData {
  const walked = isClockwise ? walkedBack(outline) : outline;
  const { vertices } = walked;
  const count = vertices.length;
  return { ...walked, vertices: vertices.map((_, i) => vertices[(i - first + 2 * count) % count] as Vertex) };
}

/** Steps and ledges that name a pool and lie inside it. */
function insetsInside(site: Site, pool: string): string[] {
  return insetsOf(site, new Set([pool])).flatMap(({ id, outline }) => (poolAround(site, outline) === pool ? [id] : []));
}
