/**
 * The edges of a closed path on which a point can lie that is nearer to an eye than its neighbors on the path are.
 *
 * Such a point is the foot of the eye on an edge, or a corner at which the path turns past the square to the eye: in
 * either case the path runs square to the direction of the eye somewhere on the edge or in the turn at its start.
 * Stages. 1. Once for a path: the range of directions in which each run of edges goes, the turns at corners included,
 * counted on along the path so that a range never wraps. 2. For an eye: from the box of a run, the eye lies within a
 * range of directions too; where no direction of the one is square to any of the other, the whole run is left out.
 * Source: the idea of normal cones over a tree of boxes, from the literature on nearest points; worked out anew.
 */
import { tangentAt } from "./edge.ts";
import { type EdgeTree, edgesOfLeaf } from "./edge-tree.ts";
import { SIGHT_SLACK, SINE_ROUNDING } from "./tolerances.ts";
import type { Edge, Point } from "./types.ts";

/** Of each node of a tree: its middle direction as a unit vector, and cosine and sine of half of the range. */
interface Directions {
  readonly middleX: Float64Array;
  readonly middleY: Float64Array;
  /** 0 where the range is a half turn or more. */
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

const known = new WeakMap<EdgeTree, Directions>();

/** Nodes that wait to be looked at; the longest way down a tree is far shorter. */
const waiting = new Int32Array(64);

/**
 * Calls `visit` with every edge of a closed path, in order, whose box lies within `within` inches of some eye and that, with
 * the turn at its start, can face one: others may be among them. The eyes: all points at most `spread` inches from `eye`.
 * `visit` starts no search of this kind itself.
 */
export function visitFacing(
  tree: EdgeTree,
  eye: Point,
  spread: number,
  within: number,
  visit: (edge: Edge, index: number) => void,
): void {
  if (tree.edges.length === 0) return;
  let directions = known.get(tree);
  if (!directions) {
    directions = directionsOf(tree);
    known.set(tree, directions);
  }
  const [x, y] = eye;
  const reach = within + spread;
  waiting[0] = 0;
  for (let top = 0; top >= 0; ) {
    const node = waiting[top] as number;
    top -= 1;
    if (!isNearAndFacing(tree, directions, node, x, y, spread, reach)) continue;
    if (node < tree.firstLeaf) {
      waiting[top + 1] = 2 * node + 2;
      waiting[top + 2] = 2 * node + 1;
      top += 2;
      continue;
    }
    const { start, end } = edgesOfLeaf(tree, node);
    for (let index = start; index < end; index++) visit(tree.edges[index] as Edge, index);
  }
}

function isNearAndFacing(
  tree: EdgeTree,
  directions: Directions,
  node: number,
  x: number,
  y: number,
  spread: number,
  reach: number,
): boolean {
  const boxes = tree.nodeBoxes;
  const i = node * 4;
  const minX = boxes[i] as number;
  const minY = boxes[i + 1] as number;
  const maxX = boxes[i + 2] as number;
  const maxY = boxes[i + 3] as number;
  const dx = Math.max(0, minX - x, x - maxX);
  const dy = Math.max(0, minY - y, y - maxY);
  if (dx * dx + dy * dy > reach * reach) return false;
  const radius = Math.sqrt((maxX - minX) * (maxX - minX) + (maxY - minY) * (maxY - minY)) / 2 + spread;
  return canFace(directions, node, (minX + maxX) / 2 - x, (minY + maxY) / 2 - y, radius);
}

/** (x, y): from the eye to the middle of a run of edges that reaches `radius` round it. */
function canFace(directions: Directions, node: number, x: number, y: number, radius: number): boolean {
  const distance = Math.sqrt(x * x + y * y);
  const spread = radius + 2 * SIGHT_SLACK;
  if (!(distance > spread)) return true;
  const cosine = directions.cosine[node] as number;
  const sine = directions.sine[node] as number;
  const spreadSine = spread / distance;
  const spreadCosine = Math.sqrt(1 - spreadSine * spreadSine);
  // Both ranges together; from a right angle on, something is square to something.
  if (cosine * spreadCosine - sine * spreadSine <= SINE_ROUNDING) return true;
  const along = ((directions.middleX[node] as number) * x + (directions.middleY[node] as number) * y) / distance;
  return Math.abs(along) <= sine * spreadCosine + cosine * spreadSine + SINE_ROUNDING;
}

function directionsOf(tree: EdgeTree): Directions {
  const { edges, firstLeaf } = tree;
  const nodes = tree.nodeBoxes.length / 4;
  const low = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(nodes).fill(Number.NEGATIVE_INFINITY);
  let direction = angleAt(edges[edges.length - 1] as Edge, 1);
  for (let node = firstLeaf; node < nodes; node++) {
    const { start, end } = edgesOfLeaf(tree, node);
    if (start >= end) break;
    let [least, most] = [direction, direction];
    const goOn = (by: number) => {
      direction += by;
      least = Math.min(least, direction);
      most = Math.max(most, direction);
    };
    for (let index = start; index < end; index++) {
      const edge = edges[index] as Edge;
      goOn(turnTo(direction, angleAt(edge, 0)));
      if (edge.kind === "arc") goOn(edge.sweep);
    }
    low[node] = least;
    high[node] = most;
  }
  for (let node = firstLeaf - 1; node >= 0; node--) {
    low[node] = Math.min(low[2 * node + 1] as number, low[2 * node + 2] as number);
    high[node] = Math.max(high[2 * node + 1] as number, high[2 * node + 2] as number);
  }
  const middle = (node: number) => ((low[node] as number) + (high[node] as number)) / 2;
  const half = (node: number) => Math.min(Math.PI / 2, ((high[node] as number) - (low[node] as number)) / 2);
  return {
    middleX: low.map((_, node) => Math.cos(middle(node))),
    middleY: low.map((_, node) => Math.sin(middle(node))),
    cosine: low.map((_, node) => Math.max(0, Math.cos(half(node)))),
    sine: low.map((_, node) => Math.sin(half(node))),
  };
}

function angleAt(edge: Edge, t: 0 | 1): number {
  const [x, y] = tangentAt(edge, t);
  return Math.atan2(y, x);
}

/** The turn from one direction to another, -pi to pi. */
function turnTo(from: number, to: number): number {
  const turn = (to - from) % (2 * Math.PI);
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}
