/** Answers to the questions of findings, kept in the site with who gave them, when, and what they were about. */
import { editionInForce } from "../../rules/editions/in-force.ts";
import { printOf } from "../../rules/measures/answers.ts";
import type { Finding, Rest } from "../../rules/report.ts";
import { MOST_ENTRIES } from "../../rules/site/limits.ts";
import type { Answer, Site } from "../../rules/site/site.ts";
import { optionText } from "../../rules/words/answers.ts";
import { type AnyElement, type Edit, type Refused, refused } from "./edit.ts";
import { elementWords } from "./element-words.ts";

type Asked = Pick<Finding, "element" | "body" | "question">;

/**
 * Keeps an answer to the finding's question: `answer` is one of its options, `by` the initials of whoever gives it,
 * `on` the day as `2026-05-01`. It takes the place of an earlier answer about the same element and pool and of
 * lapsed ones, and lapses when the element, its pool, the edition or what else the question rests on changes.
 */
export function answerQuestion(finding: Asked, answer: string, by: string, on: string): Edit {
  return {
    label: "Answer a question",
    apply(site) {
      const { question, element, body } = finding;
      if (!question) return refused("This finding asks nothing.", element);
      const refusal = refuseAnswer(question.options, answer, by, on, element);
      if (refusal) return refusal;
      const about = element ?? body;
      const subject = about === null ? null : site.elements.find((candidate) => candidate.id === about);
      if (subject === undefined) return refused(`What the question was about, "${about}", is gone.`, about);
      const kept: Answer = {
        question: question.id,
        element: about,
        answer,
        on,
        by: by.trim(),
        about: printOf(site, editionInForce(site).id, element, body, question.restsOn),
        ...(question.restsOn === undefined ? {} : { restsOn: copyOf(question.restsOn) }),
      };
      const standing = otherPrints(site, element, body, question.restsOn);
      const others = (site.answers ?? []).filter(
        (other) =>
          other.question !== question.id ||
          (other.element ?? null) !== about ||
          (other.about !== undefined && standing.has(other.about)),
      );
      if (others.length >= MOST_ENTRIES) return refused("This site cannot hold any more answers.", about, "answers");
      const label = `Answer "${optionText(answer)}"${subject ? `, ${elementWords(subject as AnyElement)}` : ""}`;
      return { ok: true, site: { ...site, answers: [...others, kept] }, label };
    },
  };
}

/** Takes back an answer, and others to the same question about the very same; those about another pool stay. */
export function withdrawAnswer(kept: Answer): Edit {
  return {
    label: "Take back an answer",
    apply(site) {
      const answers = (site.answers ?? []).filter((other) => !isAboutSame(other, kept));
      if (answers.length === (site.answers ?? []).length)
        return refused("There is no such answer any more.", kept.element ?? null);
      if (answers.length > 0) return { ok: true, site: { ...site, answers } };
      const { answers: _, ...rest } = site;
      return { ok: true, site: rest as Site };
    },
  };
}

/** The answers that the site holds about what a finding is about; with one of them, `withdrawAnswer` has something to take back. */
export function answersAbout(site: Site, finding: Pick<Finding, "element" | "body">): readonly Answer[] {
  const about = finding.element ?? finding.body;
  return (site.answers ?? []).filter((answer) => (answer.element ?? null) === about);
}

/** The prints that answers about the same element and other pools have now: they stand beside a new one. */
function otherPrints(site: Site, element: string | null, body: string | null, restsOn?: Rest): Set<string> {
  if (element === null) return new Set();
  const edition = editionInForce(site).id;
  const pools = site.elements.filter(({ kind, id }) => kind === "pool" && id !== body);
  return new Set(pools.map(({ id }) => printOf(site, edition, element, id, restsOn)));
}

function copyOf({ kinds, elements }: Rest): NonNullable<Answer["restsOn"]> {
  return { ...(kinds ? { kinds: [...kinds] } : {}), ...(elements ? { elements: [...elements] } : {}) };
}

function isAboutSame(a: Answer, b: Answer): boolean {
  return a.question === b.question && (a.element ?? null) === (b.element ?? null) && a.about === b.about;
}

function refuseAnswer(
  options: readonly string[],
  answer: string,
  by: string,
  on: string,
  element: string | null,
): Refused | null {
  if (!options.includes(answer))
    return refused(`Choose one of the answers: ${options.map(optionText).join(", ")}.`, element);
  if (by.trim() === "")
    return refused("Write the initials of whoever answers; the answer is kept with them.", element, "by");
  if (!isDay(on)) return refused(`The date has to be a day as 2026-05-01; it cannot be "${on}".`, element, "on");
  return null;
}

function isDay(text: string): boolean {
  const at = Date.parse(`${text}T00:00:00Z`);
  return /^\d{4}-\d\d-\d\d$/.test(text) && Number.isFinite(at) && new Date(at).toISOString().startsWith(text);
}
