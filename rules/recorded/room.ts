/** Where a wall, a building or a keep-out leaves no room for a ring at its least distance from the inside wall. */
import { regionContains } from "../../geometry/clipping.ts";
import { pointToArea } from "../../geometry/distance.ts";
import { contains, pathLength, pointAlong } from "../../geometry/outline.ts";
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Point } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import { perimeterBodies } from "./bearers.ts";
import { stretchesBetween } from "./offset-range.ts";

/** How far apart a stretch is looked at, inches. */
const STEP = 3;

/** Whether everywhere that a ring comes too near, no ground is left for it farther off. */
export function noRoomFor(yard: Yard, conductor: ConductorElement): boolean {
  const shape = yard.shape(conductor);
  if (shape.kind !== "path") return false;
  const waters = perimeterBodies(yard).map(({ water }) => water);
  const near = stretchesBetween(shape.path, waters, 0, yard.edition.value("ring.min") - 2 * LIMIT_TOLERANCE);
  return (
    near.length > 0 &&
    near.every(({ path }) => samples(pathLength(path)).every((s) => !roomBeyond(yard, pointAlong(path, s))))
  );
}

/** Positions between the ends of a stretch; its very ends lie at the limit or belong to the next. */
function samples(length: number): number[] {
  const count = Math.max(1, Math.ceil(length / STEP));
  return Array.from({ length: count }, (_, i) => ((i + 0.5) * length) / count);
}

/** Whether ground is open to a ring straight beyond a position, at the least distance from the inside wall. */
function roomBeyond(yard: Yard, p: Point): boolean {
  const least = yard.edition.value("ring.min");
  for (const body of perimeterBodies(yard)) {
    const { from, length } = pointToArea(p, body.water);
    if (length >= least) continue;
    if (length === 0) return true;
    const there: Point = [from[0] + ((p[0] - from[0]) * least) / length, from[1] + ((p[1] - from[1]) * least) / length];
    if (!regionContains(yard.band(body).region, there) || inKeepOut(yard, there)) return false;
  }
  return true;
}

export function inKeepOut(yard: Yard, p: Point): boolean {
  return yard.all("keep-out").some((keepOut) => {
    const shape = yard.shape(keepOut);
    return shape.kind === "area" && contains(shape.area, p);
  });
}
