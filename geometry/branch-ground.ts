/**
 * The ground that branches run over: barriers, the network they lead to, and shortest routes on it.
 *
 * Stages of a route. 1. From the start, and from every barrier corner settled since, the goal is looked at straight.
 * 2. Corners wait in order of the length so far plus the least that is still to go; one that is taken is settled when
 * the corner before sees it. 3. The search ends when nothing that waits can beat the best route.
 *
 * Terms. Network: the lines of ring, grid and steel that a branch may meet anywhere. Eye: a position, at a barrier corner
 * with the sector of free ground it stands in (sight.ts). Taut: only legs that wrap round a corner can be on a route.
 */
import { type BarrierMap, barrierMap, freePosition, type Sector } from "./barrier-map.ts";
import { lineEdge, nearestOnEdge } from "./edge.ts";
import { edgeBounds } from "./edge-boxes.ts";
import { edgeToEdgeWithin } from "./edge-distance.ts";
import { Heap } from "./heap.ts";
import { orientation } from "./orientation.ts";
import {
  between,
  boundsDistance,
  boundsOfPoints,
  boundsOverlap,
  distanceBetween,
  grownBounds,
  samePoint,
} from "./points.ts";
import { canSee, type Eye, turned } from "./sight.ts";
import { boxIndex } from "./spatial-index.ts";
import { BRANCH_GAIN, SAME_CORNER, SEAM_OVERLAP, SIGHT_SLACK } from "./tolerances.ts";
import type { Barrier, Bounds, Edge, Point, Witness } from "./types.ts";

export interface BranchRoute {
  readonly length: number;
  /** From the start to the goal, bends in between. */
  readonly stops: readonly Eye[];
}

/** A place on the network and how far away it is. */
export interface Attachment {
  readonly at: Point;
  readonly distance: number;
}

export interface BranchGround {
  readonly map: BarrierMap;
  sees(a: Eye, b: Eye): boolean;
  /** The nearest place of the network that is seen from an eye, within `limit` inches. */
  attachment(eye: Eye, limit: number): Attachment | null;
  /** No route from a position to the network is shorter. */
  leastToNetwork(p: Point): number;
  /** Shortest route to the network, or null when there is none shorter than `limit`. */
  toNetwork(from: Eye, limit: number): BranchRoute | null;
  between(from: Eye, to: Eye, limit: number): BranchRoute | null;
  /**
   * Of the places where an edge comes nearest to each line of the network the nearest with nothing between, nearer than
   * `limit` inches; null where there is none.
   */
  meeting(line: Edge, limit: number): Attachment | null;
  /** A position on open ground: itself, or on the face that it lies just behind; null inside a solid. */
  free(p: Point): Point | null;
  /** Where copper to a position inside a solid may come in: the nearest place of the outline, each of those as near. */
  entries(p: Point): Point[];
}

interface Goal {
  /** Less than or equal to the length of any route from p. */
  least(p: Point): number;
  straight(eye: Eye, limit: number): { distance: number; stop: Eye } | null;
}

export function branchGround(network: readonly (readonly Point[])[], blocked: readonly Barrier[]): BranchGround {
  const pieces = barrierMap(blocked);
  const map = withQuickPieces(pieces);
  const lines = networkLines(network, pieces);
  const sees = (a: Eye, b: Eye): boolean => canSee(map, a, b);
  const attachment = (eye: Eye, limit: number): Attachment | null =>
    lines.nearest(eye.at, limit, (at) => sees(eye, { at }));
  // Every route asks it of the same corners.
  const least = new Map<Point, number>();
  const leastToNetwork = (p: Point): number => {
    const known = least.get(p);
    if (known !== undefined) return known;
    const distance = lines.nearest(p, Number.POSITIVE_INFINITY, () => true)?.distance ?? Number.POSITIVE_INFINITY;
    least.set(p, distance);
    return distance;
  };
  return {
    map,
    sees,
    attachment,
    leastToNetwork,
    toNetwork: (from, limit) =>
      route(map, from, limit, {
        least: leastToNetwork,
        straight: (eye, within) => {
          const found = attachment(eye, within);
          return found && { distance: found.distance, stop: { at: found.at } };
        },
      }),
    between: (from, to, limit) =>
      route(map, from, limit, {
        least: (p) => distanceBetween(p, to.at),
        straight: (eye, within) => {
          const distance = distanceBetween(eye.at, to.at);
          return distance < within && sees(eye, to) ? { distance, stop: to } : null;
        },
      }),
    meeting: (line, limit) =>
      lines.nearestTo(line, limit, (at, end) => {
        const [from, to] = [freePosition(map, at), freePosition(map, end)];
        return from !== null && to !== null && sees({ at: from }, { at: to });
      }),
    free: (p) => freePosition(map, p),
    entries: (p) => nearestFaces(map, p),
  };
}

/**
 * The map with a plain run through all boxes. Sight lines of branches are long and lie in large boxes: what a tree of
 * boxes finds in them it has to sort, which takes longer than looking at each of some hundred boxes.
 */
function withQuickPieces(map: BarrierMap): BarrierMap {
  const boxes = new Float64Array(map.pieces.length * 4);
  map.pieces.forEach(({ a, b }, i) => {
    const { minX, minY, maxX, maxY } = boundsOfPoints([a, b]);
    boxes.set([minX, minY, maxX, maxY], i * 4);
  });
  const piecesIn = (box: Bounds): number[] => {
    const found: number[] = [];
    for (let i = 0, at = 0; at < boxes.length; i++, at += 4) {
      if ((boxes[at] as number) > box.maxX || (boxes[at + 2] as number) < box.minX) continue;
      if ((boxes[at + 1] as number) > box.maxY || (boxes[at + 3] as number) < box.minY) continue;
      found.push(i);
    }
    return found;
  };
  return map.pieces.length > MANY_PIECES ? map : { ...map, piecesIn };
}

/** From here on a tree of boxes is the quicker one after all. */
const MANY_PIECES = 4000;

function nearestFaces(map: BarrierMap, p: Point): Point[] {
  let best = Number.POSITIVE_INFINITY;
  let faces: Point[] = [];
  for (const { a, b, leftCovered, rightCovered } of map.pieces) {
    if (leftCovered === rightCovered) continue;
    const at = nearestOnSegment(a, b, p);
    const distance = distanceBetween(at, p);
    if (distance > best + BRANCH_GAIN) continue;
    if (distance < best - BRANCH_GAIN) faces = [];
    if (!faces.some((known) => distanceBetween(known, at) <= SAME_CORNER)) faces.push(at);
    best = Math.min(best, distance);
  }
  return faces;
}

function nearestOnSegment(a: Point, b: Point, p: Point): Point {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return a;
  return between(a, b, Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared)));
}

interface NetworkLines {
  /** The nearest position on the lines that passes the test, nearer than `limit`. */
  nearest(p: Point, limit: number, passes: (at: Point) => boolean): Attachment | null;
  /** The position on `line` nearest to them, of pairs of positions that pass the test, nearer than `limit`. */
  nearestTo(line: Edge, limit: number, passes: (onLine: Point, at: Point) => boolean): Attachment | null;
}

/** How many lines are looked at first; four times as many each time that all of them fail. */
const FIRST_LOOK = 16;

function networkLines(network: readonly (readonly Point[])[], map: BarrierMap): NetworkLines {
  const segments = network.flatMap((line) => {
    const only = line[0];
    if (line.length === 1 && only) return [{ a: only, b: only }];
    return line.slice(1).flatMap((b, i) => openParts(map, line[i] as Point, b));
  });
  const boxes = segments.map(({ a, b }) => boundsOfPoints([a, b]));
  const index = boxIndex(boxes);
  return {
    nearest: (p, limit, passes) => {
      const box = { minX: p[0], minY: p[1], maxX: p[0], maxY: p[1] };
      const tried = new Set<number>();
      for (let count = FIRST_LOOK; ; count *= 4) {
        const near = index.neighbors(p, count);
        const last = near[near.length - 1];
        const complete = near.length < count || last === undefined;
        // Lines not looked at yet are no nearer than the box of the last one.
        const sure = complete ? Number.POSITIVE_INFINITY : boundsDistance(box, boxes[last] as (typeof boxes)[number]);
        const found = near
          .filter((i) => !tried.has(i))
          .map((i) => {
            const { a, b } = segments[i] as Segment;
            const at = nearestOnSegment(a, b, p);
            return { i, at, distance: distanceBetween(p, at) };
          })
          .filter(({ distance }) => distance <= sure)
          .sort((one, other) => one.distance - other.distance || one.i - other.i);
        for (const { i, at, distance } of found) {
          if (distance >= limit) return null;
          tried.add(i);
          const free = freePosition(map, at);
          if (free && passes(free)) return { at: free, distance: free === at ? distance : distanceBetween(p, free) };
        }
        if (complete || sure >= limit) return null;
      }
    },
    nearestTo: (line, limit, passes) => {
      const near = index.search(grownBounds(edgeBounds(line), limit));
      const pairTo = (i: number, within: number): Witness | null => {
        const { a, b } = segments[i] as Segment;
        return samePoint(a, b) ? toPosition(line, a) : edgeToEdgeWithin(line, lineEdge(a, b), within);
      };
      // Mostly nothing lies between the nearest pair of all; only where something does are the others wanted.
      let nearest: Witness | null = null;
      for (const i of near) {
        const within: number = nearest?.length ?? limit;
        const pair = pairTo(i, within);
        if (pair && pair.length < within) nearest = pair;
      }
      if (nearest === null) return null;
      if (passes(nearest.from, nearest.to)) return { at: nearest.from, distance: nearest.length };
      const pairs = near.flatMap((i) => pairTo(i, limit) ?? []).filter(({ length }) => length < limit);
      const pair = pairs.sort((one, other) => one.length - other.length).find(({ from, to }) => passes(from, to));
      return pair ? { at: pair.from, distance: pair.length } : null;
    },
  };
}

function toPosition(line: Edge, to: Point): Witness {
  const { point: from, distance: length } = nearestOnEdge(line, to);
  return { length, from, to };
}

interface Segment {
  readonly a: Point;
  readonly b: Point;
}

/** A line of the network cut where it goes into solids: what is left outside of them or on their faces. */
function openParts(map: BarrierMap, a: Point, b: Point): Segment[] {
  const box = boundsOfPoints([a, b]);
  if (!map.solids.some(({ bounds }) => boundsOverlap(bounds, box))) return [{ a, b }];
  const cuts = [0, 1];
  for (const i of map.piecesIn(box)) {
    const piece = map.pieces[i] as Segment;
    const one = orientation(piece.a, piece.b, a);
    const other = orientation(piece.a, piece.b, b);
    if (one > 0 !== other > 0 && one !== other) cuts.push(one / (one - other));
  }
  cuts.sort((s, t) => s - t);
  return cuts.slice(1).flatMap((end, i) => {
    const start = cuts[i] as number;
    if (end === start || freePosition(map, between(a, b, (start + end) / 2)) === null) return [];
    return [{ a: between(a, b, start), b: between(a, b, end) }];
  });
}

interface Settled {
  readonly eye: Eye;
  readonly length: number;
  readonly by: Settled | null;
  /** Direction back to `by`, as an angle from the start of the eye's sector. */
  readonly back: number;
}

function route(map: BarrierMap, from: Eye, limit: number, goal: Goal): BranchRoute | null {
  let best = limit;
  let bestRoute: BranchRoute | null = null;
  const settled = new Set<Sector>();
  const waiting = new Heap<{ sector: Sector; by: Settled; length: number; back: number }>();
  const settle = (here: Settled): void => {
    const found = goal.straight(here.eye, best - here.length);
    if (found && here.length + found.distance < best) {
      best = here.length + found.distance;
      bestRoute = { length: best, stops: [...stopsTo(here), found.stop] };
    }
    for (const sector of map.turning) {
      if (settled.has(sector)) continue;
      const length = here.length + distanceBetween(here.eye.at, sector.at);
      if (length >= best) continue;
      const back = bend(here, sector);
      if (back === null) continue;
      const least = length + goal.least(sector.at);
      if (least < best) waiting.push(least, { sector, by: here, length, back });
    }
  };
  settle({ eye: from, length: 0, by: null, back: 0 });
  for (let next = waiting.pop(); next && next.key < best; next = waiting.pop()) {
    const { sector, by, length, back } = next.item;
    const eye = { at: sector.at, sector };
    if (settled.has(sector) || !canSee(map, by.eye, eye)) continue;
    settled.add(sector);
    settle({ eye, length, by, back });
  }
  return bestRoute;
}

function stopsTo(last: Settled): Eye[] {
  const stops: Eye[] = [];
  for (let at: Settled | null = last; at; at = at.by) stops.push(at.eye);
  return stops.reverse();
}

/** The direction back from the sector's corner to `here` when a taut route can come that way, else null. */
function bend(here: Settled, sector: Sector): number | null {
  const dx = sector.at[0] - here.eye.at[0];
  const dy = sector.at[1] - here.eye.at[1];
  if (Math.hypot(dx, dy) <= SIGHT_SLACK) return null;
  const ahead = Math.atan2(dy, dx);
  if (here.eye.sector && here.by) {
    const off = Math.abs(turned(ahead - here.eye.sector.start + SEAM_OVERLAP) - SEAM_OVERLAP - here.back);
    if (off < Math.PI - SEAM_OVERLAP) return null;
  }
  const back = turned(ahead + Math.PI - sector.start + SEAM_OVERLAP) - SEAM_OVERLAP;
  if (back > sector.span - Math.PI + SEAM_OVERLAP && back < Math.PI - SEAM_OVERLAP) return null;
  return back;
}
