import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { worstOf } from "../across-bodies.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { ON_BARRIERS } from "../common/rests-on.ts";
import { separated } from "../common/separation.ts";
import { all, any, atLeast, type Truth, YES } from "../common/truth.ts";
import { speakerOf, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "disconnect-distance",
  title: "Disconnects and the water",
  part: "disconnect",
  sections: everyEdition("680.13"),
  subjects: "Each maintenance disconnect.",
  measure: "Its straight distance to the inside wall; where a barrier stands between, the way round it.",
  parameters: ["disconnect.distance"],
  protects: "Whoever throws the disconnect stands on dry ground, out of reach of the water.",
  judge: (yard) =>
    yard.each(rule.id, "device", (element) => {
      if (element.device !== "disconnect") return [];
      const worst = worstOf(yard.bodies, (body) => judgeAt(yard, body, element));
      return worst ? [worst] : [];
    }),
};

function judgeAt(yard: Yard, body: Body, element: DeviceElement): Verdict {
  const say = speakerOf(yard);
  const limit = yard.edition.value("disconnect.distance");
  const straight = yard.straight(element, body);
  const far = atLeast(yard, straight.length, limit, "its distance to the inside wall");
  const around = far.state === "yes" ? null : yard.pathTo(element, body, "metal").atMost;
  const round: Truth = around === null ? YES : atLeast(yard, around.length, limit, "the way to it round the barrier");
  const truth = far.state === "yes" ? far : any(far, all(separated(yard, body, straight), round));
  const where =
    straight.length === 0 ? "is over or at the water" : `is ${say.length(straight.length, limit)} from the inside wall`;
  const about = {
    element: element.id,
    body: body.id,
    measured: {
      horizontal: straight.length,
      ...(far.state === "yes" ? {} : { path: yard.countedPath(element, body, "metal")?.length ?? null }),
    },
    required: { horizontal: limit },
    margin: straight.length - limit,
    witness: witnessLine(straight),
    limits: rule.parameters,
  };
  return clearanceVerdict(yard, about, truth, {
    question: "disconnect-separated",
    restsOn: ON_BARRIERS,
    is: `${subjectName(element)} ${where}`,
    wanted: `it keeps at least ${say.length(limit)}${far.state === "yes" ? "" : ", or a permanent barrier makes the way to it that long"}`,
    breaks: `${say.length(limit)} are asked for, and no barrier makes the way to it that long`,
    remedy: `Move it to at least ${say.length(limit)} from the inside wall, still within sight of what it serves.`,
  });
}
