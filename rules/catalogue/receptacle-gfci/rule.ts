import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { worstOf } from "../across-bodies.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { cordReach } from "../common/cord-reach.ts";
import { storableOf } from "../common/storable.ts";
import { any, flag, notGiven, type Truth } from "../common/truth.ts";
import { draftOf, settledAs, speakerOf, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "receptacle-gfci",
  title: "Protection of receptacles",
  part: "receptacles",
  sections: everyEdition("680.22(A)(4)"),
  alsoSections: everyEdition(["680.32"]),
  subjects: "Each receptacle.",
  measure:
    "Whether a cord from it lies within reach of the inside wall, and whether GFCI protects it. A rating that is not given is taken as an ordinary one.",
  parameters: ["receptacle.gfciWithin", "receptacle.gfciVolts", "receptacle.gfciAmps"],
  protects: "GFCI cuts the current off before it can stop a heart, when what is plugged in falls into the water.",
  judge(yard) {
    return yard.each(rule.id, "device", (element): Verdict[] => {
      if (element.device !== "receptacle") return [];
      const worst = worstOf(yard.bodies, (body) => judgeAt(yard, body, element));
      return worst ? [worst] : [];
    });
  },
};

function judgeAt(yard: Yard, body: Body, element: DeviceElement): Verdict {
  const say = speakerOf(yard);
  const limit = yard.edition.value("receptacle.gfciWithin");
  const name = subjectName(element);
  const reach = cordReach(yard, body, element);
  const away = reach.atLeastAway(limit);
  const { gfci } = element;
  const about = draftOf({
    element: element.id,
    body: body.id,
    measured:
      gfci === undefined
        ? { horizontal: reach.horizontal, path: reach.length }
        : { horizontal: reach.horizontal, path: reach.length, gfci },
    required: { path: limit },
    margin: reach.length === null ? null : reach.length - limit,
    witness: reach.witness,
    limits: rule.parameters,
  });
  if (storableOf(yard, body).is === "yes") {
    about.section = "680.32";
    about.basis = "memory";
  }
  const way =
    reach.length === null
      ? "no way for a cord leads to the water"
      : `a cord from it would lie ${say.length(reach.length, limit)} to the inside wall`;
  if (away.state === "yes") {
    const why = `${name}: ${way}${reach.length === null ? "" : `, more than ${say.length(limit)}`}.`;
    return settledAs(about, "exempt", why);
  }
  const words = {
    question: "receptacle-gfci",
    is: `${name}: ${way}`,
    wanted:
      element.gfci === true ? "GFCI protects it" : `GFCI protects it, or it lies more than ${say.length(limit)} away`,
    breaks: `within ${say.length(limit)} it is to be protected by GFCI, and is not`,
    remedy: "Protect it by GFCI.",
  };
  const { outcome, ...rest } = clearanceVerdict(yard, about, any(away, protectedBy(element)), words);
  if (ratingCounts(yard, element) === "yes" || element.gfci === true) return { ...rest, outcome };
  const { question: _, ...plain } = rest;
  const why = `${name} is rated ${element.volts ?? "?"} V and ${element.amps ?? "?"} A: this edition asks for GFCI on others.`;
  return { ...plain, outcome: "exempt", why, remedy: "" };
}

function protectedBy(element: DeviceElement): Truth {
  return flag(element.gfci, notGiven("gfci", "Whether GFCI protects it", "Does GFCI protect it?"));
}

/** Whether a receptacle of its rating is to be protected; a rating that is not given counts. */
function ratingCounts(yard: Yard, { volts, amps }: DeviceElement): "yes" | "no" {
  const ratings = yard.edition.value("receptacle.gfciAmps");
  if (volts !== undefined && volts > yard.edition.value("receptacle.gfciVolts")) return "no";
  return amps !== undefined && ratings !== null && !ratings.includes(String(amps)) ? "no" : "yes";
}
