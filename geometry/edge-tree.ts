/**
 * A tree of boxes over the edges of one path, built once per path and kept as long as the path lives.
 *
 * Edges of a path already lie near their neighbors, so the tree is a plain binary heap over their order: node i holds
 * the box around its children 2i + 1 and 2i + 2; the leaves are runs of LEAF edges.
 */
import { edgeBounds } from "./edge.ts";
import type { Bounds, Edge, Path, Point } from "./types.ts";

const LEAF = 4;

export interface EdgeTree {
  readonly edges: readonly Edge[];
  /** minX, minY, maxX, maxY for every node. */
  readonly boxes: Float64Array;
  /** Nodes from this number on are leaves; leaf k holds edges k * LEAF and on. */
  readonly firstLeaf: number;
}

const trees = new WeakMap<Path, EdgeTree>();

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
  const boxes = new Float64Array((firstLeaf + leaves) * 4);
  for (let node = firstLeaf + leaves - 1; node >= 0; node--) {
    let minX = Number.POSITIVE_INFINITY;
    let minY = Number.POSITIVE_INFINITY;
    let maxX = Number.NEGATIVE_INFINITY;
    let maxY = Number.NEGATIVE_INFINITY;
    const include = (x0: number, y0: number, x1: number, y1: number): void => {
      if (x0 < minX) minX = x0;
      if (y0 < minY) minY = y0;
      if (x1 > maxX) maxX = x1;
      if (y1 > maxY) maxY = y1;
    };
    if (node >= firstLeaf) {
      for (const edge of leafEdges(edges, node - firstLeaf)) {
        const box = edgeBounds(edge);
        include(box.minX, box.minY, box.maxX, box.maxY);
      }
    } else {
      for (const child of [2 * node + 1, 2 * node + 2]) {
        const [x0, y0, x1, y1] = boxes.subarray(child * 4, child * 4 + 4) as unknown as [
          number,
          number,
          number,
          number,
        ];
        include(x0, y0, x1, y1);
      }
    }
    boxes.set([minX, minY, maxX, maxY], node * 4);
  }
  return { edges, boxes, firstLeaf };
}

function leafEdges(edges: readonly Edge[], leaf: number): readonly Edge[] {
  return edges.slice(leaf * LEAF, leaf * LEAF + LEAF);
}

/** Calls `visit` with every edge whose box touches `box`, in the order of the path. */
export function visitEdgesIn(tree: EdgeTree, box: Bounds, visit: (edge: Edge, index: number) => void): void {
  const { boxes, edges, firstLeaf } = tree;
  const stack = [0];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    const at = node * 4;
    if ((boxes[at] as number) > box.maxX || (boxes[at + 1] as number) > box.maxY) continue;
    if ((boxes[at + 2] as number) < box.minX || (boxes[at + 3] as number) < box.minY) continue;
    if (node < firstLeaf) {
      stack.push(2 * node + 2, 2 * node + 1);
      continue;
    }
    const start = (node - firstLeaf) * LEAF;
    const end = Math.min(start + LEAF, edges.length);
    for (let index = start; index < end; index++) visit(edges[index] as Edge, index);
  }
}

/** Square of the least distance from `p` to the box of `node`; infinite for an empty node. */
export function boxDistanceSquared(tree: EdgeTree, node: number, p: Point): number {
  const at = node * 4;
  const dx = Math.max(0, (tree.boxes[at] as number) - p[0], p[0] - (tree.boxes[at + 2] as number));
  const dy = Math.max(0, (tree.boxes[at + 1] as number) - p[1], p[1] - (tree.boxes[at + 3] as number));
  return dx * dx + dy * dy;
}

/**
 * Calls `measure` with edges in turn, nearest boxes first, leaving out whatever lies wholly farther from `p` than the
 * least distance that `measure` has returned (start with `within`).
 */
export function visitNearest(
  tree: EdgeTree,
  p: Point,
  within: number,
  measure: (edge: Edge, index: number) => number,
): void {
  if (tree.edges.length === 0) return;
  let best = within;
  const visit = (node: number): void => {
    if (node >= tree.firstLeaf) {
      const start = (node - tree.firstLeaf) * LEAF;
      const end = Math.min(start + LEAF, tree.edges.length);
      for (let index = start; index < end; index++) {
        best = Math.min(best, measure(tree.edges[index] as Edge, index));
      }
      return;
    }
    const left = 2 * node + 1;
    const toLeft = boxDistanceSquared(tree, left, p);
    const toRight = boxDistanceSquared(tree, left + 1, p);
    const near = toLeft <= toRight ? left : left + 1;
    const far = toLeft <= toRight ? left + 1 : left;
    if (Math.min(toLeft, toRight) <= best * best) visit(near);
    if (Math.max(toLeft, toRight) <= best * best) visit(far);
  };
  if (boxDistanceSquared(tree, 0, p) <= best * best) visit(0);
}

/** Square of the least distance between the boxes of two nodes of two trees. */
function nodeDistanceSquared(a: EdgeTree, nodeA: number, b: EdgeTree, nodeB: number): number {
  const i = nodeA * 4;
  const j = nodeB * 4;
  const [p, q] = [a.boxes, b.boxes];
  const dx = Math.max(0, (p[i] as number) - (q[j + 2] as number), (q[j] as number) - (p[i + 2] as number));
  const dy = Math.max(0, (p[i + 1] as number) - (q[j + 3] as number), (q[j + 1] as number) - (p[i + 3] as number));
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
  measure: (one: Edge, other: Edge, indexA: number, indexB: number) => number,
): void {
  if (a.edges.length === 0 || b.edges.length === 0) return;
  let best = within;
  const leaves = (nodeA: number, nodeB: number): void => {
    const startA = (nodeA - a.firstLeaf) * LEAF;
    const startB = (nodeB - b.firstLeaf) * LEAF;
    for (let i = startA; i < Math.min(startA + LEAF, a.edges.length); i++) {
      for (let j = startB; j < Math.min(startB + LEAF, b.edges.length); j++) {
        best = Math.min(best, measure(a.edges[i] as Edge, b.edges[j] as Edge, i, j));
      }
    }
  };
  const visit = (nodeA: number, nodeB: number): void => {
    const endA = nodeA >= a.firstLeaf;
    const endB = nodeB >= b.firstLeaf;
    if (endA && endB) {
      leaves(nodeA, nodeB);
      return;
    }
    // Open the node higher up in its tree.
    const openA = !endA && (endB || nodeA <= nodeB);
    const pairs = openA
      ? [2 * nodeA + 1, 2 * nodeA + 2].map((child) => [child, nodeB] as const)
      : [2 * nodeB + 1, 2 * nodeB + 2].map((child) => [nodeA, child] as const);
    const ranked = pairs
      .map(([i, j]) => ({ i, j, distance: nodeDistanceSquared(a, i, b, j) }))
      .sort((one, other) => one.distance - other.distance);
    for (const { i, j, distance } of ranked) if (distance <= best * best) visit(i, j);
  };
  if (nodeDistanceSquared(a, 0, b, 0) <= best * best) visit(0, 0);
}
