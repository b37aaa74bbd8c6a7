/** How a local amendment is named wherever it acts. */
import { RULES } from "../catalogue/index.ts";
import type { Finding, Report } from "../report.ts";

/** `fixedMetal.distance = 72 (Ordinance 12-4)`. */
export function amendmentText({ parameter, value, reason }: Report["amendments"][number]): string {
  return `${parameter} = ${JSON.stringify(value)}${reason === "" ? "" : ` (${reason})`}`;
}

const READ: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  RULES.map((rule) => [rule.id, new Set(rule.parameters)]),
);

/** The names of the amended numbers that the rule of a finding reads. */
export function amendedFor(finding: Pick<Finding, "rule">, report: Pick<Report, "amendments">): string[] {
  const read = READ.get(finding.rule);
  return report.amendments.map(({ parameter }) => parameter).filter((parameter) => read?.has(parameter));
}
