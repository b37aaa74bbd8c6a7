/**
 * Shortest plan paths from a pool's inside wall that cross no barrier, exact on lines and arcs.
 *
 * Stages. 1. barrier-map.ts: barriers united, their corners and the free ground round each. 2. Straight: the nearest
 * point of the inside wall that is seen from the goal (seen-outline.ts). 3. Bent: corner-routes.ts settles barrier
 * corners in order of their own shortest way from the pool, and each that sees the goal offers that way plus the last
 * straight leg; it ends when the next corner lies farther than the best path. Corners are kept for the next goal.
 *
 * Rules. A path may touch a barrier and follow its line, may cross water, and may not pass between barriers that touch,
 * cross or lie within SEALED_GAP of each other. A goal on a face of a solid is reached from outside; one deeper inside
 * than FACE_DEPTH is not reached. A barrier that touches the inside wall or runs along it stops a path there: only the
 * side that the water is on is free.
 */
import { type BarrierMap, barrierMap, freePosition } from "./barrier-map.ts";
import { CornerRoutes, type SettledCorner } from "./corner-routes.ts";
import { pathToArea, pointToArea } from "./distance.ts";
import { pairCandidates } from "./path-pairs.ts";
import { distanceBetween, samePoint } from "./points.ts";
import {
  nearestOfAll,
  nearestSeen,
  nearestSeenBeside,
  type Outline,
  outlineAmong,
  outlineEye,
  straightDistance,
} from "./seen-outline.ts";
import { sortBy } from "./short-lists.ts";
import { canSee, type Eye } from "./sight.ts";
import { LIMIT_TOLERANCE, SIGHT_SLACK } from "./tolerances.ts";
import type { Area, Barrier, Path, Point, Route, Witness } from "./types.ts";

export interface PathOptions {
  /** Inches: a longer path counts as none. */
  readonly limit?: number;
  /** The straight distance, from the pool to the goal, barriers ignored, where it is known already. */
  readonly straight?: Witness;
}

/** The map, the pool's outline and the settled corners for one pool among one list of barriers. */
export interface PoolRoutes {
  readonly map: BarrierMap;
  readonly outline: Outline;
  readonly corners: CornerRoutes;
}

const known = new WeakMap<readonly Barrier[], WeakMap<Area, PoolRoutes>>();

/** Worked out once for a pool and a list of barriers, and kept as long as both live: pass the same array for many goals. */
export function poolRoutes(target: Area, barriers: readonly Barrier[]): PoolRoutes {
  let ofBarriers = known.get(barriers);
  if (!ofBarriers) {
    ofBarriers = new WeakMap();
    known.set(barriers, ofBarriers);
  }
  const before = ofBarriers.get(target);
  if (before) return before;
  const map = barrierMap(barriers);
  const outline = outlineAmong(map, [target.outer, ...target.holes], true);
  const routes = { map, outline, corners: new CornerRoutes(map, outline) };
  ofBarriers.set(target, routes);
  return routes;
}

/**
 * The shortest path from the inside wall of `target` to `p` that crosses no barrier, inches: its first point on the wall,
 * its last `p`. Length 0 when p is in the water or on its edge. Null when there is none, or none within the limit.
 */
export function shortestPathToArea(
  p: Point,
  target: Area,
  barriers: readonly Barrier[],
  options: PathOptions = {},
): Route | null {
  mustBePosition(p);
  const limit = (options.limit ?? Number.POSITIVE_INFINITY) + LIMIT_TOLERANCE;
  const straight = options.straight ?? pointToArea(p, target);
  if (straight.length === 0) return { length: 0, points: [p, p] };
  if (straight.length > limit) return null;
  if (barriers.length === 0) return { length: straight.length, points: [straight.from, p] };
  const routes = poolRoutes(target, barriers);
  const { map, outline } = routes;
  const free = freePosition(map, p);
  if (!free) return null;
  const eye: Eye = { at: free };
  const nearest = free === p ? { point: straight.from, distance: straight.length } : nearestOfAll(outline, free, limit);
  if (!nearest) return null;
  const route = canSee(map, outlineEye(outline, nearest.point), eye)
    ? { length: nearest.distance, points: [nearest.point, free] }
    : shortestTo(routes, limit, {
        atLeast: (from) => distanceBetween(from, free),
        fromPool: (within) => {
          const seen = nearestSeenBeside(map, outline, eye, within);
          return seen && { distance: seen.distance, start: seen.point, end: free };
        },
        fromCorner: (corner, within) => {
          const distance = distanceBetween(corner.at, free);
          return distance <= within && canSee(map, corner, eye) ? { distance, end: free } : null;
        },
      });
  return route && endingAt(route, p, limit);
}

/**
 * The shortest path from the inside wall of `target` to any point of `path` (a fence, a raceway; of a closed path its
 * boundary): first point on the wall, last on the path. Length 0 when any of the path is in the water. Null when there is
 * none, or none within the limit.
 */
export function shortestPathFromPath(
  path: Path,
  target: Area,
  barriers: readonly Barrier[],
  options: PathOptions = {},
): Route | null {
  const limit = (options.limit ?? Number.POSITIVE_INFINITY) + LIMIT_TOLERANCE;
  const straight = options.straight ?? pathToArea(path, target);
  if (straight.length > limit) return null;
  if (straight.length === 0 || barriers.length === 0)
    return { length: straight.length, points: [straight.from, straight.to] };
  const routes = poolRoutes(target, barriers);
  const { map } = routes;
  if (isFree(routes, straight.from, straight.to))
    return { length: straight.length, points: [straight.from, straight.to] };
  const goal = outlineAmong(map, [path], false);
  return shortestTo(routes, limit, {
    atLeast: (from) => straightDistance(goal, from),
    fromPool: (within) => shortestStraight(routes, goal, path, within),
    fromCorner: (corner, within) => {
      const seen = nearestSeen(map, goal, corner, within);
      return seen && { distance: seen.distance, end: seen.point };
    },
  });
}

/** True when the straight line from a to b crosses no barrier. A position deeper inside a solid than FACE_DEPTH sees nothing. */
export function sightLine(a: Point, b: Point, barriers: readonly Barrier[]): boolean {
  mustBePosition(a);
  mustBePosition(b);
  if (barriers.length === 0) return true;
  const map = barrierMap(barriers);
  const from = freePosition(map, a);
  const to = freePosition(map, b);
  return from !== null && to !== null && canSee(map, { at: from }, { at: to });
}

/** How a path can end: in a straight leg from a corner of a barrier, or straight from the pool. */
interface LastLegs {
  /** No leg from a position to the goal is shorter. */
  readonly atLeast: (from: Point) => number;
  readonly fromCorner: (corner: Eye, within: number) => { readonly distance: number; readonly end: Point } | null;
  readonly fromPool: (within: number) => StraightPath | null;
}

interface StraightPath {
  readonly distance: number;
  readonly start: Point;
  readonly end: Point;
}

interface BentPath {
  readonly length: number;
  /** The last bend. */
  readonly corner: SettledCorner;
  readonly end: Point;
}

/** Stages 2 and 3 where the nearest point of all is hidden. The bent paths come first: they bound what has to be looked at straight. */
function shortestTo(routes: PoolRoutes, limit: number, legs: LastLegs): Route | null {
  const bent = shortestBent(routes, limit, legs);
  const straight = legs.fromPool(bent ? bent.length : limit);
  if (straight && !(bent && bent.length <= straight.distance))
    return { length: straight.distance, points: [straight.start, straight.end] };
  return bent && { length: bent.length, points: pointsBy(bent.corner, bent.end) };
}

/**
 * Corners that are settled are tried in order of the least that each could give. Where the best of those leaves room for a
 * corner that is not settled yet, more are.
 */
function shortestBent({ corners }: PoolRoutes, limit: number, legs: LastLegs): BentPath | null {
  let best: BentPath | null = null;
  for (let tried = 0; ; ) {
    const until = corners.settled.length;
    best = bestOver(corners.settled, tried, limit, best, legs);
    tried = until;
    if (!corners.settleNext(best ? best.length : limit)) return best;
  }
}

/** What each settled corner could at best give, inches: written anew for each goal. */
let least = new Float64Array(64);

/** The best bent path over the corners from number `first` on, or the one known before where none is better. */
function bestOver(
  settled: readonly SettledCorner[],
  first: number,
  limit: number,
  before: BentPath | null,
  { atLeast, fromCorner }: LastLegs,
): BentPath | null {
  if (least.length < settled.length) least = new Float64Array(2 * settled.length);
  for (let i = first; i < settled.length; i++) {
    const { distance, eye } = settled[i] as SettledCorner;
    least[i] = distance + atLeast(eye.at);
  }
  let best = before;
  for (;;) {
    const within = best ? best.length : limit;
    let next = -1;
    let bound = Number.POSITIVE_INFINITY;
    for (let i = first; i < settled.length; i++) {
      if ((least[i] as number) >= bound) continue;
      bound = least[i] as number;
      next = i;
    }
    if (next < 0 || bound > within) return best;
    least[next] = Number.POSITIVE_INFINITY;
    const corner = settled[next] as SettledCorner;
    const leg = fromCorner(corner.eye, within - corner.distance);
    if (!leg) continue;
    const length = corner.distance + leg.distance;
    if (!best || length < best.length) best = { length, corner, end: leg.end };
  }
}

/** From the pool over the corners to the goal, without the corners that the path passes straight on. */
function pointsBy(corner: SettledCorner, end: Point): Point[] {
  const backwards: Point[] = [end];
  for (let at: SettledCorner | null = corner; at; at = at.by) {
    addBend(backwards, at.sector.at);
    if (!at.by) addBend(backwards, at.from);
  }
  if (backwards.length === 1) backwards.push(end);
  return backwards.reverse();
}

function addBend(points: Point[], next: Point): void {
  const last = points[points.length - 1] as Point;
  if (samePoint(last, next)) return;
  const before = points[points.length - 2];
  if (before) {
    const dx = next[0] - before[0];
    const dy = next[1] - before[1];
    const off = Math.abs(dx * (last[1] - before[1]) - dy * (last[0] - before[0])) / Math.sqrt(dx * dx + dy * dy);
    if (off <= SIGHT_SLACK) points.pop();
  }
  points.push(next);
}

/** The route carried on from the face of a solid to a goal just inside it. */
function endingAt(route: Route, p: Point, limit: number): Route | null {
  const last = route.points[route.points.length - 1] as Point;
  if (samePoint(last, p)) return route;
  const length = route.length + distanceBetween(last, p);
  return length <= limit ? { length, points: [...route.points, p] } : null;
}

/** The shortest straight path from the pool to the goal that no barrier crosses, when it is at most `limit` inches. */
function shortestStraight(routes: PoolRoutes, goal: Outline, path: Path, limit: number): StraightPath | null {
  const { map, outline } = routes;
  const candidates = pairCandidates(outline.paths, path, limit);
  sortBy(candidates, ({ distance }) => distance);
  const pair = candidates.find(({ onFirst, onSecond }) => isFree(routes, onFirst, onSecond));
  let best: StraightPath | null = pair ? { distance: pair.distance, start: pair.onFirst, end: pair.onSecond } : null;
  const consider = (distance: number, start: Point, end: Point): void => {
    if ((!best || distance < best.distance) && isFree(routes, start, end)) best = { distance, start, end };
  };
  // Where a barrier stands on the pool's edge or on the object, the best pair may end at its face.
  for (const start of outline.crossed) {
    const seen = nearestSeen(map, goal, { at: start }, limit);
    if (seen) consider(seen.distance, start, seen.point);
  }
  for (const end of goal.crossed) {
    const seen = nearestSeen(map, outline, { at: end }, limit);
    if (seen) consider(seen.distance, seen.point, end);
  }
  return best;
}

function isFree({ map, outline }: PoolRoutes, start: Point, end: Point): boolean {
  return freePosition(map, end) === end && canSee(map, outlineEye(outline, start), { at: end });
}

function mustBePosition(p: Point): void {
  if (!Number.isFinite(p[0]) || !Number.isFinite(p[1])) throw new RangeError(`not a position: [${p[0]}, ${p[1]}]`);
}
