/** Timing for the benchmarks: warm-up, then runs whose median and spread are printed. Nothing here asserts a time. */
import { performance } from "node:perf_hooks";

export interface Timing {
  readonly min: number;
  readonly median: number;
  readonly p95: number;
}

/** Times two pieces of work in turn, A B A B, so that both see the same machine. */
export function inTurn(a: () => void, b: () => void, runs: number, warmUps: number): { a: Timing; b: Timing } {
  const timesA: number[] = [];
  const timesB: number[] = [];
  for (let i = 0; i < warmUps + runs; i++) {
    const tookA = timed(a);
    const tookB = timed(b);
    if (i < warmUps) continue;
    timesA.push(tookA);
    timesB.push(tookB);
  }
  return { a: timing(timesA), b: timing(timesB) };
}

/** Times one piece of work. */
export function alone(work: () => void, runs: number, warmUps: number): Timing {
  const times: number[] = [];
  for (let i = 0; i < warmUps + runs; i++) {
    const took = timed(work);
    if (i >= warmUps) times.push(took);
  }
  return timing(times);
}

function timed(work: () => void): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

export function timing(times: readonly number[]): Timing {
  const sorted = [...times].sort((x, y) => x - y);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
  return { min: at(0), median: at(0.5), p95: at(0.95) };
}

export function ms(value: number): string {
  return value.toFixed(value < 10 ? 2 : 1).padStart(8);
}
