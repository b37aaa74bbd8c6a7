/** Regions turned against the sheet, so that the clipping grid lies otherwise under them. */
import type { Point, Region } from "./types.ts";

/** How regions are turned when their clipping is tried again, radians: no two the same within a quarter turn. */
export const GRID_TURNS = [0, 0.4, 0.9] as const;

/** Every position moved; a region that is not turned is the same one. */
export function turnedRegion(region: Region, angle: number): Region {
  if (angle === 0) return region;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return movedRegion(region, ([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
}

export function movedRegion(region: Region, place: (p: Point) => Point): Region {
  return region.map((polygon) => polygon.map((ring) => ring.map(place)));
}
