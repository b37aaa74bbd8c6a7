/**
 * Reach: the ground that can be got to from a pool's inside wall along a plan path of at most a given length that
 * crosses no barrier.
 *
 * Stages. 1. Barriers that lie wholly out of reach are left out. 2. Direct ground: along each loop of the pool a strip
 * square to each straight edge, a ring sector on each arc and a sector round each corner of the pool, each only as deep
 * as its rays get (ray-profile.ts). Walked one after the other they make one closed line, whose winding counts how
 * often ground is covered. 3. Behind barriers: at every barrier corner that a path reaches, a fan of what is left of the
 * distance, as deep as its rays get, over the directions in which a path can bend there; and where a barrier stands
 * across the pool's edge, a fan about that point. 4. Union; less the water and what the caller excludes.
 *
 * Each piece consists of ground that is within reach, and a shortest path ends square to an edge, at a corner of the
 * pool, on a barrier's face at the pool's edge, or bends at a barrier corner: so the union is the whole of it.
 * Arcs keep their area (arc-chords.ts).
 */
import { arcCorners, areaTruePolygon, areaTrueRing } from "./arc-chords.ts";
import { type BarrierMap, barrierMap, freeDirectionsAt, type Sector } from "./barrier-map.ts";
import { differenceRegions } from "./clipping.ts";
import type { SettledCorner } from "./corner-routes.ts";
import { tangentAt } from "./edge.ts";
import { type PoolRoutes, poolRoutes } from "./paths-around-barriers.ts";
import { boundsOfPoints, boundsOverlap, distanceBetween, grownBounds, samePoint } from "./points.ts";
import { fan, profileOf, type RayFamily, strip } from "./ray-profile.ts";
import { type Outline, outlineAmong, outlineEye } from "./seen-outline.ts";
import { type Cone, directionIn, touchesWater, turned } from "./sight.ts";
import { FLATTEN_TOLERANCE, SEAM_OVERLAP, SIGHT_SLACK, THIN_SLICE } from "./tolerances.ts";
import type { Area, Barrier, Edge, Path, Point, Region } from "./types.ts";

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
  const pieces = [...directGround(target, distance, routes.map, tolerance)];
  if (near.length > 0) pieces.push(...behindBarriers(routes, distance, tolerance));
  const water = areaTruePolygon(target, tolerance);
  return differenceRegions(pieces.flat(), [water, ...excluded.flat()]);
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
  const near = barriersWithin(target, distance, barriers);
  const ground = directGround(target, distance, barrierMap(near), tolerance);
  return differenceRegions(ground.flat(), [areaTruePolygon(target, tolerance)]);
}

/** Stage 1. The same array when all of them count, so that what is known of it is used again. */
function barriersWithin(target: Area, distance: number, barriers: readonly Barrier[]): readonly Barrier[] {
  if (!(distance >= 0) || !Number.isFinite(distance)) throw new RangeError(`not a distance: ${distance}`);
  const box = grownBounds(target.outer.bounds, distance);
  const near = barriers.filter((barrier) => boundsOverlap(boundsOfPoints(barrier.points), box));
  return near.length === barriers.length ? barriers : near;
}

/** Stage 2: one region for each loop. */
function directGround(target: Area, distance: number, map: BarrierMap, tolerance: number): Region[] {
  if (distance === 0) return [];
  const islands = target.holes.map((island) => areaTrueRing(island, tolerance));
  // The water lies inside the outer line as well; the islands do not.
  const outline = outlineAmong(map, [target.outer, ...target.holes], true);
  const ground = (loop: Path): Point[] => loopGround(loop, distance, map, outline, tolerance);
  const regions: Region[] = [[[closed(ground(target.outer)), ...islands.map(closed)]]];
  target.holes.forEach((island, i) => {
    // Back along the island's own edge, so that the line winds round the ground alone, whatever its depth.
    const [first, ...others] = islands[i] as Point[];
    if (first) regions.push([[closed([...ground(island), first, ...others.reverse()])]]);
  });
  return regions;
}

function closed(points: readonly Point[]): Point[] {
  const first = points[0];
  return first ? [...points, first] : [];
}

/** The line along the far side of all strips and sectors of a loop (water on its left), back to the loop at each vertex. */
function loopGround(loop: Path, distance: number, map: BarrierMap, outline: Outline, tolerance: number): Point[] {
  const points: Point[] = [];
  const add = (p: Point): void => {
    const last = points[points.length - 1];
    if (!last || !samePoint(last, p)) points.push(p);
  };
  loop.edges.forEach((edge, i) => {
    add(edge.from);
    addProfile(map, familyOf(edge, distance), tolerance, add);
    add(edge.to);
    const next = loop.edges[(i + 1) % loop.edges.length];
    const sector = next && cornerSector(edge, next);
    if (!sector) return;
    for (const { start, span } of partsOnWater(map, outline, edge.to, sector)) {
      addProfile(map, fan(edge.to, 0, start, start + span, distance), tolerance, add);
      add(edge.to);
    }
  });
  return points;
}

function familyOf(edge: Edge, distance: number): RayFamily {
  if (edge.kind === "line") return strip(edge.from, edge.to, distance);
  const { center, radius, startAngle, sweep } = edge;
  if (sweep > 0) return fan(center, radius, startAngle, startAngle + sweep, distance);
  return fan(center, radius, -startAngle, -(startAngle + sweep), distance, true);
}

/** The sector between the strips of two edges where the outline turns left, toward the water; null where it does not. */
function cornerSector(edge: Edge, next: Edge): Cone | null {
  const [inX, inY] = tangentAt(edge, 1);
  const [outX, outY] = tangentAt(next, 0);
  const turn = Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
  return turn <= THIN_SLICE ? null : { start: Math.atan2(-inX, inY), span: turn };
}

/** The parts of a sector at the pool's edge that no barrier touching the edge there parts from the water. */
function partsOnWater(map: BarrierMap, outline: Outline, at: Point, sector: Cone): Cone[] {
  const free = freeDirectionsAt(map, at);
  if (!free) return [sector];
  const eye = outlineEye(outline, at);
  const parts: Cone[] = [];
  for (const cone of free) {
    if (!touchesWater(eye, cone)) continue;
    const first = sector.start + turned(cone.start - sector.start);
    for (const begin of [first - 2 * Math.PI, first]) {
      const start = Math.max(sector.start, begin);
      const span = Math.min(sector.start + sector.span, begin + cone.span) - start;
      if (span > THIN_SLICE) parts.push({ start, span });
    }
  }
  return parts.sort((one, other) => one.start - other.start);
}

function addProfile(map: BarrierMap, family: RayFamily, tolerance: number, add: (p: Point) => void): void {
  const ring = family.center;
  for (const { from, to, stop } of profileOf(map, family)) {
    const depthAt = (w: number): number => {
      if (stop === "open") return family.depth;
      if (stop === "closed") return 0;
      return Math.min(family.depth, Math.max(0, stop.depthAt(w)));
    };
    const start = family.pointAt(from, depthAt(from));
    add(start);
    if (ring && (stop === "open" || stop === "closed")) {
      const radius = distanceBetween(ring.at, start);
      if (radius > SIGHT_SLACK)
        for (const p of arcCorners(ring.at, radius, from * ring.way, (to - from) * ring.way, tolerance)) add(p);
    }
    add(family.pointAt(to, depthAt(to)));
  }
}

/** Stage 3. */
function behindBarriers(routes: PoolRoutes, distance: number, tolerance: number): Region[] {
  const { map, corners, outline } = routes;
  const regions: Region[] = [];
  const addFan = (at: Point, from: number, span: number, depth: number): void => {
    const points: Point[] = [at];
    addProfile(map, fan(at, 0, from, from + span, depth), tolerance, (p) => points.push(p));
    regions.push([[closed(points)]]);
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
