import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { worstOver } from "../common/clearance-verdict.ts";
import { BARE, settle, speakerOf, subjectName, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "cord-luminaire",
  title: "Luminaires on a cord",
  part: "luminaires",
  sections: everyEdition("680.22(B)(5)"),
  subjects: "Each luminaire that is drawn as connected by a cord and plug.",
  measure: "Its straight distance to any point of the water, and within it whether its cord is as the code asks.",
  parameters: ["luminaire.cordWithin"],
  protects: "A lamp on a cord is carried to where it is wanted, and what holds its metal at zero is one thin wire.",
  judge: (yard) =>
    yard
      .all("device")
      .filter(({ device }) => device === "luminaire")
      .filter((device) => yard.fact(device, "cordConnected") === true)
      .flatMap((device) => worstOver(yard, device, (body) => judgeAt(yard, body, device))),
};

const CORD_QUESTION = yesNo(
  "cord-of-luminaire",
  "Is its cord as the code asks of cord-connected equipment: its length, its copper grounding conductor, its plug?",
);

function judgeAt(yard: Yard, body: Body, device: DeviceElement): Verdict {
  const say = speakerOf(yard);
  const within = yard.edition.value("luminaire.cordWithin");
  const straight = yard.straight(device, body);
  const beyond = exceeds(straight.length, within, yard.accuracy);
  const where = `${subjectName(device)} is connected by a cord, ${say.length(straight.length, within)} from the water`;
  const base = {
    ...BARE,
    element: device.id,
    body: body.id,
    measured: { horizontal: straight.length },
    required: { horizontal: within },
    margin: straight.length - within,
    witness: witnessLine(straight),
    limits: ["luminaire.cordWithin"] as const,
  };
  if (beyond === "yes") {
    return { ...base, outcome: "exempt", why: `${where}; the rule for cords reaches ${say.length(within)}.` };
  }
  const settled = settle(yard, CORD_QUESTION, device.id, body.id);
  const asked = `${where}; within ${say.length(within)} its cord follows the rule for cord-connected equipment.${settled.note}`;
  const remedy = "Look at its cord and plug, or connect the luminaire permanently.";
  if (settled.choice === "yes") return { ...base, ...settled.trace, outcome: "meets", why: asked };
  if (settled.choice === "no") return { ...base, ...settled.trace, outcome: "conflict", why: asked, remedy };
  return { ...base, ...settled.trace, outcome: "review", why: asked, remedy, question: CORD_QUESTION };
}
