/**
 * The ground within a distance of a pool that is reached straight: square to an edge of the inside wall or from a corner
 * of it, as deep as the rays get before a barrier.
 *
 * Stages. 1. The open ground: everything within the distance, from the exact offset (offset.ts). 2. A strip square to each
 * straight edge, a ring sector on each arc and a sector round each corner of the pool, with how deep its rays get
 * (ray-sides.ts). What lies behind a stop is shadow. 3. The open ground outside all shadows is reached straight from its
 * own nearest water. 4. Ground in a shadow may be reached from other water: every strip and sector that comes near a
 * shadow is added as deep as its own rays get.
 *
 * Terms. Family: the rays of one strip or sector. Shadows are drawn a little too large, over the water and past the
 * distance: what that takes too much of, stage 4 gives back.
 */
import { arcCorners, areaTrueRing } from "./arc-chords.ts";
import type { BarrierMap } from "./barrier-map.ts";
import { differenceRegions } from "./clipping.ts";
import { offsetCurves } from "./offset.ts";
import { boundsOfPoints, distanceBetween, samePoint } from "./points.ts";
import { fan, profileOf, type RayFamily, type Slice } from "./ray-profile.ts";
import { type Lit, type OpenSide, openFamilies, sidesOf } from "./ray-sides.ts";
import type { Outline } from "./seen-outline.ts";
import { boxIndex } from "./spatial-index.ts";
import { SHADOW_MARGIN, SIGHT_SLACK } from "./tolerances.ts";
import type { Area, Bounds, Point, Region } from "./types.ts";

/**
 * Ground within `distance` inches of the inside wall that is reached straight, as polygons that may overlap each other and
 * the water. `outline`: the pool's among the barriers of the map. Chords stay within `tolerance` inches of arcs.
 */
export function directGround(
  target: Area,
  distance: number,
  map: BarrierMap,
  outline: Outline,
  tolerance: number,
): Region {
  if (distance === 0) return [];
  const open = openGround(target, distance, tolerance);
  if (map.pieces.length === 0 && map.solids.length === 0) return open;
  const sides = [target.outer, ...target.holes].flatMap((loop) => sidesOf(loop, distance, map, outline));
  const shadows = shadowsOf(sides, tolerance);
  if (shadows.every((one) => one === null)) return open;
  const boxes = boxIndex(shadows.flatMap((one) => (one ? [boundsOfPoints([...one.near, ...one.far])] : [])));
  const lit = groundOf(sides, distance, (box) => boxes.touches(box), tolerance);
  return [...differenceRegions(open, polygonsOf(chained(shadows))), ...polygonsOf(chained(lit))];
}

/** Stage 1. */
function openGround(target: Area, distance: number, tolerance: number): Region {
  const { loops } = offsetCurves([target], distance);
  const rings = (sign: 1 | -1) =>
    loops.filter(({ area }) => area * sign > 0).map(({ path }) => closed(areaTrueRing(path, tolerance)));
  const [first, ...others] = rings(1);
  return first ? [[first, ...rings(-1)], ...others.map((ring) => [ring])] : [];
}

function polygonsOf(rings: readonly (readonly Point[])[]): Region {
  return rings.map((ring) => [closed(ring)]);
}

export function closed(points: readonly Point[]): Point[] {
  const first = points[0];
  return first ? [...points, first] : [];
}

/** How deep the rays of a slice get at w. */
function depthIn(family: RayFamily, { stop }: Slice, w: number): number {
  if (stop === "open") return family.depth;
  if (stop === "closed") return 0;
  return Math.min(family.depth, Math.max(0, stop.depthAt(w)));
}

/** The far edge of what the rays reach, in the order of w. */
function farEdge({ family, slices }: Lit, tolerance: number): Point[] {
  const points: Point[] = [];
  for (const slice of slices) {
    const { from, to } = slice;
    const depth = depthIn(family, slice, from);
    const isRound = typeof slice.stop === "string";
    points.push(family.pointAt(from, depth));
    if (isRound) points.push(...round(family, depth, from, to, tolerance));
    points.push(family.pointAt(to, depthIn(family, slice, to)));
  }
  return points;
}

/** The corners between two rays of a fan at one depth; of a strip, none. */
function round(family: RayFamily, depth: number, from: number, to: number, tolerance: number): Point[] {
  const { center } = family;
  if (!center) return [];
  const radius = distanceBetween(center.at, family.pointAt(from, depth));
  if (radius <= SIGHT_SLACK) return [];
  return arcCorners(center.at, radius, from * center.way, (to - from) * center.way, tolerance);
}

/** A stretch of ground between a near and a far edge, both in the order of w; null parts it from what follows. */
type Stretch = { readonly near: readonly Point[]; readonly far: readonly Point[] } | null;

/** What lies behind the stops of the families. */
function shadowsOf(sides: readonly (Lit | OpenSide)[], tolerance: number): Stretch[] {
  const stretches: Stretch[] = [];
  let before: Point | null = null;
  for (const side of sides) {
    if (side.family === null) {
      before = null;
      continue;
    }
    const { family, slices } = side;
    const base = family.pointAt(family.w0, 0);
    if (before === null || !samePoint(before, base)) stretches.push(null);
    before = family.pointAt(family.w1, 0);
    for (const slice of slices) stretches.push(slice.stop === "open" ? null : shadowOf(family, slice, tolerance));
  }
  return stretches;
}

function shadowOf(family: RayFamily, slice: Slice, tolerance: number): Stretch {
  const { center } = family;
  const { from, to } = slice;
  const start = center ? distanceBetween(center.at, family.pointAt(family.w0, 0)) : 0;
  // Rays toward a center end there.
  const back = center?.way === -1 ? Math.min(start, family.depth + SHADOW_MARGIN) : family.depth + SHADOW_MARGIN;
  const front = center?.way === 1 ? -Math.min(start, SHADOW_MARGIN) : -SHADOW_MARGIN;
  const edge = (depth: number) => [
    family.pointAt(from, depth),
    ...round(family, depth, from, to, tolerance),
    family.pointAt(to, depth),
  ];
  const stopped = () => [from, to].map((w) => family.pointAt(w, depthIn(family, slice, w)));
  return { near: slice.stop === "closed" ? edge(front) : stopped(), far: edge(back) };
}

/** Stage 4: what the rays of those families reach whose boxes are lit; null between those that do not follow each other. */
function groundOf(
  sides: readonly (Lit | OpenSide)[],
  distance: number,
  isLit: (box: Bounds) => boolean,
  tolerance: number,
): Stretch[] {
  const stretches: Stretch[] = [];
  let before: Point | null = null;
  const addFamily = (one: Lit): void => {
    const { family } = one;
    const { w0, w1 } = family;
    const start = family.pointAt(w0, 0);
    const end = family.pointAt(w1, 0);
    if (before === null || !samePoint(before, start)) stretches.push(null);
    before = end;
    const near = () => [start, ...round(family, 0, w0, w1, tolerance), end];
    stretches.push(isLit(family.bounds) ? { near: near(), far: farEdge(one, tolerance) } : null);
  };
  for (const side of sides) {
    if (side.family !== null) addFamily(side);
    else if (isLit(side.box)) openFamilies(side, distance).forEach(addFamily);
    else before = null;
  }
  return stretches;
}

/**
 * Stretches that follow each other made into one polygon: along the far edges, back to the near ones where these do not
 * meet, and home along the near edges. Its winding counts how often ground is covered.
 */
function chained(stretches: readonly Stretch[]): Point[][] {
  const polygons: Point[][] = [];
  let far: Point[] = [];
  let near: Point[] = [];
  const close = (): void => {
    if (far.length > 0) polygons.push([...far, ...near.reverse()]);
    far = [];
    near = [];
  };
  for (const stretch of stretches) {
    if (stretch === null) {
      close();
      continue;
    }
    const start = stretch.near[0] as Point;
    if (near.length > 0) pushWithoutSpike(far, start);
    for (const p of stretch.far) pushWithoutSpike(far, p);
    for (const p of stretch.near) pushWithoutSpike(near, p);
    pushWithoutSpike(far, stretch.near[stretch.near.length - 1] as Point);
  }
  close();
  return polygons;
}

/** Adds a position that is not the last once more; one that only leads back to where the line was before takes its tip off again. */
function pushWithoutSpike(line: Point[], p: Point): void {
  const last = line[line.length - 1];
  const before = line[line.length - 2];
  if (last && samePoint(last, p)) return;
  if (before && samePoint(before, p)) line.pop();
  else line.push(p);
}

/** A fan of rays about one point, as the polygon that they reach. */
export function fanGround(
  map: BarrierMap,
  at: Point,
  from: number,
  span: number,
  depth: number,
  tolerance: number,
): Point[] {
  const family = fan(at, 0, from, from + span, depth);
  return [at, ...farEdge({ family, slices: profileOf(map, family) }, tolerance)];
}
