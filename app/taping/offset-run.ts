/** Points taped along a straight line: how far along it, and how far square off it. */
import type { Point } from "../../geometry/types.ts";

export interface OffsetRow {
  /** From the start of the line, inches; below zero lies before it. */
  readonly along: number;
  /** Square off the line, inches; to the left of it, or to the right. */
  readonly off: number;
  readonly side: "left" | "right";
}

/** Places in the line's own frame: it starts at the origin and runs along x; its left side is above. */
export function pointsAlongLine(rows: readonly OffsetRow[]): Point[] {
  return rows.map(({ along, off, side }): Point => [along, side === "left" ? off : -off]);
}

/** A place of the frame on the sheet: `start` is the frame's origin, `bearing` the direction of its line, degrees counter-clockwise from the right. */
export function onSheet([x, y]: Point, start: Point, bearing: number): Point {
  const turn = (bearing * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [start[0] + x * cos - y * sin, start[1] + x * sin + y * cos];
}
