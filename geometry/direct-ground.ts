/**
 * The ground within a distance of a pool that is reached straight: square to an edge of the inside wall or from a corner
 * of it, as deep as the rays get before a barrier.
 *
 * Stages. 1. The open ground: everything within the distance, from the exact offset (offset.ts). 2. A strip square to each
 * straight edge, a ring sector on each arc and a sector round each corner of the pool, with how deep its rays get
 * (ray-profile.ts). What lies behind a stop is shadow. 3. The open ground outside all shadows is reached straight from its
 * own nearest water. 4. Ground in a shadow may be reached from other water: every strip and sector that comes near a
 * shadow is added as deep as its own rays get.
 *
 * Terms. Family: the rays of one strip or sector. Shadows are drawn a little too large, over the water and past the
 * distance: what that takes too much of, stage 4 gives back.
 */
import { arcCorners, areaTrueRing } from "./arc-chords.ts";
import { type BarrierMap, freeDirectionsAt } from "./barrier-map.ts";
import { differenceRegions } from "./clipping.ts";
import { tangentAt } from "./edge.ts";
import { offsetCurves } from "./offset.ts";
import { boundsOfPoints, distanceBetween, samePoint } from "./points.ts";
import { fan, profileOf, type RayFamily, type Slice, strip } from "./ray-profile.ts";
import { type Outline, outlineEye } from "./seen-outline.ts";
import { type Cone, touchesWater, turned } from "./sight.ts";
import { boxIndex } from "./spatial-index.ts";
import { SHADOW_MARGIN, SIGHT_SLACK, THIN_SLICE } from "./tolerances.ts";
import type { Area, Edge, Path, Point, Region } from "./types.ts";

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
  const families = [target.outer, ...target.holes].flatMap((loop) => familiesOf(loop, distance, map, outline));
  const shadows = shadowsOf(families, tolerance);
  if (shadows.every((one) => one === null)) return open;
  const boxes = boxIndex(shadows.flatMap((one) => (one ? [boundsOfPoints([...one.near, ...one.far])] : [])));
  const lit = groundOf(families, ({ family }) => boxes.touches(family.bounds), tolerance);
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

/** The rays of a strip or sector with how far they get. */
interface Lit {
  readonly family: RayFamily;
  readonly slices: readonly Slice[];
}

/** Stage 2, for one loop with the water on its left. */
function familiesOf(loop: Path, distance: number, map: BarrierMap, outline: Outline): Lit[] {
  const found: Lit[] = [];
  const add = (family: RayFamily): void => {
    found.push({ family, slices: profileOf(map, family) });
  };
  loop.edges.forEach((edge, i) => {
    add(familyOf(edge, distance));
    const next = loop.edges[(i + 1) % loop.edges.length];
    const sector = next && cornerSector(edge, next);
    if (!sector) return;
    let from = sector.start;
    const end = sector.start + sector.span;
    const shut = (to: number): void => {
      if (to - from > THIN_SLICE)
        found.push({ family: fan(edge.to, 0, from, to, distance), slices: [{ from, to, stop: "closed" }] });
    };
    for (const { start, span } of partsOnWater(map, outline, edge.to, sector)) {
      shut(start);
      add(fan(edge.to, 0, start, start + span, distance));
      from = start + span;
    }
    shut(end);
  });
  return found;
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
export function partsOnWater(map: BarrierMap, outline: Outline, at: Point, sector: Cone): Cone[] {
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
function shadowsOf(families: readonly Lit[], tolerance: number): Stretch[] {
  const stretches: Stretch[] = [];
  let before: Point | null = null;
  for (const { family, slices } of families) {
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

/** Stage 4: what the rays of some of a pool's families reach. */
function groundOf(families: readonly Lit[], isLit: (one: Lit) => boolean, tolerance: number): Stretch[] {
  const stretches: Stretch[] = [];
  let before: Point | null = null;
  for (const one of families) {
    const { family } = one;
    const { w0, w1 } = family;
    const start = family.pointAt(w0, 0);
    const end = family.pointAt(w1, 0);
    if (before === null || !samePoint(before, start)) stretches.push(null);
    before = end;
    const near = () => [start, ...round(family, 0, w0, w1, tolerance), end];
    stretches.push(isLit(one) ? { near: near(), far: farEdge(one, tolerance) } : null);
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
