/**
 * Areas put together, cut and widened, on flattened rings: the only place where the clipping engine is used.
 *
 * Stages of every operation. 1. Positions move to a local origin and onto a grid of CLIP_UNITS_PER_INCH units. 2. Rings
 * are cleaned (clip-cleaning.ts); what is left of no area is dropped, and no empty path is ever passed on. 3. The engine
 * runs; a refusal is thrown as an error, never returned as an empty area. 4. Its rings are cleaned, sorted into
 * outlines and holes (ring-nesting.ts) and come back as a Region in inches: rings closed, outer rings counter-clockwise,
 * holes clockwise.
 *
 * Results are polygons on the grid, within 1/4096 in. of the exact ones. They serve areas and drawing, not findings.
 */
import { Clipper64, ClipperOffset, ClipType, EndType, FillRule, JoinType } from "clipper2-ts";
import { cleanRing } from "./clip-cleaning.ts";
import { boundsOfPoints, boundsUnion, segmentMeetsBox } from "./points.ts";
import { nestRings } from "./ring-nesting.ts";
import { ringArea, ringPerimeter, ringWinding } from "./rings.ts";
import { CLIP_UNITS_PER_INCH, FLATTEN_TOLERANCE } from "./tolerances.ts";
import type { Bounds, Point, Region, Ring } from "./types.ts";

export { cleanRing } from "./clip-cleaning.ts";
export { clipLines } from "./line-clipping.ts";
export { regionContains } from "./region-index.ts";

type GridPoint = { x: number; y: number };
type GridPath = GridPoint[];

/** Regions that the engine gave: on its grid, clean, their polygons apart. */
const finished = new WeakSet<Region>();

/** The area covered by any of the regions. */
export function unionRegions(regions: readonly Region[]): Region {
  const some = regions.filter((region) => region.length > 0);
  const only = some[0];
  if (only && some.length === 1 && finished.has(only)) return only;
  const origin = originOf(regions);
  return boolean(
    ClipType.Union,
    regions.flatMap((region) => toGrid(region, origin)),
    [],
    origin,
  );
}

/** The area covered by both. */
export function intersectRegions(a: Region, b: Region): Region {
  const near = nearPolygons(a, b);
  if (near === "over it all") return unionRegions([a]);
  if (near.length === 0) return [];
  const origin = originOf([a, near]);
  return boolean(ClipType.Intersection, toGrid(a, origin), toGrid(near, origin), origin);
}

/** The area of `a` that `b` does not cover. */
export function differenceRegions(a: Region, b: Region): Region {
  const near = nearPolygons(a, b);
  if (near === "over it all") return [];
  if (near.length === 0) return unionRegions([a]);
  const origin = originOf([a, near]);
  return boolean(ClipType.Difference, toGrid(a, origin), toGrid(near, origin), origin);
}

/** The polygons of `b` that have to do with `a`: those whose sides come into its box. One that holds the whole box settles all. */
function nearPolygons(a: Region, b: Region): Region | "over it all" {
  const box = boundsOfRegion(a);
  const near: (readonly Ring[])[] = [];
  for (const polygon of b) {
    if (sidesMeet(polygon, box)) near.push(polygon);
    else if (holdsByRings(polygon, [box.minX, box.minY])) return "over it all";
  }
  return near.length === b.length ? b : near;
}

function boundsOfRegion(region: Region): Bounds {
  return boundsUnion(region.flatMap((polygon) => polygon.map(boundsOfPoints)));
}

function sidesMeet(polygon: readonly Ring[], box: Bounds): boolean {
  return polygon.some((ring) => {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      if (from && segmentMeetsBox(from, to, box)) return true;
      from = to;
    }
    return false;
  });
}

/** Inside the polygon's outline and outside its holes, for a position off all of them. */
function holdsByRings(polygon: readonly Ring[], p: Point): boolean {
  const [outer, ...holes] = polygon;
  return outer !== undefined && ringWinding(outer, p) !== 0 && holes.every((hole) => ringWinding(hole, p) === 0);
}

/**
 * The region widened by `d` inches (narrowed when negative), corners round. Round corners are inscribed: short of the
 * true curve by up to `arcTolerance`; where the result has to cover, widen by d + arcTolerance + 1 / CLIP_UNITS_PER_INCH.
 */
export function offsetRegion(region: Region, d: number, arcTolerance: number = FLATTEN_TOLERANCE): Region {
  const origin = originOf([region]);
  // The engine shrinks some and widens others when windings are mixed or rings overlap: unite first.
  const clean = finished.has(region) ? region : boolean(ClipType.Union, toGrid(region, origin), [], origin);
  const paths = toGrid(clean, origin);
  if (paths.length === 0) return [];
  const engine = new ClipperOffset(2, arcTolerance * CLIP_UNITS_PER_INCH);
  engine.addPaths(paths, JoinType.Round, EndType.Polygon);
  const rings: GridPath[] = [];
  engine.execute(d * CLIP_UNITS_PER_INCH, rings);
  return fromEngine(rings, origin);
}

/** Area of a region, square inches. */
export function regionArea(region: Region): number {
  let sum = 0;
  for (const polygon of region) {
    polygon.forEach((ring, index) => {
      sum += index === 0 ? Math.abs(ringArea(ring)) : -Math.abs(ringArea(ring));
    });
  }
  return sum;
}

function boolean(type: ClipType, subject: GridPath[], clip: GridPath[], origin: Point): Region {
  if (subject.length === 0) return [];
  if (clip.length === 0 && type === ClipType.Intersection) return [];
  const engine = new Clipper64();
  engine.addSubject(subject);
  if (clip.length > 0) engine.addClip(clip);
  const rings: GridPath[] = [];
  if (!engine.execute(type, FillRule.NonZero, rings)) throw new Error("the clipping engine failed on areas");
  return fromEngine(rings, origin);
}

/** A whole-inch position in the middle of everything, so that grid numbers stay small. */
function originOf(regions: readonly Region[]): Point {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const region of regions) {
    for (const polygon of region) {
      for (const ring of polygon) {
        for (let i = 0; i < ring.length; i++) {
          const [x, y] = ring[i] as Point;
          if (!Number.isFinite(x) || !Number.isFinite(y)) throw new Error(`not a position: [${x}, ${y}]`);
          if (x < minX) minX = x;
          if (x > maxX) maxX = x;
          if (y < minY) minY = y;
          if (y > maxY) maxY = y;
        }
      }
    }
  }
  return minX > maxX ? [0, 0] : [Math.round((minX + maxX) / 2), Math.round((minY + maxY) / 2)];
}

function fromGrid(p: Point, origin: Point): Point {
  return [p[0] / CLIP_UNITS_PER_INCH + origin[0], p[1] / CLIP_UNITS_PER_INCH + origin[1]];
}

/** The rings of a region on the grid, cleaned, outer rings counter-clockwise and holes clockwise. */
function toGrid(region: Region, origin: Point): GridPath[] {
  const paths: GridPath[] = [];
  for (const polygon of region) {
    for (let index = 0; index < polygon.length; index++) {
      const path = gridPath(polygon[index] as Ring, origin);
      if (path.length === 0) continue;
      if (pathArea(path) > 0 !== (index === 0)) path.reverse();
      paths.push(path);
    }
  }
  return paths;
}

/** A ring on the grid, cleaned. */
function gridPath(ring: Ring, origin: Point): GridPath {
  const path: GridPath = [];
  const [x0, y0] = origin;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i] as Point;
    const x = Math.round((p[0] - x0) * CLIP_UNITS_PER_INCH);
    const y = Math.round((p[1] - y0) * CLIP_UNITS_PER_INCH);
    const last = path[path.length - 1];
    if (last === undefined || last.x !== x || last.y !== y) path.push({ x, y });
  }
  while (path.length > 1) {
    const last = path[path.length - 1] as GridPoint;
    if (path[0]?.x !== last.x || path[0].y !== last.y) break;
    path.pop();
  }
  return isClean(path) ? path : cleaned(path);
}

function cleaned(path: GridPath): GridPath {
  return cleanRing(pointsOf(path)).map(([x, y]) => ({ x, y }));
}

function pointsOf(path: GridPath): Point[] {
  return path.map(({ x, y }): Point => [x, y]);
}

/** Twice-over sum of a path's triangles about its first position, halved: positive counter-clockwise. */
function pathArea(path: GridPath): number {
  const first = path[0] as GridPoint;
  let twice = 0;
  for (let i = 2; i < path.length; i++) {
    const a = path[i - 1] as GridPoint;
    const b = path[i] as GridPoint;
    twice += (a.x - first.x) * (b.y - first.y) - (b.x - first.x) * (a.y - first.y);
  }
  return twice / 2;
}

/** Sides up to this long, grid units, have products that are whole numbers to the last digit. */
const EXACT_SIDE = 2 ** 26;

/** Whether every position of a path turns: nothing is there to clean. False also where that cannot be told in plain numbers. */
function isClean(path: GridPath): boolean {
  const count = path.length;
  if (count < 3) return false;
  const last = path[count - 1] as GridPoint;
  const before = path[count - 2] as GridPoint;
  let at = last;
  let ux = last.x - before.x;
  let uy = last.y - before.y;
  for (let i = 0; i < count; i++) {
    const next = path[i] as GridPoint;
    const vx = next.x - at.x;
    const vy = next.y - at.y;
    if (ux * vy === uy * vx || Math.abs(vx) > EXACT_SIDE || Math.abs(vy) > EXACT_SIDE) return false;
    at = next;
    ux = vx;
    uy = vy;
  }
  return true;
}

/** The engine's rings as a region in inches. Rings less than a grid unit thick on average are rounding and are dropped. */
function fromEngine(paths: readonly GridPath[], origin: Point): Region {
  const rings: Point[][] = [];
  for (const path of paths) {
    const ring = pointsOf(isClean(path) ? path : cleaned(path));
    if (2 * Math.abs(ringArea(ring)) > ringPerimeter(ring)) rings.push(ring);
  }
  const region: Region = nestRings(rings).map((polygon) => polygon.map((ring) => closedInches(ring, origin)));
  finished.add(region);
  return region;
}

function closedInches(ring: readonly Point[], origin: Point): Ring {
  const points = ring.map((p) => fromGrid(p, origin));
  return [...points, points[0] as Point];
}
