import type { Point, Region } from "../../geometry/types.ts";

/** Positions from numbers in turn: x, y, x, y... */
export function positions(...numbers: number[]): Point[] {
  const points: Point[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) points.push([numbers[i] as number, numbers[i + 1] as number]);
  return points;
}

/** A region of one ring, given the same way, first position not repeated. */
export function ringRegion(...numbers: number[]): Region {
  const ring = positions(...numbers);
  return [[[...ring, ring[0] as Point]]];
}

export function boxRegion(x: number, y: number, width: number, height: number): Region {
  return ringRegion(x, y, x + width, y, x + width, y + height, x, y + height);
}
