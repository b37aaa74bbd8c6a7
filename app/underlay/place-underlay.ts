/**
 * Where a picture lies on the sheet, from two places on it and the length between them.
 *
 * Terms. Pixels are counted from the picture's upper left corner, y down, as a screen has them; the sheet is inches, y up.
 */
import type { Point } from "../../geometry/types.ts";
import type { Underlay } from "../../rules/site/site.ts";

export interface Calibration {
  /** Two places on the picture, pixels. */
  readonly first: Point;
  readonly second: Point;
  /** How far apart they are on the ground, inches, above zero. */
  readonly length: number;
  /** Where the first one lies on the sheet. */
  readonly at: Point;
  /** Which way the second lies from the first on the sheet, degrees; null: the picture stays upright. */
  readonly bearing: number | null;
}

export type Placed = Pick<Underlay, "at" | "inchesPerPixel" | "turn">;

/** Null when the two places are one. */
export function placeUnderlay(height: number, calibration: Calibration): Placed | null {
  const [dx, dy] = [calibration.second[0] - calibration.first[0], calibration.first[1] - calibration.second[1]];
  const pixels = Math.hypot(dx, dy);
  if (pixels === 0) return null;
  const inchesPerPixel = calibration.length / pixels;
  const leans = (Math.atan2(dy, dx) * 180) / Math.PI;
  const turn = calibration.bearing === null ? 0 : calibration.bearing - leans;
  const [x, y] = turned(
    [calibration.first[0] * inchesPerPixel, (height - calibration.first[1]) * inchesPerPixel],
    turn,
  );
  return { at: [calibration.at[0] - x, calibration.at[1] - y], inchesPerPixel, turn };
}

/** A place of the picture on the sheet, inches. */
export function placeOf(underlay: Pick<Underlay, "height"> & Placed, [px, py]: Point): Point {
  const { at, height, inchesPerPixel, turn = 0 } = underlay;
  const [x, y] = turned([px * inchesPerPixel, (height - py) * inchesPerPixel], turn);
  return [at[0] + x, at[1] + y];
}

/** Which way one place of a picture lies from another on the sheet, degrees. */
export function wayOf(underlay: Pick<Underlay, "height"> & Placed, from: Point, to: Point): number {
  const [[ax, ay], [bx, by]] = [placeOf(underlay, from), placeOf(underlay, to)];
  return (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
}

function turned([x, y]: Point, degrees: number): Point {
  const turn = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [x * cos - y * sin, x * sin + y * cos];
}
