import { flattenPath } from "../../../geometry/outline.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { MetalElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { joinRemedy } from "../common/fixed-metal.ts";
import { metalKind } from "../common/metal-kind.ts";
import { heightRange, meetingPoints, partNeed } from "../common/needs.ts";
import { POOL_WALL_FRAME_QUESTION, shellFacts } from "../common/shell-facts.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "structure-metal",
  title: "Metal of the pool's structure",
  part: "structure",
  sections: everyEdition("680.26(B)(3)"),
  subjects: "Reinforcing metal, walls, frames and other metal parts of a pool's structure.",
  measure: "Nothing: whatever its size and place, it is a part of the pool.",
  parameters: [],
  protects: "A metal wall behind a liner is as near to a swimmer as the water itself.",
  judge: (yard) => [
    ...bondedBodies(yard).flatMap((body) => judgeWallFrame(yard, body)),
    ...yard.each(rule.id, "metal", (element) => judgeMetal(yard, element)),
  ],
};

/** Walls or frame of metal that belong to the pool itself. */
function judgeWallFrame(yard: Yard, body: Body): Verdict[] {
  const facts = shellFacts(yard, body);
  const plain = elementName(body.element);
  const corner = body.water.outer.edges[0]?.from;
  const base = {
    ...BARE,
    element: body.id,
    body: body.id,
    measured: { horizontal: 0 },
    witness: corner ? [corner, corner] : [],
    basis: "published" as const,
  };
  if (facts.wallFrame === "nonmetal") return [];
  if (facts.wallFrame === "unknown") {
    return [
      {
        ...base,
        ...(facts.question?.id === POOL_WALL_FRAME_QUESTION.id ? facts.settled.trace : {}),
        outcome: "review",
        why: `Whether metal walls or a metal frame stand in the shell of ${plain} is not given. They would need bonding.`,
        remedy: "Say what the walls or the frame are made of.",
        question: POOL_WALL_FRAME_QUESTION,
      },
    ];
  }
  return [
    {
      ...base,
      outcome: "bond",
      why: `The metal walls or frame of ${plain} are a part of the pool's structure and need bonding.`,
      remedy: joinRemedy(yard, 1),
      need: partNeed(yard, body.element, flattenPath(body.water.outer), 1, null),
    },
  ];
}

/** Bars that are said to be encapsulated, and not the contrary. */
const ENCAPSULATED = /(?<!\b(?:not|non|un)[\s-]*)encapsulated/i;

function judgeMetal(yard: Yard, element: MetalElement): Verdict[] {
  if (metalKind(yard, element) !== "structure") return [];
  const name = subjectName(element);
  const body = yard.nearestBody(element, bondedBodies(yard));
  const base = { ...BARE, element: element.id, body: body?.id ?? null, basis: "published" as const };
  if (!body) {
    return [
      {
        ...base,
        outcome: "exempt",
        why: "680.26 applies to no pool of this site, so nothing of a structure needs bonding.",
      },
    ];
  }
  const straight = yard.straight(element, body);
  const measured = { horizontal: straight.length };
  const witness = witnessLine(straight);
  if (ENCAPSULATED.test(element.part ?? "")) {
    const why = `${name} is encapsulated: such bars are not bonded themselves, and cannot serve in place of copper either.`;
    return [{ ...base, measured, witness, outcome: "exempt", why }];
  }
  const connections = yard.fact(element, "anchors") ?? 1;
  const at = meetingPoints(yard, element, body, yard.edition.value("fixedMetal.distance"));
  return [
    {
      ...base,
      measured,
      witness,
      outcome: "bond",
      why: `${name} is a metal part of the pool's structure and needs bonding wherever it lies.`,
      remedy: joinRemedy(yard, connections),
      need: partNeed(yard, element, at, connections, heightRange(element.z)?.bottom ?? null),
    },
  ];
}
