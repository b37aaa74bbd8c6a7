/**
 * Offsets of which nothing is lost but at corners toward the ground: the usual case, worked out along the outline itself
 * without looking for what crosses what.
 *
 * Stages. 1. Each edge is moved to its ground side; a convex corner gets its arc, two lines that lean toward each other are
 * cut where they cross. Where an edge is used up by that, or an arc has no room or ends in such a corner, this is not the
 * usual case: null. 2. No two pieces may meet but where one follows the other, and a position of each loop must have no
 * other water nearer.
 *
 * Why that is enough. A position of such a loop is as far from its own edge as asked; something else can come nearer only
 * past a place where both are equally far, and such a place lies on another piece. It lies on no part that was cut off: all
 * of that but its end is nearer to the edge on the other side of the corner. So a loop that meets no other piece is wholly
 * right or wholly wrong. And where the loops at one distance are right, those nearer to the same water are: the circle
 * about each position there that touches the outline holds no water, so nothing lies between it and the outline. Between
 * such a circle in a corner toward the ground and the corner itself nothing lies either: it would be an outline by itself,
 * all of it nearer to the corner's edges than asked, and its own loop would meet theirs or be wrong.
 *
 * Terms. Frame of an outline: for each edge its direction at both ends, the turn to the next edge, and the direction from
 * the corner there in which the ground begins.
 */
import { contains } from "./contains.ts";
import { pointAt, tangentAt } from "./edge.ts";
import { writeEdgeBounds } from "./edge-boxes.ts";
import { edgeTree } from "./edge-tree.ts";
import { nearestEdge } from "./nearest-edge.ts";
import { meetings } from "./offset-meetings.ts";
import { withEnds } from "./offset-pieces.ts";
import { OrderTree } from "./order-tree.ts";
import { OFFSET_JOINT, OFFSET_KEEP, SAME_POINT } from "./tolerances.ts";
import type { ArcEdge, Area, Edge, Path, Point } from "./types.ts";

export interface WholeLoop {
  readonly body: number;
  readonly edges: readonly Edge[];
}

/** One loop for every outline of the areas in their order, or null where pieces are lost. */
export function wholeOffset(areas: readonly Area[], d: number, known: boolean): WholeLoop[] | null {
  const loops: WholeLoop[] = [];
  for (let body = 0; body < areas.length; body++) {
    const { outer, holes } = areas[body] as Area;
    for (let i = -1; i < holes.length; i++) {
      const edges = loopAlong(i < 0 ? outer : (holes[i] as Path), d);
      if (!edges) return null;
      loops.push({ body, edges });
    }
  }
  return known || (areApart(loops) && loops.every((loop) => isClear(loop, areas, d))) ? loops : null;
}

/** Numbers to an edge in a frame: direction at its start, at its end, the turn, the direction of the ground. */
const FRAME = 6;

/** Null: a corner turns straight back, or an edge has no direction. */
const frames = new WeakMap<Path, Float64Array | null>();

function frameOf(path: Path): Float64Array | null {
  const known = frames.get(path);
  if (known !== undefined) return known;
  const made = makeFrame(path.edges);
  frames.set(path, made);
  return made;
}

function makeFrame(edges: readonly Edge[]): Float64Array | null {
  const count = edges.length;
  const frame = new Float64Array(count * FRAME);
  for (let i = 0; i < count; i++) {
    const edge = edges[i] as Edge;
    const start = tangentAt(edge, 0);
    const end = edge.kind === "line" ? start : tangentAt(edge, 1);
    frame.set(start, i * FRAME);
    frame.set(end, i * FRAME + 2);
  }
  for (let i = 0; i < count; i++) {
    const at = i * FRAME;
    const next = ((i + 1) % count) * FRAME;
    const ux = frame[at + 2] as number;
    const uy = frame[at + 3] as number;
    const vx = frame[next] as number;
    const vy = frame[next + 1] as number;
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    if (!(Math.PI - Math.abs(turn) > OFFSET_JOINT)) return null;
    frame[at + 4] = turn;
    frame[at + 5] = Math.atan2(-ux, uy);
  }
  return frame;
}

/** Where the edges' ends lie while a loop is made: from x, y, to x, y of each as moved, and as they are left. */
let moved = new Float64Array(0);
let left = new Float64Array(0);

/** Stage 1. */
function loopAlong(path: Path, d: number): Edge[] | null {
  const { edges } = path;
  const frame = path.closed && edges.length > 1 ? frameOf(path) : null;
  if (!frame || !moveEnds(edges, frame, d)) return null;
  for (let i = 0; i < edges.length; i++) if (!meetAtCorner(edges, frame, d, i)) return null;
  for (let i = 0; i < edges.length; i++) if (!isLeft(edges[i] as Edge, frame, i)) return null;
  return loopEdges(edges, frame, d);
}

/** Writes the ends of the moved edges; false where an arc has no room. */
function moveEnds(edges: readonly Edge[], frame: Float64Array, d: number): boolean {
  const count = edges.length;
  if (moved.length < count * 4) {
    moved = new Float64Array(count * 4);
    left = new Float64Array(count * 4);
  }
  for (let i = 0; i < count; i++) {
    const edge = edges[i] as Edge;
    if (edge.kind === "arc") {
      const radius = movedRadius(edge.radius, edge.sweep, d);
      if (radius <= SAME_POINT || radius * Math.abs(edge.sweep) <= 2 * OFFSET_JOINT) return false;
    }
    const at = i * FRAME;
    const to = i * 4;
    moved[to] = edge.from[0] + (frame[at + 1] as number) * d;
    moved[to + 1] = edge.from[1] - (frame[at] as number) * d;
    moved[to + 2] = edge.to[0] + (frame[at + 3] as number) * d;
    moved[to + 3] = edge.to[1] - (frame[at + 2] as number) * d;
  }
  for (let k = 0; k < count * 4; k++) left[k] = moved[k] as number;
  return true;
}

function movedRadius(radius: number, sweep: number, d: number): number {
  return sweep > 0 ? radius + d : radius - d;
}

/** Whether edges turn so little at a corner that their moved ends are one. */
function goesStraightOn(turn: number, d: number): boolean {
  return Math.abs(turn) * d <= OFFSET_JOINT / 10;
}

/** Sets the ends of edge `i` and of the next at the corner between them; false where they do not simply meet. */
function meetAtCorner(edges: readonly Edge[], frame: Float64Array, d: number, i: number): boolean {
  const j = i + 1 === edges.length ? 0 : i + 1;
  const turn = frame[i * FRAME + 4] as number;
  if (goesStraightOn(turn, d)) {
    // Of two places a rounding error apart the one that comes first stands for both.
    const [from, into] = j > i ? [i * 4 + 2, j * 4] : [j * 4, i * 4 + 2];
    left[into] = left[from] as number;
    left[into + 1] = left[from + 1] as number;
    return true;
  }
  if (turn > 0) return turn * d > 2 * OFFSET_JOINT;
  if ((edges[i] as Edge).kind === "arc" || (edges[j] as Edge).kind === "arc") return false;
  const a = Math.min(i, j) * 4;
  const b = Math.max(i, j) * 4;
  const ax = moved[a] as number;
  const ay = moved[a + 1] as number;
  const bx = moved[b] as number;
  const by = moved[b + 1] as number;
  const ux = (moved[a + 2] as number) - ax;
  const uy = (moved[a + 3] as number) - ay;
  const vx = (moved[b + 2] as number) - bx;
  const vy = (moved[b + 3] as number) - by;
  const t = ((bx - ax) * vy - (by - ay) * vx) / (ux * vy - uy * vx);
  if (!(t > 0 && t < 1)) return false;
  left[i * 4 + 2] = ax + ux * t;
  left[i * 4 + 3] = ay + uy * t;
  left[j * 4] = ax + ux * t;
  left[j * 4 + 1] = ay + uy * t;
  return true;
}

/** Whether something is left of a line, and its ends lie well inside the moved one wherever it was cut. */
function isLeft(edge: Edge, frame: Float64Array, i: number): boolean {
  if (edge.kind === "arc") return true;
  const ux = frame[i * FRAME] as number;
  const uy = frame[i * FRAME + 1] as number;
  const along = (array: Float64Array, at: number) =>
    (array[i * 4 + at] as number) * ux + (array[i * 4 + at + 1] as number) * uy;
  const from = along(left, 0);
  const to = along(left, 2);
  const before = from - along(moved, 0);
  const after = along(moved, 2) - to;
  return to - from > 2 * OFFSET_JOINT && before >= -OFFSET_JOINT && after >= -OFFSET_JOINT;
}

function loopEdges(edges: readonly Edge[], frame: Float64Array, d: number): Edge[] {
  const count = edges.length;
  const made: Edge[] = [];
  const first: Point = [left[0] as number, left[1] as number];
  let from = first;
  for (let i = 0; i < count; i++) {
    const edge = edges[i] as Edge;
    const isLast = i + 1 === count;
    const turn = frame[i * FRAME + 4] as number;
    const hasArc = turn > 0 && !goesStraightOn(turn, d);
    const to: Point = isLast && !hasArc ? first : [left[i * 4 + 2] as number, left[i * 4 + 3] as number];
    if (edge.kind === "line") made.push({ kind: "line", from, to });
    else made.push(movedArc(edge, i, d, from, to));
    from = to;
    if (!hasArc) continue;
    const next: Point = isLast ? first : [left[i * 4 + 4] as number, left[i * 4 + 5] as number];
    const startAngle = frame[i * FRAME + 5] as number;
    made.push({ kind: "arc", from, to: next, center: edge.to, radius: d, startAngle, sweep: turn });
    from = next;
  }
  return made;
}

function movedArc(edge: ArcEdge, i: number, d: number, from: Point, to: Point): Edge {
  const { center, radius, startAngle, sweep } = edge;
  const arc: ArcEdge = {
    kind: "arc",
    from: [moved[i * 4] as number, moved[i * 4 + 1] as number],
    to: [moved[i * 4 + 2] as number, moved[i * 4 + 3] as number],
    center,
    radius: movedRadius(radius, sweep, d),
    startAngle,
    sweep,
  };
  return withEnds(arc, from, to);
}

/** Stage 2: whether pieces meet only where one follows the other. */
function areApart(loops: readonly WholeLoop[]): boolean {
  const pieces: Edge[] = [];
  const starts: number[] = [];
  const ends: number[] = [];
  for (const { edges } of loops) {
    const start = pieces.length;
    for (const edge of edges) {
      pieces.push(edge);
      starts.push(start);
      ends.push(start + edges.length - 1);
    }
  }
  const boxes = new Float64Array(pieces.length * 4);
  for (let i = 0; i < pieces.length; i++) writeEdgeBounds(pieces[i] as Edge, boxes, i);
  const tree = new OrderTree(boxes);
  let apart = true;
  for (let i = 0; apart && i < pieces.length; i++) {
    tree.visitAfter(i, (j) => {
      if (j === i + 1 && starts[j] === starts[i]) return;
      if (i === starts[j] && j === ends[i]) return;
      if (apart && meetings(pieces[i] as Edge, pieces[j] as Edge).length > 0) apart = false;
    });
  }
  return apart;
}

/** Whether a position of the loop has no water nearer than it should, nor lies under that of another body. */
function isClear({ body, edges }: WholeLoop, areas: readonly Area[], d: number): boolean {
  const p = pointAt(edges[0] as Edge, 0.5);
  for (let i = 0; i < areas.length; i++) {
    const area = areas[i] as Area;
    if (i !== body && contains(area, p)) return false;
    for (const path of [area.outer, ...area.holes])
      if (nearestEdge(edgeTree(path), p, d - OFFSET_KEEP) >= 0) return false;
  }
  return true;
}
