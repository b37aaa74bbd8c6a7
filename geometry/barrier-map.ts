/**
 * What barriers leave free: their pieces with the covered sides, and the free ground round every corner.
 *
 * Stages. 1. barrier-lines.ts cuts all barriers into pieces that meet only at corners. 2. Each side of each piece is
 * probed: covered when it lies inside a solid. A piece covered on both sides lies inside the union of the solids and is
 * dropped. 3. Round each corner the pieces that leave it, in order of angle, part the ground into sectors; a sector is
 * free when neither piece beside it covers it.
 *
 * Terms. Sector: the ground between two neighboring pieces at a corner. A path that touches the corner stays within one
 * sector (its two pieces included), so nothing leaks where two walls share just a corner. Turning corner: a free sector
 * of more than a half turn, the only kind round which a taut path bends.
 */
import { barrierLines } from "./barrier-lines.ts";
import { boundsOfPoints, boundsOverlap, distanceBetween } from "./points.ts";
import { RingTree } from "./ring-tree.ts";
import { ringWinding } from "./rings.ts";
import { sortBy } from "./short-lists.ts";
import { type BoxIndex, boxIndex } from "./spatial-index.ts";
import { FACE_DEPTH, SIDE_PROBE, SIGHT_SLACK, STRAIGHT_ANGLE } from "./tolerances.ts";
import type { Barrier, Bounds, Point } from "./types.ts";

export const TURN = 2 * Math.PI;

/** A piece of barrier: nothing crosses it; `leftCovered` and `rightCovered` tell on which side (from -> to) a solid lies. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly a: Point;
  readonly b: Point;
  readonly length: number;
  readonly leftCovered: boolean;
  readonly rightCovered: boolean;
}

/** Free ground round a corner, counter-clockwise from the piece at `start` through `span` radians (a full turn at the end of a thin wall). */
export interface Sector {
  readonly corner: number;
  readonly at: Point;
  readonly start: number;
  readonly span: number;
  readonly startLength: number;
  readonly endLength: number;
}

export interface Solid {
  readonly points: readonly Point[];
  readonly bounds: Bounds;
  /** Of a solid with many corners. */
  readonly tree: RingTree | null;
}

export interface BarrierMap {
  readonly corners: readonly Point[];
  readonly pieces: readonly Piece[];
  /** Free sectors of each corner. */
  readonly sectors: readonly (readonly Sector[])[];
  /** Those round which a path can bend. */
  readonly turning: readonly Sector[];
  readonly solids: readonly Solid[];
  /** Numbers of the pieces whose boxes touch a box. */
  readonly piecesIn: (box: Bounds) => Iterable<number>;
  /** True where a plain run through all pieces is quicker than asking for those in a box. */
  readonly hasFewPieces: boolean;
}

/** Below this many pieces a plain run through all of them is quicker than a tree. */
const FEW_PIECES = 48;

/** Up to so many corners a plain run round a solid is quicker than a tree. */
const FEW_CORNERS = 16;

const maps = new WeakMap<readonly Barrier[], BarrierMap>();

/** The map of a list of barriers; kept for as long as the list lives. */
export function barrierMap(barriers: readonly Barrier[]): BarrierMap {
  const known = maps.get(barriers);
  if (known) return known;
  const built = buildMap(barriers);
  maps.set(barriers, built);
  return built;
}

function buildMap(barriers: readonly Barrier[]): BarrierMap {
  const { corners, pieces: pairs } = barrierLines(barriers);
  const solids = barriers
    .filter((barrier) => barrier.shape === "solid" && barrier.points.length > 2)
    .map(({ points }): Solid => {
      return {
        points,
        bounds: boundsOfPoints(points),
        tree: points.length > FEW_CORNERS ? new RingTree(points) : null,
      };
    });
  const pieces: Piece[] = [];
  for (const [from, to] of pairs) {
    const piece = pieceBetween(from, to, corners, solids);
    if (!piece.leftCovered || !piece.rightCovered) pieces.push(piece);
  }
  const sectors = sectorsOf(corners, pieces);
  const turning = sectors.flat().filter((sector) => sector.span > Math.PI + STRAIGHT_ANGLE);
  return {
    corners,
    pieces,
    sectors,
    turning,
    solids,
    piecesIn: pieceFinder(pieces),
    hasFewPieces: pieces.length <= FEW_PIECES,
  };
}

function pieceFinder(pieces: readonly Piece[]): (box: Bounds) => Iterable<number> {
  const boxes = pieces.map((piece) => boundsOfPoints([piece.a, piece.b]));
  if (boxes.length > FEW_PIECES) {
    const index: BoxIndex = boxIndex(boxes);
    return (box) => index.search(box);
  }
  return (box) => {
    const found: number[] = [];
    for (let i = 0; i < boxes.length; i++) if (boundsOverlap(box, boxes[i] as Bounds)) found.push(i);
    return found;
  };
}

function pieceBetween(from: number, to: number, corners: readonly Point[], solids: BarrierMap["solids"]): Piece {
  const a = corners[from] as Point;
  const b = corners[to] as Point;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.hypot(dx, dy);
  const x = (a[0] + b[0]) / 2;
  const y = (a[1] + b[1]) / 2;
  const sideX = (-dy / length) * SIDE_PROBE;
  const sideY = (dx / length) * SIDE_PROBE;
  return {
    from,
    to,
    a,
    b,
    length,
    leftCovered: insideAnySolid(solids, [x + sideX, y + sideY]),
    rightCovered: insideAnySolid(solids, [x - sideX, y - sideY]),
  };
}

/** True when `p` lies inside a solid (nonzero winding, so that a footprint that overlaps itself has no hole). */
export function insideAnySolid(solids: BarrierMap["solids"], p: Point): boolean {
  return solids.some(
    ({ points, bounds, tree }) =>
      p[0] > bounds.minX &&
      p[0] < bounds.maxX &&
      p[1] > bounds.minY &&
      p[1] < bounds.maxY &&
      (tree ? tree.windingRound(p[0], p[1]) : ringWinding(points, p)) !== 0,
  );
}

function sectorsOf(corners: readonly Point[], pieces: readonly Piece[]): Sector[][] {
  const leaving = corners.map((): { angle: number; length: number; left: boolean; right: boolean }[] => []);
  for (const piece of pieces) {
    const angle = Math.atan2(piece.b[1] - piece.a[1], piece.b[0] - piece.a[0]);
    const { length, leftCovered: left, rightCovered: right } = piece;
    leaving[piece.from]?.push({ angle, length, left, right });
    leaving[piece.to]?.push({ angle: angle > 0 ? angle - Math.PI : angle + Math.PI, length, left: right, right: left });
  }
  return leaving.map((around, corner) => {
    sortBy(around, ({ angle }) => angle);
    const free: Sector[] = [];
    around.forEach((first, i) => {
      const next = around[(i + 1) % around.length];
      if (!next || first.left || next.right) return;
      const span = i + 1 < around.length ? next.angle - first.angle : next.angle - first.angle + TURN;
      const at = corners[corner] as Point;
      free.push({ corner, at, start: first.angle, span, startLength: first.length, endLength: next.length });
    });
    return free;
  });
}

/**
 * Where a position stands among the barriers: itself when it is on free ground or on a barrier's line, the nearest point
 * of a face when it is inside a solid by no more than FACE_DEPTH, and null when it is deeper.
 */
export function freePosition(map: BarrierMap, p: Point): Point | null {
  if (!insideAnySolid(map.solids, p)) return p;
  let best = Number.POSITIVE_INFINITY;
  let nearest: Point = p;
  const margin = FACE_DEPTH;
  const box = { minX: p[0] - margin, minY: p[1] - margin, maxX: p[0] + margin, maxY: p[1] + margin };
  for (const i of map.piecesIn(box)) {
    const { a, b, length } = map.pieces[i] as Piece;
    const dx = (b[0] - a[0]) / length;
    const dy = (b[1] - a[1]) / length;
    const along = Math.min(length, Math.max(0, (p[0] - a[0]) * dx + (p[1] - a[1]) * dy));
    const foot: Point = along === length ? b : [a[0] + dx * along, a[1] + dy * along];
    const gap = Math.hypot(foot[0] - p[0], foot[1] - p[1]);
    if (gap < best) {
      best = gap;
      nearest = foot;
    }
  }
  if (best <= SIGHT_SLACK) return p;
  return best <= FACE_DEPTH ? nearest : null;
}

/** Where a position touches a barrier: the free directions round it, as sectors; null on free ground. */
export function freeDirectionsAt(map: BarrierMap, p: Point): readonly { start: number; span: number }[] | null {
  const box = {
    minX: p[0] - SIGHT_SLACK,
    minY: p[1] - SIGHT_SLACK,
    maxX: p[0] + SIGHT_SLACK,
    maxY: p[1] + SIGHT_SLACK,
  };
  for (const i of map.piecesIn(box)) {
    const { from, to, a, b, length, leftCovered, rightCovered } = map.pieces[i] as Piece;
    if (distanceBetween(a, p) <= SIGHT_SLACK) return map.sectors[from] ?? [];
    if (distanceBetween(b, p) <= SIGHT_SLACK) return map.sectors[to] ?? [];
    const dx = (b[0] - a[0]) / length;
    const dy = (b[1] - a[1]) / length;
    const along = (p[0] - a[0]) * dx + (p[1] - a[1]) * dy;
    const across = (p[1] - a[1]) * dx - (p[0] - a[0]) * dy;
    if (Math.abs(across) > SIGHT_SLACK || along < 0 || along > length) continue;
    const angle = Math.atan2(dy, dx);
    const free: { start: number; span: number }[] = [];
    if (!leftCovered) free.push({ start: angle, span: Math.PI });
    if (!rightCovered) free.push({ start: angle + Math.PI, span: Math.PI });
    return free;
  }
  return null;
}
