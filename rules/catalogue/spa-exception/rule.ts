import type { Body, Yard } from "../../measures/yard.ts";
import { elementName } from "../../words/element-names.ts";
import { spaException } from "../common/spa-exception.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "spa-exception",
  title: "Outdoor spas",
  part: "site",
  sections: everyEdition("680.42(B)"),
  alsoSections: everyEdition(["680.43"]),
  subjects: "Each spa that does not have a concrete shell.",
  measure: "Its listing, how it is installed, and its rim above every surface near it.",
  parameters: ["spa.rimAbove", "spa.rimWithin"],
  protects:
    "Who climbs over a high rim does not stand in wet ground with a hand in the water; who steps over a low one does.",
  judge: (yard) => bondedBodies(yard).flatMap((body) => judgeSpa(yard, body)),
};

function judgeSpa(yard: Yard, body: Body): Verdict[] {
  const found = spaException(yard, body);
  if (found.state === "not-asked") return [];
  const needed = yard.edition.value("spa.rimAbove");
  const name = subjectName(body.element);
  const plain = elementName(body.element);
  const base = {
    ...BARE,
    element: body.id,
    body: body.id,
    limits: ["spa.rimAbove", "spa.rimWithin"] as const,
    measured: { rimAbove: found.rimAbove },
    required: { rimAbove: needed },
    margin: found.rimAbove === null ? null : found.rimAbove - needed,
  };
  const trace =
    found.deciding?.settled.trace ?? found.conditions.find((c) => c.settled.choice !== null)?.settled.trace ?? {};
  const notes = found.conditions.map((c) => c.settled.note).join("");
  if (found.state === "indoor") {
    return [
      {
        ...base,
        ...trace,
        outcome: "review",
        section: "680.43",
        basis: "memory",
        why: `${name} stands indoors, where 680.43 decides instead of the exception for outdoor spas. It is judged like a pool until that is settled.${notes}`,
        remedy: "Have an electrician judge the indoor spa under 680.43.",
        ...(found.deciding ? { question: found.deciding.question } : {}),
      },
    ];
  }
  if (found.state === "holds") {
    const why = `${name} meets every condition of the exception, so it needs no perimeter bonding. The other parts of 680.26 still apply.${notes}`;
    return [
      {
        ...base,
        ...trace,
        outcome: "exempt",
        why,
        remedy: "Keep its listing and its instructions at hand for the inspection.",
      },
    ];
  }
  const says = found.deciding?.says ?? "a condition is not met";
  if (found.state === "fails") {
    return [
      {
        ...base,
        ...trace,
        outcome: "bond",
        why: `${name} does not meet the exception for outdoor spas: ${says}. It needs perimeter bonding like a pool.${notes}`,
        remedy: "Bond the perimeter as for a pool, or change what fails.",
        need: { kind: "perimeter", elements: [], connections: 0, at: [], drop: 0 },
      },
    ];
  }
  return [
    {
      ...base,
      ...trace,
      outcome: "review",
      why: `Whether ${plain} is free of perimeter bonding hangs on one condition: ${says}. It is judged like a pool until that is settled.${notes}`,
      remedy: "Settle the condition; until then plan its perimeter bonding.",
      ...(found.deciding ? { question: found.deciding.question } : {}),
    },
  ];
}
