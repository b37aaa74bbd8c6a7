import type { Yard } from "../../measures/yard.ts";
import { awgText } from "../../recorded/awg.ts";
import { verdictOfFacts } from "../../recorded/fact.ts";
import { plain, wireOf } from "../../recorded/wire.ts";
import type { ConductorElement } from "../../site/elements.ts";
import { bodyOf } from "../common/storable.ts";
import { storableOnly } from "../common/storable-only.ts";
import { BARE, marginOfConflict, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "conductor-wire",
  title: "Kind of wire",
  part: "copper",
  sections: everyEdition("680.26(B)"),
  subjects: "Each recorded conductor.",
  measure: "Whether it is solid, large enough, of the right metal and, of a ring or grid, bare.",
  parameters: ["conductor.size", "conductor.materials", "conductor.insteadMaterials", "conductor.coverings"],
  protects: "Thin, stranded or aluminum wire in wet ground is eaten away, and nobody sees that the bonding has gone.",
  judge: (yard) => yard.each(rule.id, "conductor", (conductor) => [judgeConductor(yard, conductor)]),
};

function judgeConductor(yard: Yard, conductor: ConductorElement): Verdict {
  const wire = wireOf(yard, conductor);
  const name = subjectName(conductor);
  const least = yard.edition.value("conductor.size");
  const base = { ...BARE, element: conductor.id, body: bodyOf(yard, conductor)?.id ?? null };
  const free = storableOnly(yard);
  if (free !== null) return { ...base, outcome: "exempt", why: `${name}: ${free}` };
  const fine = wire.conduit
    ? `It is ${plain(conductor.material ?? "")}, which serves in place of solid copper wire.`
    : `It is ${conductor.covering === "bare" ? "bare " : ""}solid ${plain(conductor.material ?? "copper")} and large enough.`;
  const spare = wire.awg === null || wire.conduit ? null : least - wire.awg;
  const lead = `${name}${wire.awg === null || wire.conduit ? "" : `, ${awgText(wire.awg)}`}:`;
  const told = verdictOfFacts(wire.facts, lead, fine);
  return {
    ...base,
    measured: wire.awg === null ? {} : { awg: wire.awg },
    required: wire.conduit ? {} : { awg: least },
    margin: told.outcome === "conflict" ? marginOfConflict(spare) : spare,
    limits: [...new Set(wire.facts.flatMap(({ limits }) => limits))],
    ...told,
  };
}
