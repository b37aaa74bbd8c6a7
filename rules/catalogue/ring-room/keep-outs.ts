/**
 * Where a keep-out takes all the ground in which a ring may lie.
 *
 * The curve at the least distance from the inside wall is walked. In each place, straight away from the water, the ground
 * from the least to the greatest distance of a ring has to lie in the keep-out, and just before it a piece of the band that
 * takes a ring (at the least distance itself the band may end, at a house).
 * Within the drawing's accuracy either limit may lie that much farther in.
 */
import { regionContains } from "../../../geometry/clipping.ts";
import { pointToArea } from "../../../geometry/distance.ts";
import { offsetCurves } from "../../../geometry/offset.ts";
import { contains, pathLength, pointAlong } from "../../../geometry/outline.ts";
import { grownBounds } from "../../../geometry/points.ts";
import { RING_SPIKE } from "../../../geometry/tolerances.ts";
import type { Area, Point, Region } from "../../../geometry/types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import { holdsWhere } from "../../recorded/intervals.ts";

/** How far apart the curve is looked at, inches. */
const STEP = 3;

/** Halvings of a step: to a millionth of an inch, so that the length does not depend on where the curve begins. */
const NARROWINGS = 22;

/** Where between the least and the greatest distance of a ring the ground is looked at. */
const SHARES = [0, 1, 1 / 2, 1 / 4, 3 / 4];

/** Inches along the curve at the least distance where `keepOut` leaves a ring no room on the ground `ringed`; 0: none. */
export function lengthWithoutRoom(yard: Yard, body: Body, keepOut: Area, ringed: readonly Region[]): number {
  const [min, max] = [yard.edition.value("ring.min"), yard.edition.value("ring.max")];
  const [least, greatest] = surelyLegal(min, max, yard.accuracy);
  const isRinged = (p: Point) => ringed.some((region) => regionContains(region, p));
  const { minX, minY, maxX, maxY } = grownBounds(keepOut.outer.bounds, max - min);
  let length = 0;
  for (const { path } of offsetCurves([body.water], min).loops) {
    const isTaken = (s: number): boolean => {
      const p = pointAlong(path, s);
      if (p[0] < minX || p[0] > maxX || p[1] < minY || p[1] > maxY) return false;
      const { from } = pointToArea(p, body.water);
      const at = (distance: number): Point => [
        from[0] + ((p[0] - from[0]) * distance) / min,
        from[1] + ((p[1] - from[1]) * distance) / min,
      ];
      const isCovered = SHARES.every((share) => contains(keepOut, at(least + (greatest - least) * share)));
      return isCovered && isRinged(at(min - RING_SPIKE));
    };
    for (const { from, to } of holdsWhere({ from: 0, to: pathLength(path) }, STEP, isTaken, NARROWINGS))
      length += to - from;
  }
  return length;
}

/** The distances that are legal however the drawing is off; where it may be off by half of the range, the middle. */
function surelyLegal(min: number, max: number, accuracy: number): [number, number] {
  const middle = (min + max) / 2;
  return [Math.min(min + accuracy, middle), Math.max(max - accuracy, middle)];
}
