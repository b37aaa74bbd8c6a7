/** A report's findings in the code's order: numbered once for every list, plan and panel, and grouped by part. */
import { RULE_HEADINGS } from "./catalogue/headings.ts";
import { PARTS, type PartId } from "./catalogue/rule.ts";
import type { Finding, Report } from "./report.ts";

export type Part = (typeof PARTS)[number];

/** A finding with the number it carries wherever it is shown. Numbers start at 1 and follow the code's order. */
export interface NumberedFinding {
  readonly number: number;
  readonly finding: Finding;
}

export interface PartFindings {
  readonly part: Part;
  readonly findings: readonly NumberedFinding[];
}

/** The part of the article that a finding belongs to: its rule's. A report may come from another version of the program: a rule that is not held here goes by its section. */
export function partOf(finding: Pick<Finding, "rule" | "section">): PartId {
  const known = RULE_HEADINGS.get(finding.rule)?.part;
  if (known !== undefined) return known;
  let best: Part = PARTS[0];
  for (const part of PARTS) {
    if (finding.section.startsWith(part.section) && part.section.length > best.section.length) best = part;
  }
  return best.id;
}

/** Every part that has findings, in the code's order, with its findings numbered. */
export function findingsByPart(report: Pick<Report, "findings">): PartFindings[] {
  const groups = new Map<PartId, Finding[]>();
  for (const finding of report.findings) {
    const part = partOf(finding);
    const group = groups.get(part);
    if (group) group.push(finding);
    else groups.set(part, [finding]);
  }
  let number = 0;
  return PARTS.flatMap((part) => {
    const findings = groups.get(part.id);
    return findings ? [{ part, findings: findings.map((finding) => ({ number: ++number, finding })) }] : [];
  });
}

/** The number of each finding, by finding id. */
export function findingNumbers(report: Pick<Report, "findings">): Map<string, number> {
  return new Map(
    findingsByPart(report).flatMap(({ findings }) => findings.map(({ number, finding }) => [finding.id, number])),
  );
}
