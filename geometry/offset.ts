/**
 * Offset curves: everything exactly `d` inches from the nearest water, on lines and true arcs.
 *
 * Stages. 0. Where no piece is lost but at corners toward the ground, the curve follows the outline (offset-whole.ts). Else:
 * 1. Candidates (offset-pieces.ts): every edge moved to its ground side, and an arc round every convex corner.
 * 2. Candidates are cut wherever they meet each other (offset-meetings.ts); the distance to the water passes `d` nowhere
 * else, so each part is wholly right or wholly wrong, and so is a run of pieces joined without a cut: one of a run is
 * tried. 3. Parts with something nearer than `d`, or under the water of another body, are left out. 4. The rest is chained
 * by the nodes recorded at the cuts (offset-chain.ts). 5. Where pieces are left over, the result is compared with a finely
 * clipped polygon, and where it differs that polygon is given instead, marked `exact: false`.
 *
 * Loops run with the water to their left: counter-clockwise round bodies, clockwise round ground (islands, pockets).
 */

import { offsetRegion, regionArea } from "./clipping.ts";
import { contains } from "./contains.ts";
import { edgeLength, partOfEdge, pointAt } from "./edge.ts";
import { edgeTree } from "./edge-tree.ts";
import { nearestEdge } from "./nearest-edge.ts";
import { chainLinks, type Link } from "./offset-chain.ts";
import { meetings } from "./offset-meetings.ts";
import { type OffsetNodes, type OffsetPiece, offsetNodes, offsetPieces, withEnds } from "./offset-pieces.ts";
import { wholeOffset } from "./offset-whole.ts";
import { OrderTree } from "./order-tree.ts";
import { flattenArea, pathFrom, pathLength, pathOfEdges, signedArea } from "./outline.ts";
import { sortBy } from "./short-lists.ts";
import { FINE_FLATTEN_TOLERANCE, OFFSET_JOINT, OFFSET_KEEP, OFFSET_LEFTOVER } from "./tolerances.ts";
import type { Area, Edge, Path, Point } from "./types.ts";

export interface OffsetLoop {
  readonly path: Path;
  /** Numbers (in the areas given) of the bodies whose outline this loop follows, ascending. */
  readonly bodies: readonly number[];
  /** Square inches: positive round bodies, negative round ground. */
  readonly area: number;
}

export interface OffsetCurves {
  readonly loops: readonly OffsetLoop[];
  /** False where the exact construction failed and the loops are fine polygons (1/1024 in.) instead. */
  readonly exact: boolean;
}

/**
 * The curves at `d` inches (> 0) from the union of the areas, on the ground: outside all of them and inside islands.
 * Loops are in the order of the outlines they start on.
 */
export function offsetCurves(areas: readonly Area[], d: number): OffsetCurves {
  if (!(d > 0) || !Number.isFinite(d)) throw new Error(`an offset must be a distance above 0, not ${d}`);
  const first = areas[0];
  if (!first) return { loops: [], exact: true };
  const known = made.get(first) ?? [];
  let wholeFarther = false;
  for (const one of known) {
    if (!sameAreas(one.areas, areas)) continue;
    if (one.d === d) return one.curves;
    if (one.d > d && one.curves.whole) wholeFarther = true;
  }
  const curves = wholeCurves(areas, d, wholeFarther) ?? makeCurves(areas, d);
  made.set(first, [...known.slice(1 - KEPT_CURVES), { areas: [...areas], d, curves }]);
  return curves;
}

interface MadeCurves extends OffsetCurves {
  /** No piece was lost on the way: nothing is at smaller distances either. */
  readonly whole: boolean;
}

/** The last few curves by the first of their areas: rings, bands and rolls ask for the same distances again. */
const made = new WeakMap<
  Area,
  { readonly areas: readonly Area[]; readonly d: number; readonly curves: MadeCurves }[]
>();
const KEPT_CURVES = 12;

function sameAreas(a: readonly Area[], b: readonly Area[]): boolean {
  return a.length === b.length && a.every((area, i) => area === b[i]);
}

/** Stage 0; null where pieces are lost. `known`: they are whole at a greater distance. */
function wholeCurves(areas: readonly Area[], d: number, known: boolean): MadeCurves | null {
  const whole = wholeOffset(areas, d, known);
  if (!whole) return null;
  const loops: OffsetLoop[] = [];
  for (const { edges, body } of whole) {
    const path = pathOfEdges(edges, true);
    if (isLong(edges)) loops.push({ path, bodies: [body], area: signedArea(path) });
  }
  return { loops, exact: true, whole: true };
}

function isLong(edges: readonly Edge[]): boolean {
  let length = 0;
  for (let i = 0; length <= OFFSET_LEFTOVER && i < edges.length; i++) length += edgeLength(edges[i] as Edge);
  return length > OFFSET_LEFTOVER;
}

function makeCurves(areas: readonly Area[], d: number): MadeCurves {
  const parts = candidateParts(areas, d);
  let { loops, leftover } = chainLinks(parts(false));
  if (leftover > OFFSET_LEFTOVER) ({ loops, leftover } = chainLinks(parts(true)));
  const exact = loops.map(loopOf).filter((loop): loop is OffsetLoop => loop !== null);
  if (leftover <= OFFSET_LEFTOVER || agrees(exact, areas, d)) return { loops: exact, exact: true, whole: false };
  return { loops: clippedLoops(areas, d), exact: false, whole: false };
}

interface Cut {
  readonly along: number;
  readonly node: number;
}

/** The cuts of pieces that meet others, by number of piece; and whether something meets a piece at its start or its end. */
interface Cuts {
  readonly lists: readonly (readonly Cut[] | undefined)[];
  readonly startMet: Uint8Array;
  readonly endMet: Uint8Array;
}

/** Stage 2. `starts` and `ends`: the nodes of the pieces before anything is cut. */
function cutsOf(pieces: readonly OffsetPiece[], nodes: OffsetNodes, starts: Int32Array, ends: Int32Array): Cuts {
  const lists: (Cut[] | undefined)[] = new Array(pieces.length).fill(undefined);
  const startMet = new Uint8Array(pieces.length);
  const endMet = new Uint8Array(pieces.length);
  const boxes = new Float64Array(pieces.length * 4);
  for (let i = 0; i < pieces.length; i++) {
    const { bounds } = pieces[i] as OffsetPiece;
    boxes[i * 4] = bounds.minX;
    boxes[i * 4 + 1] = bounds.minY;
    boxes[i * 4 + 2] = bounds.maxX;
    boxes[i * 4 + 3] = bounds.maxY;
  }
  const cut = (i: number, along: number, node: number): void => {
    const piece = pieces[i] as OffsetPiece;
    let list = lists[i];
    if (!list) {
      list = [
        { along: 0, node: piece.startNode },
        { along: piece.length, node: piece.endNode },
      ];
      lists[i] = list;
    }
    list.push({ along, node });
    if (along <= OFFSET_JOINT) startMet[i] = 1;
    if (piece.length - along <= OFFSET_JOINT) endMet[i] = 1;
  };
  const tree = new OrderTree(boxes);
  for (let i = 0; i < pieces.length; i++) {
    tree.visitAfter(i, (j) => {
      // Pieces that follow each other without a turn meet only where they are joined.
      if (ends[i] === starts[j] || ends[j] === starts[i]) return;
      for (const { at, alongA, alongB } of meetings((pieces[i] as OffsetPiece).edge, (pieces[j] as OffsetPiece).edge)) {
        const node = nodes.add(at);
        cut(i, alongA, node);
        cut(j, alongB, node);
      }
    });
  }
  for (let i = 0; i < pieces.length; i++) {
    const list = lists[i];
    const piece = pieces[i] as OffsetPiece;
    if (!list) {
      if (piece.length <= OFFSET_JOINT) nodes.join(piece.startNode, piece.endNode);
      continue;
    }
    sortBy(list, ({ along }) => along);
    for (let k = 1; k < list.length; k++) {
      const [before, here] = [list[k - 1] as Cut, list[k] as Cut];
      if (here.along - before.along <= OFFSET_JOINT) nodes.join(before.node, here.node);
    }
  }
  return { lists, startMet, endMet };
}

/** Stages 2 and 3. */
function candidateParts(areas: readonly Area[], d: number): (each: boolean) => Link[] {
  const nodes = offsetNodes();
  const pieces = offsetPieces(areas, d, nodes);
  const starts = Int32Array.from(pieces, (piece) => nodes.find(piece.startNode));
  const ends = Int32Array.from(pieces, (piece) => nodes.find(piece.endNode));
  const { lists, startMet, endMet } = cutsOf(pieces, nodes, starts, ends);
  const clear = clearOf(areas, d - OFFSET_KEEP);
  const isRight = (edge: Edge, body: number): boolean => {
    const middle = pointAt(edge, 0.5);
    return clear(middle) && !inOtherWater(middle, body, areas);
  };
  return (each) => {
    const kept: Link[] = [];
    const keep = (edge: Edge, fromNode: number, toNode: number, body: number): void => {
      const from = nodes.find(fromNode);
      const to = nodes.find(toNode);
      kept.push({ edge: withEnds(edge, nodes.position(from), nodes.position(to)), from, to, body });
    };
    // Whether the part before was right; undefined where the next has to be tried by itself.
    let right: boolean | undefined;
    for (let i = 0; i < pieces.length; i++) {
      const { edge, length, body, startNode, endNode } = pieces[i] as OffsetPiece;
      const goesOn = !each && i > 0 && ends[i - 1] === starts[i] && endMet[i - 1] === 0 && startMet[i] === 0;
      if (!goesOn) right = undefined;
      const list = lists[i];
      if (!list) {
        if (length <= OFFSET_JOINT) continue;
        right ??= isRight(edge, body);
        if (right) keep(edge, startNode, endNode, body);
        continue;
      }
      for (let k = 1; k < list.length; k++) {
        const [before, here] = [list[k - 1] as Cut, list[k] as Cut];
        if (k > 1) right = undefined;
        if (here.along - before.along <= OFFSET_JOINT) continue;
        const part = partOfEdge(edge, before.along / length, Math.min(1, here.along / length));
        right ??= isRight(part, body);
        if (right) keep(part, before.node, here.node, body);
      }
    }
    return kept;
  };
}

/** A test whether a position has nothing of the outlines nearer than `limit`. */
function clearOf(areas: readonly Area[], limit: number): (p: Point) => boolean {
  const trees = areas.flatMap((area) => [area.outer, ...area.holes]).map(edgeTree);
  return (p) => {
    for (const tree of trees) if (nearestEdge(tree, p, limit) >= 0) return false;
    return true;
  };
}

function loopOf(links: readonly Link[]): OffsetLoop | null {
  const path = pathOfEdges(
    links.map((link) => link.edge),
    true,
  );
  const area = signedArea(path);
  if (pathLength(path) <= OFFSET_LEFTOVER) return null;
  return { path, bodies: [...new Set(links.map((link) => link.body))].sort((a, b) => a - b), area };
}

/** True where the water of another body lies, far from its edge, as where bodies overlap. */
function inOtherWater(p: Point, body: number, areas: readonly Area[]): boolean {
  return areas.some((area, i) => i !== body && contains(area, p));
}

/** Whether the loops enclose what the clipping engine's polygon of the same offset encloses. */
function agrees(loops: readonly OffsetLoop[], areas: readonly Area[], d: number): boolean {
  let area = 0;
  let length = 0;
  for (const loop of loops) {
    area += loop.area;
    length += pathLength(loop.path);
  }
  const clipped = regionArea(offsetRegion(flattenedWater(areas), d, FINE_FLATTEN_TOLERANCE));
  return Math.abs(area - clipped) <= 3 * FINE_FLATTEN_TOLERANCE * (length + edgeLengths(areas));
}

function edgeLengths(areas: readonly Area[]): number {
  let sum = 0;
  for (const area of areas)
    for (const path of [area.outer, ...area.holes]) for (const e of path.edges) sum += edgeLength(e);
  return sum;
}

function flattenedWater(areas: readonly Area[]) {
  return areas.flatMap((area) => flattenArea(area, FINE_FLATTEN_TOLERANCE));
}

/** Stage 5: the same loops as polygons. */
function clippedLoops(areas: readonly Area[], d: number): OffsetLoop[] {
  const region = offsetRegion(flattenedWater(areas), d, FINE_FLATTEN_TOLERANCE);
  return region.flat().map((ring) => {
    const path = pathFrom({ vertices: ring.slice(0, -1), closed: true });
    const bodies = areas.flatMap((area, body) => (followed(path, area, d) ? [body] : []));
    return { path, bodies, area: signedArea(path) };
  });
}

function followed(path: Path, area: Area, d: number): boolean {
  const near = d + 4 * FINE_FLATTEN_TOLERANCE;
  const clear = clearOf([area], near);
  return path.edges.some((edge) => !clear(edge.from));
}
