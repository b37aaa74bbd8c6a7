/** Turns verdicts into the findings of the report: section by edition, basis, a stable id, in the code's order. */
import { PARTS, type PartId, type Verdict } from "./catalogue/rule.ts";
import type { ParameterId } from "./editions/parameter-types.ts";
import type { Judged } from "./judged.ts";
import type { Yard } from "./measures/yard.ts";
import type { Finding } from "./report.ts";
import { amendmentWords } from "./words/amendments.ts";

const NONE: readonly string[] = [];

/** Findings of verdicts that have gone are dropped when there are more of them than verdicts, and more than this. */
const FEW = 1000;

export function findingsOf(yard: Yard, judged: readonly Judged[]): Finding[] {
  const known = yard.keptOfVerdicts as Map<Verdict, Finding> | null;
  if (known && known.size > 2 * judged.length + FEW) known.clear();
  const basisOf = basisFinder(yard);
  const idOf = idWriter();
  const byPart = new Map<PartId, Finding[]>(PARTS.map((part) => [part.id, []]));
  let rule: Judged["rule"] | null = null;
  let ofPart: Finding[] = [];
  for (const one of judged) {
    const { verdict } = one;
    if (one.rule !== rule) {
      rule = one.rule;
      ofPart = byPart.get(rule.part) as Finding[];
    }
    let finding = known?.get(verdict);
    if (finding === undefined) {
      finding = findingOf(yard, rule, verdict, idOf(rule.id, verdict), basisOf);
      known?.set(verdict, finding);
    }
    ofPart.push(finding);
  }
  return ([] as Finding[]).concat(...byPart.values());
}

/** Ids are put together of few pieces: those of a rule and of a body are the same for thousands of verdicts. */
function idWriter(): (rule: string, verdict: Verdict) => string {
  let lastRule = "";
  let start = "/";
  let lastBody = "-";
  let end = "/-";
  return (rule, { element, body }) => {
    if (rule !== lastRule) {
      lastRule = rule;
      start = `${rule}/`;
    }
    const ofBody = body ?? "-";
    if (ofBody !== lastBody) {
      lastBody = ofBody;
      end = `/${ofBody}`;
    }
    return start + (element ?? "-") + end;
  };
}

type BasisFinder = (limits: Verdict["limits"]) => Finding["basis"];

/** The basis of what rests on limits: most verdicts of a rule name the very same list. */
function basisFinder({ edition }: Yard): BasisFinder {
  const found = new Map<Verdict["limits"], Finding["basis"]>();
  return (limits) => {
    if (limits.length === 0) return "judgement";
    let basis = found.get(limits);
    if (basis === undefined) {
      basis = edition.basis(...limits);
      found.set(limits, basis);
    }
    return basis;
  };
}

function findingOf(yard: Yard, rule: Judged["rule"], verdict: Verdict, id: string, basisOf: BasisFinder): Finding {
  const section = verdict.section ?? rule.sections[yard.edition.id] ?? "";
  const finding: { -readonly [F in keyof Finding]: Finding[F] } = {
    id,
    rule: rule.id,
    section,
    alsoSections: verdict.alsoSections ?? NONE,
    element: verdict.element,
    body: verdict.body,
    outcome: verdict.outcome,
    measured: verdict.measured,
    required: verdict.required,
    margin: verdict.margin,
    witness: verdict.witness,
    basis: verdict.basis ?? basisOf(verdict.limits),
    why: yard.edition.amendments.length === 0 ? verdict.why : verdict.why + amendedNote(yard, rule, verdict),
    remedy: verdict.remedy,
  };
  const { alsoBodies, extent, question, answered, lapsed } = verdict;
  if (alsoBodies && alsoBodies.length > 0) finding.alsoBodies = alsoBodies;
  if (extent !== undefined) finding.extent = extent;
  if (question) finding.question = question;
  if (answered) finding.answered = answered;
  if (lapsed) finding.lapsed = true;
  return finding;
}

/** A local amendment is named wherever it acts: where it decided, and on whatever the rule that reads it says. */
function amendedNote(yard: Yard, rule: Judged["rule"], verdict: Verdict): string {
  const named = (ids: readonly ParameterId[], words: string) => {
    const amendments = [...new Set(ids)].map((id) => yard.edition.amended(id)).filter((one) => one !== undefined);
    const texts = amendments.map((one) => amendmentWords(one, yard.site.display?.units));
    return texts.length === 0 ? "" : ` Local amendment ${words} (${texts.join("; ")}).`;
  };
  const others = rule.parameters.filter((id) => !verdict.limits.includes(id));
  return named(verdict.limits, "in force") + named(others, "among the numbers this rule reads");
}
