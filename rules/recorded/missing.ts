/** The report's count of what is missing. */
import type { Verdict } from "../catalogue/rule.ts";
import type { TieReport } from "../report.ts";
import type { LoopCheck } from "./perimeter-complete.ts";

export interface MissingInputs {
  readonly ties: readonly Pick<TieReport, "present">[];
  /** After the compare stage. */
  readonly verdicts: readonly Pick<Verdict, "outcome" | "need" | "element" | "body">[];
  readonly loops: readonly Pick<LoopCheck, "bodies" | "complete" | "gaps">[];
}

/**
 * Needed ties without a recorded one + parts (and shell grids) that need bonding and are not reached + 1 for each loop of
 * perimeter bonding that is not complete where it is surely needed, or for a body whose loops are complete and do not
 * serve all of its perimeter (ground behind a wall that does not end it) + 1 for each body of water without contact. The same
 * whether or not any copper is recorded; what is only in question counts nothing. A fitting that is there to give the
 * water its contact is counted with that water while it has none.
 */
export function missingCount({ ties, verdicts, loops }: MissingInputs): number {
  const parts = new Set<string | null>();
  const needed = verdicts.filter(({ outcome, need }) => need && (outcome === "bond" || outcome === "missing"));
  const waters = new Set(needed.filter(({ need }) => need?.kind === "water").map(({ body }) => body));
  for (const { need, element, body } of needed) {
    if (!need || (need.kind !== "part" && need.kind !== "shell-grid")) continue;
    if (need.servesWater && waters.has(body)) continue;
    parts.add(need.elements[0] ?? element);
  }
  const perimeters = new Set(needed.filter(({ need }) => need?.kind === "perimeter").map(({ body }) => body));
  const open = loops.filter(({ complete, gaps }) => complete === "no" && gaps.some((gap) => gap.needed));
  for (const { bodies } of open) for (const body of bodies) perimeters.delete(body);
  return ties.filter(({ present }) => !present).length + parts.size + open.length + perimeters.size + waters.size;
}
