/**
 * Places that a side coming from a corner can end in: square to another side, touching an arc, where two sides cross;
 * and the ways it can run: parallel to another side or square to it.
 */
import { arcContainsAngle, nearestOnEdge, tangentAt } from "../../geometry/edge.ts";
import { crossings } from "../../geometry/edge-crossings.ts";
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import type { SnapEdge } from "./snap.ts";

export interface SidePlace {
  readonly at: Point;
  readonly words: string;
}

/** Where sides near the pointer cross each other, other than in their corners. */
export function crossingPlaces(edges: readonly SnapEdge[], at: Point, tolerance: number): SidePlace[] {
  const near = edges.slice(0, MOST_EDGES);
  const found: SidePlace[] = [];
  near.forEach((a, i) => {
    for (const b of near.slice(i + 1)) {
      if (meet(a.edge, b.edge)) continue;
      for (const place of crossings(a.edge, b.edge)) {
        if (distanceBetween(place, at) > tolerance) continue;
        found.push({ at: place, words: `crossing of ${nameOf(a.words)} and ${nameOf(b.words)}` });
      }
    }
  });
  return found;
}

/** Where a straight side from `from` ends square to a side near the pointer, or touches an arc there. */
export function endingPlaces(edges: readonly SnapEdge[], from: Point): SidePlace[] {
  const found: SidePlace[] = [];
  for (const { edge, words } of edges) {
    const { point, t, distance } = nearestOnEdge(edge, from);
    if (distance > 0 && t > 0 && t < 1) found.push({ at: point, words: `square to ${words}` });
    for (const at of touchingPlaces(edge, from)) found.push({ at, words: `touching the arc of ${nameOf(words)}` });
  }
  return found;
}

/** Where straight lines from a place touch an arc. */
function touchingPlaces(edge: Edge, from: Point): Point[] {
  if (edge.kind === "line") return [];
  const { center, radius } = edge;
  const far = distanceBetween(center, from);
  if (far <= radius) return [];
  const toward = Math.atan2(from[1] - center[1], from[0] - center[0]);
  const turn = Math.acos(radius / far);
  return [toward + turn, toward - turn]
    .filter((angle) => arcContainsAngle(edge, angle))
    .map((angle): Point => [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)]);
}

/** A way that a side from `from` can run, as a unit vector, with its name. */
export interface Heading {
  readonly way: Point;
  readonly words: string;
}

/** Parallel and square to straight sides; an arc gives the direction it has nearest to `from`. */
export function headings(edges: readonly SnapEdge[], from: Point): Heading[] {
  return edges.flatMap(({ edge, words }): Heading[] => {
    const [x, y] = edge.kind === "line" ? tangentAt(edge, 0.5) : tangentAt(edge, nearestOnEdge(edge, from).t);
    if (edge.kind === "arc") {
      if (nearestOnEdge(edge, from).distance > 0) return [];
      return [{ way: [x, y], words: `touching the arc of ${nameOf(words)}` }];
    }
    return [
      { way: [x, y], words: `parallel to ${words}` },
      { way: [-y, x], words: `square to ${words}` },
    ];
  });
}

/** The heading from `from` that passes nearest to the pointer, within the tolerance; with the place on it. */
export function nearestHeading(
  all: readonly Heading[],
  from: Point,
  at: Point,
  tolerance: number,
): { readonly heading: Heading; readonly along: number } | null {
  let best: { heading: Heading; along: number } | null = null;
  let least = tolerance;
  const [dx, dy] = [at[0] - from[0], at[1] - from[1]];
  if (Math.hypot(dx, dy) <= 2 * tolerance) return null;
  for (const heading of all) {
    const [x, y] = heading.way;
    const off = Math.abs(dx * y - dy * x);
    if (off > least || (best !== null && off === least)) continue;
    best = { heading, along: dx * x + dy * y };
    least = off;
  }
  return best;
}

function meet(a: Edge, b: Edge): boolean {
  return [a.from, a.to].some((p) => samePoint(p, b.from) || samePoint(p, b.to));
}

/** "side of Pool" as "Pool". */
function nameOf(words: string): string {
  return words.replace(/^side of /, "");
}

/** Pairs are tried among so many sides at most. */
const MOST_EDGES = 24;
