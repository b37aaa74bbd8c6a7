import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { MetalElement } from "../../site/elements.ts";
import { joinRemedy } from "../common/fixed-metal.ts";
import { isLadderOrRail, metalKind } from "../common/metal-kind.ts";
import { heightRange, meetingPoints, partNeed } from "../common/needs.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, speakerOf, subjectName, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "fittings",
  title: "Metal fittings",
  part: "fittings",
  sections: everyEdition("680.26(B)(5)"),
  subjects: "Ladders, rails, cups, anchors, drains, skimmers, returns and other metal fittings in or on the pool.",
  measure: "Whether it is isolated, its largest dimension, and how deep it reaches into the structure.",
  parameters: [
    "fittings.largestDimension",
    "fittings.penetration",
    "fittings.coverAnchorsExempt",
    "fittings.coverAnchorLength",
  ],
  protects: "A ladder is what a swimmer holds while climbing out: wet, with both hands.",
  judge: (yard) => yard.each(rule.id, "metal", (element) => judgeFitting(yard, element)),
};

function judgeFitting(yard: Yard, element: MetalElement): Verdict[] {
  if (metalKind(yard, element) !== "fitting") return [];
  const body = yard.nearestBody(element, bondedBodies(yard));
  if (!body) {
    const why = "680.26 applies to no pool of this site, so no fitting needs bonding.";
    return [{ ...BARE, element: element.id, body: null, outcome: "exempt", limits: rule.parameters.slice(0, 2), why }];
  }
  return [judgeAt(yard, body, element)];
}

function judgeAt(yard: Yard, body: Body, element: MetalElement): Verdict {
  const say = speakerOf(yard);
  const name = subjectName(element);
  const size = yard.edition.value("fittings.largestDimension");
  const depth = yard.edition.value("fittings.penetration");
  const { isolated, largestDimension, penetration, part } = element;
  const straight = yard.straight(element, body);
  const connections = yard.fact(element, "anchors") ?? 1;
  const base = {
    ...BARE,
    element: element.id,
    body: body.id,
    measured: {
      horizontal: straight.length,
      ...(largestDimension === undefined ? {} : { largestDimension }),
      ...(penetration === undefined ? {} : { penetration }),
    },
    required: { largestDimension: size, penetration: depth },
    limits: ["fittings.largestDimension", "fittings.penetration"] as const,
    witness: witnessLine(straight),
  };
  const bond = (why: string, trace = {}): Verdict => {
    const cups = isLadderOrRail(part) ? " It has as many connections as it has cups." : "";
    const at = meetingPoints(yard, element, body, yard.edition.value("fixedMetal.distance"));
    const need = partNeed(yard, element, at, connections, heightRange(element.z)?.bottom ?? null);
    return { ...base, ...trace, outcome: "bond", why, remedy: joinRemedy(yard, connections) + cups, need };
  };
  const anchor = coverAnchor(yard, element);
  if (anchor === "free") {
    const why = `${name} is a small cover anchor, which this edition frees by name.`;
    return { ...base, limits: ["fittings.coverAnchorsExempt", "fittings.coverAnchorLength"], outcome: "exempt", why };
  }
  if (largestDimension !== undefined && exceedsPlain(largestDimension, size)) {
    return bond(
      `${name} measures ${say.length(largestDimension, size)}, more than the ${say.length(size)} up to which an isolated fitting is free.`,
    );
  }
  if (penetration !== undefined && exceedsPlain(penetration, depth)) {
    return bond(
      `${name} reaches ${say.length(penetration, depth)} into the structure, more than the ${say.length(depth)} up to which an isolated fitting is free.`,
    );
  }
  if (isolated === false) return bond(`${name} is a metal fitting that is not isolated, so its size does not free it.`);
  if (largestDimension === undefined && isLadderOrRail(part)) {
    return bond(`${name} is a metal fitting larger than the ${say.length(size)} up to which an isolated one is free.`);
  }
  const small = `isolated, ${say.length(size)} or less in every dimension, and ${say.length(depth)} or less into the structure`;
  if (isolated === true && largestDimension !== undefined && penetration !== undefined) {
    const margin = Math.min(size - largestDimension, depth - penetration);
    return { ...base, outcome: "exempt", margin, why: `${name} is ${small}.` };
  }
  const question = yesNo("small-isolated-fitting", `Is this fitting ${small}?`);
  const settled = settle(yard, question, element.id, body.id);
  if (settled.choice === "yes")
    return { ...base, ...settled.trace, outcome: "exempt", why: `${name} is ${small}.${settled.note}` };
  if (settled.choice === "no")
    return bond(`${name} is a metal fitting that its size does not free.${settled.note}`, settled.trace);
  const unknown = [
    isolated === undefined ? "whether it is isolated" : "",
    largestDimension === undefined ? "its largest dimension" : "",
    penetration === undefined ? "how deep it reaches into the structure" : "",
  ].filter((text) => text !== "");
  const free = anchor === "maybe" ? " A small cover anchor would be free by name in this edition." : "";
  const why = `${name} is a metal fitting. It would be free if it were ${small}; the drawing does not give ${unknown.join(", ")}.${free}${settled.note}`;
  return {
    ...base,
    ...settled.trace,
    outcome: "review",
    why,
    remedy: "Give what is missing; bond it if it is not free.",
    question,
  };
}

/** Sizes of parts are their maker's: the drawing's accuracy does not touch them. */
function exceedsPlain(value: number, limit: number): boolean {
  return exceeds(value, limit, 0) === "yes";
}

/** Whether an edition that frees cover anchors frees this one: `maybe` while its size is not given. */
function coverAnchor(yard: Yard, element: MetalElement): "free" | "maybe" | "no" {
  const named = /\bcover[- ]?anchor/i.test(element.part ?? "");
  if (!named || !yard.edition.value("fittings.coverAnchorsExempt") || yard.edition.named !== "yes") return "no";
  if (element.largestDimension === undefined) return "maybe";
  return element.largestDimension > yard.edition.value("fittings.coverAnchorLength") ? "no" : "free";
}
