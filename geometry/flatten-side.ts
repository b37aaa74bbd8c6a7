/**
 * Chords and tangents for a path that keep to one side of it: a ring drawn between two limits has to stay legal.
 *
 * An arc that curves away from the wanted side is drawn by chords, one that curves toward it by tangents. Both ends of
 * every edge stay exact.
 */

import { pointAt } from "./edge.ts";
import { chordCount } from "./outline.ts";
import type { ArcEdge, Path, Point } from "./types.ts";

/** Positions along a closed path, first one not repeated, on the path or to the given side of its direction, within `tolerance` inches. */
export function flattenToSide(path: Path, side: "left" | "right", tolerance: number): Point[] {
  const points: Point[] = [];
  for (const edge of path.edges) {
    points.push(edge.from);
    if (edge.kind === "line") continue;
    const steps = chordCount(edge, tolerance);
    // The center lies to the left of an arc that turns left; chords lie on the center's side.
    if (edge.sweep > 0 === (side === "left")) {
      for (let i = 1; i < steps; i++) points.push(pointAt(edge, i / steps));
    } else {
      pushTangents(edge, steps, points);
    }
  }
  return points;
}

function pushTangents(arc: ArcEdge, steps: number, points: Point[]): void {
  const half = arc.sweep / steps / 2;
  const stretch = 1 / Math.cos(half);
  for (let i = 0; i < steps; i++) {
    const middle = pointAt(arc, (i + 0.5) / steps);
    points.push([
      arc.center[0] + (middle[0] - arc.center[0]) * stretch,
      arc.center[1] + (middle[1] - arc.center[1]) * stretch,
    ]);
  }
}
