/** One verdict for a thing that several bodies of water judge: the worst, naming the others that matter. */
import type { Body } from "../measures/yard.ts";
import { OUTCOMES_WORST_FIRST, type Outcome } from "../report.ts";
import type { Verdict } from "./rule.ts";

/** Outcomes that ask for something. */
const ASKS: ReadonlySet<Outcome> = new Set<Outcome>(["conflict", "missing", "bond", "review"]);

/** The worst of what each body of water makes of one element, as below. Most sites have one body. */
export function worstOf(bodies: readonly Body[], judgeAt: (body: Body) => Verdict): Verdict | null {
  const [only] = bodies;
  return only && bodies.length === 1 ? judgeAt(only) : worstAcrossBodies(bodies.map(judgeAt));
}

/**
 * The worst of the verdicts on one element (order of OUTCOMES_WORST_FIRST, then the nearest body), with the other bodies
 * whose verdicts ask for something too in `alsoBodies`. Null where there is none.
 */
export function worstAcrossBodies(verdicts: readonly Verdict[]): Verdict | null {
  if (verdicts.length === 1) return verdicts[0] as Verdict;
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

/**
 * The verdicts of a rule that judges one element from several bodies as one: the worst, and of equals the first, naming
 * every other body that does not free it; what is said and asked from each body stays in it.
 */
export function joinedAcrossBodies(verdicts: readonly [Verdict, ...Verdict[]]): Verdict {
  const [worst, ...others] = [...verdicts].sort(
    (a, b) => OUTCOMES_WORST_FIRST.indexOf(a.outcome) - OUTCOMES_WORST_FIRST.indexOf(b.outcome),
  ) as [Verdict, ...Verdict[]];
  if (others.length === 0) return worst;
  const named = others.filter(({ outcome }) => outcome !== "exempt").map(({ body }) => body);
  const alsoBodies = [...new Set(named)].filter((body): body is string => body !== null && body !== worst.body);
  return {
    ...worst,
    ...(alsoBodies.length === 0 ? {} : { alsoBodies }),
    why: joined([worst.why, ...others.map(({ why }) => why)]),
    remedy: joined([worst.remedy, ...others.map(({ remedy }) => remedy)]),
  };
}

/** Each text once, the empty ones left out. */
function joined(texts: readonly string[]): string {
  return [...new Set(texts)].filter((text) => text !== "").join(" ");
}

/** In space where that decides: the way that is left above what is asked for. Else in plan. */
function distance(verdict: Verdict): number {
  const { horizontal, clearance } = verdict.measured;
  if (clearance !== undefined && verdict.margin !== null) return verdict.margin;
  return typeof horizontal === "number" ? horizontal : Number.POSITIVE_INFINITY;
}
