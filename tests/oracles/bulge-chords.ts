/**
 * An independent reading of bulges, by halving: the middle of an arc lies off the middle of its chord by bulge times half
 * the chord, to the right of travel for a positive bulge, and both halves have bulge b / (1 + sqrt(1 + b * b)). No
 * center, radius or angle is involved, so a mistake in those cannot hide here.
 */
import type { PathData, Point } from "../../geometry/types.ts";

/** Positions on the path, every arc halved until its chords are within `tolerance` inches of it. Closed: first not repeated. */
export function chordsOf(data: PathData, tolerance: number): Point[] {
  return piecesOf(data, tolerance, (from, _to, _bulge, into) => into.push(from));
}

/**
 * The same from the other side of each arc: where the tangents at the ends of its pieces meet. The tangents of half a
 * circle never do, so an arc has at least two pieces.
 */
export function tangentsOf(data: PathData, tolerance: number): Point[] {
  return piecesOf(data, tolerance, (from, to, bulge, into) => {
    into.push(from);
    if (bulge === 0) return;
    const apex = bulge / (1 - bulge * bulge);
    into.push([(from[0] + to[0]) / 2 + (to[1] - from[1]) * apex, (from[1] + to[1]) / 2 - (to[0] - from[0]) * apex]);
  });
}

type Piece = (from: Point, to: Point, bulge: number, into: Point[]) => void;

function piecesOf(data: PathData, tolerance: number, piece: Piece): Point[] {
  const points: Point[] = [];
  const { vertices, closed } = data;
  const edges = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < edges; i++) {
    const [x, y, bulge = 0] = vertices[i] as readonly [number, number, number?];
    const next = vertices[(i + 1) % vertices.length] as readonly number[];
    halve([x, y], [next[0] as number, next[1] as number], bulge, tolerance, points, piece);
  }
  const last = vertices[vertices.length - 1];
  if (!closed && last) points.push([last[0], last[1]]);
  return points;
}

function halve(from: Point, to: Point, bulge: number, tolerance: number, into: Point[], piece: Piece): void {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  if (Math.abs(bulge) <= 0.5 && Math.abs(bulge) * Math.sqrt(dx * dx + dy * dy) * 0.5 <= tolerance) {
    piece(from, to, bulge, into);
    return;
  }
  const middle: Point = [(from[0] + to[0]) / 2 + (bulge * dy) / 2, (from[1] + to[1]) / 2 - (bulge * dx) / 2];
  const half = bulge / (1 + Math.sqrt(1 + bulge * bulge));
  halve(from, middle, half, tolerance, into, piece);
  halve(middle, to, half, tolerance, into, piece);
}

/** Length of a polyline, inches. */
export function polylineLength(points: readonly Point[], closed: boolean): number {
  let sum = 0;
  for (let i = closed ? 0 : 1; i < points.length; i++) {
    const a = points[(i + points.length - 1) % points.length] as Point;
    const b = points[i] as Point;
    sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

/** Distance from a position to a polyline, inches. */
export function toPolyline(p: Point, points: readonly Point[], closed: boolean): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = closed ? 0 : 1; i < points.length; i++) {
    const a = points[(i + points.length - 1) % points.length] as Point;
    const b = points[i] as Point;
    best = Math.min(best, toSegment(p, a, b));
  }
  return best;
}

function toSegment(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared));
  return Math.hypot(p[0] - a[0] - dx * t, p[1] - a[1] - dy * t);
}
