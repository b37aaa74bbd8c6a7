/**
 * Joints on open ground: where branches of a spanning tree run close together, one buried joint can save copper.
 *
 * Stages, again and again until nothing changes. 1. Changes that gain more than their joints' allowance (branch-moves.ts).
 * 2. Every joint moves to where its edges are shortest in all, ends on the network slide to the nearest place, bends that
 * are no longer needed are cut straight. The result is never longer than the tree it starts from.
 */

import { exactTree } from "./branch-exact.ts";
import {
  asTree,
  type BranchDrawing,
  type BranchEdge,
  drawingCost,
  drawingLength,
  edgesAt,
  otherEnd,
  type Place,
} from "./branch-graph.ts";
import type { BranchGround } from "./branch-ground.ts";
import { changedOnce } from "./branch-moves.ts";
import type { PartEyes } from "./branch-spanning.ts";
import { leastSumPoint } from "./fermat.ts";
import { distanceBetween } from "./points.ts";
import { BRANCH_GAIN } from "./tolerances.ts";
import type { Point } from "./types.ts";

const ROUNDS = 40;

/**
 * The tree with joints wherever each saves more than `allowance` inches: the cheaper of the spanning tree improved and,
 * for few parts, the best tree on likely places improved (branch-exact.ts).
 */
export function withJunctions(
  ground: BranchGround,
  spanning: BranchDrawing,
  parts: readonly PartEyes[],
  allowance: number,
): BranchDrawing {
  const longest = drawingLength(spanning);
  const plain = improved(ground, spanning, allowance, longest);
  const exact = exactTree(ground, parts, allowance);
  if (!exact) return plain;
  const better = improved(ground, relaxed(ground, exact), allowance, longest);
  const allowed = drawingLength(better) <= longest + BRANCH_GAIN;
  return allowed && drawingCost(better, allowance) < drawingCost(plain, allowance) - BRANCH_GAIN ? better : plain;
}

/** A tree changed for the better until no change gains anything; never longer than `longest` inches. */
export function improved(
  ground: BranchGround,
  start: BranchDrawing,
  allowance: number,
  longest: number,
): BranchDrawing {
  let best = start;
  let bestCost = drawingCost(start, allowance);
  const accept = (candidate: BranchDrawing | null): boolean => {
    if (!candidate) return false;
    const cost = drawingCost(candidate, allowance);
    if (cost >= bestCost - BRANCH_GAIN || drawingLength(candidate) > longest + BRANCH_GAIN) return false;
    best = candidate;
    bestCost = cost;
    return true;
  };
  for (let round = 0; round < ROUNDS; round++) {
    const changed = changedOnce(ground, best, allowance);
    const settled = changed && relaxed(ground, asTree(changed));
    const gained = accept(settled) || accept(relaxed(ground, best));
    if (!gained) break;
  }
  return best;
}

/** Stage 2, on a copy. */
export function relaxed(ground: BranchGround, drawing: BranchDrawing): BranchDrawing {
  const places: Place[] = [...drawing.places];
  let edges: BranchEdge[] = [...drawing.edges];
  for (let round = 0; round < ROUNDS; round++) {
    let moved = 0;
    const at = edgesAt({ places, edges });
    for (let i = 0; i < places.length; i++) {
      const here = places[i] as Place;
      const ends = (at[i] ?? []).map((edge) => otherEnd(edge, i));
      if (here.kind === "joint") moved = Math.max(moved, moveJoint(ground, places, i, ends));
      if (here.kind === "network" && ends.length === 1)
        moved = Math.max(moved, slideEnd(ground, places, i, ends[0] as number));
    }
    const straighter = cutStraight(ground, places, edges);
    if (straighter) edges = straighter;
    else if (moved <= BRANCH_GAIN) break;
  }
  return asTree({ places, edges });
}

function sumTo(places: readonly Place[], p: Point, ends: readonly number[]): number {
  return ends.reduce((sum, end) => sum + distanceBetween(p, (places[end] as Place).eye.at), 0);
}

function moveJoint(ground: BranchGround, places: Place[], i: number, ends: readonly number[]): number {
  const here = (places[i] as Place).eye.at;
  const points = ends.map((end) => (places[end] as Place).eye.at);
  const goal = leastSumPoint(points, here);
  const before = sumTo(places, here, ends);
  // Where the best place is hidden, part of the way may not be.
  for (const share of [1, 0.5, 0.25]) {
    const at: Point = [here[0] + (goal[0] - here[0]) * share, here[1] + (goal[1] - here[1]) * share];
    const gain = before - sumTo(places, at, ends);
    if (gain <= BRANCH_GAIN) return 0;
    if (!ends.every((end) => ground.sees({ at }, (places[end] as Place).eye))) continue;
    places[i] = { kind: "joint", eye: { at }, part: -1 };
    return gain;
  }
  return 0;
}

function slideEnd(ground: BranchGround, places: Place[], i: number, from: number): number {
  const eye = (places[from] as Place).eye;
  const before = distanceBetween(eye.at, (places[i] as Place).eye.at);
  const found = ground.attachment(eye, before - BRANCH_GAIN);
  if (!found) return 0;
  places[i] = { kind: "network", eye: { at: found.at }, part: -1 };
  return before - found.distance;
}

/** Edges with the first bend or joint of two edges left out that is not needed, or null. */
function cutStraight(
  ground: BranchGround,
  places: readonly Place[],
  edges: readonly BranchEdge[],
): BranchEdge[] | null {
  const at = edgesAt({ places, edges });
  for (let i = 0; i < places.length; i++) {
    const { kind } = places[i] as Place;
    const [one, other, ...more] = at[i] ?? [];
    if (!one || !other || more.length > 0 || kind === "part" || kind === "network") continue;
    const [a, b] = [otherEnd(one, i), otherEnd(other, i)];
    if (!ground.sees((places[a] as Place).eye, (places[b] as Place).eye)) continue;
    return [...edges.filter((edge) => edge !== one && edge !== other), { a, b }];
  }
  return null;
}
