/**
 * Where the parts that branches lead to can be connected.
 *
 * Stages. 1. Of the positions given those on open ground, with the place where the part's lines come nearest to the
 * network: it does not depend on where the positions happen to lie. 2. A part that has none of these is entered: from
 * whichever of its positions lies nearest to a face of the solid, straight through that face, or one that is as near.
 * 3. Where a part's lines come nearest to another part that is nearer than the network, they can be connected too.
 */
import type { BranchGround } from "./branch-ground.ts";
import type { PartEyes } from "./branch-spanning.ts";
import { pathToPath, pointToPath } from "./distance.ts";
import { boundsDistance, boundsOfPoints, boundsUnion, distanceBetween } from "./points.ts";
import { BRANCH_GAIN } from "./tolerances.ts";
import type { Bounds, Path, Point, Witness } from "./types.ts";

export interface BranchTarget {
  readonly id: string;
  /** Where the part can be connected: one place or several, of which the best serve. */
  readonly at: Point | readonly Point[];
  /** Lines along which it can be connected anywhere; `at` holds positions spread over them. */
  readonly along?: readonly Path[];
}

export interface Part {
  readonly id: string;
  readonly eyes: PartEyes;
  /** For each eye, the connection point itself. */
  readonly points: readonly Point[];
}

export function branchParts(ground: BranchGround, targets: readonly BranchTarget[]): Part[] {
  const parts = targets.map((target) => ownPlaces(ground, target));
  const boxes = parts.map(({ points, along }) =>
    boundsUnion([boundsOfPoints(points), ...along.map((path) => path.bounds)]),
  );
  const toNetwork = parts.map(({ points }) => Math.min(...points.map((p) => ground.leastToNetwork(p))));
  const added = parts.map((): Point[] => []);
  for (const [i, one] of parts.entries()) {
    for (let j = i + 1; j < parts.length; j++) {
      const other = parts[j] as OwnPlaces;
      const limit = Math.max(toNetwork[i] as number, toNetwork[j] as number);
      if (one.along.length + other.along.length === 0) continue;
      if (boundsDistance(boxes[i] as Bounds, boxes[j] as Bounds) >= limit) continue;
      const pair = nearestPair(one, other, limit);
      if (!pair) continue;
      added[i]?.push(...openPositions(ground, [pair.from]));
      added[j]?.push(...openPositions(ground, [pair.to]));
    }
  }
  return parts.map(({ id, points, eyes }, i) => {
    const more = added[i] as Point[];
    return { id, points: [...points, ...more], eyes: [...eyes, ...more.map((p) => ({ at: p }))] };
  });
}

interface OwnPlaces extends Part {
  /** The lines of a part that is met on open ground. */
  readonly along: readonly Path[];
}

function ownPlaces(ground: BranchGround, { id, at, along = [] }: BranchTarget): OwnPlaces {
  const given = isPoint(at) ? [at] : at;
  const inOpen = openPositions(ground, given);
  const points = [...inOpen, ...openPositions(ground, nearestAlong(ground, along, inOpen))];
  if (points.length > 0) return { id, points, eyes: points.map((p) => ({ at: p })), along };
  const entered = given.flatMap((p) => facesOf(ground, p).map((face) => ({ p, face })));
  const least = Math.min(...entered.map(({ p, face }) => distanceBetween(p, face)));
  const nearest = entered.filter(({ p, face }) => distanceBetween(p, face) <= least + BRANCH_GAIN);
  return { id, points: nearest.map(({ p }) => p), eyes: nearest.map(({ face }) => ({ at: face })), along: [] };
}

/** Of faces that are as near to a position, those that lie nearest to the network: round a round house all are as near. */
function facesOf(ground: BranchGround, p: Point): Point[] {
  const faces = ground.entries(p);
  if (faces.length <= MOST_FACES) return faces;
  const inOrder = faces.map((face) => ({ face, least: ground.leastToNetwork(face) }));
  return inOrder
    .sort((a, b) => a.least - b.least)
    .slice(0, MOST_FACES)
    .map(({ face }) => face);
}

/** As many faces as a square has: more do not shorten a branch worth counting. */
const MOST_FACES = 4;

/** Where two parts, lines and all, come nearest to each other, when that is nearer than their positions do and than `limit`. */
function nearestPair(one: OwnPlaces, other: OwnPlaces, limit: number): Witness | null {
  let within = limit;
  for (const { at: a } of one.eyes)
    for (const { at: b } of other.eyes) within = Math.min(within, distanceBetween(a, b));
  let best: Witness | null = null;
  const consider = (pair: Witness): void => {
    if (pair.length < (best?.length ?? within) - BRANCH_GAIN) best = pair;
  };
  for (const a of one.along) {
    for (const b of other.along) consider(pathToPath(a, b));
    for (const { at } of other.eyes) consider(pointToPath(at, a));
  }
  for (const b of other.along) {
    for (const { at } of one.eyes) {
      const { length, from, to } = pointToPath(at, b);
      consider({ length, from: to, to: from });
    }
  }
  return best;
}

function isPoint(at: Point | readonly Point[]): at is Point {
  return typeof at[0] === "number";
}

function openPositions(ground: BranchGround, positions: readonly Point[]): Point[] {
  return positions.flatMap((p) => {
    const free = ground.free(p);
    return free ? [free] : [];
  });
}

/** The position of the lines that lies nearest to the network, when it is nearer than every position known. */
function nearestAlong(ground: BranchGround, along: readonly Path[], known: readonly Point[]): Point[] {
  let within = Number.POSITIVE_INFINITY;
  const inOrder = known.map((at) => ({ at, least: ground.leastToNetwork(at) })).sort((a, b) => a.least - b.least);
  for (const { at, least } of inOrder) {
    if (least >= within) break;
    within = ground.attachment({ at }, within)?.distance ?? within;
  }
  // All of them hidden: the way bends at corners of what hides them, and where it ends is near enough to one of them.
  if (known.length > 0 && within === Number.POSITIVE_INFINITY) return [];
  let best: Point[] = [];
  for (const edge of along.flatMap(({ edges }) => edges)) {
    if (within <= BRANCH_GAIN) break;
    const found = ground.meeting(edge, within);
    if (!found) continue;
    within = found.distance;
    best = [found.at];
  }
  return best;
}
