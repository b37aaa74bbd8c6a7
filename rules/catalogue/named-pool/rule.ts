import type { Yard } from "../../measures/yard.ts";
import type { LightElement, WaterBondElement } from "../../site/elements.ts";
import { poolDoubt } from "../common/named-pool.ts";
import { BARE } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "named-pool",
  title: "Things whose pool is not sure",
  part: "site",
  sections: everyEdition("680.2"),
  subjects:
    "Each underwater light and each fitting for the water's bond that names a pool which is not drawn, or names none between two.",
  measure: "Which body of water it is in: until that is said it is held against the nearest one, and counts for none.",
  parameters: [],
  protects: "A fitting that is counted for the wrong water leaves its own without any.",
  judge: (yard) => [
    ...yard.each(rule.id, "underwater-light", (element) => judgeNamed(yard, element)),
    ...yard.each(rule.id, "water-bond", (element) => judgeNamed(yard, element)),
  ],
};

function judgeNamed(yard: Yard, element: LightElement | WaterBondElement): Verdict[] {
  const doubt = poolDoubt(yard, element);
  if (doubt === null) return [];
  const { body, question, settled, says } = doubt;
  const base = {
    ...BARE,
    element: element.id,
    body: body.id,
    basis: "judgement" as const,
    ...settled.trace,
    why: says + settled.note,
  };
  if (settled.choice === "yes") return [{ ...base, outcome: "meets" }];
  const remedy = "Give `pool` the id of the body of water that it is in, or draw that body.";
  return [{ ...base, outcome: "review", remedy, question }];
}
