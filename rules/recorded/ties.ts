/** The ties of a body's shell to the perimeter bonding: recorded ones, and proposals for what is still needed. */
import { offsetRegion, unionRegions } from "../../geometry/clipping.ts";
import { pointToPath } from "../../geometry/distance.ts";
import { lineEdge, nearestOnEdge } from "../../geometry/edge.ts";
import { distanceAlongPath, flattenArea, pathLength } from "../../geometry/outline.ts";
import { evenTies } from "../../geometry/ties.ts";
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Point, Region } from "../../geometry/types.ts";
import type { Body, Yard } from "../measures/yard.ts";
import type { TieReport } from "../report.ts";
import { PERIMETER } from "./perimeter-name.ts";
import { drawnOutline, groupWith, type TieGroup } from "./tie-groups.ts";

/**
 * The ties of a body; shells that share a wall have theirs together with the first of them (the others: none).
 * `perimeterTo`: polylines of the perimeter bonding, whose nearest point each tie leads to (with none: the tie's own place).
 */
export function plannedTies(yard: Yard, body: Body, perimeterTo: readonly (readonly Point[])[]): TieReport[] {
  const group = groupWith(yard, body);
  if (!group || group.bodies[0] !== body) return [];
  const present = group.recorded.map(({ reading }) => tieReport(group, reading.tie.at, reading.tie.id, perimeterTo));
  const proposed = evenTies({
    outer: group.outline,
    count: group.needed,
    existing: group.recorded.map(({ along }) => along),
    keepClear: keepClear(yard),
  }).map(({ at }) => tieReport(group, at, null, perimeterTo));
  return [...present, ...proposed].sort(inOrder(group));
}

/** Along the wall of one body after the other, so that a tie keeps its number when one of them is recorded. */
function inOrder({ bodies }: TieGroup): (a: TieReport, b: TieReport) => number {
  const ranks = new Map(bodies.map(({ id }, i) => [id, i]));
  const rank = (tie: TieReport) => ranks.get(tie.between[1]) ?? bodies.length;
  return (a, b) => rank(a) - rank(b) || a.distanceAlong - b.distanceAlong;
}

function tieReport(
  group: TieGroup,
  near: Point,
  recorded: string | null,
  perimeterTo: readonly (readonly Point[])[],
): TieReport {
  const { body, at } = wallPoint(group.bodies, near);
  const outline = drawnOutline(body.element.outline);
  const along = distanceAlongPath(outline, at);
  return {
    at,
    to: nearestOn(at, perimeterTo) ?? at,
    between: [PERIMETER, body.id],
    present: recorded !== null,
    recorded,
    distanceAlong: pathLength(outline) - along <= LIMIT_TOLERANCE ? 0 : along,
  };
}

/** The nearest point of the inside walls (outer outlines: islands are not tied). */
function wallPoint(bodies: readonly Body[], near: Point): { body: Body; at: Point } {
  let best = { body: bodies[0] as Body, at: near, away: Number.POSITIVE_INFINITY };
  for (const body of bodies) {
    const { from, length } = pointToPath(near, body.water.outer);
    if (length < best.away) best = { body, at: from, away: length };
  }
  return best;
}

function nearestOn(p: Point, lines: readonly (readonly Point[])[]): Point | null {
  let best: Point | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    for (let i = 1; i < line.length; i++) {
      const a = line[i - 1] as Point;
      const b = line[i] as Point;
      if (isBeyond(least, a, b, p)) continue;
      const { point, distance } = nearestOnEdge(lineEdge(a, b), p);
      if (distance >= least) continue;
      least = distance;
      best = point;
    }
  }
  return best;
}

/** Whether the box of a segment is farther than `distance` inches from `p`. */
function isBeyond(distance: number, a: Point, b: Point, p: Point): boolean {
  const dx = Math.max(Math.min(a[0], b[0]) - p[0], p[0] - Math.max(a[0], b[0]));
  const dy = Math.max(Math.min(a[1], b[1]) - p[1], p[1] - Math.max(a[1], b[1]));
  return dx > distance || dy > distance;
}

/** Where a tie's copper cannot lie: keep-outs, widened by the ring's offset, so that the way out to the ring is clear. */
function keepClear(yard: Yard): Region {
  return yard.kept("ties keep clear", () => {
    const regions = yard.all("keep-out").flatMap((keepOut): Region[] => {
      const shape = yard.shape(keepOut);
      return shape.kind === "area" ? [flattenArea(shape.area)] : [];
    });
    return regions.length === 0 ? [] : offsetRegion(unionRegions(regions), yard.settings.ringOffset);
  });
}
