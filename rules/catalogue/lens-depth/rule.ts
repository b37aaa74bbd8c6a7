import { reaches } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Measured } from "../../report.ts";
import type { LightElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { bodyOf } from "../common/storable.ts";
import { all, atLeast, notGiven, open, type Truth, YES } from "../common/truth.ts";
import { BARE, speakerOf, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "lens-depth",
  title: "Depth of underwater lenses",
  part: "lenses",
  sections: everyEdition("680.23(A)(5)"),
  subjects: "Each underwater light.",
  measure:
    "How deep the top of its lens lies below the normal water level, and the least depth that it is listed for. A listing that is not given does not free it.",
  parameters: ["lens.depth", "lens.listedMin"],
  protects: "A swimmer hangs on the edge with the chest at the height of a shallow light.",
  judge: (yard) =>
    yard.each(rule.id, "underwater-light", (light): Verdict[] => {
      const body = bodyOf(yard, light);
      if (body !== null) return [judgeLight(yard, body, light)];
      const near = yard.nearestBody(light);
      if (near === null) return [];
      const why = `${subjectName(light)}: its pool is storable, and this section is for permanent ones.`;
      return [{ ...BARE, element: light.id, body: near.id, outcome: "exempt", why }];
    }),
};

function judgeLight(yard: Yard, body: Body, light: LightElement): Verdict {
  const say = speakerOf(yard);
  const full = yard.edition.value("lens.depth");
  const never = yard.edition.value("lens.listedMin");
  const depth = light.lensTopDepth;
  const listed = light.listedMinDepth;
  const limit = listed === undefined ? full : Math.min(full, Math.max(never, listed));
  const name = subjectName(light);
  const truth: Truth =
    depth === undefined
      ? open(
          notGiven(
            "lensTopDepth",
            "How deep the top of its lens lies",
            `Does the top of its lens lie at least ${say.length(limit)} below the normal water level?`,
          ),
        )
      : all(atLeast(yard, depth, limit, "the depth of its lens"), asListed(yard, depth, listed));
  const by = listed === undefined || listed >= full ? "" : `, as it is listed for ${say.length(listed)}`;
  const measured: Measured = depth === undefined ? {} : { depth };
  const about = {
    element: light.id,
    body: body.id,
    measured,
    required: { depth: limit },
    margin: depth === undefined ? null : depth - limit,
    witness: [],
    limits: ["lens.depth", "lens.listedMin"] as const,
  };
  return clearanceVerdict(yard, about, truth, {
    question: "lens-depth",
    is:
      depth === undefined
        ? `${name} shines under water`
        : `The top of the lens of ${elementName(light)} lies ${say.length(depth, limit)} below the normal water level`,
    wanted: `at least ${say.length(limit)} are asked for${by}`,
    breaks: `${say.length(limit)} are asked for${by}, and never less than ${say.length(never)}`,
    remedy: `Set the light deeper, or take one that is listed for that depth (never under ${say.length(never)}).`,
  });
}

/** Set less deep than its own listing names: the limit for all lights alone does not settle it. */
function asListed(yard: Yard, depth: number, listed: number | undefined): Truth {
  if (listed === undefined || listed <= yard.edition.value("lens.depth") || reaches(depth, listed, 0) === "yes")
    return YES;
  return open({
    says: `It is listed for ${speakerOf(yard).length(listed)} and more.`,
    asks: "Does its listing allow this depth (`listedMinDepth`)?",
    remedy: "Read its listing",
  });
}
