import type { Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { worstOver } from "../common/clearance-verdict.ts";
import { judgeStraight } from "../common/straight-distance.ts";
import { NO, YES } from "../common/truth.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "switch-distance",
  title: "Switches and the water",
  part: "switches",
  sections: everyEdition("680.22(C)"),
  subjects: "Each switching device.",
  measure:
    "Its straight distance to the inside wall, what solid stands between, and whether it is listed for nearer. A listing that is not given does not free it.",
  parameters: ["switch.distance"],
  protects:
    "A wet hand on a switch, with the other hand or a foot in the pool, is a path for current through a person.",
  judge: (yard) =>
    yard.each(rule.id, "device", (element) => (element.device === "switch" ? judgeSwitch(yard, element) : [])),
};

function judgeSwitch(yard: Yard, element: DeviceElement): Verdict[] {
  return worstOver(yard, element, (body) =>
    judgeStraight(yard, body, element, {
      parameter: "switch.distance",
      limit: yard.edition.value("switch.distance"),
      question: "switch-separated",
      unless: element.listedNearWater === true ? YES : NO,
      unlessSays: "it is listed for nearer",
      danger: "it can be reached from the water",
    }),
  );
}
