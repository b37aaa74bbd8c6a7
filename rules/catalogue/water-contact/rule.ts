import type { Body, Yard } from "../../measures/yard.ts";
import { elementName } from "../../words/element-names.ts";
import { shellFacts } from "../common/shell-facts.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Need, type Rule, type Verdict } from "../rule.ts";
import { askedOfWater, type Contact, contactsOf, smallSum } from "./contacts.ts";

export const rule: Rule = {
  id: "water-contact",
  title: "Bonded metal in the water",
  part: "water",
  sections: everyEdition("680.26(C)"),
  subjects: "The water of each body.",
  measure: "Whether bonded metal of enough surface, or a bonded conductive shell, stays in the water.",
  parameters: ["water.area", "water.doubtfulFinishes", "water.materials"],
  protects: "Water that no bonded metal touches takes a voltage of its own, from the ground or from a faulty light.",
  judge: (yard) => bondedBodies(yard).map((body) => judgeBody(yard, body)),
};

function judgeBody(yard: Yard, body: Body): Verdict {
  const needed = yard.edition.value("water.area");
  const contacts = contactsOf(yard, body);
  const plain = elementName(body.element);
  const base = {
    ...BARE,
    element: null,
    body: body.id,
    limits: ["water.area"] as const,
    required: { wettedArea: needed },
  };
  const sure = contacts.filter((contact) => contact.state === "sure");
  const shell = sure.find((contact) => contact.element.id === body.id);
  const { steel } = shellFacts(yard, body);
  if (shell && steel === "bare") {
    return { ...base, ...shell.settled?.trace, outcome: "meets", why: `${shell.says} That is contact enough.` };
  }
  if (sure.length > 0) {
    const trace = sure.find((contact) => contact.settled?.choice)?.settled?.trace ?? {};
    const why = `${sure.map((contact) => contact.says).join(" ")} Once bonded, that is contact enough for the water of ${plain}.`;
    return {
      ...base,
      ...trace,
      outcome: "bond",
      why,
      measured: { wettedArea: largest(sure) },
      remedy: "Bond it.",
      need: needOf(sure),
    };
  }
  const open = contacts.find((contact) => contact.state === "open");
  if (open) {
    return {
      ...base,
      ...open.settled?.trace,
      outcome: "review",
      why: `${open.says} Nothing else is sure to put bonded metal in the water of ${plain}.`,
      remedy: `Settle it, or add a fitting that keeps ${needed} sq in. of bonded, corrosion-resistant metal in the water.`,
      ...(open.question ? { question: askedOfWater(open.question, open, body) } : {}),
    };
  }
  const small = smallSum(yard, contacts);
  if (small.enough) return judgeTogether(yard, body, base, contacts, small);
  const lacking = contacts.filter((contact) => contact.state !== "sure").map((contact) => contact.says);
  const why = `No bonded metal of at least ${needed} sq in. stays in the water of ${plain}.${lacking.length > 0 ? ` ${lacking.join(" ")}` : ""}`;
  const remedy = `Add a fitting of corrosion-resistant metal that keeps at least ${needed} sq in. in the water, where use cannot damage or dislodge it, and bond it.`;
  return {
    ...base,
    outcome: "bond",
    measured: { wettedArea: small.sum },
    margin: small.sum - needed,
    why,
    remedy,
    need: needOf([]),
  };
}

/** Several parts that only together keep enough surface in the water: argued. */
function judgeTogether(
  yard: Yard,
  body: Body,
  base: Omit<Verdict, "outcome" | "why">,
  contacts: readonly Contact[],
  small: ReturnType<typeof smallSum>,
): Verdict {
  const needed = yard.edition.value("water.area");
  const parts = contacts.filter((contact) => contact.state === "small");
  const question = yesNo(
    "small-parts-together",
    `Does the authority having jurisdiction accept several parts that only together keep ${needed} sq in. in the water?`,
    { elements: parts.map(({ element }) => element.id) },
  );
  const settled = settle(yard, question, null, body.id);
  const sized = { ...base, ...settled.trace, measured: { wettedArea: small.sum }, margin: small.sum - needed };
  const why = `${small.text} stay in the water of ${elementName(body.element)}, but none alone keeps ${needed} sq in.`;
  const remedy = `Add one fitting that keeps at least ${needed} sq in. of corrosion-resistant metal in the water, and bond it.`;
  if (settled.choice === "yes") {
    const need = { ...needOf(parts), connections: parts.length };
    return { ...sized, outcome: "bond", why: why + settled.note, remedy: "Bond each of them.", need };
  }
  if (settled.choice === "no") return { ...sized, outcome: "bond", why: why + settled.note, remedy, need: needOf([]) };
  return {
    ...sized,
    outcome: "review",
    why: `${why} Whether that will do is argued.${settled.note}`,
    remedy,
    question,
  };
}

function needOf(contacts: readonly Contact[]): Need {
  return {
    kind: "water",
    elements: contacts.map((contact) => contact.element.id),
    connections: 1,
    at: contacts.map((contact) => contact.at),
    drop: 0,
  };
}

function largest(contacts: readonly Contact[]): number | null {
  const areas = contacts.map((contact) => contact.area).filter((area) => area !== null);
  return areas.length === 0 ? null : Math.max(...areas);
}
