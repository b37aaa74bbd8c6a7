import type { Yard } from "../../measures/yard.ts";
import { verdictOfFacts } from "../../recorded/fact.ts";
import type { TieReading } from "../../recorded/tie-reading.ts";
import { tieReadings } from "../../recorded/tie-reading.ts";
import { storableOnly } from "../common/storable-only.ts";
import { BARE, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";
import { tieFacts } from "./facts.ts";

/** How conductors are joined, and that listed things are used as they are listed. */
const LISTING_SECTIONS = ["250.8", "110.3(B)"] as const;

export const rule: Rule = {
  id: "tie-hardware",
  title: "Connections",
  part: "copper",
  sections: everyEdition("680.26(B)"),
  alsoSections: everyEdition(LISTING_SECTIONS),
  subjects: "Each recorded tie.",
  measure: "What holds the connection, how many wires are in it, whether it may be buried, and what it joins.",
  parameters: ["connection.hardware", "connection.refusedHardware", "connection.wiresPerClamp", "connection.ownWire"],
  protects: "A connection that works loose or rusts away under the deck is a broken bond that nobody can see.",
  judge: (yard) => tieReadings(yard).map((reading) => judgeTie(yard, reading)),
};

function judgeTie(yard: Yard, reading: TieReading): Verdict {
  const { tie, body } = reading;
  const name = subjectName(tie);
  const near = body === null ? null : yard.straight(tie, body);
  const base = {
    ...BARE,
    alsoSections: LISTING_SECTIONS,
    element: tie.id,
    body: body?.id ?? null,
    witness: witnessLine(near),
  };
  const free = storableOnly(yard);
  if (free !== null) return { ...base, outcome: "exempt", why: `${name}: ${free}` };
  const facts = tieFacts(yard, reading);
  const wires = tie.conductorsInClamp;
  return {
    ...base,
    measured: wires === undefined ? {} : { wires },
    required: wires === undefined ? {} : { wires: yard.edition.value("connection.wiresPerClamp") },
    limits: [...new Set(facts.flatMap(({ limits }) => limits))],
    ...verdictOfFacts(facts, `${name}:`, "Its hardware counts, and it may lie where it lies."),
  };
}
