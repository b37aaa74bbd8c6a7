/**
 * A tree of boxes over the edges of one path, built once per path and kept as long as the path lives.
 *
 * Edges of a path already lie near their neighbors, so the tree is a plain binary heap over their order: node i holds
 * the box around its children 2i + 1 and 2i + 2; the leaves are runs of LEAF edges. Boxes stand in flat arrays of
 * minX, minY, maxX, maxY.
 */
import { writeEdgeBounds } from "./edge-boxes.ts";
import type { Bounds, Edge, Path, Point } from "./types.ts";

const LEAF = 4;

export interface EdgeTree {
  readonly edges: readonly Edge[];
  readonly edgeBoxes: Float64Array;
  readonly nodeBoxes: Float64Array;
  /** Of each straight edge its start and the way to its end: x, y, dx, dy. Of an arc dx is not a number. */
  readonly lines: Float64Array;
  /** Nodes from this number on are leaves; leaf k holds edges k * LEAF and on. */
  readonly firstLeaf: number;
}

const trees = new WeakMap<Path, EdgeTree>();

/** The tree of a path: the same one every time it is asked for. */
export function edgeTree(path: Path): EdgeTree {
  const known = trees.get(path);
  if (known) return known;
  const tree = buildTree(path.edges);
  trees.set(path, tree);
  return tree;
}

function buildTree(edges: readonly Edge[]): EdgeTree {
  let leaves = 1;
  while (leaves * LEAF < edges.length) leaves *= 2;
  const firstLeaf = leaves - 1;
  const edgeBoxes = new Float64Array(edges.length * 4);
  const lines = new Float64Array(edges.length * 4);
  for (let index = 0; index < edges.length; index++) {
    const edge = edges[index] as Edge;
    const { from, to } = edge;
    writeEdgeBounds(edge, edgeBoxes, index);
    const at = index * 4;
    lines[at] = from[0];
    lines[at + 1] = from[1];
    lines[at + 2] = edge.kind === "line" ? to[0] - from[0] : Number.NaN;
    lines[at + 3] = to[1] - from[1];
  }
  const nodeBoxes = new Float64Array((firstLeaf + leaves) * 4);
  for (let node = firstLeaf + leaves - 1; node >= 0; node--) {
    if (node < firstLeaf) boxAround(nodeBoxes, 2 * node + 1, 2 * node + 3, nodeBoxes, node);
    else {
      const start = (node - firstLeaf) * LEAF;
      boxAround(edgeBoxes, start, Math.min(start + LEAF, edges.length), nodeBoxes, node);
    }
  }
  return { edges, edgeBoxes, nodeBoxes, lines, firstLeaf };
}

/** Square of the least distance that the box of edge number `index` can have from another, 0 where they overlap. */
export function edgeToBoxSquared({ edgeBoxes }: EdgeTree, index: number, box: Bounds): number {
  const i = index * 4;
  const dx = Math.max(0, (edgeBoxes[i] as number) - box.maxX, box.minX - (edgeBoxes[i + 2] as number));
  const dy = Math.max(0, (edgeBoxes[i + 1] as number) - box.maxY, box.minY - (edgeBoxes[i + 3] as number));
  return dx * dx + dy * dy;
}

/** The run of edges that a leaf holds, its end left out. */
export function edgesOfLeaf(tree: EdgeTree, leaf: number): { readonly start: number; readonly end: number } {
  const start = (leaf - tree.firstLeaf) * LEAF;
  return { start, end: Math.min(start + LEAF, tree.edges.length) };
}

/** Writes the box around boxes start..end-1 of `from` into place `at` of `into`; around none, an inside-out box. */
function boxAround(from: Float64Array, start: number, end: number, into: Float64Array, at: number): void {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (let i = start * 4; i < end * 4; i += 4) {
    minX = Math.min(minX, from[i] as number);
    minY = Math.min(minY, from[i + 1] as number);
    maxX = Math.max(maxX, from[i + 2] as number);
    maxY = Math.max(maxY, from[i + 3] as number);
  }
  into[at * 4] = minX;
  into[at * 4 + 1] = minY;
  into[at * 4 + 2] = maxX;
  into[at * 4 + 3] = maxY;
}

function boxTouches(boxes: Float64Array, at: number, box: Bounds): boolean {
  const i = at * 4;
  if ((boxes[i] as number) > box.maxX || (boxes[i + 1] as number) > box.maxY) return false;
  return (boxes[i + 2] as number) >= box.minX && (boxes[i + 3] as number) >= box.minY;
}

/** Calls `visit` with every edge whose box touches `box`, in the order of the path. */
export function visitEdgesIn(tree: EdgeTree, box: Bounds, visit: (edge: Edge, index: number) => void): void {
  visitNodeIn(tree, 0, box, visit);
}

function visitNodeIn(tree: EdgeTree, node: number, box: Bounds, visit: (edge: Edge, index: number) => void): void {
  if (!boxTouches(tree.nodeBoxes, node, box)) return;
  if (node < tree.firstLeaf) {
    visitNodeIn(tree, 2 * node + 1, box, visit);
    visitNodeIn(tree, 2 * node + 2, box, visit);
    return;
  }
  const { start, end } = edgesOfLeaf(tree, node);
  for (let index = start; index < end; index++) {
    if (boxTouches(tree.edgeBoxes, index, box)) visit(tree.edges[index] as Edge, index);
  }
}

/** Square of the least distance from (x, y) to box number `at`; infinite for an inside-out box. */
export function toBoxSquared(boxes: Float64Array, at: number, x: number, y: number): number {
  const i = at * 4;
  const dx = Math.max(0, (boxes[i] as number) - x, x - (boxes[i + 2] as number));
  const dy = Math.max(0, (boxes[i + 1] as number) - y, y - (boxes[i + 3] as number));
  return dx * dx + dy * dy;
}

/** Calls `visit` with every edge whose box lies within a distance of `p`, in the order of the path. */
export function visitWithin(
  tree: EdgeTree,
  p: Point,
  within: number,
  visit: (edge: Edge, index: number) => void,
): void {
  if (tree.edges.length > 0) visitNodeWithin(tree, 0, p[0], p[1], within * within, visit);
}

function visitNodeWithin(
  tree: EdgeTree,
  node: number,
  x: number,
  y: number,
  withinSquared: number,
  visit: (edge: Edge, index: number) => void,
): void {
  if (toBoxSquared(tree.nodeBoxes, node, x, y) > withinSquared) return;
  if (node < tree.firstLeaf) {
    visitNodeWithin(tree, 2 * node + 1, x, y, withinSquared, visit);
    visitNodeWithin(tree, 2 * node + 2, x, y, withinSquared, visit);
    return;
  }
  const { start, end } = edgesOfLeaf(tree, node);
  for (let index = start; index < end; index++) {
    if (toBoxSquared(tree.edgeBoxes, index, x, y) <= withinSquared) visit(tree.edges[index] as Edge, index);
  }
}

/** Square of the least distance between box i of `a` and box j of `b`. */
function betweenBoxesSquared(a: Float64Array, nodeA: number, b: Float64Array, nodeB: number): number {
  const i = nodeA * 4;
  const j = nodeB * 4;
  const dx = Math.max(0, (a[i] as number) - (b[j + 2] as number), (b[j] as number) - (a[i + 2] as number));
  const dy = Math.max(0, (a[i + 1] as number) - (b[j + 3] as number), (b[j + 1] as number) - (a[i + 3] as number));
  return dx * dx + dy * dy;
}

/**
 * Calls `measure` with pairs of edges of two paths, nearest boxes first, leaving out pairs wholly farther apart than the
 * least distance that `measure` has returned (start with `within`).
 */
export function visitPairs(
  a: EdgeTree,
  b: EdgeTree,
  within: number,
  measure: (one: Edge, other: Edge) => number,
): void {
  if (a.edges.length === 0 || b.edges.length === 0) return;
  if (betweenBoxesSquared(a.nodeBoxes, 0, b.nodeBoxes, 0) > within * within) return;
  visitNodePair(a, 0, b, 0, within, measure);
}

/** Returns the least distance known after the two nodes. */
function visitNodePair(
  a: EdgeTree,
  nodeA: number,
  b: EdgeTree,
  nodeB: number,
  within: number,
  measure: (one: Edge, other: Edge) => number,
): number {
  const leafA = nodeA >= a.firstLeaf;
  const leafB = nodeB >= b.firstLeaf;
  if (leafA && leafB) return visitLeafPair(a, nodeA, b, nodeB, within, measure);
  // Open the node higher up in its tree.
  const openA = !leafA && (leafB || nodeA <= nodeB);
  const firstA = openA ? 2 * nodeA + 1 : nodeA;
  const firstB = openA ? nodeB : 2 * nodeB + 1;
  const secondA = openA ? firstA + 1 : nodeA;
  const secondB = openA ? nodeB : firstB + 1;
  const toFirst = betweenBoxesSquared(a.nodeBoxes, firstA, b.nodeBoxes, firstB);
  const toSecond = betweenBoxesSquared(a.nodeBoxes, secondA, b.nodeBoxes, secondB);
  let best = within;
  if (toFirst <= toSecond) {
    if (toFirst <= best * best) best = visitNodePair(a, firstA, b, firstB, best, measure);
    if (toSecond <= best * best) best = visitNodePair(a, secondA, b, secondB, best, measure);
  } else {
    if (toSecond <= best * best) best = visitNodePair(a, secondA, b, secondB, best, measure);
    if (toFirst <= best * best) best = visitNodePair(a, firstA, b, firstB, best, measure);
  }
  return best;
}

function visitLeafPair(
  a: EdgeTree,
  nodeA: number,
  b: EdgeTree,
  nodeB: number,
  within: number,
  measure: (one: Edge, other: Edge) => number,
): number {
  let best = within;
  const startA = (nodeA - a.firstLeaf) * LEAF;
  const startB = (nodeB - b.firstLeaf) * LEAF;
  for (let i = startA; i < Math.min(startA + LEAF, a.edges.length); i++) {
    for (let j = startB; j < Math.min(startB + LEAF, b.edges.length); j++) {
      if (betweenBoxesSquared(a.edgeBoxes, i, b.edgeBoxes, j) > best * best) continue;
      best = Math.min(best, measure(a.edges[i] as Edge, b.edges[j] as Edge));
    }
  }
  return best;
}
