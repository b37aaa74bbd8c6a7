/**
 * Work a frame out of the browser's own trace.
 *
 * Terms. Beat: an animation frame of a thread. Work of a frame: every task of the thread from one beat to the next, so
 * that script, style, layout and painting all count. It is measured in the thread's own processor time, which other
 * programs on the machine do not lengthen; the interval between beats is by the clock.
 */

export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  /** Processor time, microseconds. */
  readonly tdur?: number;
  readonly pid: number;
  readonly tid: number;
  readonly args?: { readonly name?: string };
}

export interface Frames {
  /** Milliseconds of the thread's processor time, frame by frame. */
  readonly work: number[];
  /** Milliseconds by the clock from beat to beat. */
  readonly interval: number[];
}

/** Beats that are nearer to each other are one frame, microseconds. */
const ONE_FRAME = 4000;

/** The frames of the page, and those of the worker that paints (empty when there is none). */
export function framesOf(events: readonly TraceEvent[]): { page: Frames; painter: Frames } {
  const names = new Map<string, string>();
  for (const { name, args, pid, tid } of events) {
    if (name === "thread_name" && args?.name) names.set(`${pid}:${tid}`, args.name);
  }
  const beats = new Map<string, number[]>();
  for (const { name, ts, pid, tid } of events) {
    if (name !== "FireAnimationFrame") continue;
    const thread = `${pid}:${tid}`;
    beats.set(thread, [...(beats.get(thread) ?? []), ts]);
  }
  const threads = [...beats].sort((a, b) => b[1].length - a[1].length);
  const page = threads.find(([thread]) => /Main/.test(names.get(thread) ?? ""));
  const painter = threads.find(([thread]) => /Worker/.test(names.get(thread) ?? ""));
  if (!page) throw new Error("the trace holds no animation frame of the page");
  return {
    page: threadFrames(events, ...page),
    painter: painter ? threadFrames(events, ...painter) : { work: [], interval: [] },
  };
}

function threadFrames(events: readonly TraceEvent[], thread: string, beats: readonly number[]): Frames {
  const starts: number[] = [];
  for (const ts of [...beats].sort((a, b) => a - b)) {
    if (starts.length === 0 || ts - (starts.at(-1) ?? 0) > ONE_FRAME) starts.push(ts);
  }
  const tasks = events
    .filter(({ pid, tid, ph, name }) => `${pid}:${tid}` === thread && ph === "X" && /RunTask$/.test(name))
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const work = new Array<number>(Math.max(0, starts.length - 1)).fill(0);
  let frame = 0;
  let coveredUntil = 0;
  for (const { ts, dur = 0, tdur } of tasks) {
    // Tasks nest in the trace: the outer one holds the time of those within.
    if (ts < coveredUntil) continue;
    coveredUntil = ts + dur;
    // A task that holds a beat belongs to the frame that the beat begins.
    while (frame < work.length && (starts[frame + 1] ?? Number.POSITIVE_INFINITY) <= coveredUntil) frame += 1;
    if (frame < work.length && coveredUntil >= (starts[frame] ?? 0))
      work[frame] = (work[frame] ?? 0) + (tdur ?? dur) / 1000;
  }
  return { work, interval: starts.slice(1).map((ts, i) => (ts - (starts[i] ?? ts)) / 1000) };
}
