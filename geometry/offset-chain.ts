/**
 * Puts kept pieces of an offset together into closed loops, by the nodes they share and never by nearness.
 *
 * Stages. 1. Of pieces that lie on each other, one is kept where they run the same way (two bodies in line), none where
 * they run against each other (an inlet exactly twice the offset wide: a slit of no width). 2. Pieces that lead nowhere
 * are left out, again and again. 3. Loops are walked; at a node with several ways on, the sharpest left turn keeps the
 * water on one side, so that loops touch but do not cross.
 */
import { edgeLength, nearestOnEdge, pointAt, tangentAt } from "./edge.ts";
import { OFFSET_JOINT } from "./tolerances.ts";
import type { Edge } from "./types.ts";

export interface Link {
  readonly edge: Edge;
  readonly from: number;
  readonly to: number;
  readonly body: number;
}

export interface Chained {
  readonly loops: readonly (readonly Link[])[];
  /** Length of the longest piece that is in no loop, inches. */
  readonly leftover: number;
}

export function chainLinks(kept: readonly Link[]): Chained {
  const links = withoutOverlaps(kept);
  const ways = waysOf(links);
  let leftover = 0;
  const ends: number[] = [];
  for (let i = 0; i < links.length; i++) if (ways.isEnd(i)) ends.push(i);
  for (let i = ends.pop(); i !== undefined; i = ends.pop()) {
    if (!ways.isThere(i) || !ways.isEnd(i)) continue;
    const link = links[i] as Link;
    leftover = Math.max(leftover, edgeLength(link.edge));
    ways.remove(i);
    ends.push(...ways.into(link.from), ...ways.outOf(link.to));
  }
  const loops: Link[][] = [];
  for (let first = 0; first < links.length; first++) {
    if (!ways.isThere(first)) continue;
    const start = (links[first] as Link).from;
    const loop: Link[] = [];
    let at: number | undefined = first;
    while (at !== undefined) {
      const link = links[at] as Link;
      loop.push(link);
      ways.remove(at);
      if (link.to === start) break;
      at = leftmost(link, ways.outOf(link.to), links);
    }
    if (at !== undefined) loops.push(loop);
    else for (const lost of loop) leftover = Math.max(leftover, edgeLength(lost.edge));
  }
  return { loops, leftover };
}

/** The links that leave and enter each node, by their numbers, and which are still there. */
function waysOf(links: readonly Link[]) {
  let nodes = 0;
  for (const { from, to } of links) nodes = Math.max(nodes, from + 1, to + 1);
  const firstOut = new Int32Array(nodes).fill(-1);
  const firstIn = new Int32Array(nodes).fill(-1);
  const nextOut = new Int32Array(links.length);
  const nextIn = new Int32Array(links.length);
  const there = new Uint8Array(links.length).fill(1);
  for (let i = links.length - 1; i >= 0; i--) {
    const { from, to } = links[i] as Link;
    nextOut[i] = firstOut[from] as number;
    firstOut[from] = i;
    nextIn[i] = firstIn[to] as number;
    firstIn[to] = i;
  }
  const list = (first: Int32Array, next: Int32Array, node: number): number[] => {
    const found: number[] = [];
    for (let i = first[node] as number; i >= 0; i = next[i] as number) if (there[i] === 1) found.push(i);
    return found;
  };
  const any = (first: Int32Array, next: Int32Array, node: number): boolean => {
    let i = first[node] as number;
    while (i >= 0 && there[i] === 0) i = next[i] as number;
    return i >= 0;
  };
  return {
    isThere: (i: number) => there[i] === 1,
    remove: (i: number) => {
      there[i] = 0;
    },
    outOf: (node: number) => list(firstOut, nextOut, node),
    into: (node: number) => list(firstIn, nextIn, node),
    /** Whether nothing leads to the link, or nothing on from it. */
    isEnd: (i: number) => {
      const { from, to } = links[i] as Link;
      return !any(firstIn, nextIn, from) || !any(firstOut, nextOut, to);
    },
  };
}

function leftmost(arriving: Link, ways: readonly number[], links: readonly Link[]): number | undefined {
  if (ways.length <= 1) return ways[0];
  const [ux, uy] = tangentAt(arriving.edge, 1);
  let best: number | undefined;
  let bestTurn = Number.NEGATIVE_INFINITY;
  for (const way of ways) {
    const [vx, vy] = tangentAt((links[way] as Link).edge, 0);
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    if (turn > bestTurn) {
      best = way;
      bestTurn = turn;
    }
  }
  return best;
}

function withoutOverlaps(kept: readonly Link[]): readonly Link[] {
  let span = 0;
  for (const { from, to } of kept) span = Math.max(span, from + 1, to + 1);
  const first = new Map<number, number>();
  const groups = new Map<number, Link[]>();
  kept.forEach((link, i) => {
    const key = Math.min(link.from, link.to) * span + Math.max(link.from, link.to);
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, i);
      return;
    }
    const group = groups.get(key);
    if (group) group.push(link);
    else groups.set(key, [kept[before] as Link, link]);
  });
  if (groups.size === 0) return kept;
  const gone = new Set<Link>();
  for (const group of groups.values()) {
    for (let i = 0; i < group.length; i++) {
      for (let j = i + 1; j < group.length; j++) {
        const one = group[i] as Link;
        const other = group[j] as Link;
        if (gone.has(one) || gone.has(other)) continue;
        if (nearestOnEdge(other.edge, pointAt(one.edge, 0.5)).distance > OFFSET_JOINT) continue;
        gone.add(other);
        if (one.from !== other.from) gone.add(one);
      }
    }
  }
  return kept.filter((link) => !gone.has(link));
}
