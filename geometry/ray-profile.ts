/**
 * How far a family of rays gets before a barrier stops it: the lower envelope of the barriers over a strip square to an
 * edge, or over a fan about a center.
 *
 * Stages. 1. Every piece of barrier near the strip or fan is turned into a cover: over which part of the family it lies,
 * and how far along each ray. 2. The ends of the covers part the family into slices; pieces meet only at corners, so in
 * one slice one cover is the first all along. 3. A slice whose first cover is met from its covered side starts inside a
 * solid and is closed; so is one that meets nothing and starts inside a solid, or starts along a barrier. 4. Neighboring
 * slices stopped by the same cover are put together.
 *
 * Terms. w: where in the family a ray stands (inches along an edge, or radians). Depth: inches along a ray from its start.
 */
import { type BarrierMap, insideAnySolid, type Piece } from "./barrier-map.ts";
import { distanceBetween } from "./points.ts";
import { sortNumbers } from "./short-lists.ts";
import { turned } from "./sight.ts";
import { SIDE_PROBE, SIGHT_SLACK, THIN_SLICE } from "./tolerances.ts";
import type { Bounds, Point } from "./types.ts";

export interface RayFamily {
  readonly w0: number;
  readonly w1: number;
  /** How deep the rays go, inches. */
  readonly depth: number;
  readonly bounds: Bounds;
  /** Of a fan: its center, and whether angles grow (1) or shrink (-1) with w. */
  readonly center?: { readonly at: Point; readonly way: 1 | -1 };
  readonly pointAt: (w: number, depth: number) => Point;
  readonly coversOf: (piece: Piece) => Cover[];
}

export interface Cover {
  readonly from: number;
  readonly to: number;
  readonly depthAt: (w: number) => number;
  /** True when the side that the rays come from lies inside a solid. */
  readonly nearCovered: boolean;
  /** Where in between the cover passes the start or the end of the rays. */
  readonly cuts: readonly number[];
}

/** A run of neighboring rays: open to the full depth, closed at the start, or stopped by one cover. */
export interface Slice {
  readonly from: number;
  readonly to: number;
  readonly stop: "open" | "closed" | Cover;
}

/** Slices in the order of w, without gaps. */
export function profileOf(map: BarrierMap, family: RayFamily): Slice[] {
  const { w0, w1 } = family;
  const covers: Cover[] = [];
  for (const i of map.piecesIn(family.bounds)) covers.push(...family.coversOf(map.pieces[i] as Piece));
  if (covers.length === 0 && map.solids.length === 0) return [{ from: w0, to: w1, stop: "open" }];
  const cuts = [w0, w1];
  for (const cover of covers) cuts.push(cover.from, cover.to, ...cover.cuts);
  sortNumbers(cuts);
  const slices: Slice[] = [];
  let from = w0;
  for (const to of cuts) {
    if (to > w1 || to - from <= THIN_SLICE) continue;
    const stop = stopOf(map, family, covers, from, to);
    const before = slices[slices.length - 1];
    if (before && before.stop === stop) slices[slices.length - 1] = { from: before.from, to, stop };
    else slices.push({ from, to, stop });
    from = to;
  }
  return slices;
}

/** A slice's start is probed at two of its rays: one of them may run along the seam of two solids, which is inside neither. */
const PROBED_SHARES = [0.5, 0.375] as const;

function stopOf(map: BarrierMap, family: RayFamily, covers: readonly Cover[], from: number, to: number): Slice["stop"] {
  const w = (from + to) / 2;
  let first: Cover | null = null;
  let least = family.depth;
  for (const cover of covers) {
    if (cover.from > w || cover.to < w) continue;
    const depth = cover.depthAt(w);
    // A barrier along the pool's edge itself.
    if (Math.abs(depth) <= SIGHT_SLACK) return "closed";
    if (depth > 0 && depth < least) {
      least = depth;
      first = cover;
    }
  }
  if (first) return first.nearCovered ? "closed" : first;
  const startsInside = PROBED_SHARES.some((share) =>
    insideAnySolid(map.solids, family.pointAt(from + (to - from) * share, SIDE_PROBE)),
  );
  return startsInside ? "closed" : "open";
}

/** Rays from a -> b to its right, square to it; w runs from 0 at a. */
export function strip(a: Point, b: Point, depth: number): RayFamily {
  const length = distanceBetween(a, b);
  const ux = (b[0] - a[0]) / length;
  const uy = (b[1] - a[1]) / length;
  const [x, y] = [uy * depth, -ux * depth];
  return {
    w0: 0,
    w1: length,
    depth,
    bounds: {
      minX: Math.min(a[0], b[0]) + Math.min(0, x),
      minY: Math.min(a[1], b[1]) + Math.min(0, y),
      maxX: Math.max(a[0], b[0]) + Math.max(0, x),
      maxY: Math.max(a[1], b[1]) + Math.max(0, y),
    },
    pointAt: (w, d) => [a[0] + ux * w + uy * d, a[1] + uy * w - ux * d],
    coversOf: (piece) => {
      const px = piece.a[0] - a[0];
      const py = piece.a[1] - a[1];
      const qx = piece.b[0] - a[0];
      const qy = piece.b[1] - a[1];
      return stripCovers(
        piece,
        px * ux + py * uy,
        px * uy - py * ux,
        qx * ux + qy * uy,
        qx * uy - qy * ux,
        length,
        depth,
      );
    },
  };
}

/** A piece seen edge-on stops no ray, but the rays on its two sides may start differently. */
function edgeOn(w: number): Cover {
  return { from: w, to: w, depthAt: () => Number.POSITIVE_INFINITY, nearCovered: false, cuts: [] };
}

/** The piece from (pw, pd) to (qw, qd) in the strip's own frame. */
function stripCovers(
  piece: Piece,
  pw: number,
  pd: number,
  qw: number,
  qd: number,
  length: number,
  depth: number,
): Cover[] {
  const from = Math.max(0, Math.min(pw, qw));
  const to = Math.min(length, Math.max(pw, qw));
  if (to < from || Math.min(pd, qd) >= depth || Math.max(pd, qd) < -SIGHT_SLACK) return [];
  if (to - from <= THIN_SLICE) return [edgeOn(from)];
  const slope = (qd - pd) / (qw - pw);
  const cuts: number[] = [];
  for (const level of [0, depth]) if (pd > level !== qd > level) cuts.push(pw + (level - pd) / slope);
  return [
    {
      from,
      to,
      depthAt: (w) => pd + slope * (w - pw),
      nearCovered: qw > pw ? piece.leftCovered : piece.rightCovered,
      cuts: cuts.filter((w) => w > from && w < to),
    },
  ];
}

/**
 * Rays about a center. Outward: from `radius` away, w = the angle. Inward: from `radius` toward the center at most as far
 * as it, w = minus the angle (the pool lies outside the circle and its edge runs clockwise).
 */
export function fan(center: Point, radius: number, w0: number, w1: number, depth: number, inward = false): RayFamily {
  const reach = inward ? Math.min(depth, radius) : depth;
  const far = inward ? radius : radius + reach;
  const way: 1 | -1 = inward ? -1 : 1;
  return {
    w0,
    w1,
    depth: reach,
    center: { at: center, way },
    bounds: sectorBounds(center, inward ? radius - reach : radius, far, inward ? -w1 : w0, inward ? -w0 : w1),
    pointAt: (w, d) => {
      const r = radius + way * d;
      return [center[0] + r * Math.cos(w * way), center[1] + r * Math.sin(w * way)];
    },
    coversOf: (piece) => fanCovers(piece, center, radius, w0, w1, reach, inward),
  };
}

/** The box around what lies between two radii and two angles, a little widened: its corners come out of sines. */
function sectorBounds(center: Point, near: number, far: number, from: number, to: number): Bounds {
  let [minX, minY, maxX, maxY] = [1, 1, -1, -1];
  const add = (x: number, y: number): void => {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  };
  add(Math.cos(from), Math.sin(from));
  add(Math.cos(to), Math.sin(to));
  for (let quarter = Math.ceil(from / QUARTER); quarter * QUARTER <= to; quarter++)
    add(Math.cos(quarter * QUARTER), Math.sin(quarter * QUARTER));
  return {
    minX: center[0] + Math.min(minX * near, minX * far) - SIDE_PROBE,
    minY: center[1] + Math.min(minY * near, minY * far) - SIDE_PROBE,
    maxX: center[0] + Math.max(maxX * near, maxX * far) + SIDE_PROBE,
    maxY: center[1] + Math.max(maxY * near, maxY * far) + SIDE_PROBE,
  };
}

const QUARTER = Math.PI / 2;

function fanCovers(
  piece: Piece,
  center: Point,
  radius: number,
  w0: number,
  w1: number,
  depth: number,
  inward: boolean,
): Cover[] {
  const px = piece.a[0] - center[0];
  const py = piece.a[1] - center[1];
  const qx = piece.b[0] - center[0];
  const qy = piece.b[1] - center[1];
  const dx = (qx - px) / piece.length;
  const dy = (qy - py) / piece.length;
  const across = px * dy - py * dx;
  const along = Math.min(piece.length, Math.max(0, -(px * dx + py * dy)));
  const nearest = Math.hypot(px + dx * along, py + dy * along);
  const end = inward ? radius - depth : radius + depth;
  if (nearest >= Math.max(radius, end)) return [];
  const way = inward ? -1 : 1;
  if (nearest <= SIGHT_SLACK) {
    const direction = Math.atan2(dy, dx) * way;
    return [direction, direction + Math.PI].map((w) => edgeOn(w0 + turned(w - w0))).filter(({ from }) => from < w1);
  }
  const start = Math.atan2(py, px);
  const sweep = Math.atan2(px * qy - py * qx, px * qx + py * qy);
  const counterClockwise = sweep > 0;
  const low = Math.min(start, start + sweep);
  const angles: number[] = [];
  const foot = Math.atan2(-dx * across, dy * across);
  for (const r of [radius, end]) {
    const cosine = Math.abs(across) / r;
    if (r > 0 && cosine < 1) angles.push(foot - Math.acos(cosine), foot + Math.acos(cosine));
  }
  const depthAt = (w: number): number => {
    const sight = Math.cos(w * way) * dy - Math.sin(w * way) * dx;
    return (across / sight - radius) * way;
  };
  const left = counterClockwise !== inward;
  const nearCovered = left ? piece.leftCovered : piece.rightCovered;
  const lowest = inward ? -(low + Math.abs(sweep)) : low;
  const covers: Cover[] = [];
  const first = w0 + turned(lowest - w0);
  for (const begin of [first - 2 * Math.PI, first]) {
    const from = Math.max(w0, begin);
    const to = Math.min(w1, begin + Math.abs(sweep));
    if (to < from) continue;
    if (to - from <= THIN_SLICE) {
      covers.push(edgeOn(from));
      continue;
    }
    const cuts = angles.map((angle) => begin + turned(angle * way - begin)).filter((w) => w > from && w < to);
    covers.push({ from, to, depthAt, nearCovered, cuts });
  }
  return covers;
}
