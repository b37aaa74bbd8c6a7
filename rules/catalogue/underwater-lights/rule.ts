import type { Yard } from "../../measures/yard.ts";
import type { LightElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { joinRemedy } from "../common/fixed-metal.ts";
import { partNeed } from "../common/needs.ts";
import { bodyOf } from "../common/storable.ts";
import { BARE, settle, subjectName, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "underwater-lights",
  title: "Underwater lights",
  part: "lights",
  sections: everyEdition("680.26(B)(4)"),
  subjects: "The forming shell and the mounting bracket of each underwater light.",
  measure: "Whether either is metal, and whether the light is a listed low-voltage system in a nonmetallic shell.",
  parameters: ["lights.lowVoltageExempt"],
  protects: "A light is the one place where house current and pool water are a gasket apart.",
  judge: (yard) => yard.each(rule.id, "underwater-light", (element) => judgeLight(yard, element)),
};

const BRACKET_QUESTION = yesNo("light-bracket", "Does the light hang on a metal mounting bracket?");

function judgeLight(yard: Yard, element: LightElement): Verdict[] {
  const body = bodyOf(yard, element);
  if (!body) return [];
  const name = subjectName(element);
  const plain = elementName(element);
  const base = { ...BARE, element: element.id, body: body.id, basis: "published" as const };
  const bond = (why: string, trace = {}): Verdict[] => [
    {
      ...base,
      ...trace,
      outcome: "bond",
      why,
      remedy: joinRemedy(yard, 1),
      need: partNeed(yard, element, [element.at], 1, null),
    },
  ];
  if (element.formingShell === "metal") {
    return bond(`The forming shell of ${plain} is metal and needs bonding, whatever the light's voltage.`);
  }
  if (yard.fact(element, "listedLowVoltage") === true && yard.edition.value("lights.lowVoltageExempt")) {
    const why = `${name} is a listed low-voltage light without a metal forming shell, so it needs no bonding.`;
    return [
      {
        ...base,
        basis: yard.edition.basis("lights.lowVoltageExempt"),
        limits: ["lights.lowVoltageExempt"],
        outcome: "exempt",
        why,
      },
    ];
  }
  const bracket = `The mounting bracket of ${plain} is metal and needs bonding.`;
  const free = `${name} has neither a metal forming shell nor a metal bracket, so nothing of it needs bonding.`;
  if (element.metalBracket === true) return bond(bracket);
  if (element.metalBracket === false) return [{ ...base, outcome: "exempt", why: free }];
  const settled = settle(yard, BRACKET_QUESTION, element.id, body.id);
  if (settled.choice === "yes") return bond(bracket + settled.note, settled.trace);
  if (settled.choice === "no") return [{ ...base, ...settled.trace, outcome: "exempt", why: free + settled.note }];
  return [
    {
      ...base,
      ...settled.trace,
      outcome: "review",
      why: `${name} has no metal forming shell, and the drawing does not say whether its mounting bracket is metal.${settled.note}`,
      remedy: "Say whether the bracket is metal; bond it if it is.",
      question: BRACKET_QUESTION,
    },
  ];
}
