/**
 * Draws outlines and lines at a distance along another: the pointer says on which side and how far, or the distance is
 * typed. Works on the selected element; without one, the first press picks it.
 */

import { insidePath } from "../../geometry/contains.ts";
import { pointToPath } from "../../geometry/distance.ts";
import { nearestOnEdge, tangentAt } from "../../geometry/edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import type { CornerStyle } from "../../geometry/parallel.ts";
import type { Path, Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { sidesOf } from "../edits/cut-path.ts";
import type { Refused } from "../edits/edit.ts";
import { elementWords } from "../edits/element-words.ts";
import { type Offset, offsetElement, offsetPaths } from "../edits/offset-element.ts";
import { gridStep, toStep } from "../snapping/grid.ts";
import { type Aimed, lockedReason, pathUnder, selectedPath } from "./aimed-path.ts";
import type { Desk, OverlayShape, Pointer, Tool, TypedValues } from "./tool.ts";

export function offsetTool(desk: Desk): Tool {
  let pointed: Point | null = null;
  let under: Aimed | null = null;
  let corners: CornerStyle = "round";
  let isTurned = false;
  /** Why nothing is under the pointer, where what lies there is locked. */
  let whyLocked = (): string | null => null;
  let kept: { readonly key: string; readonly element: unknown; readonly found: readonly Path[] | Refused } | null =
    null;

  function track(pointer: Pointer): void {
    pointed = pointer.at;
    const slack = 2 * desk.slack(pointer);
    under = selectedPath(desk) ? null : pathUnder(desk, pointer.at, slack);
    whyLocked = () => lockedReason(desk, pointer.at, slack);
  }

  /** What is asked for now; null while there is nothing to go along, or no distance. */
  function offset(aimed: Aimed, typed: TypedValues = desk.typed()): Offset | null {
    const path = pathFrom(aimed.path);
    const away = pointed ? toStep(pointToPath(pointed, path).length, gridStep(1 / desk.pixel(), desk.units())) : 0;
    const distance = typed.distance ?? away;
    if (!(distance > 0)) return null;
    return { distance, side: sideOf(aimed, path), corners };
  }

  function sideOf({ path }: Aimed, whole: Path): Offset["side"] {
    if (path.closed) {
      const isInside = pointed !== null && insidePath(whole, pointed);
      return isInside !== isTurned ? "inside" : "outside";
    }
    if (!pointed) return isTurned ? "right" : "left";
    let best = { distance: Number.POSITIVE_INFINITY, left: true };
    for (const edge of sidesOf(path)) {
      const { point, t, distance } = nearestOnEdge(edge, pointed);
      if (distance >= best.distance) continue;
      const [x, y] = tangentAt(edge, t);
      best = { distance, left: x * (pointed[1] - point[1]) - y * (pointed[0] - point[0]) >= 0 };
    }
    return best.left !== isTurned ? "left" : "right";
  }

  function paths(aimed: Aimed, wanted: Offset): readonly Path[] | Refused {
    const key = `${wanted.distance} ${wanted.side} ${wanted.corners}`;
    if (kept?.key !== key || kept.element !== aimed.element) {
      kept = { key, element: aimed.element, found: offsetPaths(aimed.element, wanted) };
    }
    return kept.found;
  }

  function draw(typed: TypedValues): string | null {
    const aimed = selectedPath(desk);
    if (!aimed) return "Press on the outline or line to go along first.";
    const wanted = offset(aimed, typed);
    if (!wanted) return "Type a distance, or point it out.";
    const before = new Set(desk.document.getState().history.present.elements.map(({ id }) => id));
    const refusal = desk.document.getState().edit(offsetElement(aimed.element.id, wanted));
    if (refusal) return refusal.reason;
    const { elements } = desk.document.getState().history.present;
    const [added] = elements.filter(({ id }) => !before.has(id));
    if (added) desk.finish(added.id);
    return null;
  }

  function press(): void {
    if (selectedPath(desk)) {
      const reason = draw({ ...desk.typed() });
      if (reason) desk.complain(reason);
    } else if (under) {
      desk.view.getState().select([under.element.id]);
      desk.announce(`Along ${elementWords(under.element)}. Now point out how far.`);
      under = null;
    } else desk.complain(whyLocked() ?? "Press on the outline or line to go along first.");
  }

  return {
    id: "offset",
    pointerDown(pointer) {
      track(pointer);
      press();
    },
    pointerMove: track,
    pointerUp() {},
    abandonPress() {},
    key({ key }) {
      const letter = key.toLowerCase();
      if (key === "Enter") {
        if (!pointed) return false;
        press();
      } else if (letter === "a") corners = corners === "round" ? "square" : "round";
      else if (letter === "v") isTurned = !isTurned;
      else return false;
      return true;
    },
    cancel: () => false,
    entry() {
      const aimed = selectedPath(desk);
      if (!aimed) return null;
      const wanted = offset(aimed, {});
      return {
        fields: [
          {
            name: "distance",
            label: "Distance",
            type: "length",
            shown: lengthText(wanted?.distance ?? 0, desk.units()),
          },
        ],
        action: "Draw it there",
        buttons: [
          {
            key: "a",
            label: "Square corners",
            hint: "Straight edges are carried on to a point; round corners lie at the distance everywhere.",
            isPressed: corners === "square",
          },
          {
            key: "v",
            label: "Other side",
            hint: "Inside in place of outside, right in place of left.",
            isPressed: isTurned,
          },
        ],
        finish: null,
      };
    },
    typed: (values) => draw(values),
    overlay() {
      const aimed = selectedPath(desk);
      if (!aimed) {
        if (!under) return [];
        const edges = sidesOf(under.path);
        return [
          { kind: "edges", edges, look: "guide" },
          { kind: "words", at: pointed ?? edges[0]?.from ?? [0, 0], lines: [`along ${elementWords(under.element)}`] },
        ];
      }
      const wanted = offset(aimed);
      if (!wanted) return [];
      const found = paths(aimed, wanted);
      const at = pointed ?? pathFrom(aimed.path).edges[0]?.from ?? [0, 0];
      if ("ok" in found) return [{ kind: "words", at, lines: [found.reason], isProblem: true }];
      const shapes: OverlayShape[] = found.map(({ edges }) => ({ kind: "edges", edges, look: "ghost" }));
      return [...shapes, { kind: "words", at, lines: [`${lengthText(wanted.distance, desk.units())} ${wanted.side}`] }];
    },
    cursor: () => "crosshair",
  };
}
