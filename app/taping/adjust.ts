/**
 * The most likely places of points that more distances were taped to than it takes.
 *
 * Terms. Residual: the distance as taped less the distance between the places found. Slip: one distance that is far off,
 * a misread foot; it must not drag its neighbors along. Tape: how far a good distance may be off.
 *
 * Stages. 1. Start from places that are about right. 2. Gauss and Newton: solve the linear least squares of small moves,
 * move, again, until nothing moves. 3. Each time, a distance with a residual beyond the tape counts for less, in
 * proportion (Huber's weights), so a slip stays in its own residual.
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

const MOST_ROUNDS = 40;
/** Places that move by less than this, inches, have settled. */
const SETTLED = 1e-7;
/** Keeps a point that lies on the line of its two stakes from being thrown far along the direction that nothing holds. */
const DAMPING = 1e-6;

/** Adjusted places, inches; as many as `starts`. `tape`: inches, above zero. */
export function adjust(starts: readonly Point[], taped: readonly Taped[], tape: number): Point[] {
  const places = starts.map(([x, y]): [number, number] => [x, y]);
  const size = 2 * places.length;
  const at = (place: Point | number): Point => (typeof place === "number" ? (places[place] as Point) : place);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const normal = Matrix.eye(size, size, DAMPING);
    const right = Matrix.zeros(size, 1);
    for (const { of, to, length } of taped) {
      const [p, q] = [at(of), at(to)];
      const apart = distanceBetween(p, q);
      if (apart === 0) continue;
      const unit: Point = [(p[0] - q[0]) / apart, (p[1] - q[1]) / apart];
      const residual = length - apart;
      const weight = 1 / Math.max(1, Math.abs(residual) / tape);
      const terms = typeof to === "number" ? [of, to] : [of];
      const side = (i: number): number => (i === of ? 1 : -1);
      for (const i of terms) {
        for (const axis of [0, 1] as const) {
          const row = 2 * i + axis;
          add(right, row, 0, weight * residual * side(i) * unit[axis]);
          for (const j of terms) {
            for (const other of [0, 1] as const) {
              add(normal, row, 2 * j + other, weight * (side(i) * side(j)) * (unit[axis] * unit[other]));
            }
          }
        }
      }
    }
    const moves = new CholeskyDecomposition(normal).solve(right);
    let farthest = 0;
    for (const [i, place] of places.entries()) {
      const [dx, dy] = [moves.get(2 * i, 0), moves.get(2 * i + 1, 0)];
      place[0] += dx;
      place[1] += dy;
      farthest = Math.max(farthest, Math.hypot(dx, dy));
    }
    if (farthest <= SETTLED) break;
  }
  return places;
}

function add(matrix: Matrix, row: number, column: number, value: number): void {
  matrix.set(row, column, matrix.get(row, column) + value);
}
