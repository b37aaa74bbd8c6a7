/** One corner or side of the selected element, which keys and typed values act on. */
import { edgeFromVertices, edgeLength, pointAt } from "../../geometry/edge.ts";
import type { Edge } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import type { AnyElement, Edit } from "../edits/edit.ts";
import { insertVertex } from "../edits/insert-vertex.ts";
import { hasHeights, pathOf } from "../edits/path-ref.ts";
import { roundCorner } from "../edits/round-corner.ts";
import { setBulge } from "../edits/set-bulge.ts";
import { outwardHand, setRadius } from "../edits/set-radius.ts";
import { splitLine } from "../edits/split-element.ts";
import { type Handle, handlesOf, sideOf } from "./handles.ts";
import { placeWords } from "./measures.ts";
import type { Entry } from "./tool.ts";

export type Place = Pick<Handle, "id" | "ref" | "index" | "kind">;

/** A straight side that is made an arc becomes a quarter circle. */
const QUARTER_CIRCLE = Math.tan(Math.PI / 8);

/** The corners and sides of an element in the order of its way: corner 1, the side that leaves it, corner 2... */
export function placesOf(element: AnyElement): Handle[] {
  const order = ({ ref, index, kind }: Handle) =>
    (ref.field === "islands" || ref.field === "holes" ? 1 + (ref.index ?? 0) : 0) * 1e7 +
    index * 2 +
    (kind === "corner" ? 0 : 1);
  return handlesOf(element, 0).sort((a, b) => order(a) - order(b));
}

export function samePlace(a: Place, b: Place): boolean {
  return (
    a.id === b.id &&
    a.kind === b.kind &&
    a.index === b.index &&
    a.ref.field === b.ref.field &&
    a.ref.index === b.ref.index
  );
}

/** The place after or before another, round and round; the first or last when there is none yet. */
export function stepPlace(element: AnyElement, now: Place | null, way: 1 | -1): Handle | null {
  const all = placesOf(element);
  const at = now ? all.findIndex((one) => samePlace(one, now)) : -1;
  const next = at < 0 ? (way === 1 ? 0 : all.length - 1) : (at + way + all.length) % all.length;
  return all[next] ?? null;
}

/** The side that a place is. */
export function sideAtPlace(element: AnyElement, place: Place): Edge | null {
  const path = pathOf(element, place.ref);
  return path && place.kind === "middle" ? sideOf(element, path, place.index) : null;
}

/** "Corner 2 at 16' 0\" right, 4' 0\" up", "The side from corner 2, 16' 0\" long". */
export function wordsOfPlace(element: AnyElement, place: Handle, units: Units): string {
  const side = sideAtPlace(element, place);
  if (!side) return `Corner ${place.index + 1} at ${placeWords(place.at, units)}`;
  const bend = side.kind === "arc" ? `, an arc of radius ${lengthText(side.radius, units)}` : "";
  return `The side from corner ${place.index + 1}, ${lengthText(edgeLength(side), units)} long${bend}`;
}

/** What can be typed and pressed while a corner or side is chosen. */
export function placeEntry(element: AnyElement, place: Place, units: Units): Entry | null {
  if (hasHeights(element)) return null;
  const side = sideAtPlace(element, place);
  const cut = { key: "Shift+C", label: "Cut here", hint: "Cuts a line in two at this place." };
  const isLine = place.ref.field === "path" || (place.ref.field === "shape" && !pathOf(element, place.ref)?.closed);
  const name = { finish: null } as const;
  if (!side) {
    return {
      ...name,
      fields: [{ name: "radius", label: `Corner ${place.index + 1}: radius`, type: "length", shown: "sharp" }],
      action: "Round the corner",
      buttons: [{ key: "Delete", label: "Take it out", hint: "Takes the corner out." }, ...(isLine ? [cut] : [])],
    };
  }
  const isArc = side.kind === "arc";
  return {
    ...name,
    fields: [
      {
        name: "radius",
        label: "Side: radius",
        type: "level",
        shown: isArc ? lengthText(side.radius, units) : "straight",
        help: "A minus bends it to the other side.",
      },
    ],
    action: "Bend the side",
    buttons: [
      {
        key: "a",
        label: isArc ? "Straight" : "Arc",
        hint: isArc ? "Makes the arc a straight side." : "Makes the side an arc, whose radius can then be typed.",
      },
      { key: "Insert", label: "Corner in its middle", hint: "Puts a corner into the middle of the side." },
      ...(isLine ? [cut] : []),
    ],
  };
}

/** The edit of a typed radius. */
export function radiusEdit({ id, ref, index, kind }: Place, radius: number): Edit {
  return kind === "corner" ? roundCorner(id, ref, index, radius) : setRadius(id, ref, index, radius);
}

/** The edit that a key means at a place; null: none. */
export function placeEdit(element: AnyElement, place: Place, key: string, shift: boolean): Edit | null {
  const { id, ref, index } = place;
  const side = sideAtPlace(element, place);
  if (key === "Shift+C" || (shift && key.toLowerCase() === "c")) {
    return splitLine(id, { index, share: side ? 0.5 : 0 });
  }
  if (!side || hasHeights(element)) return null;
  if (key.toLowerCase() === "a") {
    const path = pathOf(element, ref);
    const from = path?.vertices[index];
    const to = path?.vertices[(index + 1) % path.vertices.length];
    if (!path || !from || !to) return null;
    const isBent = edgeFromVertices(from, to).kind === "arc";
    return setBulge(id, ref, index, isBent ? 0 : outwardHand(path) * QUARTER_CIRCLE);
  }
  return key === "Insert" ? insertVertex(id, ref, index, pointAt(side, 0.5)) : null;
}
