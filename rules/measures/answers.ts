/** Answers kept in the site: found by question and element, and lapsed when what they were about has changed. */
import type { EditionId } from "../editions/edition.ts";
import type { Answer, Site } from "../site/site.ts";

export interface AnswerFound {
  readonly answer: Answer;
  /** What the answer was about has changed since it was given: it no longer counts. */
  readonly lapsed: boolean;
}

/**
 * The last answer to a question about an element; where the question has no element, about its body or the site. Where
 * an element is asked about for several bodies, the last answer that still fits this one; a lapsed one only where none does.
 */
export function findAnswer(
  site: Site,
  edition: EditionId,
  question: string,
  element: string | null,
  body: string | null,
): AnswerFound | null {
  const about = element ?? body;
  let lapsed: AnswerFound | null = null;
  for (const answer of [...(site.answers ?? [])].reverse()) {
    if (answer.question !== question) continue;
    const named = answer.element ?? null;
    if (named !== about && named !== element) continue;
    if (answer.about === undefined || answer.about === printOf(site, edition, element, body)) {
      return { answer, lapsed: false };
    }
    lapsed ??= { answer, lapsed: true };
  }
  return lapsed;
}

/**
 * A print of what an answer is about: the element, the body and the edition. Changes when any of them does. A body asked
 * about for itself has one print, whether it is named as the element, as the body or as both.
 */
export function printOf(site: Site, edition: EditionId, element: string | null, body: string | null): string {
  const parts: unknown[] = [edition];
  for (const id of new Set([element, body])) {
    if (id !== null) parts.push(site.elements.find((e) => e.id === id) ?? null);
  }
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
