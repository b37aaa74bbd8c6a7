/** The report's count of what is missing. */
import type { Verdict } from "../catalogue/rule.ts";
import type { TieReport } from "../report.ts";
import type { LoopCheck } from "./perimeter-complete.ts";

export interface MissingInputs {
  readonly ties: readonly Pick<TieReport, "present">[];
  /** After the compare stage. */
  readonly verdicts: readonly Pick<Verdict, "outcome" | "need" | "element" | "body">[];
  readonly loops: readonly Pick<LoopCheck, "complete" | "gaps">[];
}

/**
 * Needed ties without a recorded one + parts (and shell grids) that need bonding and are not reached + 1 for each loop of
 * perimeter bonding that is not complete where it is surely needed + 1 for each body of water without contact. The same
 * whether or not any copper is recorded; what is only in question counts nothing.
 */
export function missingCount({ ties, verdicts, loops }: MissingInputs): number {
  const parts = new Set<string | null>();
  const waters = new Set<string | null>();
  for (const { outcome, need, element, body } of verdicts) {
    if (!need || (outcome !== "bond" && outcome !== "missing")) continue;
    if (need.kind === "part" || need.kind === "shell-grid") parts.add(need.elements[0] ?? element);
    else if (need.kind === "water") waters.add(body);
  }
  const open = loops.filter(({ complete, gaps }) => complete === "no" && gaps.some(({ needed }) => needed));
  return ties.filter(({ present }) => !present).length + parts.size + open.length + waters.size;
}
