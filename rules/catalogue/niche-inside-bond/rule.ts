import type { Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { LightElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { bodyOf } from "../common/storable.ts";
import { BARE, settle, subjectName, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "niche-inside-bond",
  title: "Bond inside a light's conduit",
  part: "lights",
  sections: everyEdition("680.23(B)(2)(b)"),
  subjects: "Each underwater light in a metal forming shell.",
  measure: "Whether its conduit is nonmetallic, and whether an insulated conductor in it ends in the niche.",
  parameters: ["lights.insideBondSize"],
  protects: "Where the conduit does not conduct, only that wire joins the inside of the niche to the panel.",
  judge: (yard) => yard.each(rule.id, "underwater-light", (element) => judgeLight(yard, element)),
};

const CONDUIT_QUESTION: Question = {
  id: "light-conduit",
  text: "What is the conduit to this light?",
  options: ["metal", "nonmetallic, with an insulated conductor ended in the niche", "nonmetallic, without one"],
};

const INSIDE_QUESTION = yesNo(
  "inside-bond",
  "Does an insulated bonding conductor run in the conduit and end, potted, in the niche?",
);

function judgeLight(yard: Yard, element: LightElement): Verdict[] {
  const body = bodyOf(yard, element);
  if (!body) return [];
  const name = subjectName(element);
  const plain = elementName(element);
  const size = yard.edition.value("lights.insideBondSize");
  const base = {
    ...BARE,
    element: element.id,
    body: body.id,
    limits: ["lights.insideBondSize"] as const,
    required: { insideBondSize: size },
  };
  if (element.formingShell !== "metal") {
    return [
      { ...base, outcome: "exempt", why: `${name} has no metal forming shell in which such a conductor could end.` },
    ];
  }
  const wire = `an insulated copper conductor of ${size} AWG or larger`;
  const meets = (why: string, trace = {}): Verdict[] => [{ ...base, ...trace, outcome: "meets", why }];
  const carried = `The nonmetallic conduit of ${plain} holds ${wire} that ends in the niche.`;
  const metal = `The conduit of ${plain} is metal and conducts by itself.`;
  const lacking = `The conduit of ${plain} does not conduct, and no ${wire.replace(/^an /, "")} runs in it.`;
  const remedy = `Pull ${wire} through the conduit, end it in the niche and pot the connection.`;
  const question = element.conduit === undefined ? CONDUIT_QUESTION : INSIDE_QUESTION;
  if (element.conduit === "metal") return meets(metal);
  if (element.insideBond === true) return meets(carried);
  if (element.conduit === "nonmetal" && element.insideBond === false)
    return [{ ...base, outcome: "conflict", why: lacking, remedy }];
  const settled = settle(yard, question, element.id, body.id);
  const [one, two] = question.options;
  if (settled.choice === null) {
    const unknown =
      element.conduit === undefined ? "what its conduit is made of" : `whether ${wire} runs in its nonmetallic conduit`;
    const why = `The forming shell of ${plain} is metal, and the drawing does not say ${unknown}.${settled.note}`;
    return [{ ...base, ...settled.trace, outcome: "review", why, remedy, question }];
  }
  if (question === CONDUIT_QUESTION) {
    if (settled.choice === one) return meets(metal + settled.note, settled.trace);
    if (settled.choice === two) return meets(carried + settled.note, settled.trace);
  } else if (settled.choice === one) return meets(carried + settled.note, settled.trace);
  return [{ ...base, ...settled.trace, outcome: "conflict", why: lacking + settled.note, remedy }];
}
