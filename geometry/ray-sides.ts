/**
 * The families of rays that leave a pool square to its edges, with how far they get (ray-profile.ts).
 *
 * Terms. Side: an edge with the corner at its end: a strip or ring sector, and a sector round the corner. Open side: no
 * barrier comes near it, so nothing of it is worked out until it is asked for.
 */
import { type BarrierMap, freeDirectionsAt } from "./barrier-map.ts";
import { tangentAt } from "./edge.ts";
import { edgeTree } from "./edge-tree.ts";
import { boundsOfPoints, boundsOverlap } from "./points.ts";
import { fan, profileOf, type RayFamily, type Slice, strip } from "./ray-profile.ts";
import { type Outline, outlineEye } from "./seen-outline.ts";
import { type Cone, touchesWater, turned } from "./sight.ts";
import { boxIndex } from "./spatial-index.ts";
import { SHADOW_MARGIN, THIN_SLICE } from "./tolerances.ts";
import type { Bounds, Edge, Path, Point } from "./types.ts";

/** The rays of a strip or sector with how far they get. */
export interface Lit {
  readonly family: RayFamily;
  readonly slices: readonly Slice[];
}

/** An edge with its corner at the end, too far from every barrier for one to stop a ray. */
export interface OpenSide {
  readonly family: null;
  readonly edge: Edge;
  readonly next: Edge;
  /** Holds all of its rays. */
  readonly box: Bounds;
}

/** All sides of one loop with the water on its left. */
export function sidesOf(loop: Path, distance: number, map: BarrierMap, outline: Outline): (Lit | OpenSide)[] {
  const { edges } = loop;
  const { edgeBoxes } = edgeTree(loop);
  const isNear = barriersNear(map);
  const margin = distance + SHADOW_MARGIN;
  const found: (Lit | OpenSide)[] = [];
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[i] as Edge;
    const next = edges[(i + 1) % edges.length] as Edge;
    const box = {
      minX: (edgeBoxes[i * 4] as number) - margin,
      minY: (edgeBoxes[i * 4 + 1] as number) - margin,
      maxX: (edgeBoxes[i * 4 + 2] as number) + margin,
      maxY: (edgeBoxes[i * 4 + 3] as number) + margin,
    };
    if (isNear(box)) addFamilies(edge, next, distance, map, outline, found);
    else found.push({ family: null, edge, next, box });
  }
  return found;
}

/** A test whether the boxes of any barriers touch a box. */
function barriersNear(map: BarrierMap): (box: Bounds) => boolean {
  const boxes = [...map.solids.map(({ bounds }) => bounds), ...map.pieces.map(({ a, b }) => boundsOfPoints([a, b]))];
  if (!map.hasFewPieces) return boxIndex(boxes).touches;
  return (box) => boxes.some((other) => boundsOverlap(other, box));
}

/** The families of an edge and of the corner at its end. */
function addFamilies(
  edge: Edge,
  next: Edge,
  distance: number,
  map: BarrierMap,
  outline: Outline,
  found: (Lit | OpenSide)[],
): void {
  const add = (family: RayFamily): void => {
    found.push({ family, slices: profileOf(map, family) });
  };
  add(familyOf(edge, distance));
  const sector = cornerSector(edge, next);
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
}

/** The families of an open side. */
export function openFamilies({ edge, next }: OpenSide, distance: number): Lit[] {
  const sector = cornerSector(edge, next);
  const families = [familyOf(edge, distance)];
  if (sector) families.push(fan(edge.to, 0, sector.start, sector.start + sector.span, distance));
  return families.map((family) => ({ family, slices: [{ from: family.w0, to: family.w1, stop: "open" }] }));
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
