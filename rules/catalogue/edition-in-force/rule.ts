import { EDITION_IDS } from "../../editions/edition.ts";
import type { Question } from "../../report.ts";
import { BARE } from "../common/verdicts.ts";
import { everyEdition, type Rule } from "../rule.ts";

const QUESTION: Question = {
  id: "edition-in-force",
  text: "Which edition does the permit fall under?",
  options: EDITION_IDS,
};

export const rule: Rule = {
  id: "edition-in-force",
  title: "Edition named",
  part: "site",
  sections: everyEdition("680.2"),
  subjects: "The site itself.",
  measure: "Whether the site names an edition of the code that this program holds.",
  parameters: [],
  protects:
    "The same letter asks for different things in different editions: a yard judged by the wrong one can pass wrongly.",
  judge(yard) {
    const { named, title } = yard.edition;
    if (named === "yes") return [];
    const why =
      named === "absent"
        ? `The site names no edition. It is judged by ${title}, the newest held, and exemptions that only some editions write are not granted.`
        : `The site names the edition "${yard.site.edition}", which is not held. It is judged by ${title} instead, and exemptions that only some editions write are not granted.`;
    const remedy = `Ask which edition the permit falls under and set it on the site: ${EDITION_IDS.join(", ")}.`;
    return [
      { ...BARE, element: null, body: null, outcome: "review", basis: "judgement", why, remedy, question: QUESTION },
    ];
  },
};
