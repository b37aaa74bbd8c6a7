/**
 * Reach: the ground that can be got to from a pool's inside wall along a plan path of at most a given length that
 * crosses no barrier.
 *
 * Stages. 1. Barriers that lie wholly out of reach are left out. 2. The ground that is reached straight
 * (direct-ground.ts). 3. Behind barriers: at every barrier corner that a path reaches, a fan of what is left of the
 * distance, as deep as its rays get, over the directions in which a path can bend there; and where a barrier stands
 * across the pool's edge, a fan about that point. 4. Union; less the water and what the caller excludes.
 *
 * Each piece consists of ground that is within reach, and a shortest path ends square to an edge, at a corner of the
 * pool, on a barrier's face at the pool's edge, or bends at a barrier corner: so the union is the whole of it.
 * Arcs keep their area (arc-chords.ts).
 */
import { areaTruePolygon } from "./arc-chords.ts";
import type { Sector } from "./barrier-map.ts";
import { differenceRegions, offsetRegion } from "./clipping.ts";
import type { SettledCorner } from "./corner-routes.ts";
import { closed, directGround, fanGround } from "./direct-ground.ts";
import { type PoolRoutes, poolRoutes } from "./paths-around-barriers.ts";
import { boundsOfPoints, boundsOverlap, distanceBetween, grownBounds } from "./points.ts";
import { partsOnWater } from "./ray-sides.ts";
import { directionIn, turned } from "./sight.ts";
import { sureDifference } from "./sure-difference.ts";
import { FLATTEN_TOLERANCE, RING_SEAM, SEAM_OVERLAP, SIGHT_SLACK } from "./tolerances.ts";
import type { Area, Barrier, Point, Region } from "./types.ts";

/**
 * The ground within `distance` inches of the inside wall of `target` along a path round `barriers`, outside the water
 * and outside `excluded` (all waters, footprints of walls and buildings). Chords stay within `tolerance` inches of arcs.
 * Nothing within reach: an empty region. A distance below 0 or not a number is an error of the caller.
 */
export function reach(
  target: Area,
  distance: number,
  barriers: readonly Barrier[],
  excluded: readonly Region[],
  tolerance: number = FLATTEN_TOLERANCE,
): Region {
  const near = barriersWithin(target, distance, barriers);
  const routes = poolRoutes(target, near);
  const pieces = [directGround(target, distance, routes.map, routes.outline, tolerance)];
  if (near.length > 0) pieces.push(...behindBarriers(routes, distance, tolerance));
  const water = areaTruePolygon(target, tolerance);
  const taken = [water, ...excluded.flat()];
  // Only where barriers cross the water's edge does the ground have so many sides along it that one may be lost.
  return routes.outline.crossed.length > 0
    ? sureDifference(pieces.flat(), taken)
    : differenceRegions(pieces.flat(), taken);
}

/**
 * The ground within `distance` inches of the inside wall that is reached straight: square to an edge or from a corner of
 * the pool, with no bend round the end of a barrier. Outside the water.
 */
export function directReach(
  target: Area,
  distance: number,
  barriers: readonly Barrier[],
  tolerance: number = FLATTEN_TOLERANCE,
): Region {
  return sureDifference(straightGround(target, distance, barriers, tolerance), [areaTruePolygon(target, tolerance)]);
}

/**
 * The water and that ground, as polygons that overlap: the water is a little wider, so that no seam stays open along its
 * edge, and not taken away. Cutting ground off along an edge that all but is its own is what the clipping engine gets wrong.
 */
export function waterAndDirectReach(
  target: Area,
  distance: number,
  barriers: readonly Barrier[],
  tolerance: number = FLATTEN_TOLERANCE,
): Region {
  const water = offsetRegion([areaTruePolygon(target, tolerance)], RING_SEAM);
  return [...water, ...straightGround(target, distance, barriers, tolerance)];
}

function straightGround(target: Area, distance: number, barriers: readonly Barrier[], tolerance: number): Region {
  const near = barriersWithin(target, distance, barriers);
  const { map, outline } = poolRoutes(target, near);
  return directGround(target, distance, map, outline, tolerance);
}

/** Stage 1. The same array when all of them count, so that what is known of it is used again. */
function barriersWithin(target: Area, distance: number, barriers: readonly Barrier[]): readonly Barrier[] {
  if (!(distance >= 0) || !Number.isFinite(distance)) throw new RangeError(`not a distance: ${distance}`);
  const box = grownBounds(target.outer.bounds, distance);
  const near = barriers.filter((barrier) => boundsOverlap(boundsOfPoints(barrier.points), box));
  return near.length === barriers.length ? barriers : near;
}

/** Stage 3. */
function behindBarriers(routes: PoolRoutes, distance: number, tolerance: number): Region[] {
  const { map, corners, outline } = routes;
  const regions: Region[] = [];
  const addFan = (at: Point, from: number, span: number, depth: number): void => {
    regions.push([[closed(fanGround(map, at, from, span, depth, tolerance))]]);
  };
  for (const at of outline.crossed) {
    for (const { start, span } of partsOnWater(map, outline, at, { start: -Math.PI, span: 2 * Math.PI }))
      addFan(at, start, span, distance);
  }
  for (let i = 0; ; i++) {
    const corner = corners.corner(i, distance);
    if (!corner) return regions;
    const depth = distance - corner.distance;
    if (depth <= SIGHT_SLACK) continue;
    const { from, span } = bendingDirections(corner);
    addFan(corner.sector.at, from, span, depth);
  }
}

/** The directions in which a taut path can leave a corner: from straight on to the barrier that it bends round. */
function bendingDirections(corner: SettledCorner): { from: number; span: number } {
  const { sector } = corner;
  const leg = distanceBetween(corner.from, sector.at);
  const whole = { from: sector.start, span: sector.span };
  if (leg <= SIGHT_SLACK) return whole;
  const ahead = Math.atan2(sector.at[1] - corner.from[1], sector.at[0] - corner.from[0]);
  const goesOn = directionIn(sector, ahead, leg) !== 0;
  const backAt = turned(ahead + Math.PI - sector.start);
  const aheadAt = turned(ahead - sector.start);
  const sharp = Math.abs(backAt - aheadAt);
  if (!goesOn || Math.abs(sharp - Math.PI) > SEAM_OVERLAP || isBesidePiece(sector, backAt)) return whole;
  if (backAt < aheadAt) return { from: ahead - SEAM_OVERLAP, span: sector.span - aheadAt + SEAM_OVERLAP };
  return { from: sector.start, span: aheadAt + SEAM_OVERLAP };
}

/** A path that comes along the barrier itself may be on either side of a thin one: no telling which way it bends. */
function isBesidePiece(sector: Sector, angle: number): boolean {
  return angle < SEAM_OVERLAP || sector.span - angle < SEAM_OVERLAP;
}
