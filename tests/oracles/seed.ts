/** One random seed for each test file, printed, so that a failing run can be had again: COPPERBAND_SEED=<number>. */
const given = process.env.COPPERBAND_SEED;
export const seed = given === undefined ? Math.floor(Math.random() * 2 ** 31) : Number(given);
console.info(`random sites of this file: COPPERBAND_SEED=${seed}`);

/** COPPERBAND_TIMES=20 tries 20 times as many cases, for a long run. */
const times = Number(process.env.COPPERBAND_TIMES ?? 1);

/** Settings of a fast-check property: `numRuns` cases from the printed seed. */
export function runs(numRuns: number): { seed: number; numRuns: number } {
  return { seed, numRuns: numRuns * times };
}
