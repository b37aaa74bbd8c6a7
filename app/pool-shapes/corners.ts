/**
 * Outlines from corners with a radius each, and the moves that put an outline where it belongs.
 *
 * Terms. A corner's reach: how far from the corner its arc begins, the radius times the tangent of half of the angle
 * that the outline turns by there.
 */
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";

export interface Corner {
  readonly at: Point;
  /** Inches; 0 keeps the corner sharp. */
  readonly radius: number;
}

/** The closed outline; null when two arcs of neighboring corners would overlap. Corners follow each other apart. */
export function roundedOutline(corners: readonly Corner[]): PathData | null {
  const count = corners.length;
  const cut = corners.map((corner, i) => {
    const before = corners[(i + count - 1) % count] as Corner;
    const after = corners[(i + 1) % count] as Corner;
    const into = direction(before.at, corner.at);
    const out = direction(corner.at, after.at);
    const turn = Math.atan2(into[0] * out[1] - into[1] * out[0], into[0] * out[0] + into[1] * out[1]);
    return { at: corner.at, into, out, turn, reach: corner.radius * Math.tan(Math.abs(turn) / 2) };
  });
  const vertices: Vertex[] = [];
  for (const [i, { at, into, out, turn, reach }] of cut.entries()) {
    const next = cut[(i + 1) % count] as (typeof cut)[number];
    const left = distanceBetween(at, next.at) - reach - next.reach;
    if (left < -SAME_CORNER) return null;
    if (reach > 0) vertices.push([at[0] - into[0] * reach, at[1] - into[1] * reach, Math.tan(turn / 4)]);
    // Where two arcs meet nothing is left of the side between them.
    if (left > SAME_CORNER || next.reach === 0) vertices.push([at[0] + out[0] * reach, at[1] + out[1] * reach]);
  }
  return { vertices, closed: true };
}

/** The largest size up to `most` that fits, when smaller ones fit too: halving, to well under a hair. */
export function largestThatFits(most: number, fits: (size: number) => boolean): number {
  if (fits(most)) return most;
  let [low, high] = [0, most];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function direction(from: Point, to: Point): Point {
  const length = distanceBetween(from, to);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}
