/**
 * The most likely places of points that more distances were taped to than it takes.
 *
 * Terms. Residual: the distance as taped less the distance between the places found. Slip: one distance that is far off,
 * a misread foot; it must not drag its neighbors along. Tape: how far a good distance may be off.
 *
 * Stages. 1. Start from places that are about right. 2. Solve the linear least squares of small moves; a distance with a
 * residual beyond the tape counts for less, in proportion (Huber's weights), so a slip stays in its own residual. 3. Moves
 * that make things better are taken; moves that do not, near the line of the stakes, are shortened and tried again.
 */
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";

/** A distance taped from point number `of` to a fixed place or to another point. */
export interface Taped {
  readonly of: number;
  readonly to: Point | number;
  readonly length: number;
}

const MOST_ROUNDS = 60;
/** Places that move by less than this, inches, have settled. */
const SETTLED = 1e-6;
/** Keeps a point that lies on the line of its two stakes from being thrown far along the direction that nothing holds. */
const LEAST_DAMPING = 1e-6;

/** Adjusted places, inches; as many as `starts`. `tape`: inches, above zero. Never worse than `starts`. */
export function adjust(starts: readonly Point[], taped: readonly Taped[], tape: number): Point[] {
  let places: readonly Point[] = starts;
  let misfit = misfitOf(places, taped, tape);
  let damping = LEAST_DAMPING;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const moved = smallMoves(places, taped, tape, damping);
    const farthest = Math.max(...moved.map((place, i) => distanceBetween(place, places[i] as Point)));
    const then = misfitOf(moved, taped, tape);
    const isBetter = then < misfit;
    if (isBetter) [places, misfit] = [moved, then];
    if (farthest <= SETTLED) break;
    damping = isBetter ? Math.max(LEAST_DAMPING, damping / 100) : damping * 10;
  }
  return [...places];
}

function at(places: readonly Point[], place: Point | number): Point {
  return typeof place === "number" ? (places[place] as Point) : place;
}

/** Huber's sum: squares up to the tape, in proportion beyond it. */
function misfitOf(places: readonly Point[], taped: readonly Taped[], tape: number): number {
  return taped.reduce((sum, { of, to, length }) => {
    const size = Math.abs(length - distanceBetween(at(places, of), at(places, to)));
    return sum + (size <= tape ? (size * size) / 2 : tape * (size - tape / 2));
  }, 0);
}

/** The places after one round of linear least squares. */
function smallMoves(places: readonly Point[], taped: readonly Taped[], tape: number, damping: number): Point[] {
  const right = Matrix.zeros(2 * places.length, 1);
  for (const one of taped) {
    const { weight, residual, slopes } = slopesOf(places, one, tape);
    for (const [row, slope] of slopes) add(right, row, 0, weight * residual * slope);
  }
  const moves = new CholeskyDecomposition(normalOf(places, taped, tape, damping)).solve(right);
  return places.map(([x, y], i): Point => [x + moves.get(2 * i, 0), y + moves.get(2 * i + 1, 0)]);
}

function normalOf(places: readonly Point[], taped: readonly Taped[], tape: number, damping: number): Matrix {
  const size = 2 * places.length;
  const normal = Matrix.eye(size, size, damping);
  for (const one of taped) {
    const { weight, slopes } = slopesOf(places, one, tape);
    for (const [row, slope] of slopes) {
      for (const [column, other] of slopes) add(normal, row, column, weight * (slope * other));
    }
  }
  return normal;
}

interface Slopes {
  readonly weight: number;
  readonly residual: number;
  /** How the distance changes with each coordinate that it depends on, by that one's row. */
  readonly slopes: readonly (readonly [row: number, slope: number])[];
}

function slopesOf(places: readonly Point[], { of, to, length }: Taped, tape: number): Slopes {
  const [p, q] = [at(places, of), at(places, to)];
  const apart = distanceBetween(p, q);
  const residual = length - apart;
  const weight = 1 / Math.max(1, Math.abs(residual) / tape);
  if (apart === 0) return { weight, residual, slopes: [] };
  const [x, y] = [(p[0] - q[0]) / apart, (p[1] - q[1]) / apart];
  const mine = [
    [2 * of, x],
    [2 * of + 1, y],
  ] as const;
  const slopes = typeof to === "number" ? [...mine, [2 * to, -x] as const, [2 * to + 1, -y] as const] : mine;
  return { weight, residual, slopes };
}

function add(matrix: Matrix, row: number, column: number, value: number): void {
  matrix.set(row, column, matrix.get(row, column) + value);
}
