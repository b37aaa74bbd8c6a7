/** What dragging does to elements: one object for each drag, which previews every frame from the gesture's own start. */
import { edgeLength } from "../../geometry/edge.ts";
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import type { Kind } from "../../rules/site/elements.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import type { AnyElement, Edit, Refused } from "../edits/edit.ts";
import { moveElements } from "../edits/move-elements.ts";
import { moveVertex } from "../edits/move-vertex.ts";
import { pathOf, pathRefs, pointOf } from "../edits/path-ref.ts";
import { setBulge } from "../edits/set-bulge.ts";
import { type Snapped, unsnapped } from "../snapping/snap.ts";
import { type Handle, neighborsOf, sideOf } from "./handles.ts";
import { moveWords, sideWords } from "./measures.ts";
import { bulgePulled } from "./sketch.ts";
import type { Desk, OverlayShape, Pointer } from "./tool.ts";

export interface Drag {
  move(pointer: Pointer): void;
  overlay(): readonly OverlayShape[];
}

/** Moves elements; the corner of the pressed one that was nearest to the press is what snaps. */
export function moveDrag(desk: Desk, ids: readonly string[], pressed: AnyElement, from: Point): Drag {
  const { document } = desk;
  document.getState().beginGesture("Move");
  const anchor = nearestCorner(pressed, from) ?? from;
  let found: Snapped | null = null;
  let moved: Point = [0, 0];
  return {
    move(pointer) {
      const at: Point = [anchor[0] + pointer.at[0] - from[0], anchor[1] + pointer.at[1] - from[1]];
      found = desk.snap({ ...pointer, at }, { without: ids, origin: anchor, withoutMiddles: true, ...kindOf(pressed) });
      const [dx, dy] = [found.point[0] - anchor[0], found.point[1] - anchor[1]];
      // With Shift it goes straight along the sheet.
      moved = !pointer.shift ? [dx, dy] : Math.abs(dx) >= Math.abs(dy) ? [dx, 0] : [0, dy];
      const to: Point = [anchor[0] + moved[0], anchor[1] + moved[1]];
      // What drew the place aside of that way is not where it goes.
      if (!samePoint(to, found.point)) found = unsnapped(to);
      show(desk, moveElements(ids, moved[0], moved[1]));
    },
    overlay() {
      const at: Point = [anchor[0] + moved[0], anchor[1] + moved[1]];
      return [
        { kind: "edges", edges: [{ kind: "line", from: anchor, to: at }], look: "guide" },
        ...guidesOf(found),
        { kind: "cursor", at, isSnapped: isDrawn(found) },
        { kind: "words", at, lines: [moveWords(moved[0], moved[1], desk.units()), ...reasonOf(found)] },
      ];
    },
  };
}

/** Pulls one corner; it can be in line with its neighbors. */
export function cornerDrag(desk: Desk, handle: Handle, from: Point): Drag {
  const { document } = desk;
  document.getState().beginGesture("Move a corner");
  let found: Snapped | null = null;
  let refusal: Refused | null = null;
  return {
    move(pointer) {
      const { element, path } = pathAtStart(desk, handle);
      const at: Point = [handle.at[0] + pointer.at[0] - from[0], handle.at[1] + pointer.at[1] - from[1]];
      found = desk.snap(
        { ...pointer, at },
        {
          without: [handle.id],
          lines: path ? neighborsOf(path, handle.index) : [],
          origin: handle.at,
          ...(element ? kindOf(element) : {}),
        },
      );
      refusal = show(desk, moveVertex(handle.id, handle.ref, handle.index, found.point));
    },
    overlay() {
      if (!found) return [];
      const shapes: OverlayShape[] = [
        ...guidesOf(found),
        { kind: "cursor", at: found.point, isSnapped: isDrawn(found) },
      ];
      for (const edge of sidesAtCorner(desk, handle)) {
        shapes.push({ kind: "measure", edge, text: sideWords(edge, desk.units()) });
      }
      return [...shapes, wordsAt(found.point, reasonOf(found), refusal)];
    },
  };
}

/** Bends a side into an arc by pulling its middle; near the chord it is straight, near a half circle it is one. */
export function bendDrag(desk: Desk, handle: Handle): Drag {
  const { document } = desk;
  document.getState().beginGesture("Bend a side");
  let at = handle.at;
  let said = "";
  let refusal: Refused | null = null;
  return {
    move(pointer) {
      const { element, path } = pathAtStart(desk, handle);
      const side = element && path ? sideOf(element, path, handle.index) : null;
      if (!side) return;
      at = pointer.at;
      const chord = distanceBetween(side.from, side.to);
      const slack = pointer.alt ? 0 : desk.slack(pointer) / 2;
      const pulled = bulgePulled(side.from, side.to, at);
      const bulge = settled(pulled, chord / 2, slack);
      const radius = bulge === 0 ? 0 : (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
      const units = desk.units();
      said =
        bulge === 0
          ? "straight"
          : `${Math.abs(bulge) === 1 ? "half circle, " : ""}radius ${lengthText(radius, units)}, ` +
            `${lengthText((Math.abs(bulge) * chord) / 2, units)} deep`;
      refusal = show(desk, setBulge(handle.id, handle.ref, handle.index, bulge));
    },
    overlay: () => [wordsAt(at, [said], refusal)],
  };
}

/** A bulge within the slack of a straight side or of a half circle becomes that. The bow's height is bulge times half the chord. */
function settled(bulge: number, halfChord: number, slack: number): number {
  if (Math.abs(bulge) * halfChord <= slack) return 0;
  return Math.abs(Math.abs(bulge) - 1) * halfChord <= slack ? Math.sign(bulge) : bulge;
}

/** What distances from the water matter to what is moved. */
function kindOf(element: AnyElement): { readonly kind?: Kind } {
  return isKnownKind(element.kind) ? { kind: element.kind } : {};
}

/** Previews an edit; nothing once the gesture has been ended from elsewhere, as by undo. */
function show(desk: Desk, edit: Edit): Refused | null {
  if (!desk.document.getState().gesture) return null;
  return desk.document.getState().preview(edit);
}

function pathAtStart(desk: Desk, handle: Handle) {
  const { gesture, shown } = desk.document.getState();
  const element = (gesture?.start ?? shown).elements.find(({ id }) => id === handle.id) ?? null;
  return { element, path: element ? pathOf(element, handle.ref) : null };
}

/** The two sides that meet in a corner, as they are shown now. */
function sidesAtCorner(desk: Desk, { id, ref, index }: Handle): Edge[] {
  const element = desk.document.getState().shown.elements.find((one) => one.id === id);
  const path = element ? pathOf(element, ref) : null;
  if (!element || !path) return [];
  const before = path.closed ? (index + path.vertices.length - 1) % path.vertices.length : index - 1;
  return [before, index].flatMap((i) => {
    const side = i < 0 ? null : sideOf(element, path, i);
    return side && edgeLength(side) > 0 ? [side] : [];
  });
}

function nearestCorner(element: AnyElement, to: Point): Point | null {
  const at = pointOf(element);
  if (at) return at;
  let best: Point | null = null;
  for (const ref of pathRefs(element)) {
    for (const [x, y] of pathOf(element, ref)?.vertices ?? []) {
      if (best === null || distanceBetween([x, y], to) < distanceBetween(best, to)) best = [x, y];
    }
  }
  return best;
}

function guidesOf(found: Snapped | null): OverlayShape[] {
  return (found?.guides ?? []).map(([from, to]) => ({
    kind: "edges",
    edges: [{ kind: "line", from, to }],
    look: "guide",
  }));
}

function isDrawn(found: Snapped | null): boolean {
  return found !== null && found.reason !== null;
}

function reasonOf(found: Snapped | null): string[] {
  return found?.reason == null ? [] : [found.reason];
}

function wordsAt(at: Point, lines: readonly string[], refusal: Refused | null): OverlayShape {
  return refusal ? { kind: "words", at, lines: [refusal.reason], isProblem: true } : { kind: "words", at, lines };
}
