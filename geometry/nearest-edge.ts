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
  if (tree.edges.length === 0) return -1;
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

/** The line that is asked about, with the box round it. */
interface AskedLine {
  readonly line: LineEdge;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The number of the edge nearest to a straight line, -1 where none is nearer than `within` inches. */
export function nearestEdgeToLine(tree: EdgeTree, line: LineEdge, within: number): number {
  if (tree.edges.length === 0) return -1;
  const { from, to } = line;
  const asked: AskedLine = {
    line,
    minX: Math.min(from[0], to[0]),
    minY: Math.min(from[1], to[1]),
    maxX: Math.max(from[0], to[0]),
    maxY: Math.max(from[1], to[1]),
  };
  const least = within * within;
  if (betweenBoxesSquared(tree.nodeBoxes, 0, asked) > least) return -1;
  nearestYet[0] = least;
  return nearestToLineInNode(tree, 0, asked, -1);
}

function nearestToLineInNode(tree: EdgeTree, node: number, asked: AskedLine, known: number): number {
  if (node >= tree.firstLeaf) return nearestToLineInLeaf(tree, node, asked, known);
  const left = 2 * node + 1;
  const toLeft = betweenBoxesSquared(tree.nodeBoxes, left, asked);
  const toRight = betweenBoxesSquared(tree.nodeBoxes, left + 1, asked);
  const leftFirst = toLeft <= toRight;
  let found = known;
  if ((leftFirst ? toLeft : toRight) <= (nearestYet[0] as number))
    found = nearestToLineInNode(tree, leftFirst ? left : left + 1, asked, found);
  if ((leftFirst ? toRight : toLeft) <= (nearestYet[0] as number))
    found = nearestToLineInNode(tree, leftFirst ? left + 1 : left, asked, found);
  return found;
}

function nearestToLineInLeaf(tree: EdgeTree, leaf: number, asked: AskedLine, known: number): number {
  const { start, end } = edgesOfLeaf(tree, leaf);
  let least = nearestYet[0] as number;
  let found = known;
  for (let index = start; index < end; index++) {
    const toBox = betweenBoxesSquared(tree.edgeBoxes, index, asked);
    if (toBox > least) continue;
    const squared =
      toBox === 0 || Number.isNaN(tree.lines[index * 4 + 2])
        ? edgeToEdge(tree.edges[index] as Edge, asked.line).length ** 2
        : betweenLinesSquared(tree.lines, index * 4, asked.line);
    if (!(squared < least || (squared === least && index < found))) continue;
    least = squared;
    found = index;
  }
  nearestYet[0] = least;
  return found;
}

/** Square of the least distance between two lines that do not cross: an end of one or the other is nearest. */
function betweenLinesSquared(lines: Float64Array, at: number, { from, to }: LineEdge): number {
  const x = lines[at] as number;
  const y = lines[at + 1] as number;
  const dx = lines[at + 2] as number;
  const dy = lines[at + 3] as number;
  const ex = to[0] - from[0];
  const ey = to[1] - from[1];
  return Math.min(
    toLineSquared(from[0] - x, from[1] - y, dx, dy),
    toLineSquared(to[0] - x, to[1] - y, dx, dy),
    toLineSquared(x - from[0], y - from[1], ex, ey),
    toLineSquared(x + dx - from[0], y + dy - from[1], ex, ey),
  );
}

/** Square of the least distance between box number `at` and the box of the line; 0 where they share a point. */
function betweenBoxesSquared(boxes: Float64Array, at: number, asked: AskedLine): number {
  const i = at * 4;
  const dx = Math.max(0, (boxes[i] as number) - asked.maxX, asked.minX - (boxes[i + 2] as number));
  const dy = Math.max(0, (boxes[i + 1] as number) - asked.maxY, asked.minY - (boxes[i + 3] as number));
  return dx * dx + dy * dy;
}
