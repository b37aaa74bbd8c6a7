import type { Body, Yard } from "../../measures/yard.ts";
import type { WaterBondElement } from "../../site/elements.ts";
import { joinRemedy } from "../common/fixed-metal.ts";
import { partNeed } from "../common/needs.ts";
import { bodyOf } from "../common/storable.ts";
import { BARE, settle, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";
import { contactsOf, smallSum, waterBondContact } from "../water-contact/contacts.ts";
import { exposedSurface } from "../water-contact/exposed-surface.ts";

export const rule: Rule = {
  id: "water-bond-fitting",
  title: "Fittings for the water's bond",
  part: "water",
  sections: everyEdition("680.26(C)"),
  subjects: "Each fitting drawn to put bonded metal in the water.",
  measure: "The surface it keeps in the water, whether it stays wet, and its metal.",
  parameters: ["water.area", "water.materials"],
  protects: "A fitting that runs dry, corrodes away or is too small joins nothing to the bonding.",
  judge: (yard) =>
    yard.each(rule.id, "water-bond", (element) => {
      const body = bodyOf(yard, element);
      return body ? [judgeFitting(yard, body, element)] : [];
    }),
};

function judgeFitting(yard: Yard, body: Body, element: WaterBondElement): Verdict {
  const needed = yard.edition.value("water.area");
  const contact = waterBondContact(yard, body, element);
  const area = exposedSurface(element);
  const base = {
    ...BARE,
    element: element.id,
    body: body.id,
    limits: ["water.area"] as const,
    measured: { wettedArea: area },
    required: { wettedArea: needed },
    margin: area === null ? null : area - needed,
    ...contact.settled?.trace,
  };
  const need = { ...partNeed(yard, element, [element.at], 1, null), servesWater: true as const };
  const place = "Set it where use cannot damage or dislodge it.";
  switch (contact.state) {
    case "sure":
      return {
        ...base,
        outcome: "bond",
        why: `${contact.says} It counts only once it is bonded.`,
        remedy: `${joinRemedy(yard, 1)} ${place}`,
        need,
      };
    case "open":
      return {
        ...base,
        outcome: "review",
        why: contact.says,
        remedy: "Settle the question; until then it is not counted on.",
        ...(contact.question ? { question: contact.question } : {}),
      };
    case "no":
      return {
        ...base,
        outcome: "conflict",
        why: contact.says,
        remedy: `Replace it by one of corrosion-resistant metal that keeps at least ${needed} sq in. in the water at all times.`,
      };
    case "small":
      break;
  }
  const larger = `Replace it by one that keeps at least ${needed} sq in. in the water.`;
  const small = smallSum(yard, contactsOf(yard, body));
  if (!small.enough) return { ...base, outcome: "conflict", why: contact.says, remedy: larger };
  const question = yesNo(
    "small-parts-together",
    `Does the authority having jurisdiction accept several parts that only together keep ${needed} sq in. in the water?`,
  );
  const settled = settle(yard, question, element.id, body.id);
  const why = `${contact.says} There are ${small.text}; whether that will do is argued.${settled.note}`;
  if (settled.choice === "yes")
    return { ...base, ...settled.trace, outcome: "bond", why, remedy: joinRemedy(yard, 1), need };
  if (settled.choice === "no") return { ...base, ...settled.trace, outcome: "conflict", why, remedy: larger };
  return { ...base, ...settled.trace, outcome: "review", why, remedy: larger, question };
}
