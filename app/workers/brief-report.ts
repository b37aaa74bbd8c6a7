/**
 * A report on a large site while something is dragged: every distance to a pool changes with each frame, and thousands of
 * findings would be copied between threads for lists that nobody can read at that pace. A brief report holds the counts,
 * the zones and the copper as they are, and of the findings those that changed their outcome or are looked at; the others
 * stay as they were sent last, until the next whole report.
 */
import type { Finding, Report } from "../../rules/report.ts";

/** From so many findings on reports are brief during a drag. */
export const LARGE_REPORT = 400;

/** `watched`: ids of findings and of elements whose findings follow at once. `now` itself when there is nothing to leave. */
export function briefReport(sent: Report, now: Report, watched: ReadonlySet<string>): Report {
  if (now.findings.length < LARGE_REPORT) return now;
  const known = new Map(sent.findings.map((finding) => [finding.id, finding]));
  let isBrief = false;
  const findings = now.findings.map((finding): Finding => {
    const before = known.get(finding.id);
    if (!before || before === finding || before.outcome !== finding.outcome) return finding;
    if (watched.has(finding.id) || (finding.element !== null && watched.has(finding.element))) return finding;
    isBrief = true;
    return before;
  });
  return isBrief ? { ...now, findings } : now;
}
