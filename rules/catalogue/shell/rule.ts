import { flattenPath } from "../../../geometry/outline.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import { elementName } from "../../words/element-names.ts";
import { shellFacts } from "../common/shell-facts.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, speakerOf } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "shell",
  title: "Pool shell",
  part: "shell",
  sections: everyEdition("680.26(B)(1)"),
  subjects: "The shell of each body of water.",
  measure: "What the shell is made of, and whether bare steel or a copper grid lies in it.",
  parameters: [
    "shell.conductive",
    "shell.nonconductive",
    "shell.gridSpacing",
    "shell.gridTolerance",
    "shell.gridFromContour",
  ],
  protects:
    "Concrete conducts: a swimmer who touches the shell and the water stands between two voltages unless both are one.",
  judge: (yard) => bondedBodies(yard).map((body) => judgeShell(yard, body)),
};

function judgeShell(yard: Yard, body: Body): Verdict {
  const facts = shellFacts(yard, body);
  const plain = elementName(body.element);
  const say = speakerOf(yard);
  const base = {
    ...BARE,
    element: body.id,
    body: body.id,
    limits: ["shell.conductive"] as const,
    ...facts.settled.trace,
  };
  const review = (why: string, remedy: string): Verdict => ({
    ...base,
    outcome: "review",
    why: why + facts.settled.note,
    remedy,
    ...(facts.question ? { question: facts.question } : {}),
  });
  switch (facts.class) {
    case "nonconductive":
      return {
        ...base,
        outcome: "exempt",
        limits: ["shell.nonconductive"],
        why: `The shell of ${plain} does not conduct, so it needs neither bonded steel nor a copper grid. Its perimeter, its metal parts and its water still need bonding.${facts.settled.note}`,
      };
    case "open":
      return review(
        `What the shell of ${plain} is made of is not given, and it decides whether it needs bonded steel.`,
        "Say what the shell is made of.",
      );
    case "frame":
      return judgeFrame(facts, base, plain, review);
    case "conductive":
      break;
  }
  if (facts.steel === "bare") {
    const why = `The shell of ${plain} conducts and holds bare steel. Tied together with steel tie wire, it counts as one bonded piece.${facts.settled.note}`;
    return { ...base, outcome: "meets", why, remedy: "Have the tied steel looked at before the concrete is placed." };
  }
  if (facts.steel === "unknown") {
    return review(
      `The shell of ${plain} conducts, and the drawing does not say what steel it holds.`,
      "Say whether its steel is bare, encapsulated or none.",
    );
  }
  const steel = facts.steel === "encapsulated" ? "its steel is encapsulated and cannot serve" : "it holds no steel";
  const spacing = yard.edition.value("shell.gridSpacing");
  const tolerance = yard.edition.value("shell.gridTolerance");
  const contour = yard.edition.value("shell.gridFromContour");
  return {
    ...base,
    outcome: "bond",
    limits: ["shell.conductive", "shell.gridSpacing", "shell.gridFromContour"],
    required: { gridSpacing: spacing, gridFromContour: contour },
    why: `The shell of ${plain} conducts, but ${steel}. It needs a copper grid.${facts.settled.note}`,
    remedy: `Lay a grid of bare solid copper, ${say.length(spacing)} both ways (give or take ${say.length(tolerance)}), joined at every crossing, along the shell and at most ${say.length(contour)} from its outer contour.`,
    need: {
      kind: "shell-grid",
      elements: [body.id],
      connections: 1,
      at: flattenPath(body.water.outer),
      drop: 0,
    },
  };
}

function judgeFrame(
  facts: ReturnType<typeof shellFacts>,
  base: Omit<Verdict, "outcome" | "why">,
  name: string,
  review: (why: string, remedy: string) => Verdict,
): Verdict {
  if (facts.wallFrame === "unknown") {
    return review(
      `What stands behind the liner of ${name} is not given: a metal wall or frame needs bonding, and may make the shell count as conductive.`,
      "Say what the walls or the frame are made of.",
    );
  }
  const metal = `A metal wall or frame stands in the shell of ${name} and is bonded as a part of the structure.`;
  if (facts.ties === "yes")
    return {
      ...base,
      outcome: "meets",
      why: `${metal} It counts as a conductive shell, tied to the perimeter bonding.${facts.settled.note}`,
    };
  if (facts.ties === "no")
    return {
      ...base,
      outcome: "exempt",
      why: `${metal} The shell itself does not count as conductive.${facts.settled.note}`,
    };
  return review(
    `${metal} Whether it makes the shell count as conductive, and so needs the ties, is argued.`,
    "Ask the authority having jurisdiction.",
  );
}
