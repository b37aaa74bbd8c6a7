/**
 * The ground a wall stands on: its centerline with half the thickness on each side, butt ends, mitred joins.
 *
 * Terms. Side: the chain of edges half a thickness to the left (+) or right (-) of the centerline. At a corner one side
 * is outer, the other inner.
 *
 * Stages. 1. Every edge is moved to the side; a line stays a line, an arc keeps its center. 2. At an outer corner the
 * ends are carried on straight to the miter point (cut off flat beyond WALL_MITER_LIMIT), at an inner corner both edges
 * are trimmed where they cross. 3. The sides and the butt ends make one outline, or two for a closed wall: true arcs
 * throughout. 4. Where that fails (edges shorter than the wall is thick, a wall that crosses itself) the strips of the
 * edges are united instead (wall-strips.ts): the same ground, its arcs drawn by chords within FINE_FLATTEN_TOLERANCE.
 */
import { lineEdge, movedSideways, nearestOnEdge, partOfEdge } from "./edge.ts";
import { crossings } from "./edge-crossings.ts";
import { areaOfPaths, pathOfEdges, reversePath, signedArea } from "./outline.ts";
import { distanceBetween, samePoint } from "./points.ts";
import { findPathCrossing } from "./self-crossing.ts";
import type { Area, Edge, Path, Point } from "./types.ts";
import { cornerOf } from "./wall-corner.ts";
import { unitedStrips } from "./wall-strips.ts";

/** The footprint of a wall of `thickness` inches (above 0) along `path`. A closed path gives a ring with a hole. */
export function wallFootprint(path: Path, thickness: number): Area {
  if (!(thickness > 0)) throw new RangeError(`a wall's thickness has to be above 0 in., not ${thickness}`);
  return exactFootprint(path, thickness / 2) ?? unitedStrips(path, thickness / 2);
}

function exactFootprint(path: Path, half: number): Area | null {
  const left = sideOf(path, half);
  const right = sideOf(path, -half);
  if (!left || !right) return null;
  if (path.closed) return closedFootprint(pathOfEdges(left, true), pathOfEdges(right, true));
  const back = reversePath(pathOfEdges(right, false)).edges;
  const ends = [lineEdge(lastOf(left).to, firstOf(back).from), lineEdge(lastOf(back).to, firstOf(left).from)] as const;
  const outline = pathOfEdges([...left, ends[0], ...back, ends[1]], true);
  return findPathCrossing(outline) ? null : areaOfPaths(outline);
}

function closedFootprint(left: Path, right: Path): Area | null {
  if (findPathCrossing(left) || findPathCrossing(right)) return null;
  if (signedArea(left) > 0 !== signedArea(right) > 0) return null;
  const leftIsOuter = Math.abs(signedArea(left)) > Math.abs(signedArea(right));
  return leftIsOuter ? areaOfPaths(left, [right]) : areaOfPaths(right, [left]);
}

function firstOf(edges: readonly Edge[]): Edge {
  return edges[0] as Edge;
}

function lastOf(edges: readonly Edge[]): Edge {
  return edges[edges.length - 1] as Edge;
}

/** An edge moved to the side, with what the corners at its two ends leave of it. */
interface SidePiece {
  readonly edge: Edge;
  /** Shares of the moved edge that remain. */
  start: number;
  end: number;
  /** Where the piece starts and ends; a line may be carried on beyond its own ends. */
  head: Point;
  tail: Point;
  /** Positions between this piece's end and the next one's start. */
  bridge: Point[];
}

function sideOf(path: Path, offset: number): Edge[] | null {
  const pieces: SidePiece[] = [];
  for (const edge of path.edges) {
    const moved = movedSideways(edge, offset);
    if (!moved) return null;
    pieces.push({ edge: moved, start: 0, end: 1, head: moved.from, tail: moved.to, bridge: [] });
  }
  const corners = path.closed ? pieces.length : pieces.length - 1;
  for (let i = 0; i < corners; i++) {
    const next = (i + 1) % pieces.length;
    const corner = { before: path.edges[i] as Edge, after: path.edges[next] as Edge };
    if (!join(pieces[i] as SidePiece, pieces[next] as SidePiece, corner, offset)) return null;
  }
  return edgesOf(pieces, path.closed);
}

function join(one: SidePiece, other: SidePiece, at: { before: Edge; after: Edge }, offset: number): boolean {
  const corner = cornerOf(at.before, at.after, offset);
  if (corner.kind === "smooth") {
    other.head = one.tail;
    return true;
  }
  if (corner.kind === "outer") {
    const [miter] = corner.over;
    if (miter && one.edge.kind === "line") one.tail = miter;
    if (miter && other.edge.kind === "line") other.head = miter;
    one.bridge = corner.over.filter((p) => p !== one.tail && p !== other.head);
    return true;
  }
  const vertex = at.before.to;
  const [met] = crossings(one.edge, other.edge).sort((a, b) => distanceBetween(a, vertex) - distanceBetween(b, vertex));
  if (!met) return false;
  one.end = nearestOnEdge(one.edge, met).t;
  other.start = nearestOnEdge(other.edge, met).t;
  one.tail = met;
  other.head = met;
  return true;
}

function edgesOf(pieces: readonly SidePiece[], closed: boolean): Edge[] | null {
  const edges: Edge[] = [];
  for (const [i, piece] of pieces.entries()) {
    if (piece.start >= piece.end) return null;
    edges.push({ ...partOfEdge(piece.edge, piece.start, piece.end), from: piece.head, to: piece.tail });
    const next = i + 1 < pieces.length ? pieces[i + 1] : closed ? pieces[0] : undefined;
    if (!next) continue;
    const stops = [piece.tail, ...piece.bridge, next.head];
    for (let k = 0; k + 1 < stops.length; k++) {
      const [from, to] = [stops[k] as Point, stops[k + 1] as Point];
      if (!samePoint(from, to)) edges.push(lineEdge(from, to));
    }
  }
  return edges;
}
