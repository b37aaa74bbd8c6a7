import { EDITION_IDS } from "../../editions/edition.ts";
import { EDITION_QUESTION_ID, EDITIONS, editionAnswer, isEditionId } from "../../editions/in-force.ts";
import type { Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import { answeredTo, BARE } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

const QUESTION: Question = {
  id: EDITION_QUESTION_ID,
  text: "Which edition does the permit fall under?",
  options: EDITION_IDS,
};

const EDITION_TITLES = EDITION_IDS.map((id) => EDITIONS[id].title).join(", ");

const BASE = { ...BARE, element: null, body: null, basis: "judgement" } as const;

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
    if (named === "yes") return byAnswer(yard);
    const lead =
      named === "absent"
        ? "The site names no edition."
        : `The site names the edition "${yard.site.edition}", which is not held.`;
    const given = editionAnswer(yard.site);
    const split = given?.against
      ? ` The answers "${given.answer.answer}" and "${given.against.answer}" contradict each other, and neither counts.`
      : "";
    const why = `${lead}${split} It is judged by ${title}, the newest held, and exemptions that only some editions write are not granted.`;
    const remedy = `Ask which edition the permit falls under (${EDITION_TITLES}) and name it on the site.`;
    return [{ ...BASE, outcome: "review", why, remedy, question: QUESTION }];
  },
};

/** An edition that stands only in the site's answers is told of; one that the site names itself needs no finding. */
function byAnswer(yard: Yard): Verdict[] {
  const { id, title } = yard.edition;
  const given = editionAnswer(yard.site);
  if (isEditionId(yard.site.edition) || given?.answer.answer !== id) return [];
  const answered = answeredTo(QUESTION, given.answer);
  const why = `The site itself names no edition that is held; by its answer it is judged by ${title}.`;
  return [{ ...BASE, outcome: "meets", why, answered }];
}
