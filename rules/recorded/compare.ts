/**
 * Holds the needs against what is recorded: every `bond` becomes `meets`, `missing` or a question once the site holds
 * recorded copper, and what is still missing is counted.
 */

import type { Need, Rule, Verdict } from "../catalogue/rule.ts";
import { hasNeed, type Judged, type Verdicts } from "../judged.ts";
import type { Yard } from "../measures/yard.ts";
import type { TieReport } from "../report.ts";
import type { Recorded } from "./graph.ts";
import { missingCount } from "./missing.ts";
import { type Met, onlyIfSo, partMet, perimeterMet, shellGridMet, tailMet, waterMet } from "./needs-met.ts";
import { checkLoops } from "./perimeter-complete.ts";

export interface Compared {
  readonly judged: readonly Judged[];
  /** The report's count of what is missing. */
  readonly missing: number;
  /** Tails to be left at double-insulated motors, inches each. */
  readonly tails: readonly number[];
}

/** The rule whose need a recorded tail meets, though nothing joins it to the motor. */
const TAIL_RULE = "double-insulated-tail";

/** `plan.ties`: recorded and proposed ties of every shell. */
export function compare(
  yard: Yard,
  verdicts: Verdicts,
  recorded: Recorded,
  plan: { readonly ties: readonly TieReport[] },
): Compared {
  const judged = recorded.hasCopper ? verdicts.judged.map((one) => against(yard, one, recorded)) : verdicts.judged;
  const needing = recorded.hasCopper ? judged.filter(hasNeed) : verdicts.needing;
  const missing = missingCount({
    ties: plan.ties,
    verdicts: needing.map(({ verdict }) => verdict),
    loops: checkLoops(yard, recorded),
  });
  const tail = yard.edition.value("equipment.tailLength");
  const tails = needing.filter(({ rule }) => rule.id === TAIL_RULE).map(() => tail);
  return { judged, missing, tails };
}

function against(yard: Yard, judged: Judged, recorded: Recorded): Judged {
  const { rule, verdict } = judged;
  if (verdict.outcome !== "bond" || !verdict.need) return judged;
  const met = onlyIfSo(yard, verdict, verdict.need, metOf(yard, rule, verdict, verdict.need, recorded));
  return { rule, verdict: told(verdict, met) };
}

function metOf(yard: Yard, rule: Rule, verdict: Verdict, need: Need, recorded: Recorded): Met {
  switch (need.kind) {
    case "part":
      return rule.id === TAIL_RULE ? tailMet(yard, verdict, need, recorded) : partMet(yard, verdict, need, recorded);
    case "perimeter":
      return perimeterMet(yard, verdict, recorded);
    case "water":
      return waterMet(yard, verdict, need, recorded);
    case "shell-grid":
      return shellGridMet(yard, verdict, need, recorded);
  }
}

/** The verdict with what is recorded taken into account. */
function told(verdict: Verdict, met: Met): Verdict {
  const gap = met.gap === undefined ? {} : { measured: { ...verdict.measured, gap: met.gap } };
  const judged = { ...verdict, ...gap, ...met.trace, why: `${verdict.why} ${met.says}` };
  switch (met.state) {
    case "yes":
      return { ...judged, outcome: "meets", remedy: "" };
    case "no":
      return { ...judged, outcome: "missing", remedy: met.remedy ?? verdict.remedy };
    case "doubtful":
      return {
        ...judged,
        outcome: "review",
        remedy: met.remedy ?? verdict.remedy,
        ...(met.question ? { question: met.question } : {}),
      };
  }
}
