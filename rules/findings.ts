/** Turns verdicts into the findings of the report: section by edition, basis, a stable id, in the code's order. */
import { PARTS, type PartId, type Verdict } from "./catalogue/rule.ts";
import type { Judged } from "./judged.ts";
import type { Yard } from "./measures/yard.ts";
import type { Finding } from "./report.ts";

/** Findings of verdicts that have gone are dropped when there are more of them than verdicts, and more than this. */
const FEW = 1000;

export function findingsOf(yard: Yard, judged: readonly Judged[]): Finding[] {
  const known = yard.keptOfVerdicts as Map<Verdict, Finding>;
  if (known.size > 2 * judged.length + FEW) known.clear();
  const byPart = new Map<PartId, Finding[]>(PARTS.map((part) => [part.id, []]));
  for (const { rule, verdict } of judged) {
    let finding = known.get(verdict);
    if (finding === undefined) {
      finding = findingOf(yard, rule, verdict);
      known.set(verdict, finding);
    }
    byPart.get(rule.part)?.push(finding);
  }
  return [...byPart.values()].flat();
}

function findingOf(yard: Yard, rule: Judged["rule"], verdict: Verdict): Finding {
  const section = verdict.section ?? rule.sections[yard.edition.id] ?? "";
  const finding: Finding = {
    id: [rule.id, verdict.element ?? "-", verdict.body ?? "-"].join("/"),
    rule: rule.id,
    section,
    alsoSections: verdict.alsoSections ?? [],
    element: verdict.element,
    body: verdict.body,
    outcome: verdict.outcome,
    measured: verdict.measured,
    required: verdict.required,
    margin: verdict.margin,
    witness: verdict.witness,
    basis: verdict.basis ?? (verdict.limits.length > 0 ? yard.edition.basis(...verdict.limits) : "judgement"),
    why: amendedNote(yard, verdict) + verdict.why,
    remedy: verdict.remedy,
    ...(verdict.alsoBodies && verdict.alsoBodies.length > 0 ? { alsoBodies: verdict.alsoBodies } : {}),
    ...(verdict.extent !== undefined ? { extent: verdict.extent } : {}),
    ...(verdict.question ? { question: verdict.question } : {}),
    ...(verdict.answered ? { answered: verdict.answered } : {}),
    ...(verdict.lapsed ? { lapsed: true } : {}),
  };
  return finding;
}

/** A local amendment that changed a number of this finding is named wherever it acts. */
function amendedNote(yard: Yard, verdict: Verdict): string {
  const reasons = verdict.limits.map((id) => yard.edition.amended(id)).filter((a) => a !== undefined);
  if (reasons.length === 0) return "";
  const named = reasons.map((a) => `${a.parameter} = ${String(a.value)}${a.reason ? `, ${a.reason}` : ""}`);
  return `Local amendment in force (${named.join("; ")}). `;
}
