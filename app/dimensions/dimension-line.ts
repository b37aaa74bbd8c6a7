/** Where the line of a dimension runs and what it measures. */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import type { Dimension } from "../../rules/site/site.ts";
import type { AnyElement } from "../edits/edit.ts";
import { anchorPlace } from "./anchors.ts";

export interface DimensionLine {
  /** What is measured. */
  readonly from: Point;
  readonly to: Point;
  /** The ends of the line that is drawn. */
  readonly a: Point;
  readonly b: Point;
  /** Inches. */
  readonly length: number;
}

export type DimensionWay = Pick<Dimension, "offset" | "direction">;

/** The line of a dimension as its elements lie now; null where one of them is gone or nothing is measured. */
export function dimensionLine(
  dimension: Dimension,
  find: (id: string) => AnyElement | undefined,
): DimensionLine | null {
  const [from, to] = [anchorPlace(dimension.from, find), anchorPlace(dimension.to, find)];
  return from && to ? lineBetween(from, to, dimension) : null;
}

export function lineBetween(from: Point, to: Point, { offset, direction }: DimensionWay): DimensionLine | null {
  if (direction === "across") {
    const y = (offset < 0 ? Math.min(from[1], to[1]) : Math.max(from[1], to[1])) + offset;
    return made(from, to, [from[0], y], [to[0], y]);
  }
  if (direction === "up") {
    const x = (offset < 0 ? Math.min(from[0], to[0]) : Math.max(from[0], to[0])) + offset;
    return made(from, to, [x, from[1]], [x, to[1]]);
  }
  const length = distanceBetween(from, to);
  if (length === 0) return null;
  const [nx, ny] = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
  return made(from, to, [from[0] + nx * offset, from[1] + ny * offset], [to[0] + nx * offset, to[1] + ny * offset]);
}

function made(from: Point, to: Point, a: Point, b: Point): DimensionLine | null {
  const length = distanceBetween(a, b);
  return length === 0 ? null : { from, to, a, b, length };
}

/** Nearer to level or upright than this, inches: it is. */
const LEVEL = 1e-6;

/**
 * The way of a dimension whose line runs from a to b: straight from end to end, or, with `isAxial`, only across or up;
 * null where the line is neither level nor upright.
 */
export function wayOfLine({ from, to, a, b }: Omit<DimensionLine, "length">, isAxial: boolean): DimensionWay | null {
  if (!isAxial) {
    const length = distanceBetween(from, to);
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return length === 0 ? null : { offset: (dx * (a[1] - from[1]) - dy * (a[0] - from[0])) / length };
  }
  for (const [axis, direction] of [
    [1, "across"],
    [0, "up"],
  ] as const) {
    if (Math.abs(a[axis] - b[axis]) > LEVEL) continue;
    const [low, high] = [Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])];
    return { offset: a[axis] < low ? a[axis] - low : a[axis] - high, direction };
  }
  return null;
}

/** The way of a dimension whose line passes a pointed place: across or up where the place lies beyond the ends that way. */
export function wayThrough(from: Point, to: Point, at: Point, isStraight: boolean): DimensionWay {
  const [minX, maxX] = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const [minY, maxY] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  const isSlanted = maxX > minX && maxY > minY;
  if (isSlanted && !isStraight) {
    const beyondX = Math.max(minX - at[0], at[0] - maxX);
    const beyondY = Math.max(minY - at[1], at[1] - maxY);
    if (beyondY > 0 && beyondX <= 0) return { offset: at[1] > maxY ? at[1] - maxY : at[1] - minY, direction: "across" };
    if (beyondX > 0 && beyondY <= 0) return { offset: at[0] > maxX ? at[0] - maxX : at[0] - minX, direction: "up" };
  }
  const length = distanceBetween(from, to);
  if (length === 0) return { offset: 0 };
  return { offset: ((to[0] - from[0]) * (at[1] - from[1]) - (to[1] - from[1]) * (at[0] - from[0])) / length };
}
