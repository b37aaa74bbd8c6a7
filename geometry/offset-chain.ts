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
  const outgoing = new Map<number, Link[]>();
  const incoming = new Map<number, Link[]>();
  for (const link of links) {
    listOf(outgoing, link.from).push(link);
    listOf(incoming, link.to).push(link);
  }
  let leftover = 0;
  const drop = (link: Link): void => {
    leftover = Math.max(leftover, edgeLength(link.edge));
    remove(outgoing, link.from, link);
    remove(incoming, link.to, link);
  };
  const ends = [...links];
  for (let link = ends.pop(); link; link = ends.pop()) {
    if (!outgoing.get(link.from)?.includes(link)) continue;
    if (listOf(incoming, link.from).length > 0 && listOf(outgoing, link.to).length > 0) continue;
    drop(link);
    ends.push(...listOf(incoming, link.from), ...listOf(outgoing, link.to));
  }
  const loops: Link[][] = [];
  for (const first of links) {
    if (!outgoing.get(first.from)?.includes(first)) continue;
    const loop: Link[] = [];
    let link: Link | undefined = first;
    while (link) {
      loop.push(link);
      remove(outgoing, link.from, link);
      if (link.to === first.from) break;
      link = leftmost(link, listOf(outgoing, link.to));
    }
    if (link) loops.push(loop);
    else for (const lost of loop) leftover = Math.max(leftover, edgeLength(lost.edge));
  }
  return { loops, leftover };
}

function listOf(map: Map<number, Link[]>, node: number): Link[] {
  let list = map.get(node);
  if (!list) {
    list = [];
    map.set(node, list);
  }
  return list;
}

function remove(map: Map<number, Link[]>, node: number, link: Link): void {
  const list = map.get(node);
  const at = list ? list.indexOf(link) : -1;
  if (list && at >= 0) list.splice(at, 1);
}

function leftmost(arriving: Link, ways: readonly Link[]): Link | undefined {
  if (ways.length <= 1) return ways[0];
  const [ux, uy] = tangentAt(arriving.edge, 1);
  let best: Link | undefined;
  let bestTurn = Number.NEGATIVE_INFINITY;
  for (const way of ways) {
    const [vx, vy] = tangentAt(way.edge, 0);
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    if (turn > bestTurn) {
      best = way;
      bestTurn = turn;
    }
  }
  return best;
}

function withoutOverlaps(kept: readonly Link[]): Link[] {
  const byEnds = new Map<string, Link[]>();
  for (const link of kept) {
    const key = link.from < link.to ? `${link.from} ${link.to}` : `${link.to} ${link.from}`;
    const same = byEnds.get(key);
    if (same) same.push(link);
    else byEnds.set(key, [link]);
  }
  const gone = new Set<Link>();
  for (const group of byEnds.values()) {
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
