/** Answers kept in the site: found by question and element, and lapsed when what they were about has changed. */
import type { EditionId } from "../editions/edition.ts";
import type { Rest } from "../report.ts";
import type { TieElement } from "../site/elements.ts";
import type { Answer, Site } from "../site/site.ts";

export interface AnswerFound {
  readonly answer: Answer;
  /** What the answer was about has changed since it was given: it no longer counts. */
  readonly lapsed: boolean;
  /** Another answer that fits as well, says something else and was given no earlier: neither counts. */
  readonly against?: Answer;
}

/**
 * The answer to a question about an element; where the question has no element, about its body or the site. Of several
 * that fit, the one of the last day, and of one day the last; a lapsed one only where none fits.
 */
export function findAnswer(
  site: Site,
  edition: EditionId,
  question: string,
  element: string | null,
  body: string | null,
): AnswerFound | null {
  const about = element ?? body;
  let lapsed: Answer | undefined;
  const fitting: Answer[] = [];
  for (const answer of site.answers ?? []) {
    if (answer.question !== question) continue;
    const named = answer.element ?? null;
    if (named !== about && named !== element) continue;
    if (answer.about !== undefined && answer.about !== printOf(site, edition, element, body, answer.restsOn))
      lapsed = answer;
    else fitting.push(answer);
  }
  return standingAnswer(fitting) ?? (lapsed ? { answer: lapsed, lapsed: true } : null);
}

/**
 * Of answers to one question, in file order: the last of those that no answer of a later day replaces; null of none. An
 * answer without a day replaces none, and none replaces it.
 */
export function standingAnswer(answers: readonly Answer[]): AnswerFound | null {
  const standing = answers.filter((answer) => !answers.some((other) => isLater(other, answer)));
  const answer = standing.at(-1);
  if (answer === undefined) return null;
  const against = standing.findLast((other) => other.answer !== answer.answer);
  return against === undefined ? { answer, lapsed: false } : { answer, lapsed: false, against };
}

/** Whether `a` was given on a later day than `b`; not where one of them does not say when. */
function isLater(a: Answer, b: Answer): boolean {
  if (a.on === undefined || b.on === undefined || !A_DAY.test(a.on) || !A_DAY.test(b.on)) return false;
  return a.on > b.on;
}

const A_DAY = /^\d{4}-\d\d-\d\d/;

/**
 * A print of what an answer is about: the element, the body, the edition with its local amendments, and whatever the
 * answer rests on besides, as its question told when it was given. Changes when any of them does. A body asked about for
 * itself has one print, whether it is named as the element, as the body or as both.
 */
export function printOf(
  site: Site,
  edition: EditionId,
  element: string | null,
  body: string | null,
  restsOn: Rest = {},
): string {
  const parts: unknown[] = [edition];
  for (const id of new Set([element, body])) {
    if (id === null) continue;
    const asked = site.elements.find((e) => e.id === id);
    parts.push(asked ?? null);
    // What is asked about a tie is asked about what it joins, too.
    const joins = asked?.kind === "tie" ? (asked as TieElement).joins : [];
    for (const name of joins) parts.push(site.elements.find((e) => e.id === name) ?? name);
  }
  const amendments = (site.amendments ?? []).map(({ parameter, value }) => [parameter, value]);
  if (amendments.length > 0) parts.push(amendments);
  const { kinds = [], elements = [] } = restsOn;
  if (kinds.length > 0) parts.push(site.elements.filter(({ kind }) => kinds.includes(kind)));
  for (const id of elements) parts.push(site.elements.find((one) => one.id === id) ?? null);
  return hashOf(JSON.stringify(parts));
}

/** 32-bit FNV-1a of a text, as eight hexadecimal digits. Source: Fowler, Noll, Vo; a fingerprint, not a safeguard. */
export function hashOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}
