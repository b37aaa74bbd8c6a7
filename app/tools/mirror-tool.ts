/**
 * Mirrors what is selected over a line that is drawn; or, where nothing is, what is pressed first.
 *
 * States: choosing (nothing is selected); aiming (the line has no place yet); drawing (it begins at one place and runs
 * through the pointer, and what it would make shows). Pulling from one place to the other does it in one go.
 */
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { foreseenBy } from "../arranging/foresee.ts";
import { groupOf } from "../edits/arrangement.ts";
import { mirrorCopies } from "../edits/duplicate-elements.ts";
import { elementsOf, elementsWords } from "../edits/element-words.ts";
import { mirrorElements } from "../edits/turn-elements.ts";
import type { Snapped } from "../snapping/snap.ts";
import type { Foreseen } from "../view/view-store.ts";
import { KEEPS_ORIGINAL } from "./entry-keys.ts";
import { bearingWords, placeFrom } from "./measures.ts";
import { pickedAt } from "./picking.ts";
import { TAKE_BACK } from "./take-back.ts";
import type { Desk, OverlayShape, Pointer, Tool, TypedValues } from "./tool.ts";

/** How far the line is drawn beyond what was pointed at, screen pixels. */
const BEYOND_PIXELS = 3000;

export function mirrorTool(desk: Desk): Tool {
  let from: Point | null = null;
  let found: Snapped | null = null;
  let pressedAt: Point | null = null;
  let keepsOriginal = false;
  let kept: { readonly site: Site; readonly key: string; readonly shown: readonly Foreseen[] } | null = null;

  const site = () => desk.document.getState().shown;
  const chosen = () => elementsOf(site(), desk.view.getState().selection);
  const ids = () => chosen().map(({ id }) => id);

  function track(pointer: Pointer): void {
    const without = ids();
    found = desk.snap(
      pointer,
      from ? { from, without, lines: [{ with: from, name: "where the line begins" }] } : { withoutMiddles: false },
    );
  }

  /** The second place of the line. What is typed goes before the pointer. */
  function end(typed: TypedValues = desk.typed()): Point | null {
    if (!from) return null;
    const pointed = found?.point ?? from;
    // A direction is enough: the line has no end.
    return typed.bearing === undefined ? pointed : placeFrom(from, pointed, { bearing: typed.bearing, length: 1 });
  }

  function edit(through: Point, to: Point) {
    const degrees = (Math.atan2(to[1] - through[1], to[0] - through[0]) * 180) / Math.PI;
    return (keepsOriginal ? mirrorCopies : mirrorElements)(ids(), through, degrees);
  }

  function choose(pointer: Pointer): void {
    const [id] = pickedAt(site(), desk, pointer.at, desk.slack(pointer));
    if (id === undefined) {
      desk.complain("Press on what is mirrored first.");
      return;
    }
    desk.view.getState().select(groupOf(site(), id));
    desk.announce(`${elementsWords(chosen())} is mirrored. Now draw the line.`);
  }

  function put(at: Point): string | null {
    if (!from) {
      from = at;
      desk.announce("The line begins here. Press where it goes through.");
      desk.clearTyped();
      return null;
    }
    return make(from, at);
  }

  function make(through: Point, to: Point): string | null {
    if (samePoint(through, to)) return "A line goes from one place to another.";
    const { document, view } = desk;
    const count = document.getState().history.present.elements.length;
    const refusal = document.getState().edit(edit(through, to));
    if (refusal) return refusal.reason;
    const copies = document.getState().history.present.elements.slice(count);
    if (copies.length > 0) view.getState().select(copies.map(({ id }) => id));
    view.getState().setTool("select");
    return null;
  }

  function putOrComplain(at: Point): void {
    const reason = put(at);
    if (reason) desk.complain(reason);
  }

  function reset(): boolean {
    const had = from !== null;
    from = null;
    pressedAt = null;
    return had;
  }

  function foreseen(through: Point, to: Point): readonly Foreseen[] {
    const key = JSON.stringify([through, to, keepsOriginal, ids()]);
    if (kept?.key !== key || kept.site !== site()) {
      kept = { site: site(), key, shown: foreseenBy(site(), edit(through, to)) };
    }
    return kept.shown;
  }

  function line(a: Point, b: Point): OverlayShape {
    const length = distanceBetween(a, b);
    const far = (BEYOND_PIXELS * desk.pixel()) / length;
    const way: Point = [(b[0] - a[0]) * far, (b[1] - a[1]) * far];
    const ends = { from: [a[0] - way[0], a[1] - way[1]] as Point, to: [a[0] + way[0], a[1] + way[1]] as Point };
    return { kind: "edges", edges: [{ kind: "line", ...ends }], look: "guide" };
  }

  return {
    id: "mirror",
    pointerDown(pointer) {
      track(pointer);
      if (chosen().length === 0) return choose(pointer);
      if (!found) return;
      pressedAt = from ? null : pointer.at;
      putOrComplain(end() ?? found.point);
    },
    pointerMove: track,
    pointerUp(pointer) {
      const isPulled = pressedAt !== null && distanceBetween(pressedAt, pointer.at) > desk.slack(pointer);
      pressedAt = null;
      if (!isPulled || !from) return;
      track(pointer);
      if (found) putOrComplain(found.point);
    },
    abandonPress() {
      if (pressedAt !== null) reset();
    },
    key({ key }) {
      if (key.toUpperCase() === KEEPS_ORIGINAL) {
        keepsOriginal = !keepsOriginal;
        desk.announce(keepsOriginal ? "A copy is mirrored; the original stays." : "The original itself is mirrored.");
        return true;
      }
      if (key === "Enter" && found) {
        if (chosen().length === 0) desk.complain("Select what is mirrored first.");
        else putOrComplain(end() ?? found.point);
        return true;
      }
      return (key === "Backspace" || key === "Delete") && reset();
    },
    takesBack: () => (from ? TAKE_BACK.begin : null),
    cancel: reset,
    entry() {
      if (chosen().length === 0) return null;
      const at = end({});
      const shown = from && at && !samePoint(from, at) ? bearingWords(from, at) : "";
      return {
        fields: from ? [{ name: "bearing", label: "Direction of the line", type: "bearing", shown }] : [],
        action: from ? "Mirror" : "Begin the line",
        buttons: [
          {
            key: KEEPS_ORIGINAL,
            label: "Keep the original",
            hint: "Mirrors a copy; the original stays where it is.",
            isPressed: keepsOriginal,
          },
        ],
        finish: null,
      };
    },
    typed(values) {
      const to = end(values);
      return from && to ? make(from, to) : "Press where the line begins first.";
    },
    overlay() {
      const at = from ? end() : (found?.point ?? null);
      const shapes: OverlayShape[] = [];
      if (from) shapes.push({ kind: "handle", at: from, look: "placed" });
      if (from && at && !samePoint(from, at)) {
        shapes.push(line(from, at));
        for (const one of foreseen(from, at)) {
          if ("edges" in one) shapes.push({ kind: "edges", edges: one.edges, look: "ghost" });
          else shapes.push({ kind: "handle", at: one.at, look: "placed" });
        }
      }
      if (!at) return shapes;
      const what = chosen();
      const reason = found?.reason ?? null;
      shapes.push({ kind: "cursor", at: from && found ? found.point : at, isSnapped: reason !== null });
      const lines = what.length === 0 ? ["press on what is mirrored"] : reason === null ? [] : [reason];
      return [...shapes, { kind: "words", at: found?.point ?? at, lines }];
    },
    cursor: () => "crosshair",
  };
}
