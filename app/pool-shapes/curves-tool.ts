/**
 * Draws a pool as flowing curves: arcs from point to point, each of which starts in the direction that the last ended
 * with. Closing adds the two arcs that lead back smoothly.
 *
 * States: nothing placed; drawing. The direction that the outline starts in is settled by the third point: the first two
 * arcs lie on one circle, or, where the third point is given by a radius, the first side is straight.
 */

import { pathFrom } from "../../geometry/outline.ts";
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import {
  alongCircle,
  arcsThrough,
  closedArcs,
  leaning,
  startWay,
  type Way,
  wayTo,
} from "../../geometry/tangent-arcs.ts";
import type { Edge, PathData, Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { draft } from "../edits/templates.ts";
import { unsnapped } from "../snapping/snap.ts";
import { bearingWords, placeFrom, placeWords, sideWords } from "../tools/measures.ts";
import { TAKE_BACK } from "../tools/take-back.ts";
import type { Desk, Entry, OverlayShape, Pointer, Tool, TypedValues } from "../tools/tool.ts";

const WHOLE_TURN = 2 * Math.PI;

interface Drawn {
  readonly points: readonly Point[];
  /** Null until the third point settles it. */
  readonly start: Way | null;
}

interface Found {
  readonly point: Point;
  readonly reason: string | null;
  readonly guides: readonly (readonly [Point, Point])[];
}

const NOTHING: Drawn = { points: [], start: null };

export function curvesTool(desk: Desk): Tool {
  let drawn: Drawn = NOTHING;
  let earlier: readonly Drawn[] = [];
  let found: Found | null = null;
  let isClosing = false;
  let isCrosshair = false;
  /** What was drawn when the pointer came down. */
  let before: { readonly drawn: Drawn; readonly earlier: readonly Drawn[] } | null = null;

  const startOf = ({ points, start }: Drawn): Way | null => start ?? startWay(points);

  /** The direction that the next arc starts in; null while the next point can still bend the first. */
  function wayNow(): Way | null {
    const start = startOf(drawn);
    if (!start || drawn.points.length < 2) return null;
    return arcsThrough(drawn.points, start)?.way ?? null;
  }

  function track(pointer: Pointer): void {
    isCrosshair = pointer.isCrosshair;
    const [first, last] = [drawn.points[0], drawn.points.at(-1)];
    isClosing =
      first !== undefined && drawn.points.length >= 3 && distanceBetween(first, pointer.at) <= desk.slack(pointer);
    if (isClosing && first) found = { point: first, reason: "closes the outline", guides: [] };
    // Enter at the last point closes the outline, wherever that lies.
    else if (isCrosshair && last && samePoint(last, pointer.at)) found = unsnapped(pointer.at);
    else if (isCrosshair) found = desk.snap(pointer, last ? { lines: [{ with: last, name: "the last point" }] } : {});
    else
      found =
        straightOn(pointer, last) ??
        desk.snap(pointer, last ? { lines: [{ with: last, name: "the last point" }] } : {});
  }

  /** A pointer near the line on which the outline would go straight on is drawn to it. */
  function straightOn(pointer: Pointer, last: Point | undefined): Found | null {
    const way = drawn.points.length >= 3 ? wayNow() : null;
    if (!last || !way || pointer.alt) return null;
    const [dx, dy] = [pointer.at[0] - last[0], pointer.at[1] - last[1]];
    const [along, off] = [dx * way[0] + dy * way[1], dx * way[1] - dy * way[0]];
    if (along <= desk.slack(pointer) || Math.abs(off) > desk.slack(pointer) / 2) return null;
    const point: Point = [last[0] + along * way[0], last[1] + along * way[1]];
    return { point, reason: "goes on straight", guides: [] };
  }

  /** Where the next point lies; typed values go before the pointer. */
  function next(typed: TypedValues): { readonly at: Point; readonly start: Way | null } | null {
    const last = drawn.points.at(-1);
    if (!last) {
      const at = found?.point ?? desk.middle();
      return { at: [typed.right ?? at[0], typed.up ?? at[1]], start: null };
    }
    const pointed = found?.point ?? last;
    const { radius, turn } = typed;
    const way = wayNow();
    if (!way || (radius === undefined && turn === undefined)) {
      return { at: placeFrom(last, pointed, typed), start: drawn.start };
    }
    const lean = leaning(way, wayTo(last, pointed) ?? way);
    const hand = (turn ?? lean) < 0 ? -1 : 1;
    const angle = turn === undefined ? 2 * lean : (turn * Math.PI) / 180;
    // Without a radius the arc ends as far off as the pointer is.
    const reach = 2 * Math.abs(Math.sin(angle / 2));
    const size = radius === undefined ? distanceBetween(last, pointed) / Math.max(reach, 1e-9) : Math.abs(radius);
    const turned = turn === undefined ? aroundCircle(last, way, size, hand, pointed) : angle;
    return { at: alongCircle(last, way, size, turned), start: drawn.start ?? startWay(drawn.points) };
  }

  function place(at: Point, start: Way | null): boolean {
    const last = drawn.points.at(-1);
    if (last && samePoint(last, at)) return false;
    const points = [...drawn.points, at];
    const settled = points.length >= 3 ? (start ?? startWay(points)) : null;
    earlier = [...earlier, drawn];
    drawn = { points, start: settled };
    desk.announce(`Point ${points.length} at ${placeWords(at, desk.units())}.`);
    return true;
  }

  function closed(): PathData | null {
    const start = startOf(drawn);
    return start && closedArcs(drawn.points, start);
  }

  function finish(): string | null {
    if (drawn.points.length < 3) return "Place at least three points first.";
    const path = closed();
    if (!path) return "The last arc would have to turn right round: place the points in their order along the wall.";
    const element = draft(desk.document.getState().history.present, "pool-curves", { path });
    const refusal = desk.document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    reset();
    desk.finish(element.id);
    return null;
  }

  function finishOrComplain(): void {
    const reason = finish();
    if (reason) desk.complain(reason);
  }

  function placeOrFinish(): void {
    const to = next(desk.typed());
    if (!to) return;
    if (isClosing) finishOrComplain();
    else if (place(to.at, to.start)) desk.clearTyped();
    else finishOrComplain();
  }

  function reset(): void {
    drawn = NOTHING;
    earlier = [];
    found = null;
    isClosing = false;
    before = null;
  }

  function takeBack(): void {
    before = null;
    drawn = earlier.at(-1) ?? NOTHING;
    earlier = earlier.slice(0, -1);
    isClosing = false;
    desk.announce(`A point is taken back: ${drawn.points.length} left.`);
    const last = drawn.points.at(-1);
    if (isCrosshair && last) desk.crosshairTo(last);
  }

  return {
    id: "pool-curves",
    pointerDown(pointer) {
      track(pointer);
      before = { drawn, earlier };
      if (pointer.isDouble && drawn.points.length >= 3) finishOrComplain();
      else placeOrFinish();
    },
    pointerMove: track,
    pointerUp() {
      before = null;
    },
    abandonPress() {
      if (before) ({ drawn, earlier } = before);
      before = null;
      isClosing = false;
    },
    key({ key }) {
      if (key === "Enter") {
        if (drawn.points.length === 0 && !found) return false;
        // With the crosshair Enter places a point; a second Enter at the same place closes the outline.
        if (isCrosshair || drawn.points.length < 3) placeOrFinish();
        else finishOrComplain();
        return true;
      }
      if (drawn.points.length === 0 || (key !== "Backspace" && key !== "Delete")) return false;
      takeBack();
      return true;
    },
    takesBack: () => (drawn.points.length === 0 ? null : TAKE_BACK.point),
    begun: () => (drawn.points.length > 1 ? { drawn, earlier } : null),
    takeUp(begun) {
      ({ drawn, earlier } = begun as NonNullable<typeof before>);
    },
    cancel() {
      const had = drawn.points.length > 0;
      reset();
      return had;
    },
    entry: () => entry(),
    typed(values) {
      const to = next(values);
      const last = drawn.points.at(-1);
      if (!to) return "Type how far to the right and up the first point lies.";
      const isByArc = values.radius !== undefined || values.turn !== undefined;
      const isPointed = last !== undefined && found !== null && !samePoint(found.point, last);
      if (last && isByArc && !isPointed && (values.radius === undefined || values.turn === undefined)) {
        return "Type both the radius and by how much the arc turns, or point it out on the sheet.";
      }
      if (last && !isByArc && !isPointed && (values.length === undefined || values.bearing === undefined)) {
        return "Type both the length and the direction, or point it out on the sheet.";
      }
      if (!place(to.at, to.start)) return "There already is a point at that place.";
      desk.crosshairTo(to.at);
      return null;
    },
    overlay: () => overlay(),
    cursor: () => "crosshair",
  };

  function entry(): Entry {
    const units = desk.units();
    const last = drawn.points.at(-1);
    const at = found?.point ?? last ?? desk.middle();
    const way = wayNow();
    const running = way && last && !samePoint(last, at) ? arcsThrough([last, at], way) : null;
    const arc = running ? pathFrom({ vertices: running.vertices, closed: false }).edges[0] : undefined;
    const base = { action: last ? "Place the point" : "Begin here" };
    const finishWords = drawn.points.length >= 3 ? "Close the outline" : null;
    if (!last) {
      return {
        ...base,
        finish: finishWords,
        fields: [
          { name: "right", label: "Right", type: "level", shown: lengthText(at[0], units) },
          { name: "up", label: "Up", type: "level", shown: lengthText(at[1], units) },
        ],
      };
    }
    const byArc: Entry["fields"] = [
      {
        name: "radius",
        label: "Radius",
        type: "length",
        shown: arc?.kind === "arc" ? lengthText(arc.radius, units) : "straight",
      },
      {
        name: "turn",
        label: "Turns by",
        type: "angle",
        shown: arc?.kind === "arc" ? `${Math.round((arc.sweep * 1800) / Math.PI) / 10} deg` : "0 deg",
        help: "To the left; a minus sign turns it to the right.",
      },
    ];
    return {
      ...base,
      finish: finishWords,
      fields: [
        ...(way ? byArc : []),
        { name: "length", label: "Length", type: "length", shown: lengthText(distanceBetween(last, at), units) },
        { name: "bearing", label: "Direction", type: "bearing", shown: bearingWords(last, at) },
      ],
    };
  }

  function overlay(): OverlayShape[] {
    const shapes: OverlayShape[] = [];
    const to = isClosing ? null : next(desk.typed());
    const points =
      to && !samePoint(to.at, drawn.points.at(-1) ?? [Number.NaN, 0]) ? [...drawn.points, to.at] : drawn.points;
    const start = drawn.start ?? to?.start ?? startWay(points);
    const open = start && points.length >= 2 ? arcsThrough(points, start) : null;
    const edges: readonly Edge[] = open ? pathFrom({ vertices: open.vertices, closed: false }).edges : [];
    if (edges.length > 0) shapes.push({ kind: "edges", edges, look: "ghost" });
    const whole = start && closedArcs(points, start);
    if (whole) shapes.push({ kind: "edges", edges: pathFrom(whole).edges.slice(-2), look: "closing" });
    for (const [from, end] of found?.guides ?? []) {
      shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: end }], look: "guide" });
    }
    for (const at of drawn.points) shapes.push({ kind: "handle", at, look: "placed" });
    const first = drawn.points[0];
    if (first && drawn.points.length >= 3)
      shapes.push({ kind: "handle", at: first, look: isClosing ? "active" : "corner" });
    const running = edges.at(-1);
    if (running && to && points !== drawn.points) {
      shapes.push({ kind: "measure", edge: running, text: sideWords(running, desk.units()) });
    }
    if (!to || (!found && drawn.points.length === 0)) return shapes;
    const reason = Object.keys(desk.typed()).length > 0 ? null : (found?.reason ?? null);
    shapes.push({ kind: "cursor", at: to.at, isSnapped: reason !== null });
    if (reason !== null) shapes.push({ kind: "words", at: to.at, lines: [reason] });
    return shapes;
  }
}

/** How far round the circle on one hand of a way a place lies, seen from the circle's center: radians, with the hand's sign. */
function aroundCircle(from: Point, way: Way, radius: number, hand: 1 | -1, to: Point): number {
  const center: Point = [from[0] - hand * way[1] * radius, from[1] + hand * way[0] * radius];
  const start = Math.atan2(from[1] - center[1], from[0] - center[0]);
  let turned = hand * (Math.atan2(to[1] - center[1], to[0] - center[0]) - start);
  while (turned < 0) turned += WHOLE_TURN;
  return hand * turned;
}
