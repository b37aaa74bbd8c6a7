import { elementName } from "../../words/element-names.ts";
import { heightRange, partNeed } from "../common/needs.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, speakerOf } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "double-insulated-tail",
  title: "Tail at a double-insulated pump",
  part: "equipment",
  sections: everyEdition("680.26(B)(6)"),
  subjects: "Each pump whose motor is listed as double insulated.",
  measure: "Whether a tail of the bonding lies at the motor, ready for the one that replaces it.",
  parameters: ["conductor.size", "equipment.tailLength"],
  protects: "The next motor will hardly be double insulated, and whoever swaps it finds nothing to bond it to.",
  judge(yard) {
    const bodies = bondedBodies(yard);
    const say = speakerOf(yard);
    return yard.each(rule.id, "equipment", (element): Verdict[] => {
      const applies = element.unit === "pump" && yard.fact(element, "doubleInsulated") === true;
      const body = yard.nearestBody(element, bodies);
      if (!applies || !body || yard.fact(element, "servesWater") === false) return [];
      const size = yard.edition.value("conductor.size");
      const length = yard.edition.value("equipment.tailLength");
      const height = heightRange(element.z)?.bottom ?? null;
      return [
        {
          ...BARE,
          element: element.id,
          body: body.id,
          outcome: "bond",
          limits: ["conductor.size"],
          required: { tailSize: size },
          why: `The motor of ${elementName(element)} is double insulated and is not bonded, but a motor that replaces it may have to be.`,
          remedy: `Leave a tail of solid copper of ${size} AWG or larger at the motor, about ${say.length(length)} long, where it can be reached. If nothing else joins the bonding to the equipment grounding system, join the tail to the equipment grounding conductor of the motor's circuit.`,
          need: partNeed(yard, element, [element.at], 1, height),
        },
      ];
    });
  },
};
