/** One verdict for a thing that several bodies of water judge: the worst, naming the others that matter. */
import { OUTCOMES_WORST_FIRST, type Outcome } from "../report.ts";
import type { Verdict } from "./rule.ts";

/** Outcomes that ask for something. */
const ASKS: ReadonlySet<Outcome> = new Set<Outcome>(["conflict", "missing", "bond", "review"]);

/**
 * The worst of the verdicts on one element (order of OUTCOMES_WORST_FIRST, then the nearest body), with the other bodies
 * whose verdicts ask for something too in `alsoBodies`. Null where there is none.
 */
export function worstAcrossBodies(verdicts: readonly Verdict[]): Verdict | null {
  const sorted = [...verdicts].sort(
    (a, b) =>
      OUTCOMES_WORST_FIRST.indexOf(a.outcome) - OUTCOMES_WORST_FIRST.indexOf(b.outcome) || distance(a) - distance(b),
  );
  const worst = sorted[0];
  if (!worst) return null;
  const alsoBodies = sorted
    .slice(1)
    .filter((verdict) => ASKS.has(verdict.outcome))
    .map((verdict) => verdict.body)
    .filter((body): body is string => body !== null && body !== worst.body);
  return alsoBodies.length === 0 ? worst : { ...worst, alsoBodies: [...new Set(alsoBodies)] };
}

function distance(verdict: Verdict): number {
  const { horizontal } = verdict.measured;
  return typeof horizontal === "number" ? horizontal : Number.POSITIVE_INFINITY;
}
