/** What is said beside a finding that an answer of the site decided, or that waits for a new one. */
import type { Finding } from "../report.ts";

/** `Answered on this site: yes, on 2024-05-06, by QA`. */
export function answerText({ answer, on, by }: NonNullable<Finding["answered"]>): string {
  const parts = [answer, on === undefined ? "" : `on ${on}`, by === undefined ? "" : `by ${by}`];
  return `Answered on this site: ${parts.filter((part) => part !== "").join(", ")}`;
}

export const LAPSED_TEXT = "An earlier answer has lapsed: what it was about has changed.";
