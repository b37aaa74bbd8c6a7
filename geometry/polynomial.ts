/**
 * Real roots of a polynomial in an interval.
 *
 * Between two neighboring roots of its derivative a polynomial only rises or only falls, so it has at most one root
 * there, which halving finds. The roots of the derivative are found in the same way, down to a straight line.
 */

/** Coefficients from the constant upwards: `[c, b, a]` is c + b t + a t^2. */
export type Polynomial = readonly number[];

/** The value at t (Horner's scheme). */
export function valueAt(polynomial: Polynomial, t: number): number {
  let value = 0;
  for (let i = polynomial.length - 1; i >= 0; i--) value = value * t + (polynomial[i] as number);
  return value;
}

export function derivative(polynomial: Polynomial): number[] {
  return polynomial.slice(1).map((coefficient, i) => coefficient * (i + 1));
}

export function product(a: Polynomial, b: Polynomial): number[] {
  const result = new Array<number>(Math.max(0, a.length + b.length - 1)).fill(0);
  a.forEach((x, i) => {
    b.forEach((y, j) => {
      result[i + j] = (result[i + j] as number) + x * y;
    });
  });
  return result;
}

export function sum(a: Polynomial, b: Polynomial, factor = 1): number[] {
  return Array.from({ length: Math.max(a.length, b.length) }, (_, i) => (a[i] ?? 0) + factor * (b[i] ?? 0));
}

/**
 * Every place in `low`..`high` where the polynomial can be zero or turn: its roots there, with the roots of its
 * derivatives among which they lie. For looking for a least value, where a place too many does no harm and a double
 * root, which rounding may hide, must not be lost. Ascending.
 */
export function rootsAndTurns(polynomial: Polynomial, low: number, high: number): number[] {
  if (polynomial.length <= 1) return [];
  const turns = rootsAndTurns(derivative(polynomial), low, high);
  const stops = [low, ...turns, high];
  const found = [...turns];
  for (let i = 1; i < stops.length; i++) {
    const root = rootBetween(polynomial, stops[i - 1] as number, stops[i] as number);
    if (root !== null) found.push(root);
  }
  return found.sort((a, b) => a - b);
}

/** Halves until the two ends are neighboring numbers; null where the signs at the ends do not differ. */
function rootBetween(polynomial: Polynomial, low: number, high: number): number | null {
  let [a, b] = [low, high];
  const rising = valueAt(polynomial, a) < 0;
  if (valueAt(polynomial, a) === 0) return a;
  if (valueAt(polynomial, b) < 0 === rising && valueAt(polynomial, b) !== 0) return null;
  for (;;) {
    const middle = (a + b) / 2;
    if (middle <= a || middle >= b) return middle;
    if (valueAt(polynomial, middle) < 0 === rising) a = middle;
    else b = middle;
  }
}
