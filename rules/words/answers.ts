/** What is said beside a finding that an answer of the site decided, or that waits for a new one. */
import { EDITIONS, isEditionId } from "../editions/in-force.ts";
import type { Answered, Question } from "../report.ts";

/** `Asked on this site: Does it stay in the water? Answered: yes, on 2024-05-06, by QA`. */
export function answerText({ asked, answer, on, by }: Answered): string {
  const given = (word: string, text: string | undefined) => (text?.trim() ? `${word} ${text.trim()}` : "");
  const parts = [optionText(answer), given("on", on), given("by", by)];
  return `Asked on this site: ${asked} Answered: ${parts.filter((part) => part !== "").join(", ")}`;
}

/** An answer as it is read: an edition by its title, anything else as it stands. */
export function optionText(option: string): string {
  return isEditionId(option) ? EDITIONS[option].title : option;
}

/** `Does it stay in the water? [yes / no]`. */
export function questionText({ text, options }: Pick<Question, "text" | "options">): string {
  return options.length === 0 ? text : `${text} [${options.map(optionText).join(" / ")}]`;
}

export const LAPSED_TEXT = "An earlier answer has lapsed: what it was about has changed.";
