/**
 * Copies in a row along a line or an outline: posts of a fence, lights round a deck.
 *
 * Stages. 1. How many places the line takes: a number of them evenly, or one every so many inches from its start. 2. Each
 * place with its direction, and a step aside of the line where asked. 3. A copy at each: its middle comes to the place.
 * A place where the original already stands, or a copy just like it, is left to it: a row laid twice stands once.
 */
import { pathFrom, pathLength, pointAlong } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Path, PathData, Point } from "../../geometry/types.ts";
import { copying } from "./duplicate-elements.ts";
import { type Edit, refused } from "./edit.ts";
import { boxRound, middleOf } from "./element-box.ts";
import { elementsOf } from "./element-words.ts";
import { copiesStandAt } from "./likeness.ts";
import { type Motion, shift, turn } from "./moved.ts";
import { idsWithOpenings } from "./place-elements.ts";

/** Copies that one repeat may make. */
export const MOST_COPIES = 1000;

export interface Row {
  readonly line: PathData;
  /** Places in all, both ends of an open line among them; or inches from each place to the next. */
  readonly every: { readonly count: number } | { readonly spacing: number };
  /** Inches to the left of the way the line runs; negative to the right. */
  readonly aside?: number;
  /** Turns each copy as the line turns, from its direction at the start. */
  readonly turning?: boolean;
}

export interface Place {
  readonly at: Point;
  /** Degrees counter-clockwise from the right. */
  readonly direction: number;
}

/** The places of a row; a sentence when there can be none. */
export function placesOf({ line, every, aside = 0 }: Row): readonly Place[] | string {
  const path = pathFrom(line);
  const length = pathLength(path);
  const distances = distancesAlong(length, path.closed, every);
  if (typeof distances === "string") return distances;
  return distances.map((s) => {
    const direction = directionAt(path, s, length);
    const at = pointAlong(path, s);
    return {
      at: [at[0] - aside * Math.sin(direction), at[1] + aside * Math.cos(direction)],
      direction: (direction * 180) / Math.PI,
    };
  });
}

export function repeatElements(ids: readonly string[], row: Row): Edit {
  return {
    label: "Repeat",
    apply(site) {
      if (ids.length === 0) return refused("Nothing is selected to be repeated.");
      const places = placesOf(row);
      if (typeof places === "string") return refused(places);
      const box = boxRound(elementsOf(site, ids));
      if (!box) return refused("This is of a kind that this version cannot copy.");
      const middle = middleOf(box);
      const first = places[0]?.direction ?? 0;
      const originals = elementsOf(site, idsWithOpenings(site, ids));
      const isTaken = copiesStandAt(site, originals);
      const motions = places
        .filter(({ at }) => distanceBetween(at, middle) > SAME_CORNER)
        .map(({ at, direction }): Motion => {
          const there = shift(at[0] - middle[0], at[1] - middle[1]);
          if (row.turning !== true) return there;
          const turned = turn(direction - first, at);
          return { at: (point) => turned.at(there.at(point)), isMirrored: false };
        })
        .filter((motion) => !isTaken(motion));
      if (motions.length === 0) return refused("It already stands at every place of the row.");
      const copies = motions.length * originals.length;
      if (copies > MOST_COPIES) {
        return refused(`That makes ${numberText(copies)} copies; at most ${numberText(MOST_COPIES)} at once.`);
      }
      return copying(ids, motions, "Repeat", "repeated").apply(site);
    },
  };
}

function numberText(count: number): string {
  return count.toLocaleString("en-US");
}

function distancesAlong(length: number, isClosed: boolean, every: Row["every"]): number[] | string {
  const most = `A row takes at most ${numberText(MOST_COPIES)} places.`;
  if ("count" in every) {
    const { count } = every;
    const least = isClosed ? 1 : 2;
    if (!Number.isInteger(count) || count < least)
      return `A row along this line needs at least ${least} ${least === 1 ? "place" : "places"}.`;
    if (count > MOST_COPIES) return most;
    return Array.from({ length: count }, (_, i) => (i * length) / (isClosed ? count : count - 1));
  }
  const { spacing } = every;
  if (!(spacing > 0)) return "The spacing has to be more than nothing.";
  const steps = Math.floor(length / spacing + SAME_CORNER);
  // Round a closed line the last place would fall on the first.
  const count = isClosed && Math.abs(steps * spacing - length) <= SAME_CORNER * Math.max(1, steps) ? steps : steps + 1;
  if (count > MOST_COPIES) return most;
  if (steps < 1) return "The line is shorter than the spacing.";
  return Array.from({ length: count }, (_, i) => Math.min(i * spacing, length));
}

/** Radians. At a corner the side that begins there, at the end of an open line the side that ends there. */
function directionAt(path: Path, s: number, length: number): number {
  let from = 0;
  const last = path.edges.length - 1;
  for (const [i, edge] of path.edges.entries()) {
    const size = pathLength({ edges: [edge], closed: false, bounds: path.bounds });
    if (s < from + size - SAME_CORNER || i === last) {
      if (edge.kind === "line") return Math.atan2(edge.to[1] - edge.from[1], edge.to[0] - edge.from[0]);
      const share = Math.min(1, Math.max(0, (s - from) / size));
      return edge.startAngle + edge.sweep * share + (Math.sign(edge.sweep) * Math.PI) / 2;
    }
    from += size;
  }
  throw new RangeError(`A line of ${length} in. has no side.`);
}
