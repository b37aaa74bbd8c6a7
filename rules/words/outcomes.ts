/** The six outcomes as people read them, and the order in which they are counted out. */
import { OUTCOMES_WORST_FIRST, type Outcome, type Report } from "../report.ts";

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  conflict: "conflict",
  missing: "missing",
  bond: "needs bonding",
  review: "question",
  meets: "meets",
  exempt: "exempt",
};

/** What each outcome means, one sentence. */
export const OUTCOME_MEANINGS: Readonly<Record<Outcome, string>> = {
  conflict: "What is drawn breaks the rule.",
  missing: "Needs bonding, and the recorded copper does not reach it.",
  bond: "Needs bonding; no copper is recorded on this site yet.",
  review: "Judgement or an unknown fact decides.",
  meets: "Drawn and as required.",
  exempt: "A named exception.",
};

/** A count of an outcome in words: `3 need bonding`, `1 needs bonding`, `2 questions`. */
export function outcomeCount(outcome: Outcome, count: number): string {
  const one = count === 1;
  switch (outcome) {
    case "bond":
      return `${count} ${one ? "needs" : "need"} bonding`;
    case "meets":
      return `${count} ${one ? "meets" : "meet"}`;
    case "conflict":
      return `${count} ${one ? "conflict" : "conflicts"}`;
    case "review":
      return `${count} ${one ? "question" : "questions"}`;
    case "missing":
    case "exempt":
      return `${count} ${OUTCOME_WORDS[outcome]}`;
  }
}

/** Every outcome with its count, those of none as well: `1 conflict, 0 missing, ...`. */
export function countsText({ counts }: Pick<Report, "counts">, between = ", "): string {
  return OUTCOMES_WORST_FIRST.map((outcome) => outcomeCount(outcome, counts[outcome])).join(between);
}

/** How many needs no recorded copper meets yet, always with the questions that are open. */
export function missingText({ counts, missing }: Pick<Report, "counts" | "missing">): string {
  return `${missing} missing, ${questionsText(counts.review)}`;
}

/** `no question open`, `2 questions open`. */
export function questionsText(count: number): string {
  return count === 0 ? "no question open" : `${outcomeCount("review", count)} open`;
}

/**
 * The outcomes that stand on a site, with their counts: what has to be bonded is counted once, as missing where copper is
 * recorded and as needing bonding where none is, so that no zero stands beside the other's count.
 */
export function standingCountsText({ counts }: Pick<Report, "counts">, between = ", "): string {
  const isUnsaid = (outcome: Outcome) =>
    counts[outcome] === 0 && ((outcome === "missing" && counts.bond > 0) || outcome === "bond");
  return OUTCOMES_WORST_FIRST.filter((outcome) => !isUnsaid(outcome))
    .map((outcome) => outcomeCount(outcome, counts[outcome]))
    .join(between);
}
