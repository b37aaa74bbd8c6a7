import type { Body, Yard } from "../../measures/yard.ts";
import { elementName } from "../../words/element-names.ts";
import { STORABLE_QUESTION, storableOf } from "../common/storable.ts";
import { BARE, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "storable-pool",
  title: "Storable pools",
  part: "site",
  sections: everyEdition("680.2"),
  alsoSections: everyEdition(["680.30"]),
  subjects: "Each pool that is storable, or may be.",
  measure: "Whether it stands on or above the ground and is meant to be taken down.",
  parameters: [],
  protects:
    "A pool that stays for good is bonded; a storable one has rules of its own. Taking one for the other leaves it without either.",
  judge: (yard) => yard.bodies.flatMap((body) => judgeBody(yard, body)),
};

function judgeBody(yard: Yard, body: Body): Verdict[] {
  const { is, doubt, settled } = storableOf(yard, body);
  const base = { ...BARE, element: body.id, body: body.id, ...settled.trace };
  const name = subjectName(body.element);
  const plain = elementName(body.element);
  if (is === "yes") {
    const why = `${name} is a storable pool: it stands on or above the ground and is meant to be taken down, so 680.26 does not apply to it.${settled.note}`;
    return [
      { ...base, outcome: "exempt", basis: "published", why, remedy: "Follow the part on storable pools instead." },
    ];
  }
  if (is === "no") {
    // Settled as permanent by an answer: say so, as the question would otherwise vanish without a trace.
    if (doubt === "none") return [];
    return [
      {
        ...base,
        outcome: "meets",
        basis: "published",
        why: `${name} is permanently installed and is judged under 680.26.${settled.note}`,
      },
    ];
  }
  const why =
    doubt === "contradicted"
      ? `${name} is marked as storable, yet its shell or its installation is that of a pool built to stay. It is judged as permanent until this is settled.${settled.note}`
      : `The drawing does not say whether ${plain} is built in or may be taken down. It is judged as permanent until this is settled.${settled.note}`;
  const remedy = "Say whether the pool is storable and how it is installed.";
  return [{ ...base, outcome: "review", basis: "published", why, remedy, question: STORABLE_QUESTION }];
}
