/** Rounds a corner: two new corners where an arc of the radius touches its sides, in the place of one. */
import { bulgeOf, edgeFromVertices, nearestOnEdge, splitEdge } from "../../geometry/edge.ts";
import { fillet } from "../../geometry/fillet.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Point, Vertex } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { changePath, noCorner } from "./change-path.ts";
import { type Edit, refused } from "./edit.ts";
import { hasHeights, type PathRef } from "./path-ref.ts";

/** `radius` in inches. A radius that leaves no room is refused with the largest one that fits. */
export function roundCorner(id: string, ref: PathRef, index: number, radius: number): Edit {
  const edit = changePath("Round a corner of", id, ref, (path, element) => {
    const { vertices, closed } = path;
    const count = vertices.length;
    const corner = vertices[index];
    if (!corner) return noCorner(element, index, path);
    if (hasHeights(element)) return refused("An overhead line runs straight between its points.", id, ref.field);
    if (!(radius > 0)) return refused("A radius has to be above zero.", id, ref.field);
    const before = closed ? (index + count - 1) % count : index - 1;
    const from = vertices[before];
    const to = vertices[closed ? (index + 1) % count : index + 1];
    if (!from || !to) return refused("The end of a line is no corner to round.", id, ref.field);
    const [first, second] = [edgeFromVertices(from, corner), edgeFromVertices(corner, to)];
    const found = fillet(first, second, radius);
    if (!found.ok) return refused(words(radius, found.largest), id, ref.field);
    const { arc } = found;
    const shortened = splitEdge(first, nearestOnEdge(first, arc.from).t)[0];
    const rest = splitEdge(second, nearestOnEdge(second, arc.to).t)[1];
    // Where a side is used up, its far corner is where the arc begins or ends.
    const usesFirst = distanceBetween(arc.from, first.from) <= SAME_CORNER;
    const usesSecond = distanceBetween(arc.to, second.to) <= SAME_CORNER;
    const next = [...vertices];
    next[before] = bent([from[0], from[1]], usesFirst ? bulgeOf(arc) : bulgeOf(shortened));
    const added: Vertex[] = [
      ...(usesFirst ? [] : [bent(arc.from, bulgeOf(arc))]),
      ...(usesSecond ? [] : [bent(arc.to, bulgeOf(rest))]),
    ];
    next.splice(index, 1, ...added);
    return { ...path, vertices: next };
  });
  return edit;
}

function bent([x, y]: Point, bulge: number): Vertex {
  return bulge === 0 ? [x, y] : [x, y, bulge];
}

function words(radius: number, largest: number): string {
  if (largest <= SAME_CORNER) return "The sides go straight on there: there is nothing to round.";
  // Rounded down, so that what is offered fits.
  const fits = Math.floor(largest * 16 + 1 / 64) / 16;
  return `A radius of ${lengthText(radius)} is too large for this corner: at most ${lengthText(fits)} fits.`;
}
