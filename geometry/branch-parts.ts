/**
 * Where the parts that branches lead to can be connected.
 *
 * Stages. 1. Of the positions given those on open ground, with the place where the part's lines come nearest to the
 * network: it does not depend on where the positions happen to lie. 2. A part that has none of these is entered: from
 * whichever of its positions lies nearest to a face of the solid, straight through that face.
 */
import type { BranchGround } from "./branch-ground.ts";
import type { PartEyes } from "./branch-spanning.ts";
import { distanceBetween } from "./points.ts";
import { BRANCH_GAIN } from "./tolerances.ts";
import type { Path, Point } from "./types.ts";

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

export function branchPart(ground: BranchGround, { id, at, along = [] }: BranchTarget): Part {
  const given = isPoint(at) ? [at] : at;
  const inOpen = openPositions(ground, given);
  const points = [...inOpen, ...openPositions(ground, nearestAlong(ground, along, inOpen))];
  if (points.length > 0) return { id, points, eyes: points.map((p) => ({ at: p })) };
  const entered = given.map((p) => ({ p, face: ground.entry(p) }));
  const least = Math.min(...entered.map(({ p, face }) => distanceBetween(p, face)));
  const nearest = entered.filter(({ p, face }) => distanceBetween(p, face) <= least + BRANCH_GAIN);
  return { id, points: nearest.map(({ p }) => p), eyes: nearest.map(({ face }) => ({ at: face })) };
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
