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
  measure:
    "Whether it names a parameter of the edition, gives it a value that can be, is the only one that does, and says which local rule it comes from.",
  parameters: [],
  protects: "An amendment that is misspelled changes nothing, and everyone believes that it does.",
  judge(yard) {
    const { useless, amendments } = yard.edition;
    const unfounded = amendments.filter(({ reason }) => (reason ?? "").trim() === "");
    if (useless.length === 0 && unfounded.length === 0) return [];
    const whys: string[] = [];
    const remedies: string[] = [];
    if (useless.length > 0) {
      const named = useless.map(({ amendment, reason }) => `${amendment.parameter} (${reason})`).join("; ");
      const one = useless.length === 1;
      whys.push(
        `${one ? "A local amendment changes" : `${useless.length} local amendments change`} nothing: ${named}. The site is judged without ${one ? "it" : "them"}.`,
      );
      remedies.push("Correct the parameter's name or its value, or remove the amendment.");
    }
    if (unfounded.length > 0) {
      const named = unfounded.map(({ parameter, value }) => `${parameter} = ${String(value)}`).join("; ");
      const one = unfounded.length === 1;
      whys.push(
        `${one ? "A local amendment acts" : `${unfounded.length} local amendments act`} without a reason: ${named}. The site is judged with ${one ? "it, and nothing says which local rule it is" : "them, and nothing says which local rules they are"}.`,
      );
      remedies.push("Name the ordinance or the authority that it comes from, or remove the amendment.");
    }
    const [why, remedy] = [whys.join(" "), remedies.join(" ")];
    return [
      { ...BARE, element: null, body: null, outcome: "review", basis: "judgement", why, remedy, question: QUESTION },
    ];
  },
};
