/**
 * Which edge of a path lies nearest to a position or to a straight line: a search down the tree of its boxes, nearest box
 * first, that makes nothing on the way. How near it is and where is for edge.ts and edge-distance.ts to say.
 */
import { distanceToEdge } from "./edge.ts";
import { edgeToEdge } from "./edge-distance.ts";
import { type EdgeTree, edgesOfLeaf, toBoxSquared } from "./edge-tree.ts";
import type { Edge, LineEdge, Point } from "./types.ts";

/** Square of the distance of the nearest edge yet, while a search runs; a lone number in an array is not made anew. */
const nearestYet = new Float64Array(1);

/** The number of the edge nearest to `p`, of equals the first; -1 where none is nearer than `within` inches. */
export function nearestEdge(tree: EdgeTree, p: Point, within: number): number {
  if (tree.edges.length === 0 || !(within > 0)) return -1;
  const least = within * within;
  if (toBoxSquared(tree.nodeBoxes, 0, p[0], p[1]) > least) return -1;
  nearestYet[0] = least;
  return nearestInNode(tree, 0, p, p[0], p[1], -1);
}

/** Returns the number of the nearest edge known after the node. */
function nearestInNode(tree: EdgeTree, node: number, p: Point, x: number, y: number, known: number): number {
  if (node >= tree.firstLeaf) return nearestInLeaf(tree, node, p, x, y, known);
  const left = 2 * node + 1;
  const toLeft = toBoxSquared(tree.nodeBoxes, left, x, y);
  const toRight = toBoxSquared(tree.nodeBoxes, left + 1, x, y);
  const leftFirst = toLeft <= toRight;
  let found = known;
  if ((leftFirst ? toLeft : toRight) <= (nearestYet[0] as number))
    found = nearestInNode(tree, leftFirst ? left : left + 1, p, x, y, found);
  if ((leftFirst ? toRight : toLeft) <= (nearestYet[0] as number))
    found = nearestInNode(tree, leftFirst ? left + 1 : left, p, x, y, found);
  return found;
}

function nearestInLeaf(tree: EdgeTree, leaf: number, p: Point, x: number, y: number, known: number): number {
  const { edgeBoxes, lines } = tree;
  const { start, end } = edgesOfLeaf(tree, leaf);
  let least = nearestYet[0] as number;
  let found = known;
  for (let index = start; index < end; index++) {
    if (toBoxSquared(edgeBoxes, index, x, y) > least) continue;
    const at = index * 4;
    const dx = lines[at + 2] as number;
    const squared = Number.isNaN(dx)
      ? distanceToEdge(tree.edges[index] as Edge, p) ** 2
      : toLineSquared(x - (lines[at] as number), y - (lines[at + 1] as number), dx, lines[at + 3] as number);
    if (!(squared < least || (squared === least && index < found))) continue;
    least = squared;
    found = index;
  }
  nearestYet[0] = least;
  return found;
}

/** Square of the distance from (x, y) to the line from the origin to (dx, dy). */
function toLineSquared(x: number, y: number, dx: number, dy: number): number {
  const along = x * dx + y * dy;
  if (along <= 0) return x * x + y * y;
  const squared = dx * dx + dy * dy;
  const t = along >= squared ? 1 : along / squared;
  const awayX = x - dx * t;
  const awayY = y - dy * t;
  return awayX * awayX + awayY * awayY;
}

/** The straight line that is asked about and its box, while a search runs: x, y, dx, dy, minX, minY, maxX, maxY. */
const asked = new Float64Array(8);

/** The number of the edge nearest to a straight line, -1 where none is nearer than `within` inches. */
export function nearestEdgeToLine(tree: EdgeTree, line: LineEdge, within: number): number {
  if (tree.edges.length === 0 || !(within > 0)) return -1;
  const { from, to } = line;
  asked[0] = from[0];
  asked[1] = from[1];
  asked[2] = to[0] - from[0];
  asked[3] = to[1] - from[1];
  asked[4] = Math.min(from[0], to[0]);
  asked[5] = Math.min(from[1], to[1]);
  asked[6] = Math.max(from[0], to[0]);
  asked[7] = Math.max(from[1], to[1]);
  const least = within * within;
  if (toAskedBoxSquared(tree.nodeBoxes, 0) > least) return -1;
  nearestYet[0] = least;
  return nearestToLineInNode(tree, 0, line, -1);
}

function nearestToLineInNode(tree: EdgeTree, node: number, line: LineEdge, known: number): number {
  if (node >= tree.firstLeaf) return nearestToLineInLeaf(tree, node, line, known);
  const left = 2 * node + 1;
  const toLeft = toAskedBoxSquared(tree.nodeBoxes, left);
  const toRight = toAskedBoxSquared(tree.nodeBoxes, left + 1);
  const leftFirst = toLeft <= toRight;
  let found = known;
  if ((leftFirst ? toLeft : toRight) <= (nearestYet[0] as number))
    found = nearestToLineInNode(tree, leftFirst ? left : left + 1, line, found);
  if ((leftFirst ? toRight : toLeft) <= (nearestYet[0] as number))
    found = nearestToLineInNode(tree, leftFirst ? left + 1 : left, line, found);
  return found;
}

function nearestToLineInLeaf(tree: EdgeTree, leaf: number, line: LineEdge, known: number): number {
  const { start, end } = edgesOfLeaf(tree, leaf);
  let least = nearestYet[0] as number;
  let found = known;
  for (let index = start; index < end; index++) {
    const toBox = toAskedBoxSquared(tree.edgeBoxes, index);
    if (toBox > least) continue;
    const squared =
      toBox === 0 || Number.isNaN(tree.lines[index * 4 + 2])
        ? edgeToEdge(tree.edges[index] as Edge, line).length ** 2
        : toAskedLineSquared(tree.lines, index * 4);
    if (!(squared < least || (squared === least && index < found))) continue;
    least = squared;
    found = index;
  }
  nearestYet[0] = least;
  return found;
}

/** Square of the least distance of two lines that do not cross: an end of one or the other is nearest. */
function toAskedLineSquared(lines: Float64Array, at: number): number {
  const dx = lines[at + 2] as number;
  const dy = lines[at + 3] as number;
  const ex = asked[2] as number;
  const ey = asked[3] as number;
  const x = (asked[0] as number) - (lines[at] as number);
  const y = (asked[1] as number) - (lines[at + 1] as number);
  const fromStart = Math.min(toLineSquared(x, y, dx, dy), toLineSquared(x + ex, y + ey, dx, dy));
  return Math.min(fromStart, toLineSquared(-x, -y, ex, ey), toLineSquared(dx - x, dy - y, ex, ey));
}

/** Square of the least distance between box number `at` and the box of the line asked about; 0 where they share a point. */
function toAskedBoxSquared(boxes: Float64Array, at: number): number {
  const i = at * 4;
  const dx = Math.max(0, (boxes[i] as number) - (asked[6] as number), (asked[4] as number) - (boxes[i + 2] as number));
  const dy = Math.max(
    0,
    (boxes[i + 1] as number) - (asked[7] as number),
    (asked[5] as number) - (boxes[i + 3] as number),
  );
  return dx * dx + dy * dy;
}
