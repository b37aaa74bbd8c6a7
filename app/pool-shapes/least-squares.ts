/**
 * Least squares for a few unknowns (Levenberg, 1944; Marquardt, 1963).
 *
 * Stages, until nothing gets better: 1. how each residual changes with each unknown, by small differences; 2. the step
 * that would take the residuals to their least if they changed evenly, shortened by a damping; 3. a step that helps is
 * taken and the damping lessened, one that does not is thrown away and the damping raised.
 */

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

function dampedStep(
  columns: readonly (readonly number[])[],
  residuals: readonly number[],
  damping: number,
): number[] | null {
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, one, i) => sum + one * (b[i] ?? 0), 0);
  const rows = columns.map((column, i) => [
    ...columns.map((other, j) => dot(column, other) * (i === j ? 1 + damping : 1) + (i === j ? Number.EPSILON : 0)),
    -dot(column, residuals),
  ]);
  return solved(rows);
}

/** Solves linear equations, each row its factors and its right side, by elimination; null where they leave a choice. */
function solved(rows: number[][]): number[] | null {
  const count = rows.length;
  for (let i = 0; i < count; i++) {
    let best = i;
    for (let j = i + 1; j < count; j++) if (Math.abs(rows[j]?.[i] ?? 0) > Math.abs(rows[best]?.[i] ?? 0)) best = j;
    const [row, top] = [rows[best], rows[i]] as [number[], number[]];
    if (!row[i]) return null;
    [rows[i], rows[best]] = [row, top];
    for (let j = 0; j < count; j++) {
      const other = rows[j] as number[];
      if (j === i) continue;
      const share = (other[i] ?? 0) / (row[i] as number);
      for (let k = i; k <= count; k++) other[k] = (other[k] ?? 0) - share * (row[k] ?? 0);
    }
  }
  return rows.map((row, i) => (row[count] ?? 0) / (row[i] as number));
}
