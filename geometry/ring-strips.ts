/**
 * The ground where a ring may lie: between the curves at `min` and at `max` from the water, less obstacles.
 *
 * Terms. Strip: one connected part of it, a polygon with holes. Color of a ring of a strip: "near" where it runs along
 * the `min` curve, "far" along the `max` curve, "free" where it is only the edge of an obstacle that stands in the
 * strip. A strip with one ring that is both near and far is cut through: no ring passes there.
 */
import { differenceRegions } from "./clipping.ts";
import { insidePath } from "./contains.ts";
import { distanceToEdge } from "./edge.ts";
import { edgeTree } from "./edge-tree.ts";
import { flattenToSide } from "./flatten-side.ts";
import { nearestEdge } from "./nearest-edge.ts";
import { type OffsetLoop, offsetCurves } from "./offset.ts";
import { CLIP_UNITS_PER_INCH, FINE_FLATTEN_TOLERANCE, TAUT_TOLERANCE } from "./tolerances.ts";
import type { Area, Edge, Path, Point, Region } from "./types.ts";

export type StripColor = "near" | "far" | "free";

export interface StripRing {
  readonly points: readonly Point[];
  readonly color: StripColor;
  /** Bodies whose `min` curve this is; of a far or free ring: none. */
  readonly bodies: readonly number[];
}

export interface Strip {
  readonly outer: StripRing;
  readonly holes: readonly StripRing[];
}

export interface Strips {
  readonly strips: readonly Strip[];
  /** Places where a strip is cut through, one each. */
  readonly blocked: readonly Point[];
}

interface Sided {
  readonly loop: OffsetLoop;
  readonly ring: StripRing;
}

/** The strips without any obstacle. Rings of holes and outer rings alike run as their curves do. */
export function openStrips(bodies: readonly Area[], min: number, max: number): Strip[] {
  const near = legalLoops(bodies, min, 1).map((loop): Sided => {
    const points = flattenToSide(loop.path, "right", TAUT_TOLERANCE);
    return { loop, ring: { points, color: "near", bodies: loop.bodies } };
  });
  const far = legalLoops(bodies, max, -1).map((loop): Sided => {
    const points = flattenToSide(loop.path, "left", TAUT_TOLERANCE);
    return { loop, ring: { points, color: "far", bodies: [] } };
  });
  const outers = [...far.filter(({ loop }) => loop.area > 0), ...near.filter(({ loop }) => loop.area < 0)];
  const holes = [...near.filter(({ loop }) => loop.area > 0), ...far.filter(({ loop }) => loop.area < 0)];
  const byOuter = new Map<Sided, StripRing[]>(outers.map((outer) => [outer, []]));
  for (const hole of holes) {
    const home = smallestAround(outers, hole.loop.path);
    if (home) byOuter.get(home)?.push(hole.ring);
  }
  return [...byOuter].map(([outer, inside]) => ({ outer: outer.ring, holes: inside }));
}

/** The offset at a limit; where it is only a polygon (chords inside the curve), one that lies on the legal side. */
function legalLoops(bodies: readonly Area[], limit: number, legal: 1 | -1): readonly OffsetLoop[] {
  const { loops, exact } = offsetCurves(bodies, limit);
  return exact ? loops : offsetCurves(bodies, limit + legal * 2 * FINE_FLATTEN_TOLERANCE).loops;
}

function smallestAround(outers: readonly Sided[], path: Path): Sided | null {
  const p = path.edges[0]?.from;
  let best: Sided | null = null;
  for (const outer of outers) {
    if (!p || !insidePath(outer.loop.path, p)) continue;
    if (!best || Math.abs(outer.loop.area) < Math.abs(best.loop.area)) best = outer;
  }
  return best;
}

/** The strips less the obstacles. `strips` are those of openStrips. */
export function strippedOf(
  strips: readonly Strip[],
  obstacles: Region,
  bodies: readonly Area[],
  min: number,
  max: number,
): Strips {
  const region: Region = strips.map(({ outer, holes }) => [outer, ...holes].map((ring) => closed(ring.points)));
  const left = differenceRegions(region, obstacles);
  const found: Strip[] = [];
  const blocked: Point[] = [];
  for (const polygon of left) {
    const rings = polygon.map((ring) => coloredRing(ring.slice(0, -1), bodies, min, max));
    const cut = rings.flatMap((ring) => (ring.cutAt ? [ring.cutAt] : []));
    if (cut[0]) {
      blocked.push(cut[0]);
      continue;
    }
    const [outer, ...holes] = rings.map(({ ring }) => ring);
    if (outer) found.push({ outer, holes });
  }
  return { strips: found, blocked };
}

function closed(points: readonly Point[]): Point[] {
  const first = points[0];
  return first ? [...points, first] : [];
}

function coloredRing(
  points: readonly Point[],
  bodies: readonly Area[],
  min: number,
  max: number,
): { ring: StripRing; cutAt: Point | null } {
  const slack = 2 * TAUT_TOLERANCE + 4 / CLIP_UNITS_PER_INCH;
  const owners = new Set<number>();
  let nearAt: Point | null = null;
  let farAt: Point | null = null;
  let cutAt: Point | null = null;
  let last: { p: Point; color: StripColor } | null = null;
  const nearest = nearestBodyAlong(bodies);
  for (const p of closed(points)) {
    const { distance, body } = nearest(p);
    const color = distance <= min + slack ? "near" : distance >= max - slack ? "far" : "free";
    if (color === "free") continue;
    if (color === "near") {
      owners.add(body);
      nearAt = p;
    } else {
      farAt = p;
    }
    if (last && last.color !== color) cutAt ??= [(p[0] + last.p[0]) / 2, (p[1] + last.p[1]) / 2];
    last = { p, color };
  }
  const color: StripColor = nearAt ? "near" : farAt ? "far" : "free";
  return { ring: { points, color, bodies: [...owners].sort((a, b) => a - b) }, cutAt };
}

/** A search for the nearest outline of positions that follow each other: each begins with the edge nearest to the one before. */
function nearestBodyAlong(bodies: readonly Area[]): (p: Point) => { distance: number; body: number } {
  const trees = bodies.flatMap(({ outer, holes }, body) =>
    [outer, ...holes].map((path) => ({ body, tree: edgeTree(path) })),
  );
  let last: { readonly edge: Edge; readonly body: number } | null = null;
  return (p) => {
    let distance = last ? distanceToEdge(last.edge, p) : Number.POSITIVE_INFINITY;
    for (const { body, tree } of trees) {
      const edge = tree.edges[nearestEdge(tree, p, distance)];
      if (!edge) continue;
      distance = distanceToEdge(edge, p);
      last = { edge, body };
    }
    return { distance, body: last?.body ?? -1 };
  };
}
