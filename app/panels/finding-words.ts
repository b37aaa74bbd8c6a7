import type { Finding } from "../../rules/report.ts";
import { aboutName } from "../../rules/words/element-names.ts";

/** Said while the report is about the sheet before the last change. */
export const BEHIND = "Working it out: what stands here is about the sheet before the last change.";

/** Still asks for something. */
export function isOpen(finding: Finding): boolean {
  return finding.outcome !== "meets" && finding.outcome !== "exempt";
}

/** What a finding is about, by its name. */
export function subjectOf(finding: Finding, names: ReadonlyMap<string, string>): string {
  return aboutName(finding, (id) => names.get(id) ?? id);
}
