/**
 * The ground that barriers take up, as a region: solids as they stand, and along each straight piece of a thin line a
 * strip THIN_STRIP wide, carried on past its ends by half of that, so that the strips of a line leave no gap.
 */
import { distanceBetween } from "./points.ts";
import { THIN_STRIP } from "./tolerances.ts";
import type { Barrier, Point, Region } from "./types.ts";

/** One polygon for each solid and each piece of a thin line; they may overlap. */
export function barrierRegion(barriers: readonly Barrier[]): Region {
  return barriers.flatMap(({ shape, points }): Region => {
    const [first] = points;
    if (shape === "solid") return first ? [[[...points, first]]] : [];
    return points.slice(1).flatMap((to, i): Region => strip(points[i] as Point, to));
  });
}

function strip(from: Point, to: Point): Region {
  const length = distanceBetween(from, to);
  if (length === 0) return [];
  const x = ((to[0] - from[0]) / length) * (THIN_STRIP / 2);
  const y = ((to[1] - from[1]) / length) * (THIN_STRIP / 2);
  const start: Point = [from[0] - x + y, from[1] - y - x];
  const end: Point = [to[0] + x + y, to[1] + y - x];
  return [[[start, end, [to[0] + x - y, to[1] + y + x], [from[0] - x - y, from[1] - y + x], start]]];
}
