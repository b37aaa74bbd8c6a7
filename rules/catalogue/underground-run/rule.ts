import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { ParameterId } from "../../editions/parameter-types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { UndergroundElement } from "../../site/elements.ts";
import { worstOf } from "../across-bodies.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { all, any, atLeast, flag, notGiven, open, type Truth, withinAccuracy, YES } from "../common/truth.ts";
import { type Speaker, speakerOf, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "underground-run",
  title: "Underground runs",
  part: "underground",
  sections: everyEdition("680.11"),
  subjects: "Each underground run.",
  measure:
    "Its wiring method, how much lies over it, and whether it passes under the water of a pool that it does not serve.",
  parameters: [
    "underground.methods",
    "underground.coverMetal",
    "underground.coverNonmetal",
    "underground.coverCable",
    "underground.coverMetalMethods",
    "underground.coverNonmetalMethods",
  ],
  protects: "A cable that a spade cuts or the ground chafes sends its current through wet soil to the pool.",
  judge: (yard) =>
    yard.each(rule.id, "underground-run", (run) => {
      const worst = worstOf(yard.bodies, (body) => judgeAt(yard, body, run));
      return worst ? [worst] : [];
    }),
};

interface Cover {
  readonly limit: number;
  readonly parameter: ParameterId;
  /** Less is a question, not a conflict. */
  readonly argued: boolean;
}

function coverOf(yard: Yard, method: string): Cover {
  const value = (parameter: "underground.coverMetal" | "underground.coverNonmetal" | "underground.coverCable") => ({
    limit: yard.edition.value(parameter),
    parameter,
  });
  if (yard.edition.value("underground.coverMetalMethods").includes(method))
    return { ...value("underground.coverMetal"), argued: false };
  if (yard.edition.value("underground.coverNonmetalMethods").includes(method))
    return { ...value("underground.coverNonmetal"), argued: false };
  return { ...value("underground.coverCable"), argued: true };
}

function judgeAt(yard: Yard, body: Body, run: UndergroundElement): Verdict {
  const say = speakerOf(yard);
  const cover = coverOf(yard, run.method);
  const straight = yard.straight(run, body);
  const under = straight.length > 0 ? 0 : yard.lengthWithin(run, body, 0).length;
  const truth = all(
    methodTruth(yard, run),
    placeTruth(yard, run, straight.length, under),
    coverTruth(yard, run, cover),
  );
  const about = {
    element: run.id,
    body: body.id,
    measured: {
      horizontal: straight.length,
      ...(run.cover === undefined ? {} : { cover: run.cover }),
      underWater: under,
    },
    required: { cover: cover.limit },
    margin: run.cover === undefined ? null : run.cover - cover.limit,
    extent: under,
    witness: witnessLine(straight),
    limits: ["underground.methods", cover.parameter] as const,
  };
  const name = subjectName(run);
  const depth = run.cover === undefined ? "" : `, ${say.length(run.cover, cover.limit)} deep`;
  const lies = under > LIMIT_TOLERANCE ? ` and runs ${say.length(under)} under the water` : "";
  const wanted = `it is of a method that is named for this place, at least ${say.length(cover.limit)} deep, and under no pool that it does not serve`;
  return clearanceVerdict(yard, about, truth, {
    question: "underground-run-allowed",
    is: `${name} is ${METHOD_WORDS[run.method] ?? run.method}${depth}${lies}`,
    wanted,
    breaks: breaksWords(run, under, cover, say),
    remedy:
      run.servesPool === false && under > LIMIT_TOLERANCE
        ? "Lead it round the pool."
        : `Lay it at least ${say.length(cover.limit)} deep, in a method that is named there.`,
  });
}

const METHOD_WORDS: Readonly<Record<string, string>> = {
  rmc: "rigid metal conduit",
  imc: "intermediate metal conduit",
  pvc: "rigid PVC conduit",
  rtrc: "reinforced resin conduit",
  mc: "metal-clad cable",
  "direct-burial": "cable buried without conduit",
  other: "another wiring method",
};

function breaksWords(run: UndergroundElement, under: number, cover: Cover, say: Speaker): string {
  if (under > LIMIT_TOLERANCE && run.servesPool === false)
    return "only what serves the pool may run under it, and this does not";
  return `at least ${say.length(cover.limit)} of cover are asked for`;
}

function methodTruth(yard: Yard, { method }: UndergroundElement): Truth {
  if (yard.edition.value("underground.methods").includes(method)) return YES;
  return open({
    says: "Its wiring method is none of those that are named for the ground near a pool.",
    asks: "Does the authority having jurisdiction allow this wiring method here (`method`)?",
    remedy: "Ask the authority having jurisdiction, or lay it in a conduit that is named",
  });
}

function placeTruth(yard: Yard, run: UndergroundElement, distance: number, under: number): Truth {
  const serves = flag(
    run.servesPool,
    notGiven("servesPool", "Whether it serves the pool", "Does it serve the pool it runs under?"),
  );
  if (under > LIMIT_TOLERANCE) return serves;
  const near = yard.accuracy > 0 && distance <= yard.accuracy + LIMIT_TOLERANCE;
  return near ? any(serves, open(withinAccuracy(yard, 0, "its distance to the water", "more than"))) : YES;
}

function coverTruth(yard: Yard, run: UndergroundElement, { limit, argued }: Cover): Truth {
  const say = speakerOf(yard);
  if (run.cover === undefined)
    return open(notGiven("cover", "How deep it lies", `Do at least ${say.length(limit)} lie over it?`));
  const covered = atLeast(yard, run.cover, limit, "its cover");
  if (!argued || covered.state !== "no") return covered;
  return open({
    says: `Less than ${say.length(limit)} lie over it, which only some circuits and places allow.`,
    asks: "Is this depth allowed for its circuit and place (`cover`)?",
    remedy: "Look up the depth for its circuit and place",
  });
}
