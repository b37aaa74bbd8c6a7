import { reaches } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { EquipmentElement } from "../../site/elements.ts";
import { ON_BARRIERS } from "../common/rests-on.ts";
import { separated } from "../common/separation.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, speakerOf, subjectName, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "cover-motor",
  title: "Place of a cover motor",
  part: "equipment",
  sections: everyEdition("680.27(B)"),
  subjects: "Each motor of a pool cover, with its controls.",
  measure: "Its straight distance to the inside wall, and whether anything solid separates it from the water.",
  parameters: ["equipment.coverMotorDistance"],
  protects:
    "A swimmer within arm's length of a motor can touch it and the water at once; an operator who cannot see the pool closes it over people.",
  judge(yard) {
    const bodies = bondedBodies(yard);
    return yard.each(rule.id, "equipment", (element): Verdict[] => {
      const body = element.unit === "cover-motor" ? yard.nearestBody(element, bodies) : null;
      return body ? [judgeMotor(yard, body, element)] : [];
    });
  },
};

function judgeMotor(yard: Yard, body: Body, element: EquipmentElement): Verdict {
  const say = speakerOf(yard);
  const limit = yard.edition.value("equipment.coverMotorDistance");
  const straight = yard.straight(element, body);
  const name = subjectName(element);
  const away = say.length(straight.length, limit);
  const base = {
    ...BARE,
    element: element.id,
    body: body.id,
    limits: ["equipment.coverMotorDistance"] as const,
    measured: { horizontal: straight.length },
    required: { horizontal: limit },
    margin: straight.length - limit,
    witness: witnessLine(straight),
  };
  const view = "Its controls stand in full view of the pool.";
  const enough = reaches(straight.length, limit, yard.accuracy);
  if (enough === "yes")
    return {
      ...base,
      outcome: "meets",
      why: `${name} stands ${away} from the inside wall, at least ${say.length(limit)}.`,
      remedy: view,
    };
  const apart = separated(yard, body, straight).state !== "no";
  if (enough === "no" && !apart) {
    const question = yesNo(
      "cover-motor-separated",
      "Does a wall, a cover or another permanent barrier separate the motor from the pool?",
      ON_BARRIERS,
    );
    const settled = settle(yard, question, element.id, body.id);
    const near = `${name} stands ${away} from the inside wall, nearer than ${say.length(limit)}`;
    if (settled.choice === "yes")
      return {
        ...base,
        ...settled.trace,
        outcome: "meets",
        why: `${near}, but a permanent barrier separates it.${settled.note}`,
        remedy: view,
      };
    const remedy = `Move it to ${say.length(limit)} or more, or separate it from the pool by a wall, a cover or another permanent barrier. ${view}`;
    return {
      ...base,
      ...settled.trace,
      outcome: "conflict",
      why: `${near}, and nothing drawn separates them.${settled.note}`,
      remedy,
      question,
    };
  }
  const question = yesNo(
    "cover-motor-place",
    `Does it stand at least ${say.length(limit)} from the inside wall, or does a permanent barrier separate it from the pool?`,
    ON_BARRIERS,
  );
  const settled = settle(yard, question, element.id, body.id);
  const doubt =
    enough === "doubtful"
      ? `as near to the limit of ${say.length(limit)} as the drawing may be off`
      : `nearer than ${say.length(limit)}, with something solid between`;
  const why = `${name} stands ${away} from the inside wall, ${doubt}.${settled.note}`;
  if (settled.choice === "yes") return { ...base, ...settled.trace, outcome: "meets", why, remedy: view };
  if (settled.choice === "no")
    return {
      ...base,
      ...settled.trace,
      outcome: "conflict",
      why,
      remedy: `Move it to ${say.length(limit)} or more from the inside wall.`,
    };
  return {
    ...base,
    ...settled.trace,
    outcome: "review",
    why,
    remedy: "Look at it on site and settle the question.",
    question,
  };
}
