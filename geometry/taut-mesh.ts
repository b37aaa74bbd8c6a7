/**
 * A polygon with holes cut into triangles whose corners all lie on its rings, and closed walks through the triangles.
 *
 * Terms. Half edge h: side number h % 3 of triangle floor(h / 3), from corner `from(h)` counter-clockwise to `to(h)`.
 * Twin: the same side seen from the triangle beyond, -1 on a ring. Walk: half edges in the order in which a closed
 * curve leaves triangles through them. Without a Steiner point inside, a walk that never turns straight back stands for
 * exactly one way of winding round the holes, and the shortest curve that winds so passes through the same triangles.
 *
 * Corners are moved by less than 1e-7 in. before they are triangulated, so that no three of them are in line (the
 * triangulator drops such corners on one side of a cut only, which would tear the mesh).
 */
import earcut from "earcut";
import { TAUT_JITTER } from "./tolerances.ts";
import type { Point } from "./types.ts";

export interface TautMesh {
  /** The corners as triangulated. */
  readonly points: readonly Point[];
  /** Which ring each corner lies on: 0 the outer one. */
  readonly ringOf: readonly number[];
  /** Corner numbers, three to a triangle, counter-clockwise. */
  readonly corners: readonly number[];
  readonly twins: Int32Array;
}

const TRIES = 4;

/** The mesh of a polygon, or null where the rings touch or cross so that no whole mesh exists. */
export function tautMesh(outer: readonly Point[], holes: readonly (readonly Point[])[]): TautMesh | null {
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const mesh = meshOnce([outer, ...holes], attempt);
    if (mesh) return mesh;
  }
  return null;
}

function meshOnce(rings: readonly (readonly Point[])[], attempt: number): TautMesh | null {
  const points: Point[] = [];
  const ringOf: number[] = [];
  const flat: number[] = [];
  const starts: number[] = [];
  for (let r = 0; r < rings.length; r++) {
    if (r > 0) starts.push(points.length);
    for (const [x, y] of rings[r] as readonly Point[]) {
      const seed = points.length * 2 + attempt * 0.37;
      const p: Point = [x + jitter(seed), y + jitter(seed + 1)];
      points.push(p);
      ringOf.push(r);
      flat.push(p[0], p[1]);
    }
  }
  const corners = earcut(flat, starts);
  if (corners.length !== 3 * (points.length + 2 * (rings.length - 1) - 2)) return null;
  for (let t = 0; t < corners.length; t += 3) {
    const [ax, ay] = points[corners[t] as number] as Point;
    const [bx, by] = points[corners[t + 1] as number] as Point;
    const [cx, cy] = points[corners[t + 2] as number] as Point;
    if ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax) >= 0) continue;
    const second = corners[t + 1] as number;
    corners[t + 1] = corners[t + 2] as number;
    corners[t + 2] = second;
  }
  const twins = twinsOf(corners);
  return twins ? { points, ringOf, corners, twins } : null;
}

/** A number in -1..1 times the jitter, the same for the same seed. */
function jitter(seed: number): number {
  const wave = Math.sin(seed * 12.9898 + 4.1414) * 43758.5453;
  return (2 * (wave - Math.floor(wave)) - 1) * TAUT_JITTER;
}

let firstJitters = new Float64Array(0);

/** How far x and y of corners 0, 1, 2, ... are moved at the first attempt. */
export function jitters(corners: number): Float64Array {
  if (firstJitters.length < 2 * corners)
    firstJitters = Float64Array.from({ length: 4 * corners }, (_, seed) => jitter(seed));
  return firstJitters;
}

/** Twins by a table of half edges, filed by a mix of both their corners; null where two run the same way. */
function twinsOf(corners: readonly number[]): Int32Array | null {
  const count = corners.length;
  let size = 4;
  while (size < 2 * count) size *= 2;
  const table = new Int32Array(size).fill(-1);
  /** The place of the half edge between two corners, or the free place where it would be. */
  const placeOf = (from: number, to: number): number => {
    let place = (Math.imul(from, 0x9e3779b1) ^ Math.imul(to, 0x85ebca6b)) & (size - 1);
    for (;;) {
      const h = table[place] as number;
      if (h < 0 || (corners[h] === from && corners[nextHalf(h)] === to)) return place;
      place = (place + 1) & (size - 1);
    }
  };
  const twins = new Int32Array(count).fill(-1);
  for (let h = 0; h < count; h++) {
    const from = corners[h] as number;
    const to = corners[nextHalf(h)] as number;
    const place = placeOf(from, to);
    if ((table[place] as number) >= 0) return null;
    table[place] = h;
    const twin = table[placeOf(to, from)] as number;
    if (twin < 0) continue;
    twins[h] = twin;
    twins[twin] = h;
  }
  return twins;
}

export function nextHalf(h: number): number {
  return h % 3 === 2 ? h - 2 : h + 1;
}

export function fromCorner(mesh: TautMesh, h: number): number {
  return mesh.corners[h] as number;
}

export function toCorner(mesh: TautMesh, h: number): number {
  return mesh.corners[nextHalf(h)] as number;
}

function twinOf(mesh: TautMesh, h: number): number {
  return mesh.twins[h] as number;
}

/** The walk close round one hole, with the hole to its right; empty where the mesh does not go all round it. */
export function walkRound(mesh: TautMesh, ring: number): number[] {
  // Rings have the mesh to the left of their own half edges, which therefore run clockwise round a hole.
  const first = mesh.corners.findIndex(
    (corner, h) => mesh.twins[h] === -1 && mesh.ringOf[corner] === ring && mesh.ringOf[toCorner(mesh, h)] === ring,
  );
  if (first < 0) return [];
  const walk: number[] = [];
  let side = first;
  for (let guard = 0; guard <= 2 * mesh.corners.length; guard++) {
    // Turn about the far corner of a ring side until the next ring side.
    let h = nextHalf(side);
    while (twinOf(mesh, h) !== -1) {
      walk.push(h);
      h = nextHalf(twinOf(mesh, h));
      if (walk.length > mesh.corners.length) return [];
    }
    side = h;
    if (side === first) return withoutReturns(mesh, walk);
  }
  return [];
}

/** The walk without steps that turn straight back, at its seam too. */
export function withoutReturns(mesh: TautMesh, walk: readonly number[]): number[] {
  const kept: number[] = [];
  for (const h of walk) {
    if (kept.length > 0 && twinOf(mesh, h) === kept[kept.length - 1]) kept.pop();
    else kept.push(h);
  }
  let start = 0;
  let end = kept.length - 1;
  while (start < end && twinOf(mesh, kept[start] as number) === kept[end]) {
    start++;
    end--;
  }
  return kept.slice(start, end + 1);
}

/** A place where a walk passes a triangle and leaves its third side to the left. */
interface Pass {
  /** The step by which the walk leaves the triangle is number `at` of the walk. */
  readonly at: number;
  /** The half edge to the left. */
  readonly third: number;
}

function leftPasses(mesh: TautMesh, walk: readonly number[]): Map<number, Pass> {
  const passes = new Map<number, Pass>();
  walk.forEach((leave, at) => {
    const enter = twinOf(mesh, walk[(at + walk.length - 1) % walk.length] as number);
    // Entering by the side before the one left by, counter-clockwise, leaves the third side to the left.
    if (nextHalf(enter) === leave) passes.set(nextHalf(leave), { at, third: nextHalf(leave) });
  });
  return passes;
}

/**
 * One walk round everything that two walks go round (nothing of the one inside the other), joined by the fewest
 * triangles; null where no way leads from the one to the other.
 */
export function joinWalks(mesh: TautMesh, one: readonly number[], other: readonly number[]): number[] | null {
  const starts = leftPasses(mesh, one);
  const goals = leftPasses(mesh, other);
  const triangleOf = (h: number): number => Math.floor(h / 3);
  const goalIn = new Map<number, Pass[]>();
  for (const pass of goals.values()) {
    const list = goalIn.get(triangleOf(pass.third));
    if (list) list.push(pass);
    else goalIn.set(triangleOf(pass.third), [pass]);
  }
  const splice = (start: Pass, way: readonly number[], goal: Pass): number[] => {
    const back = way.map((h) => twinOf(mesh, h)).reverse();
    const round = [...other.slice(goal.at), ...other.slice(0, goal.at)];
    return withoutReturns(mesh, [...one.slice(0, start.at), ...way, ...round, ...back, ...one.slice(start.at)]);
  };
  for (const start of starts.values()) {
    const here = goalIn.get(triangleOf(start.third))?.[0];
    if (here) return splice(start, [], here);
  }
  // Breadth first from every third side to the left of the first walk.
  const cameBy = new Map<number, number | Pass>();
  const queue: number[] = [];
  for (const start of starts.values()) {
    if (twinOf(mesh, start.third) === -1 || cameBy.has(start.third)) continue;
    cameBy.set(start.third, start);
    queue.push(start.third);
  }
  for (let i = 0; i < queue.length; i++) {
    const step = queue[i] as number;
    const inside = twinOf(mesh, step);
    const goal = goals.get(inside);
    if (goal) {
      const way: number[] = [];
      for (let h: number | Pass = step; ; ) {
        if (typeof h !== "number") return splice(h, way.reverse(), goal);
        way.push(h);
        h = cameBy.get(h) as number | Pass;
      }
    }
    for (const on of [nextHalf(inside), nextHalf(nextHalf(inside))]) {
      if (twinOf(mesh, on) === -1 || cameBy.has(on)) continue;
      cameBy.set(on, step);
      queue.push(on);
    }
  }
  return null;
}
