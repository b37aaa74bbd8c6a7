/**
 * Least squares for a few unknowns (Levenberg, 1944; Marquardt, 1963).
 *
 * Stages, until nothing gets better: 1. how each residual changes with each unknown, by small differences; 2. the step
 * that would take the residuals to their least if they changed evenly, shortened by a damping; 3. a step that helps is
 * taken and the damping lessened, one that does not is thrown away and the damping raised.
 */

import { CholeskyDecomposition, Matrix } from "ml-matrix";

export interface Fit {
  readonly values: readonly number[];
  /** The largest residual, without its sign. */
  readonly worst: number;
}

const MOST_STEPS = 80;
const LEAST_DIFFERENCE = 1e-7;
const START_DAMPING = 1e-3;
const MOST_DAMPING = 1e12;
/** Residuals this small are none. */
const NOTHING = 1e-11;

/** `residuals` gives null where the values mean nothing. Null when those to start with do. */
export function leastSquares(
  start: readonly number[],
  residuals: (values: readonly number[]) => readonly number[] | null,
): Fit | null {
  let values = [...start];
  const first = residuals(values);
  if (!first) return null;
  let now = first;
  let damping = START_DAMPING;
  for (let round = 0; round < MOST_STEPS && squares(now) > NOTHING ** 2 && damping < MOST_DAMPING; round++) {
    const slopes = values.map((value, i) =>
      slope(values, i, Math.max(1, Math.abs(value)) * LEAST_DIFFERENCE, residuals),
    );
    if (slopes.some((one) => one === null)) break;
    const columns = slopes as (readonly number[])[];
    let isBetter = false;
    while (!isBetter && damping < MOST_DAMPING) {
      const step = dampedStep(columns, now, damping);
      const next = step && values.map((value, i) => value + (step[i] ?? 0));
      const then = next && residuals(next);
      if (next && then && squares(then) < squares(now)) {
        values = next;
        now = then;
        damping /= 10;
        isBetter = true;
      } else damping *= 10;
    }
  }
  return { values, worst: Math.max(0, ...now.map(Math.abs)) };
}

function squares(residuals: readonly number[]): number {
  return residuals.reduce((sum, one) => sum + one * one, 0);
}

/** Both ways about the value; one way where the other means nothing. */
function slope(
  values: readonly number[],
  index: number,
  size: number,
  residuals: (values: readonly number[]) => readonly number[] | null,
): number[] | null {
  const at = (by: number) => residuals(values.map((value, i) => (i === index ? value + by : value)));
  const [up, down] = [at(size), at(-size)];
  const [high, low] = [up ?? at(0), down ?? at(0)];
  if (!high || !low || (!up && !down)) return null;
  const width = (up ? size : 0) + (down ? size : 0);
  return high.map((one, i) => (one - (low[i] ?? 0)) / width);
}

/** Null where the residuals do not tell the unknowns apart. */
function dampedStep(
  columns: readonly (readonly number[])[],
  residuals: readonly number[],
  damping: number,
): number[] | null {
  const slopes = new Matrix(columns.map((column) => [...column]));
  const normal = slopes.mmul(slopes.transpose());
  for (let i = 0; i < columns.length; i++) normal.set(i, i, normal.get(i, i) * (1 + damping) + Number.EPSILON);
  const system = new CholeskyDecomposition(normal);
  if (!system.isPositiveDefinite()) return null;
  return system.solve(slopes.mmul(Matrix.columnVector([...residuals])).neg()).to1DArray();
}
