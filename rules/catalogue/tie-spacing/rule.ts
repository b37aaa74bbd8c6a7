import { largestGap } from "../../../geometry/ties.ts";
import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import { perimeterBodies } from "../../recorded/bearers.ts";
import { hasCopper } from "../../recorded/graph.ts";
import { groupWith, type TieGroup, tiesOf } from "../../recorded/tie-groups.ts";
import type { Question } from "../../report.ts";
import { capitalized, elementName } from "../../words/element-names.ts";
import { ON_COPPER } from "../common/rests-on.ts";
import { shellFacts } from "../common/shell-facts.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, speakerOf, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "tie-spacing",
  title: "Ties to the shell",
  part: "ties",
  sections: everyEdition("680.26(B)(2)"),
  subjects: "Each body of water.",
  measure:
    "How many recorded ties join the perimeter bonding to the shell's steel or grid, and the widest gap between them.",
  parameters: ["perimeter.ties", "perimeter.tieGapFactor", "shell.conductive", "shell.nonconductive"],
  protects: "Deck and shell stay at one voltage all round the pool only where they are joined all round it.",
  judge: (yard) => bondedBodies(yard).map((body) => judgeBody(yard, body)),
};

const EVEN_QUESTION = yesNo(
  "ties-even",
  "Does the authority having jurisdiction accept these ties as evenly spaced round the pool?",
  ON_COPPER,
);
const SOUND_QUESTION = yesNo(
  "ties-sound",
  "Looked at on site, are the recorded ties to the shell all of hardware that counts, and made to steel or copper in it?",
  ON_COPPER,
);

function judgeBody(yard: Yard, body: Body): Verdict {
  const facts = shellFacts(yard, body);
  const name = elementName(body.element);
  const base = { ...BARE, element: null, body: body.id, ...facts.settled.trace };
  if (!perimeterBodies(yard).includes(body)) {
    return {
      ...base,
      outcome: "exempt",
      limits: ["perimeter.ties"],
      why: `${capitalized(name)} needs no perimeter bonding, so there is nothing to tie to its shell.`,
    };
  }
  const ties = tiesOf(yard, body);
  if (ties === "no") {
    return {
      ...base,
      outcome: "exempt",
      limits: ["shell.nonconductive"],
      basis: "one source",
      why: `The shell of ${name} does not conduct, so no ties to it are asked for. Its perimeter bonding still joins the bonding system.${facts.settled.note}`,
    };
  }
  if (ties === "argued") {
    const why = `Whether the shell of ${name} counts as conductive is open, and it decides whether the perimeter bonding is tied to it.${facts.settled.note}`;
    return {
      ...base,
      outcome: "review",
      limits: ["shell.conductive", "perimeter.ties"],
      why,
      remedy: "Settle what the shell counts as.",
      ...(facts.question ? { question: facts.question } : {}),
    };
  }
  const group = groupWith(yard, body);
  if (!group) throw new Error(`the shell of ${body.id} needs ties but belongs to no group of shells`);
  return judgeGroup(yard, body, group, base);
}

function judgeGroup(yard: Yard, body: Body, group: TieGroup, base: Omit<Verdict, "outcome" | "why">): Verdict {
  const { length } = speakerOf(yard);
  const others = group.bodies.filter((other) => other !== body);
  const shared =
    others.length === 0
      ? ""
      : ` It shares its ties with ${others.map((other) => other.element.name ?? other.id).join(", ")}, whose shell it adjoins.`;
  const name = elementName(body.element);
  const count = group.recorded.length;
  const sure = group.recorded.filter(({ standing }) => standing === "sure").length;
  const widest = (yard.edition.value("perimeter.tieGapFactor") * group.length) / yard.edition.value("perimeter.ties");
  const gap =
    count === 0
      ? null
      : largestGap(
          group.length,
          group.recorded.map(({ along }) => along),
        );
  const judged = {
    ...base,
    measured: { ties: count, ...(gap === null ? {} : { largestGap: gap }) },
    required: { ties: group.needed, largestGap: widest },
    limits: ["perimeter.ties"] as const,
  };
  const evenly = `Ties lie evenly round the pool, ${length(group.length / group.needed)} apart.`;
  if (count < group.needed) {
    const found = count === 0 ? "none is recorded" : `only ${count} ${count === 1 ? "is" : "are"} recorded`;
    return {
      ...judged,
      outcome: hasCopper(yard) ? "missing" : "bond",
      margin: count - group.needed,
      why: `The perimeter bonding of ${name} is tied to its shell at ${group.needed} points or more, and ${found}.${shared}`,
      remedy: `Add ${group.needed - count} tie${group.needed - count === 1 ? "" : "s"} between perimeter bonding and the shell's steel or grid. ${evenly}`,
    };
  }
  const told = `${count} recorded ties join the perimeter bonding of ${name} to its shell${gap === null ? "" : `; the widest gap between them is ${length(gap, widest)}`}.${shared}`;
  const ask = (question: Question) => settle(yard, question, null, body.id);
  const over = exceeds(gap ?? group.length, widest, yard.accuracy);
  const margin = widest - (gap ?? group.length);
  const uneven = over === "no" ? null : ask(EVEN_QUESTION);
  if (uneven && uneven.choice !== "yes") {
    const judgement = { basis: "judgement", margin } as const;
    const limits = ["perimeter.ties", "perimeter.tieGapFactor"] as const;
    const why = `${told} That is ${over === "yes" ? "wider than" : "as near as the drawing may be off to"} ${length(widest)}; no figure for even spacing is published, and this one is ours.${uneven.note}`;
    const remedy = `Add a tie in the widest gap, or ask the authority having jurisdiction. ${evenly}`;
    const refused = uneven.choice === "no";
    return {
      ...judged,
      ...judgement,
      ...uneven.trace,
      limits,
      outcome: refused ? "conflict" : "review",
      why,
      remedy,
      question: EVEN_QUESTION,
    };
  }
  const doubted = sure >= group.needed ? null : ask(SOUND_QUESTION);
  const traces = { ...uneven?.trace, ...doubted?.trace };
  const notes = `${uneven?.note ?? ""}${doubted?.note ?? ""}`;
  if (doubted && doubted.choice !== "yes") {
    const why = `${told} Only of ${sure} of them is it sure that their hardware counts and that the shell holds what they are tied to; ${group.needed} are needed.${notes}`;
    const remedy = "Record the hardware of every tie, and the shell's steel or grid.";
    return {
      ...judged,
      ...traces,
      margin: sure - group.needed,
      outcome: doubted.choice === "no" ? "conflict" : "review",
      why,
      remedy,
      question: SOUND_QUESTION,
    };
  }
  return { ...judged, ...traces, margin, outcome: "meets", why: `${told}${notes}` };
}
