import type { Yard } from "../../measures/yard.ts";
import type { EquipmentElement } from "../../site/elements.ts";
import { worstOver } from "../common/clearance-verdict.ts";
import { isElectric } from "../common/electric.ts";
import { judgeStraight } from "../common/straight-distance.ts";
import { any, NO, type Truth, YES } from "../common/truth.ts";
import { BARE, draftOf, settledAs, subjectName } from "../common/verdicts.ts";
import type { Rule, Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "other-equipment-distance",
  title: "Other equipment and the water",
  part: "other-equipment",
  sections: { "nec-2017": "680.22(E)", "nec-2020": "680.22(E)", "nec-2023": "680.22(E)" },
  subjects: "Electric equipment, save cover motors, which have a rule of their own.",
  measure:
    "Its straight distance to the inside wall, what solid stands between, and whether it works at or below the low-voltage contact limit. A voltage that is not given does not free it. Asked for from 2020 on.",
  parameters: ["otherEquipment.distance", "contactLimit.volts"],
  protects:
    "A swimmer at the edge reaches what stands within arm's length, and a fault in it, while still in the water.",
  judge(yard) {
    const limit = yard.edition.value("otherEquipment.distance");
    if (limit === null && yard.edition.amended("otherEquipment.distance") === undefined) return [];
    return yard.each(rule.id, "equipment", (element) =>
      element.unit === "cover-motor" ? [] : judgeEquipment(yard, element, limit),
    );
  },
};

function judgeEquipment(yard: Yard, element: EquipmentElement, limit: number | null): Verdict[] {
  const electric = isElectric(element);
  return worstOver(yard, element, (body) => {
    const base = draftOf({ ...BARE, element: element.id, body: body.id });
    const volts = yard.edition.value("contactLimit.volts");
    if (electric.state === "no") return settledAs(base, "exempt", `${subjectName(element)} is not electric.`);
    if (limit === null) {
      const why = `${subjectName(element)} may stand anywhere: a local amendment takes this distance away.`;
      return { ...base, limits: ["otherEquipment.distance"], outcome: "exempt", why };
    }
    const low = element.volts !== undefined && element.volts <= volts;
    if (low) {
      const why = `${subjectName(element)} works at ${element.volts} V, at or below the low-voltage contact limit of ${volts} V.`;
      return { ...base, limits: ["contactLimit.volts"], outcome: "exempt", why };
    }
    return judgeStraight(yard, body, element, {
      parameter: "otherEquipment.distance",
      limit,
      question: "equipment-separated",
      unless: any(notElectric(electric)),
      unlessSays: "it is not electric",
      danger: "it can be reached from the water",
    });
  });
}

function notElectric(electric: Truth): Truth {
  if (electric.state === "open") return electric;
  return electric.state === "no" ? YES : NO;
}
