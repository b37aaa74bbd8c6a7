/**
 * Findings name the fields of the site file as `field`, for whoever writes one. On the screen and on a drawn sheet the same
 * fields bear labels: here the labels take the names' place.
 */
import type { EditionComparison } from "../compare-editions.ts";
import type { Finding, Report } from "../report.ts";
import { FIELD_LABELS } from "../site/field-labels.ts";
import { labelOf } from "../site/field-list.ts";
import type { Site } from "../site/site.ts";

/** A text with the labels of the fields that it names, in quotes. `kind`: of the element that it is about. */
export function withLabels(text: string, kind: string | undefined): string {
  if (!text.includes("`")) return text;
  return text.replaceAll(/`([A-Za-z.]+)`/g, (named, field: string) => {
    const label = labelOf(kind, field)?.label ?? labelOfAnyKind(field);
    return label === null ? named : `\u201c${label}\u201d`;
  });
}

/** Fields of other elements are named too: most names stand for the same in every kind. */
function labelOfAnyKind(field: string): string | null {
  const key = Object.keys(FIELD_LABELS).find((name) => name.endsWith(`.${field}`));
  return key === undefined ? null : (FIELD_LABELS[key]?.label ?? null);
}

function kindsOf(site: Site): ReadonlyMap<string | null, string> {
  return new Map(site.elements.map(({ id, kind }) => [id, kind]));
}

/** The texts of a finding, or of one side of a comparison. */
type Texts = Pick<Finding, "why" | "remedy" | "question">;

/** The same with labels; the very object where it names no field. */
export function textsWithLabels<T extends Texts>(said: T, kind: string | undefined): T {
  const { why, remedy, question } = said;
  if (![why, remedy, question?.text ?? ""].some((text) => text.includes("`"))) return said;
  return {
    ...said,
    why: withLabels(why, kind),
    remedy: withLabels(remedy, kind),
    ...(question ? { question: { ...question, text: withLabels(question.text, kind) } } : {}),
  };
}

/** Each finding with labels, for as long as it lives: whoever tells findings apart by identity goes on doing so. */
const labelled = new WeakMap<Finding, Finding>();

/** A report to be shown: the fields that its findings name bear their labels. */
export function reportWithLabels(report: Report, site: Site): Report {
  let kinds: ReadonlyMap<string | null, string> | null = null;
  const findings = report.findings.map((finding) => {
    if (!finding.why.includes("`") && !finding.remedy.includes("`") && !finding.question?.text.includes("`"))
      return finding;
    const known = labelled.get(finding);
    if (known) return known;
    kinds ??= kindsOf(site);
    const made = textsWithLabels(finding, kinds.get(finding.element));
    labelled.set(finding, made);
    return made;
  });
  return { ...report, findings };
}

/** The same of two editions side by side. */
export function comparisonWithLabels<T extends Pick<EditionComparison, "changes">>(comparison: T, site: Site): T {
  const kinds = kindsOf(site);
  const changes = comparison.changes.map((change) => {
    const kind = kinds.get(change.element);
    const { before, after } = change;
    return {
      ...change,
      before: before && textsWithLabels(before, kind),
      after: after && textsWithLabels(after, kind),
    };
  });
  return { ...comparison, changes };
}
