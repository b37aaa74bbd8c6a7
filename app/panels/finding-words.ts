import type { Finding } from "../../rules/report.ts";
import { aboutName } from "../../rules/words/element-names.ts";

/** Still asks for something. */
export function isOpen(finding: Finding): boolean {
  return finding.outcome !== "meets" && finding.outcome !== "exempt";
}

/** What a finding is about, by its name. */
export function subjectOf(finding: Finding, names: ReadonlyMap<string, string>): string {
  return aboutName(finding, (id) => names.get(id) ?? id);
}
