/**
 * The candidate pieces of an offset: everything that lies `d` inches from one edge or one corner of an outline, on its
 * ground side, whether or not something else lies nearer.
 *
 * Terms. Ground side: to the right of an outline whose water is to its left. Joint: the end of one piece that is, by
 * construction, also the start of the next (no turn, or the arc round a convex corner). Node: the number that stands
 * for a joint or an end; two pieces follow each other only when they share a node.
 */
import { arcAround, edgeLength, pointAt, tangentAt } from "./edge.ts";
import { edgeBounds } from "./edge-boxes.ts";
import { OFFSET_JOINT, SAME_POINT } from "./tolerances.ts";
import type { Area, Bounds, Edge, Path, Point } from "./types.ts";

export interface OffsetPiece {
  readonly edge: Edge;
  readonly length: number;
  readonly bounds: Bounds;
  /** Which of the areas it was made from. */
  readonly body: number;
  readonly startNode: number;
  readonly endNode: number;
}

/** The places where pieces start, end or are cut. Nodes found to be one place are joined (union-find). */
export interface OffsetNodes {
  add(at: Point): number;
  join(a: number, b: number): void;
  /** The node that stands for all those joined with `node`. */
  find(node: number): number;
  position(node: number): Point;
}

export function offsetNodes(): OffsetNodes {
  const parent: number[] = [];
  const places: Point[] = [];
  const find = (node: number): number => {
    let root = node;
    while (parent[root] !== root) root = parent[root] as number;
    for (let n = node; n !== root; ) {
      const next = parent[n] as number;
      parent[n] = root;
      n = next;
    }
    return root;
  };
  return {
    add: (at) => {
      parent.push(parent.length);
      places.push(at);
      return places.length - 1;
    },
    join: (a, b) => {
      const [one, other] = [find(a), find(b)];
      if (one !== other) parent[Math.max(one, other)] = Math.min(one, other);
    },
    find,
    position: (node) => places[find(node)] as Point,
  };
}

/** The edge moved `d` inches to its right, or null where an arc that curves toward the ground has no room for it. */
function movedEdge(edge: Edge, d: number): Edge | null {
  if (edge.kind === "line") {
    const [ux, uy] = tangentAt(edge, 0);
    return {
      kind: "line",
      from: [edge.from[0] + uy * d, edge.from[1] - ux * d],
      to: [edge.to[0] + uy * d, edge.to[1] - ux * d],
    };
  }
  const radius = edge.sweep > 0 ? edge.radius + d : edge.radius - d;
  if (radius <= SAME_POINT) return null;
  const [ax, ay] = tangentAt(edge, 0);
  const [bx, by] = tangentAt(edge, 1);
  return {
    ...edge,
    radius,
    from: [edge.from[0] + ay * d, edge.from[1] - ax * d],
    to: [edge.to[0] + by * d, edge.to[1] - bx * d],
  };
}

/** The turn from edge to edge. Straight back (a cusp), its sign shows only in how the edges bend away from each other. */
function turnAt(before: Edge, after: Edge, turn: number): number {
  if (Math.PI - Math.abs(turn) > OFFSET_JOINT) return turn;
  const reach = Math.min(edgeLength(before), edgeLength(after)) / 2;
  const [x, y] = after.from;
  const back = pointAt(before, 1 - reach / edgeLength(before));
  const on = pointAt(after, reach / edgeLength(after));
  const side = (x - back[0]) * (on[1] - y) - (y - back[1]) * (on[0] - x);
  return side < 0 ? -Math.abs(turn) : Math.abs(turn);
}

/** The arc of radius `d` round a convex corner between the ends of two moved edges, or null where the corner does not open. */
function cornerArc(before: Edge, after: Edge, d: number): { arc: Edge | null; joined: boolean } {
  const [ux, uy] = tangentAt(before, 1);
  const [vx, vy] = tangentAt(after, 0);
  const turn = turnAt(before, after, Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  if (Math.abs(turn) * d <= OFFSET_JOINT / 10) return { arc: null, joined: true };
  if (turn < 0) return { arc: null, joined: false };
  const at = after.from;
  const arc = arcAround(at, d, Math.atan2(-ux, uy), turn, {
    from: [at[0] + uy * d, at[1] - ux * d],
    to: [at[0] + vy * d, at[1] - vx * d],
  });
  return { arc, joined: true };
}

/** All candidate pieces of the areas at distance `d` > 0. */
export function offsetPieces(areas: readonly Area[], d: number, nodes: OffsetNodes): OffsetPiece[] {
  const pieces: OffsetPiece[] = [];
  const push = (edge: Edge, body: number, startNode: number, endNode: number): void => {
    pieces.push({ edge, length: edgeLength(edge), bounds: edgeBounds(edge), body, startNode, endNode });
  };
  areas.forEach((area, body) => {
    for (const path of [area.outer, ...area.holes]) piecesOfPath(path, d, nodes, (e, a, b) => push(e, body, a, b));
  });
  return pieces;
}

function piecesOfPath(
  path: Path,
  d: number,
  nodes: OffsetNodes,
  push: (edge: Edge, startNode: number, endNode: number) => void,
): void {
  const { edges } = path;
  const moved = edges.map((edge) => movedEdge(edge, d));
  const ends = moved.map((edge) => (edge ? { start: nodes.add(edge.from), end: nodes.add(edge.to) } : null));
  edges.forEach((edge, i) => {
    const j = (i + 1) % edges.length;
    const next = edges[j] as Edge;
    const here = moved[i];
    const hereEnds = ends[i];
    if (here && hereEnds) push(here, hereEnds.start, hereEnds.end);
    const { arc, joined } = cornerArc(edge, next, d);
    if (!joined) return;
    const nextEnds = ends[j];
    if (!arc) {
      if (hereEnds && nextEnds) nodes.join(hereEnds.end, nextEnds.start);
      return;
    }
    push(arc, hereEnds ? hereEnds.end : nodes.add(arc.from), nextEnds ? nextEnds.start : nodes.add(arc.to));
  });
}

/** The edge with its ends put exactly on the places recorded for its nodes (a rounding error away). */
export function withEnds(edge: Edge, from: Point, to: Point): Edge {
  if (isAt(edge.from, from) && isAt(edge.to, to)) return edge;
  if (edge.kind === "line") return { kind: "line", from, to };
  const start = Math.atan2(from[1] - edge.center[1], from[0] - edge.center[0]);
  const end = Math.atan2(to[1] - edge.center[1], to[0] - edge.center[0]);
  let sweep = end - start;
  // The same number of turns as before the ends moved.
  sweep += 2 * Math.PI * Math.round((edge.sweep - sweep) / (2 * Math.PI));
  return arcAround(edge.center, edge.radius, start, sweep, { from, to });
}

function isAt(p: Point, q: Point): boolean {
  return p[0] === q[0] && p[1] === q[1];
}
