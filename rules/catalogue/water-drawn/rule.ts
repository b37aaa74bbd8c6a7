import type { Question } from "../../report.ts";
import { KINDS } from "../../site/elements.ts";
import { BARE, settle } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

const QUESTION: Question = {
  id: "water-on-site",
  text: "Is there a pool, a spa or another basin on this site?",
  options: ["yes", "no"],
};

export const rule: Rule = {
  id: "water-drawn",
  title: "Water drawn",
  part: "site",
  sections: everyEdition("680.2"),
  subjects: "A site that has things in it but no pool.",
  measure: "Whether a pool, a spa or another basin is drawn, from whose inside walls all the rest is measured.",
  parameters: [],
  protects: "Where no inside wall is drawn nothing is near one, and everything would pass unmeasured.",
  judge(yard): Verdict[] {
    if (yard.bodies.length > 0 || KINDS.every((kind) => yard.all(kind).length === 0)) return [];
    const { choice, trace, note } = settle(yard, QUESTION, null, null);
    const base = { ...BARE, element: null, body: null, basis: "judgement", ...trace } as const;
    const why = `No pool is drawn, so nothing of this site was measured from one.${note}`;
    if (choice === "no") return [{ ...base, outcome: "exempt", why }];
    const remedy = "Draw the inside wall of each pool, spa and basin.";
    return [{ ...base, outcome: "review", why, remedy, question: QUESTION }];
  },
};
