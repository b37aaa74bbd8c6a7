/** What lies on the sheet in one sentence, for those who do not see it. */
import type { Report } from "../../rules/report.ts";

export function sheetSummary(name: string | undefined, elements: number, report: Report | null): string {
  const plan = name === undefined || name === "" ? "Plan of the yard" : `Plan of ${name}`;
  if (elements === 0) return `${plan}, empty`;
  const things = elements === 1 ? "1 element" : `${elements} elements`;
  if (!report) return `${plan}: ${things}`;
  const { bond, missing, conflict, review } = report.counts;
  return `${plan}: ${things}; ${bond + missing} need bonding, ${conflict} in conflict, ${review} to be answered`;
}
