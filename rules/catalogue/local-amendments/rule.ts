import type { Question } from "../../report.ts";
import { BARE } from "../common/verdicts.ts";
import { everyEdition, type Rule } from "../rule.ts";

const QUESTION: Question = {
  id: "local-amendments",
  text: "What becomes of these amendments?",
  options: ["correct them", "remove them"],
};

export const rule: Rule = {
  id: "local-amendments",
  title: "Local amendments that act",
  part: "site",
  sections: everyEdition("680.2"),
  subjects: "Each local amendment of the site.",
  measure: "Whether it names a parameter of the edition, gives it a value of its kind, and is the only one that does.",
  parameters: [],
  protects: "An amendment that is misspelled changes nothing, and everyone believes that it does.",
  judge(yard) {
    const { useless } = yard.edition;
    if (useless.length === 0) return [];
    const named = useless.map(({ amendment, reason }) => `${amendment.parameter} (${reason})`).join("; ");
    const one = useless.length === 1;
    const why = `${one ? "A local amendment changes" : `${useless.length} local amendments change`} nothing: ${named}. The site is judged without ${one ? "it" : "them"}.`;
    const remedy = "Correct the parameter's name or its value, or remove the amendment.";
    return [
      { ...BARE, element: null, body: null, outcome: "review", basis: "judgement", why, remedy, question: QUESTION },
    ];
  },
};
