import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { worstOver } from "../common/clearance-verdict.ts";
import { joinRemedy } from "../common/fixed-metal.ts";
import { partNeed } from "../common/needs.ts";
import { BARE, settle, speakerOf, subjectName, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "gas-piping",
  title: "Piping of gas-fired features",
  part: "luminaires",
  sections: everyEdition("680.22(B)(7)"),
  subjects: "Each low-voltage luminaire that burns gas.",
  measure:
    "Its straight distance to the inside wall, and whether the gas piping to it is metal. Piping that is drawn by itself is judged by itself.",
  parameters: ["luminaire.near"],
  protects:
    "A flame may stand nearer to the water than a lamp; the pipe that feeds it comes as near, and from the house.",
  judge: (yard) =>
    yard.each(rule.id, "device", (device) => {
      const burns = device.device === "luminaire" && yard.fact(device, "gasFired") === true;
      if (!burns || yard.fact(device, "lowVoltage") !== true) return [];
      return worstOver(yard, device, (body) => judgeAt(yard, body, device));
    }),
};

const [METAL, DRAWN, PLASTIC] = ["metal", "metal, and drawn as a part of its own", "not metal"] as const;

const PIPING_QUESTION: Question = {
  id: "gas-piping",
  text: "What is the gas piping to it made of?",
  options: [METAL, DRAWN, PLASTIC],
};

function judgeAt(yard: Yard, body: Body, device: DeviceElement): Verdict {
  const say = speakerOf(yard);
  const near = yard.edition.value("luminaire.near");
  const straight = yard.straight(device, body);
  const distance = straight.length;
  const name = subjectName(device);
  const where = distance === 0 ? "over the water" : `${say.length(distance, near)} from the inside wall`;
  const base = {
    ...BARE,
    element: device.id,
    body: body.id,
    basis: "memory" as const,
    measured: { horizontal: distance },
    required: { horizontal: near },
    margin: distance - near,
    witness: witnessLine(straight),
    limits: ["luminaire.near"] as const,
  };
  const far = exceeds(distance, near, yard.accuracy);
  const beyond = `${name} is ${where}, more than ${say.length(near)}.`;
  if (far === "yes") return { ...base, outcome: "exempt", why: beyond };
  if (far === "doubtful" && device.gasPiping !== "nonmetal") {
    const question = yesNo(
      "gas-feature-near",
      `Taped on site, does it stand within ${say.length(near)} of the inside wall?`,
    );
    const taped = settle(yard, question, device.id, body.id);
    if (taped.choice === "no") return { ...base, ...taped.trace, outcome: "exempt", why: beyond + taped.note };
    const why = `${name} is ${where}, as near to the limit of ${say.length(near)} as the drawing may be off.${taped.note}`;
    if (taped.choice === null)
      return { ...base, ...taped.trace, outcome: "review", why, remedy: "Measure the distance on site.", question };
  }
  const settled = device.gasPiping === undefined ? settle(yard, PIPING_QUESTION, device.id, body.id) : null;
  const { trace = {}, note = "" } = settled ?? {};
  const piping = device.gasPiping ?? settled?.choice ?? null;
  const told = { ...base, ...trace };
  const at = `${name} burns gas ${where}`;
  if (piping === "nonmetal" || piping === PLASTIC)
    return { ...told, outcome: "exempt", why: `${at}, and its gas piping is not metal.${note}` };
  if (piping === DRAWN)
    return { ...told, outcome: "exempt", why: `${at}; its metal gas piping is drawn, and judged there.${note}` };
  const remedy = joinRemedy(yard, 1);
  if (piping === null) {
    const why = `${at}, and what its gas piping is made of is not given; metal piping needs bonding.${note}`;
    return {
      ...told,
      outcome: "review",
      why,
      remedy: "Say what the piping is; bond it if it is metal.",
      question: PIPING_QUESTION,
    };
  }
  const need = partNeed(yard, device, [device.at], 1, null);
  const why = `${at}, and the metal gas piping to ${elementName(device)} needs bonding.${note}`;
  return { ...told, outcome: "bond", why, remedy, need };
}
