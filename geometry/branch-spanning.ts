/**
 * The spanning tree of branches: every part joined to the network or to another part by a shortest route, least length
 * in all.
 *
 * Stages. 1. The route of every part to the network: it bounds how long a route to another part can be worth. 2. Pairs of
 * parts wait with their straight distance; the least is taken, measured round barriers when it was only straight, and
 * kept when it joins two groups (Kruskal's method, measuring no more than it needs). 3. The routes are drawn into one
 * set of places, where bends at one corner are one place, and what runs double is laid once.
 */

import type { Sector } from "./barrier-map.ts";
import { asTree, type BranchDrawing, type BranchEdge, lengthStep, type Place } from "./branch-graph.ts";
import type { BranchGround, BranchRoute } from "./branch-ground.ts";
import { Heap } from "./heap.ts";
import { distanceBetween } from "./points.ts";
import type { Eye } from "./sight.ts";
import { SAME_POINT } from "./tolerances.ts";

/** One part: the places where a branch may be connected to it. */
export type PartEyes = readonly Eye[];

export interface Spanning {
  readonly drawing: BranchDrawing;
  /** Numbers of the parts that no route leads to. */
  readonly unreachable: readonly number[];
}

interface Link {
  readonly i: number;
  /** -1: the network. */
  readonly j: number;
  readonly route: BranchRoute | null;
}

export function spanningTree(ground: BranchGround, parts: readonly PartEyes[]): Spanning {
  const direct = parts.map((eyes) => shortestToNetwork(ground, eyes));
  const waiting = new Heap<Link>();
  direct.forEach((route, i) => {
    if (route) waiting.push(lengthStep(route.length), { i, j: -1, route });
  });
  const limitOf = (i: number, j: number): number =>
    Math.max(direct[i]?.length ?? 0, direct[j]?.length ?? 0) + SAME_POINT;
  for (let i = 0; i < parts.length; i++) {
    for (let j = i + 1; j < parts.length; j++) {
      if (!direct[i] || !direct[j]) continue;
      const least = nearestPair(parts[i] as PartEyes, parts[j] as PartEyes);
      if (least <= limitOf(i, j)) waiting.push(lengthStep(least), { i, j, route: null });
    }
  }
  const groups = new Groups(parts.length + 1);
  const routes: Link[] = [];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { i, j, route } = next.item;
    if (groups.same(i + 1, j + 1)) continue;
    if (route) {
      groups.join(i + 1, j + 1);
      routes.push(next.item);
      continue;
    }
    const measured = between(ground, parts[i] as PartEyes, parts[j] as PartEyes, limitOf(i, j));
    if (measured) waiting.push(lengthStep(measured.length), { i, j, route: measured });
  }
  return {
    drawing: asTree(drawn(parts, routes)),
    unreachable: direct.flatMap((route, i) => (route ? [] : [i])),
  };
}

/** From whichever place of the part the way is shortest: those that lie nearest to the network are tried first. */
function shortestToNetwork(ground: BranchGround, eyes: PartEyes): BranchRoute | null {
  const inOrder = eyes
    .map((eye) => ({ eye, least: ground.leastToNetwork(eye.at) }))
    .sort((one, other) => one.least - other.least);
  let best: BranchRoute | null = null;
  // Places from which no way leads at all, and with them whatever they see.
  const shutIn: Eye[] = [];
  for (const { eye, least } of inOrder) {
    const within: number = best ? best.length : Number.POSITIVE_INFINITY;
    if (least >= within) break;
    const shut = shutIn.some((other) => ground.sees(other, eye));
    const route = shut ? null : ground.toNetwork(eye, within);
    if (route) best = route;
    else if (!best) shutIn.push(eye);
  }
  return best;
}

function between(ground: BranchGround, one: PartEyes, other: PartEyes, limit: number): BranchRoute | null {
  const pairs = one
    .flatMap((a) => other.map((b) => ({ a, b, straight: distanceBetween(a.at, b.at) })))
    .filter(({ straight }) => straight <= limit)
    .sort((p, q) => p.straight - q.straight);
  let best: BranchRoute | null = null;
  for (const { a, b, straight } of pairs) {
    const within: number = best ? best.length : limit;
    if (straight >= within) break;
    best = ground.between(a, b, within) ?? best;
  }
  return best;
}

function nearestPair(one: PartEyes, other: PartEyes): number {
  let best = Number.POSITIVE_INFINITY;
  for (const a of one) for (const b of other) best = Math.min(best, distanceBetween(a.at, b.at));
  return best;
}

class Groups {
  private readonly parent: number[];

  constructor(count: number) {
    this.parent = Array.from({ length: count }, (_, i) => i);
  }

  private find(i: number): number {
    let root = i;
    while (this.parent[root] !== root) root = this.parent[root] as number;
    this.parent[i] = root;
    return root;
  }

  same(a: number, b: number): boolean {
    return this.find(a) === this.find(b);
  }

  join(a: number, b: number): void {
    this.parent[this.find(a)] = this.find(b);
  }
}

/** Stage 3. */
function drawn(parts: readonly PartEyes[], routes: readonly Link[]): BranchDrawing {
  const places: Place[] = [];
  const edges: BranchEdge[] = [];
  const ofEye = new Map<Eye, number>();
  const ofCorner = new Map<Sector, number>();
  parts.forEach((eyes, part) => {
    for (const eye of eyes) ofEye.set(eye, places.push({ kind: "part", eye, part }) - 1);
  });
  const placeOf = (eye: Eye, isGoal: boolean): number => {
    const part = ofEye.get(eye);
    if (part !== undefined) return part;
    if (!eye.sector) return places.push({ kind: isGoal ? "network" : "bend", eye, part: -1 }) - 1;
    const known = ofCorner.get(eye.sector);
    if (known !== undefined) return known;
    const bend = places.push({ kind: "bend", eye, part: -1 }) - 1;
    ofCorner.set(eye.sector, bend);
    return bend;
  };
  for (const { route } of routes) {
    if (!route) continue;
    const stops = route.stops.map((eye, k) => placeOf(eye, k === route.stops.length - 1));
    for (let k = 1; k < stops.length; k++) edges.push({ a: stops[k - 1] as number, b: stops[k] as number });
  }
  return { places, edges };
}
