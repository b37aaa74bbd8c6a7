/**
 * Rounding a corner: the arc of a given radius that touches both edges of a corner.
 *
 * Stages. 1. Both edges are moved sideways by the radius, to the side that the corner turns to: where they meet, the
 * arc has its center. 2. It touches each edge where that is nearest to the center; both places have to lie on the edges.
 * 3. Where there is no such arc, the largest radius that has one is looked for by halving.
 */
import { arcAround, movedSideways, nearestOnEdge, tangentAt } from "./edge.ts";
import { crossings } from "./edge-crossings.ts";
import { distanceBetween } from "./points.ts";
import { SAME_CORNER, STRAIGHT_ANGLE } from "./tolerances.ts";
import type { ArcEdge, Edge } from "./types.ts";

export type Fillet =
  | { readonly ok: true; readonly arc: ArcEdge }
  /** `largest`: the largest radius that fits, inches; 0 where the edges go straight on. */
  | { readonly ok: false; readonly largest: number };

const HALVINGS = 60;

/** The rounding between two edges that meet where `before` ends and `after` starts; `radius` in inches, above 0. */
export function fillet(before: Edge, after: Edge, radius: number): Fillet {
  const arc = fitted(before, after, radius);
  if (arc) return { ok: true, arc };
  let low = 0;
  let high = radius;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (fitted(before, after, middle)) low = middle;
    else high = middle;
  }
  return { ok: false, largest: low };
}

function fitted(before: Edge, after: Edge, radius: number): ArcEdge | null {
  const [ax, ay] = tangentAt(before, 1);
  const [bx, by] = tangentAt(after, 0);
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  if (Math.abs(turn) <= STRAIGHT_ANGLE) return null;
  const side = turn > 0 ? radius : -radius;
  const [a, b] = [movedSideways(before, side), movedSideways(after, side)];
  if (!a || !b) return null;
  const corner = before.to;
  let best: ArcEdge | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const center of meetings(a, b)) {
    const [from, to] = [nearestOnEdge(before, center), nearestOnEdge(after, center)];
    if (Math.abs(from.distance - radius) > SAME_CORNER || Math.abs(to.distance - radius) > SAME_CORNER) continue;
    const away = distanceBetween(center, corner);
    if (away >= least) continue;
    const start = Math.atan2(from.point[1] - center[1], from.point[0] - center[0]);
    const end = Math.atan2(to.point[1] - center[1], to.point[0] - center[0]);
    let sweep = end - start;
    if (turn > 0 && sweep < 0) sweep += 2 * Math.PI;
    if (turn < 0 && sweep > 0) sweep -= 2 * Math.PI;
    best = arcAround(center, radius, start, sweep, { from: from.point, to: to.point });
    least = away;
  }
  return best;
}

/** Where they cross, or all but touch with their ends, as when the rounding uses an edge up to its end. */
function meetings(a: Edge, b: Edge) {
  const found = crossings(a, b);
  for (const end of [a.from, b.to]) {
    if ([a, b].every((edge) => nearestOnEdge(edge, end).distance <= SAME_CORNER)) found.push(end);
  }
  return found;
}
