import type { Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { worstOver } from "../common/clearance-verdict.ts";
import { servesLighting } from "../common/serves.ts";
import { judgeStraight } from "../common/straight-distance.ts";
import { subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "outlet-distance",
  title: "Other outlets and the water",
  part: "outlets",
  sections: everyEdition("680.22(D)"),
  subjects: "Each outlet that is neither a receptacle nor for a luminaire or fan.",
  measure: "Its straight distance to the inside wall, and what solid stands between.",
  parameters: ["outlet.distance"],
  protects: "What is wired near the water is touched with wet hands: alarms, speakers, clocks and telephones too.",
  judge: (yard) =>
    yard.each(rule.id, "device", (element) => (element.device === "outlet" ? judgeOutlet(yard, element) : [])),
};

function judgeOutlet(yard: Yard, element: DeviceElement): Verdict[] {
  return worstOver(yard, element, (body) => {
    const verdict = judgeStraight(yard, body, element, {
      parameter: "outlet.distance",
      limit: yard.edition.value("outlet.distance"),
      question: "outlet-separated",
      danger: "what it feeds can be reached from the water",
    });
    if (servesLighting(yard, element) !== "yes") return verdict;
    const { question: _, ...rest } = verdict;
    const why = `${subjectName(element)} feeds a luminaire or a fan: it is judged as a lighting outlet under 680.22(B).`;
    return { ...rest, outcome: "exempt", why, remedy: "" };
  });
}
