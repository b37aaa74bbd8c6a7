/** Answers kept in a site that no finding of its report tells of: a name is misspelled, or nothing asks this any more. */
import type { Finding, Report } from "../../rules/report.ts";
import type { Answer, Site } from "../../rules/site/site.ts";
import { heading, printable, wrapped } from "./text-lines.ts";
import type { Writing } from "./writing.ts";

/** The answers in file order, each with what is so of it. */
export function idleAnswers(site: Site, report: Pick<Report, "findings">): { answer: Answer; says: string }[] {
  const ids = new Set(site.elements.map(({ id }) => id));
  return (site.answers ?? []).flatMap((answer) => {
    const about = answer.element ?? null;
    if (about !== null && !ids.has(about)) return [{ answer, says: "the site has no such element" }];
    if (report.findings.some((finding) => tellsOf(finding, answer))) return [];
    return [{ answer, says: "nothing here asks this" }];
  });
}

/** Whether a finding rests on an answer, asks its question still, or says why the answer does not count. */
function tellsOf(finding: Finding, { question, element, answer }: Answer): boolean {
  const about = element ?? null;
  const named = [finding.element, finding.body, ...(finding.alsoBodies ?? [])];
  if (about !== null && !named.includes(about)) return false;
  const asked = [finding.question?.id, finding.answered?.question];
  return asked.includes(question) || finding.why.includes(`"${answer}"`);
}

export function idleAnswerLines(site: Site, writing: Writing): string[] {
  const idle = idleAnswers(site, writing.report);
  if (idle.length === 0) return [];
  const lines = heading(`Answers that no finding tells of: ${idle.length}`, writing);
  for (const { answer, says } of idle) {
    const about = answer.element == null ? "" : ` about ${writing.nameOf(answer.element)}`;
    const text = printable(`"${answer.answer}" to ${answer.question}${about}: ${says}.`);
    lines.push(...wrapped(text, writing.width, "   -  "));
  }
  return lines;
}
