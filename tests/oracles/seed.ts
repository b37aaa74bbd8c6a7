/**
 * The seed of each test file's random cases, printed. The same one every time, so that a commit passes or fails for what
 * is in it; COPPERBAND_SEED=new draws a fresh one and COPPERBAND_SEED=<number> has a failing run again.
 */
const given = process.env.COPPERBAND_SEED;
const drawn = given === "new" ? Math.floor(Math.random() * 2 ** 31) : Number(given ?? 680_260_518);
if (!Number.isSafeInteger(drawn)) throw new Error(`COPPERBAND_SEED is a whole number or "new", not ${given}`);
export const seed = drawn;
console.info(`random sites of this file: COPPERBAND_SEED=${seed}`);

/** COPPERBAND_TIMES=20 tries 20 times as many cases, for a long run. */
const times = Number(process.env.COPPERBAND_TIMES ?? 1);

/** Settings of a fast-check property: `numRuns` cases from the printed seed. */
export function runs(numRuns: number): { seed: number; numRuns: number } {
  return { seed, numRuns: numRuns * times };
}
