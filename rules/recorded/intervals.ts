/** Intervals along a closed loop, inches from its start; `to` is not less than `from`. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** An interval of any size as often as it comes by, turn after turn of a loop of length `total`, in a window. */
export function turnsIn(interval: Interval, total: number, window: Interval): Interval[] {
  const turns: Interval[] = [];
  for (let k = Math.floor((window.from - interval.to) / total); interval.from + k * total < window.to; k++) {
    const from = interval.from + k * total;
    const to = interval.to + k * total;
    if (to > window.from) turns.push({ from, to });
  }
  return turns;
}

/** Sorted intervals of a loop: one that ends where the first starts again, a turn later, goes on in it. */
export function acrossStart(intervals: readonly Interval[], total: number, touching: number): Interval[] {
  const first = intervals[0];
  const last = intervals[intervals.length - 1];
  if (!first || !last || first === last || first.from + total > last.to + touching) return [...intervals];
  return [...intervals.slice(1, -1), { from: last.from, to: Math.max(last.to, total + first.to) }];
}

/** Sorted, overlapping and touching ones united. */
export function united(intervals: readonly Interval[], touching = 0): Interval[] {
  const sorted = [...intervals].sort((a, b) => a.from - b.from);
  const result: { from: number; to: number }[] = [];
  for (const { from, to } of sorted) {
    const last = result[result.length - 1];
    if (last && from <= last.to + touching) last.to = Math.max(last.to, to);
    else result.push({ from, to });
  }
  return result;
}

/** What of `whole` none of the others covers. */
export function without(whole: Interval, others: readonly Interval[]): Interval[] {
  const left: Interval[] = [];
  let from = whole.from;
  for (const other of united(others)) {
    if (other.to <= from || other.from >= whole.to) continue;
    if (other.from > from) left.push({ from, to: other.from });
    from = Math.max(from, other.to);
  }
  if (from < whole.to) left.push({ from, to: whole.to });
  return left;
}

/** What of `whole` any of the others covers. */
export function within(whole: Interval, others: readonly Interval[]): Interval[] {
  return united(others).flatMap(({ from, to }) => {
    const cut = { from: Math.max(from, whole.from), to: Math.min(to, whole.to) };
    return cut.to > cut.from ? [cut] : [];
  });
}

/** Where a condition holds in an interval: looked at every `step` inches, its changes narrowed down by halvings. */
export function holdsWhere(
  whole: Interval,
  step: number,
  holds: (s: number) => boolean,
  narrowings = NARROWINGS,
): Interval[] {
  const count = Math.max(1, Math.ceil((whole.to - whole.from) / step));
  const result: Interval[] = [];
  let from = whole.from;
  let before = holds(whole.from);
  for (let i = 1; i <= count; i++) {
    const s = whole.from + (i * (whole.to - whole.from)) / count;
    const now = holds(s);
    if (now === before) continue;
    let lo = whole.from + ((i - 1) * (whole.to - whole.from)) / count;
    let hi = s;
    for (let n = 0; n < narrowings; n++) {
      const middle = (lo + hi) / 2;
      if (holds(middle) === before) lo = middle;
      else hi = middle;
    }
    if (before) result.push({ from, to: hi });
    from = hi;
    before = now;
  }
  if (before) result.push({ from, to: whole.to });
  return result;
}

/** Halvings of a step: to less than a thousandth of an inch. */
const NARROWINGS = 12;
