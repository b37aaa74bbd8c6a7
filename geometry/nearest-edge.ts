/**
 * Which edge of a path lies nearest to a position or to a straight line: a search down the tree of its boxes, nearest box
 * first, that makes nothing on the way. How near it is and where is for edge.ts and edge-distance.ts to say.
 */
import { distanceToEdge } from "./edge.ts";
import { edgeToEdge } from "./edge-distance.ts";
import { type EdgeTree, edgesOfLeaf, toBoxSquared } from "./edge-tree.ts";
import type { Edge, LineEdge, Point } from "./types.ts";

/**
 * Nodes that wait to be looked at, the nearest on top, and the square of the distance of each; the longest way down a tree
 * is far shorter. Searches run to their end before the next begins. Numbers in flat arrays are not made anew, as those
 * that a function returns often are.
 */
const waiting = new Int32Array(64);
const waitingSquared = new Float64Array(64);

/** The number of the edge nearest to `p`, of equals the first; -1 where none is nearer than `within` inches. */
export function nearestEdge(tree: EdgeTree, p: Point, within: number): number {
  if (tree.edges.length === 0 || !(within > 0)) return -1;
  const { nodeBoxes, edgeBoxes, lines, firstLeaf } = tree;
  const [x, y] = p;
  let least = within * within;
  let found = -1;
  let top = 0;
  waiting[0] = 0;
  waitingSquared[0] = toBoxSquared(nodeBoxes, 0, x, y);
  for (; top >= 0; ) {
    const node = waiting[top] as number;
    const toNode = waitingSquared[top] as number;
    top -= 1;
    if (toNode > least) continue;
    if (node < firstLeaf) {
      const left = 2 * node + 1;
      const toLeft = toBoxSquared(nodeBoxes, left, x, y);
      const toRight = toBoxSquared(nodeBoxes, left + 1, x, y);
      const farther = toLeft <= toRight ? 1 : 0;
      waiting[top + 1] = left + farther;
      waitingSquared[top + 1] = farther === 1 ? toRight : toLeft;
      waiting[top + 2] = left + 1 - farther;
      waitingSquared[top + 2] = farther === 1 ? toLeft : toRight;
      top += 2;
      continue;
    }
    const { start, end } = edgesOfLeaf(tree, node);
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
  }
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
  const { nodeBoxes, edgeBoxes, lines, firstLeaf } = tree;
  let least = within * within;
  let found = -1;
  let top = 0;
  waiting[0] = 0;
  waitingSquared[0] = toAskedBoxSquared(nodeBoxes, 0);
  for (; top >= 0; ) {
    const node = waiting[top] as number;
    const toNode = waitingSquared[top] as number;
    top -= 1;
    if (toNode > least) continue;
    if (node < firstLeaf) {
      const left = 2 * node + 1;
      const toLeft = toAskedBoxSquared(nodeBoxes, left);
      const toRight = toAskedBoxSquared(nodeBoxes, left + 1);
      const farther = toLeft <= toRight ? 1 : 0;
      waiting[top + 1] = left + farther;
      waitingSquared[top + 1] = farther === 1 ? toRight : toLeft;
      waiting[top + 2] = left + 1 - farther;
      waitingSquared[top + 2] = farther === 1 ? toLeft : toRight;
      top += 2;
      continue;
    }
    const { start, end } = edgesOfLeaf(tree, node);
    for (let index = start; index < end; index++) {
      const toBox = toAskedBoxSquared(edgeBoxes, index);
      if (toBox > least) continue;
      const squared =
        toBox === 0 || Number.isNaN(lines[index * 4 + 2])
          ? edgeToEdge(tree.edges[index] as Edge, line).length ** 2
          : toAskedLineSquared(lines, index * 4);
      if (!(squared < least || (squared === least && index < found))) continue;
      least = squared;
      found = index;
    }
  }
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
