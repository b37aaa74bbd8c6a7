/**
 * Whether the ring copper that serves a stretch is one unbroken conductor: at every place one of its runs goes on, or the
 * run that ends is joined to the one that takes over.
 */
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import { type Interval, turnsIn } from "./intervals.ts";
import { ENDS_MEET } from "./joints.ts";
import type { Run } from "./ring-cover.ts";

export interface Chain {
  /** Places, inches along the loop, where the copper of one side is not joined to that of the other. */
  readonly breaks: readonly number[];
  /** Conductors that serve. */
  readonly conductors: readonly string[];
}

interface Part extends Interval {
  readonly run: Run;
}

interface Cell extends Interval {
  readonly runs: readonly Run[];
}

/**
 * Follows the runs along an interval that they cover (holes up to ENDS_MEET apart). `closed`: the interval is all of the
 * loop, and its end goes on into its start. The interval may pass the loop's start. `joined` says whether two runs are
 * joined somewhere in a part of the loop (of one with itself: whether its own two ends are joined).
 */
export function chainOf(
  interval: Interval,
  total: number,
  closed: boolean,
  runs: readonly Run[],
  joined: (a: Run, b: Run, where: Interval) => boolean,
): Chain {
  const parts: Part[] = runs.flatMap((run) => turnsIn(run, total, interval).map(({ from, to }) => ({ from, to, run })));
  const cuts = [interval.from, interval.to];
  for (const { from, to } of parts) for (const s of [from, to]) if (s > interval.from && s < interval.to) cuts.push(s);
  cuts.sort((a, b) => a - b);
  const cells: Cell[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const from = cuts[i] as number;
    const to = cuts[i + 1] as number;
    if (to <= from) continue;
    const middle = (from + to) / 2;
    const here = parts.filter((part) => part.from <= middle && part.to >= middle).map(({ run }) => run);
    // A hole this small lies between two ends that are drawn as meeting.
    if (here.length === 0 && to - from <= ENDS_MEET) continue;
    cells.push({ from, to, runs: [...new Set(here)] });
  }
  const breaks: number[] = [];
  const conductors = new Set<string>();
  /** The runs of a cell that are one with those of the cell before, which ends at `end`. */
  const goOn = (before: ReadonlySet<Run>, end: number, cell: Cell): Set<Run> => {
    const next = cell.runs;
    const reached = new Set(next.filter((run) => before.has(run) && passes(run, cell.from, total)));
    const seam = { from: Math.min(end, cell.from), to: cell.from };
    for (const run of next) if ([...before].some((old) => joined(old, run, seam))) reached.add(run);
    for (let grown = true; grown; ) {
      grown = false;
      for (const run of next) {
        if (reached.has(run) || ![...reached].some((other) => joined(other, run, cell))) continue;
        reached.add(run);
        grown = true;
      }
    }
    return reached;
  };
  let reached = new Set<Run>(cells[0]?.runs ?? []);
  let end = cells[0]?.to ?? 0;
  for (const [i, cell] of cells.entries()) {
    for (const run of cell.runs) conductors.add(run.conductor);
    if (i === 0) continue;
    const next = goOn(reached, end, cell);
    if (next.size === 0) breaks.push(cell.from);
    end = cell.to;
    reached = next.size === 0 ? new Set(cell.runs) : next;
  }
  const first = cells[0];
  if (closed && first && goOn(reached, first.from, first).size === 0) breaks.push(interval.from);
  return { breaks, conductors: [...conductors] };
}

/** Whether a run goes on through a place, so that neither of its ends is there (within LIMIT_TOLERANCE). */
function passes(run: Run, s: number, total: number): boolean {
  for (let at = s + Math.floor((run.from - s) / total) * total; at < run.to; at += total) {
    if (at > run.from + LIMIT_TOLERANCE && at < run.to - LIMIT_TOLERANCE) return true;
  }
  return false;
}
