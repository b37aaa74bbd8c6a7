import type { Question } from "../../report.ts";
import { BARE, settle } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

const QUESTION: Question = {
  id: "unknown-kind",
  text: "Is there metal or anything electrical in this?",
  options: ["yes", "no"],
};

export const rule: Rule = {
  id: "unknown-kind",
  title: "Things of an unknown kind",
  part: "site",
  sections: everyEdition("680.2"),
  subjects: "Each element whose kind this program does not know.",
  measure: "Nothing: no rule looks at it.",
  parameters: [],
  protects: "A thing that no rule looks at would pass unseen.",
  judge(yard) {
    return yard.unknownElements.map((element): Verdict => {
      const settled = settle(yard, QUESTION, element.id, null);
      const outcome = settled.choice === "no" ? "exempt" : "review";
      const why = `Its kind "${element.kind}" is not known here, so no rule has looked at it.${settled.note}`;
      const remedy =
        outcome === "exempt"
          ? ""
          : "Draw it again as one of the known kinds, such as metal or equipment, or say that it holds neither.";
      return {
        ...BARE,
        element: element.id,
        body: null,
        outcome,
        basis: "judgement",
        why,
        remedy,
        ...settled.trace,
        ...(outcome === "review" ? { question: QUESTION } : {}),
      };
    });
  },
};
