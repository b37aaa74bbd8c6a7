/** Makes a side an arc of a given radius, or gives an arc another radius; its ends stay where they are. */
import { pathFrom, signedArea } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { PathData } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { gone } from "./checked.ts";
import { type Edit, refused } from "./edit.ts";
import { type PathRef, pathOf } from "./path-ref.ts";
import { setBulge } from "./set-bulge.ts";

/**
 * `radius` in inches; a minus bends the side to the other hand. It keeps to the hand and the share of the circle (less
 * or more than half of it) that the side has; a straight one bends away from the inside of its outline, or to the right
 * of the way of a line, by less than half a circle.
 */
export function setRadius(id: string, ref: PathRef, index: number, radius: number): Edit {
  return {
    label: "Bend a side",
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      const path = pathOf(element, ref);
      const from = path?.vertices[index];
      const to = path?.vertices[path.closed ? (index + 1) % path.vertices.length : index + 1];
      if (!from || !to) return refused("No side leaves the last corner of an open line.", id, ref.field);
      const chord = distanceBetween([from[0], from[1]], [to[0], to[1]]);
      const short = bulgeOfRadius(chord, Math.abs(radius));
      if (short === null) return refused(tooSmallCircle(Math.abs(radius), chord, site.display?.units), id, ref.field);
      const now = from[2] ?? 0;
      const size = Math.abs(now) > 1 ? 1 / short : short;
      const hand = (now === 0 ? outwardHand(path) : Math.sign(now)) * (radius < 0 ? -1 : 1);
      return setBulge(id, ref, index, hand * size).apply(site);
    },
  };
}

/** The sign of a bulge that bends a side away from the inside of its outline, whichever way that runs; to the right of a line. */
export function outwardHand(path: PathData): 1 | -1 {
  return path.closed && signedArea(pathFrom(path)) < 0 ? -1 : 1;
}

/** The bulge of the shorter arc of a radius over a chord, positive; null when the circle is too small for it. */
export function bulgeOfRadius(chord: number, radius: number): number | null {
  const share = chord / (2 * radius);
  if (!(share <= 1 + SAME_CORNER / chord)) return null;
  return share >= 1 ? 1 : Math.tan(Math.asin(share) / 2);
}

/** Words for an arc whose ends are farther apart than its circle is wide. */
export function tooSmallCircle(radius: number, chord: number, units: Units = "ft-in"): string {
  if (radius === 0) return "A radius has to be above zero.";
  const [wide, apart] = [lengthText(2 * radius, units, chord), lengthText(chord, units, 2 * radius)];
  return `An arc of radius ${lengthText(radius, units)} reaches at most ${wide} from end to end; these ends lie ${apart} apart.`;
}
