import type { Yard } from "../../measures/yard.ts";
import type { Measured } from "../../report.ts";
import type { EquipmentElement } from "../../site/elements.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { bondedBodies } from "../common/storable.ts";
import { flag, notGiven } from "../common/truth.ts";
import { BARE, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "pump-gfci",
  title: "Protection of pump motors",
  part: "equipment",
  sections: everyEdition("680.21(C)"),
  subjects: "Each pump.",
  measure: "Whether GFCI protects its motor's outlet.",
  parameters: ["pumpMotor.gfci"],
  protects: "A pump's motor is joined to the water by what it pumps: a fault there is cut off before it is felt.",
  judge: (yard) =>
    yard.each(rule.id, "equipment", (element) => (element.unit === "pump" ? judgePump(yard, element) : [])),
};

function judgePump(yard: Yard, element: EquipmentElement): Verdict[] {
  const name = subjectName(element);
  const bodies = bondedBodies(yard);
  const body = yard.nearestBody(element, bodies) ?? yard.nearestBody(element);
  if (body === null || !yard.edition.value("pumpMotor.gfci")) return [];
  const base = { ...BARE, element: element.id, body: body.id, limits: ["pumpMotor.gfci"] as const };
  if (bodies.length === 0)
    return [
      {
        ...base,
        outcome: "exempt",
        why: `${name}: every pool of this site is storable, and this section is for permanent ones.`,
      },
    ];
  if (yard.fact(element, "servesWater") === false)
    return [{ ...base, outcome: "exempt", why: `${name} does not move the pool's water.` }];
  if (element.electric === false) return [{ ...base, outcome: "exempt", why: `${name} is not electric.` }];
  const measured: Measured = element.gfci === undefined ? {} : { gfci: element.gfci };
  const about = {
    ...base,
    measured,
    required: { gfci: true },
  };
  const truth = flag(element.gfci, notGiven("gfci", "Whether GFCI protects it", "Does GFCI protect it?"));
  return [
    clearanceVerdict(yard, about, truth, {
      question: "pump-gfci",
      is: `${name} moves the pool's water`,
      wanted: "GFCI protects the outlet of its motor",
      breaks: "no GFCI protects the outlet of its motor",
      remedy: "Feed its motor through GFCI protection.",
    }),
  ];
}
