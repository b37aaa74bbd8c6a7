/**
 * Rolls of copper grid bought by length: as few as will do, and of those the least waste.
 * Rolls are cut where a stretch ends and go on in the next, so that only the sum of their lengths counts.
 */

/** Rolls beyond this many are the longest; which lengths the rest have is tried out. */
const TRIED = 6;

/** Rolls of the lengths sold (inches, each > 0) that hold `run` inches, longest first; none for no run or nothing sold. */
export function rollsFor(run: number, sold: readonly number[]): { length: number; count: number }[] {
  const lengths = [...new Set(sold)].filter((length) => length > 0).sort((a, b) => b - a);
  const longest = lengths[0];
  if (longest === undefined || !(run > 0)) return [];
  const count = Math.ceil(run / longest);
  const sure = Math.max(0, count - TRIED);
  const counts = new Map<number, number>();
  if (sure > 0) counts.set(longest, sure);
  for (const length of leastWaste(run - sure * longest, count - sure, lengths) ?? []) {
    counts.set(length, (counts.get(length) ?? 0) + 1);
  }
  return [...counts].sort(([a], [b]) => b - a).map(([length, number]) => ({ length, count: number }));
}

/** Exactly `count` rolls (lengths longest first) with the least sum that is not below `run`; null where none reach it. */
function leastWaste(run: number, count: number, lengths: readonly number[]): number[] | null {
  if (count === 0) return run <= 0 ? [] : null;
  let best: number[] | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, length] of lengths.entries()) {
    // Each next roll is no longer than the one before: every set is met once.
    const rest = leastWaste(run - length, count - 1, lengths.slice(i));
    if (rest === null) continue;
    const sum = length + rest.reduce((all, one) => all + one, 0);
    if (sum >= least) continue;
    best = [length, ...rest];
    least = sum;
  }
  return best;
}
