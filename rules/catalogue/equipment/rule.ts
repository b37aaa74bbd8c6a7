import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { EquipmentElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { worstOf } from "../across-bodies.ts";
import { type FixedMetal, joinRemedy, judgeFixedMetal } from "../common/fixed-metal.ts";
import { heightRange, partNeed } from "../common/needs.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, draftOf, settle, settledAs, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "equipment",
  title: "Pool equipment",
  part: "equipment",
  sections: everyEdition("680.26(B)(6)"),
  subjects: "Pumps, heaters, filters, chlorinators, blowers, controllers, heat pumps and cover motors.",
  measure: "Whether metal parts of it belong to the water's circulation or the cover; distance does not free them.",
  parameters: ["equipment.heaterAmps", "fixedMetal.distance", "fixedMetal.height"],
  protects: "A fault in a pump's motor reaches the pool through its water unless motor and water are one.",
  judge: (yard) => yard.each(rule.id, "equipment", (element) => judgeUnit(yard, element)),
};

/** Units that may be tanks with nothing electric. */
const MAY_BE_TANKS: ReadonlySet<string> = new Set(["filter", "chlorinator", "other"]);

/** Units whose motors are sold double insulated. */
const MOTORS: ReadonlySet<string> = new Set(["pump", "blower", "cover-motor", "heat-pump"]);

const TANK_QUESTION: Question = {
  id: "tank-bonded",
  text: "Is anything electric in or on this unit, or does the authority having jurisdiction want it bonded?",
  options: ["yes", "no"],
};

function judgeUnit(yard: Yard, element: EquipmentElement): Verdict[] {
  const bodies = bondedBodies(yard);
  const body = yard.nearestBody(element, bodies);
  if (!body) return [];
  const name = subjectName(element);
  const straight = yard.straight(element, body);
  const base = draftOf({
    element: element.id,
    body: body.id,
    measured: { horizontal: straight.length },
    required: BARE.required,
    margin: BARE.margin,
    witness: witnessLine(straight),
    limits: BARE.limits,
  });
  base.basis = "published";
  if (yard.fact(element, "metalParts") === false)
    return [settledAs(base, "exempt", `${name} has no metal parts, so nothing of it needs bonding.`)];
  if (yard.fact(element, "servesWater") === false && element.unit !== "cover-motor") {
    const why = `${name} is no part of the water's circulation.`;
    return [asFixedMetal(yard, bodies, element, why)];
  }
  if (MOTORS.has(element.unit) && yard.fact(element, "doubleInsulated") === true) {
    const tail =
      element.unit === "pump" ? " A tail is left at it all the same: see the rule for double-insulated pumps." : "";
    return [
      {
        ...base,
        outcome: "exempt",
        why: `The motor of ${elementName(element)} is listed as double insulated and is not bonded.${tail}`,
      },
    ];
  }
  if (MAY_BE_TANKS.has(element.unit) && element.electric !== true)
    return [judgeTank(yard, bodies, body, element, base)];
  return [bondUnit(yard, element, base)];
}

function bondUnit(yard: Yard, element: EquipmentElement, base: Base, lead = "", trace = {}): Verdict {
  const name = subjectName(element);
  const amps = yard.edition.value("equipment.heaterAmps");
  const rated = element.ratedAmps;
  const marked =
    element.unit === "heater" && rated !== undefined && rated > amps && element.bondingInstructions === true;
  const why = marked
    ? `${name} is rated ${rated} A, more than ${amps} A, and has bonding instructions of its own: only the parts they mark are bonded.`
    : element.unit === "cover-motor"
      ? `${name} drives the pool's cover: its metal parts need bonding at any distance.`
      : `${name} belongs to the equipment of the pool's water: its metal parts need bonding at any distance.`;
  const remedy = marked
    ? `Bond the parts marked for it, as the instructions say, with solid copper of ${yard.edition.value("conductor.size")} AWG or larger.`
    : joinRemedy(yard, 1);
  return {
    ...base,
    ...trace,
    ...(marked ? { limits: ["equipment.heaterAmps"] as const, measured: { ...base.measured, ratedAmps: rated } } : {}),
    outcome: "bond",
    why: lead === "" ? why : lead,
    remedy,
    need: unitNeed(yard, element),
  };
}

type Base = Omit<Verdict, "outcome" | "why">;

function unitNeed(yard: Yard, element: EquipmentElement) {
  return partNeed(yard, element, [element.at], 1, heightRange(element.z)?.bottom ?? null);
}

/** A tank with nothing electric is no equipment of this part; near the water it is fixed metal. */
function judgeTank(yard: Yard, bodies: readonly Body[], body: Body, element: EquipmentElement, base: Base): Verdict {
  const name = subjectName(element);
  const plain = elementName(element);
  const lead =
    element.electric === false
      ? `${name} holds nothing electric.`
      : `Whether ${plain} holds anything electric is not given.`;
  const near = asFixedMetal(yard, bodies, element, lead);
  if (near.outcome === "bond") return near;
  const settled = settle(yard, TANK_QUESTION, element.id, body.id);
  if (settled.choice === "yes") {
    return bondUnit(
      yard,
      element,
      base,
      `${name} counts as equipment of the pool's water and needs bonding.${settled.note}`,
      settled.trace,
    );
  }
  if (settled.choice === "no") return { ...near, ...settled.trace, why: near.why + settled.note };
  const far = near.outcome === "exempt" ? " As fixed metal it is exempt where it stands." : "";
  return {
    ...base,
    ...settled.trace,
    basis: "published",
    outcome: "review",
    why: `${lead} A tank without anything electric is no equipment of this part, and whether it is bonded is asked for differently from place to place.${far}${settled.note}`,
    remedy: "Say whether anything electric is in or on it, and ask the authority having jurisdiction.",
    question: TANK_QUESTION,
  };
}

/** The unit judged as any fixed metal, under that section. */
function asFixedMetal(yard: Yard, bodies: readonly Body[], element: EquipmentElement, lead: string): Verdict {
  const worst = worstOf(bodies, (body) => {
    const straight = yard.straight(element, body);
    const metal: FixedMetal = {
      element,
      name: subjectName(element),
      straight,
      path:
        straight.length === 0
          ? { length: 0, points: [straight.from, straight.to] }
          : yard.countedPath(element, body, "metal"),
      lowest: heightRange(element.z)?.bottom ?? "ground",
      remedy: () => joinRemedy(yard, 1),
    };
    return judgeFixedMetal(yard, body, metal);
  });
  if (!worst) throw new Error(`${element.id} was judged without a body`);
  const verdict = { ...worst, section: "680.26(B)(7)", why: `${lead} ${worst.why}` };
  return worst.outcome === "bond" ? { ...verdict, need: unitNeed(yard, element) } : verdict;
}
