import type { Body, Yard } from "../../measures/yard.ts";
import type { KnownElement, MetalElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { worstOf } from "../across-bodies.ts";
import { FIXED_METAL_LIMITS, type FixedMetal, judgeFixedMetal } from "../common/fixed-metal.ts";
import { hasFittingName, metalKind } from "../common/metal-kind.ts";
import { meetingPoints, partNeed } from "../common/needs.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, subjectName, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Need, type Rule, type Verdict } from "../rule.ts";
import { fenceNeed, fenceSubject } from "./fence.ts";
import {
  claddingSubject,
  isMetalRun,
  MetalPiece,
  openingSubject,
  runSubject,
  type SubjectAt,
  wallSubject,
} from "./subjects.ts";

export const rule: Rule = {
  id: "fixed-metal",
  title: "Fixed metal",
  part: "fixed-metal",
  sections: everyEdition("680.26(B)(7)"),
  subjects:
    "Metal that is fixed and no part of the pool: poles, awnings, piping, raceways, fences, frames of doors and windows, metal cladding, metal conduit in the ground, steel in walls.",
  measure:
    "Its straight distance in plan to the inside wall, its lowest point above the maximum water level and above every stand, and the way round what stands between.",
  parameters: FIXED_METAL_LIMITS,
  protects: "A wet hand on a fence and a foot in the pool join two voltages through the heart.",
  judge(yard) {
    const bodies = bondedBodies(yard);
    return [
      ...yard.each(rule.id, "metal", (element) => judgeMetal(yard, bodies, element)),
      ...yard.each(rule.id, "fence", (element) => {
        if (element.metal === false) return [];
        const subject = fenceSubject(yard, element, bodies);
        return judgeAcross(yard, bodies, element, subject, (body) => fenceNeed(yard, element, body, bodies));
      }),
      ...yard.each(rule.id, "opening", (element) => {
        const none =
          element.metalFrame === false || (element.opening === "passage" && element.metalFrame === undefined);
        return none ? [] : judgeAcross(yard, bodies, element, openingSubject(yard, element));
      }),
      ...yard.each(rule.id, "building", (element) => {
        return element.metalCladding === false
          ? []
          : judgeAcross(yard, bodies, element, claddingSubject(yard, element));
      }),
      ...yard.each(rule.id, "underground-run", (element) => {
        return isMetalRun(element) ? judgeAcross(yard, bodies, element, runSubject(yard, element)) : [];
      }),
      ...yard.each(rule.id, "wall", (element) => {
        return element.reinforced === false ? [] : judgeAcross(yard, bodies, element, wallSubject(yard, element));
      }),
    ];
  },
};

function judgeMetal(yard: Yard, bodies: readonly Body[], element: MetalElement): Verdict[] {
  if (metalKind(yard, element) !== "fixed") return [];
  if (yard.fact(element, "fixed") === false) return [notFixed(yard, bodies, element)];
  const connections = yard.fact(element, "anchors") ?? 1;
  const subject = (body: Body) => new MetalPiece(yard, element, body);
  return judgeAcross(yard, bodies, element, subject, (body, metal) => {
    const at = meetingPoints(yard, element, body, yard.edition.value("fixedMetal.distance"));
    return partNeed(yard, element, at, connections, typeof metal.lowest === "number" ? metal.lowest : null);
  });
}

/** The worst of the bodies' verdicts, with the need where it asks for bonding. */
function judgeAcross(
  yard: Yard,
  bodies: readonly Body[],
  element: KnownElement,
  subject: SubjectAt,
  needAt?: (body: Body, metal: FixedMetal) => Need,
): Verdict[] {
  if (bodies.length === 0) return [noBody(yard, element)];
  const worst = worstOf(bodies, (body) => judgeFixedMetal(yard, body, subject(body)));
  if (!worst) return [];
  const body = yard.body(worst.body ?? "");
  if (worst.outcome !== "bond" || !body) return [worst];
  const reach = yard.edition.value("fixedMetal.distance");
  const need = needAt
    ? needAt(body, subject(body))
    : partNeed(yard, element, meetingPoints(yard, element, body, reach), 1, null);
  return [{ ...worst, need }];
}

function noBody(yard: Yard, element: KnownElement): Verdict {
  const why =
    yard.bodies.length === 0
      ? `No pool is drawn, so ${elementName(element)} is near none.`
      : "680.26 applies to none of the pools drawn: they are storable.";
  return {
    ...BARE,
    element: element.id,
    body: null,
    outcome: "exempt",
    measured: { horizontal: null, path: null, vertical: null },
    limits: ["fixedMetal.distance"],
    why,
  };
}

const LOOSE_FITTING_QUESTION = yesNo(
  "loose-fitting",
  "Is this a ladder, a rail or another fitting that stands in the pool's cups or deck?",
);

/** Metal that is not fixed: exempt, unless it may be a fitting that comes out of its cups. */
function notFixed(yard: Yard, bodies: readonly Body[], element: MetalElement): Verdict {
  const name = subjectName(element);
  const body = yard.nearestBody(element, bodies);
  if (!body) return noBody(yard, element);
  const metal = new MetalPiece(yard, element, body);
  const judged = judgeFixedMetal(yard, body, metal);
  const { question: _question, answered: _answered, lapsed: _lapsed, ...base } = judged;
  const exempt = `${name} is not fixed in place, so it is no fixed metal.`;
  if (judged.outcome === "exempt" && judged.answered === undefined) return judged;
  if (element.part !== undefined && !hasFittingName(element.part))
    return { ...base, outcome: "exempt", why: exempt, remedy: "" };
  const settled = settle(yard, LOOSE_FITTING_QUESTION, element.id, body.id);
  if (settled.choice === "no")
    return { ...base, ...settled.trace, outcome: "exempt", why: exempt + settled.note, remedy: "" };
  const what = element.part === undefined ? "and what it is is not given; ladders" : "and ladders";
  const why = `${name} is drawn as not fixed, ${what} and rails stand in cups that are bonded.${settled.note}`;
  if (settled.choice === "yes") {
    const at = meetingPoints(yard, element, body, yard.edition.value("fixedMetal.distance"));
    const need = partNeed(yard, element, at, yard.fact(element, "anchors") ?? 1, null);
    return { ...base, ...settled.trace, section: "680.26(B)(5)", outcome: "bond", why, remedy: metal.remedy(), need };
  }
  const remedy = "Say whether it stands in cups; bond the cups if it does.";
  return {
    ...base,
    ...settled.trace,
    section: "680.26(B)(5)",
    outcome: "review",
    why,
    remedy,
    question: LOOSE_FITTING_QUESTION,
  };
}
