/** What rules share when they write a verdict: words for lengths, names, what an answer settled. */
import type { Point, Route, Witness } from "../../../geometry/types.ts";
import type { Yard } from "../../measures/yard.ts";
import type { Answered, Outcome, Question, Rest } from "../../report.ts";
import type { KnownElement, UnknownElement } from "../../site/elements.ts";
import type { Answer } from "../../site/site.ts";
import { capitalized, elementName } from "../../words/element-names.ts";
import { areaText, lengthText, type Units } from "../../words/lengths.ts";
import type { Verdict } from "../rule.ts";

/** Lengths and areas in the site's own units. */
export interface Speaker {
  /** A length; `apartFrom` is a limit that the text must not seem to equal. */
  length(inches: number, apartFrom?: number): string;
  area(squareInches: number): string;
}

export function speakerOf(yard: Yard): Speaker {
  return SPEAKERS[yard.site.display?.units ?? "ft-in"];
}

/** Made once: every verdict asks for one. */
const SPEAKERS: Readonly<Record<Units, Speaker>> = {
  "ft-in": speakerIn("ft-in"),
  ft: speakerIn("ft"),
  in: speakerIn("in"),
  m: speakerIn("m"),
};

function speakerIn(units: Units): Speaker {
  return {
    length: (inches, apartFrom) => lengthText(inches, units, apartFrom),
    area: (squareInches) => areaText(squareInches, units),
  };
}

/** The element's name at the start of a sentence. */
export function subjectName(element: KnownElement | UnknownElement): string {
  return capitalized(elementName(element));
}

/** A conflict that no number decides has no margin: none of them falls short. */
export function marginOfConflict(margin: number | null): number | null {
  return (margin ?? 0) >= 0 ? null : margin;
}

/** A verdict that measures nothing, to be filled in by the rule. */
export const BARE = {
  alsoSections: [],
  measured: {},
  required: {},
  margin: null,
  witness: [],
  limits: [],
  remedy: "",
} satisfies Partial<Verdict>;

/** A verdict that is still being put together. */
export type Draft = { -readonly [F in keyof Verdict]: Verdict[F] };

/**
 * A verdict that says nothing yet, `review` until it does. Made in one piece: spreading one record into the next takes
 * several times as long, and a large yard has thousands of verdicts.
 */
export function draftOf(
  about: Pick<Verdict, "element" | "body" | "measured" | "required" | "margin" | "witness" | "limits">,
): Draft {
  return {
    element: about.element,
    body: about.body,
    outcome: "review",
    alsoSections: BARE.alsoSections,
    measured: about.measured,
    required: about.required,
    margin: about.margin,
    witness: about.witness,
    limits: about.limits,
    why: "",
    remedy: "",
  };
}

/** The draft with its outcome and why. */
export function settledAs(draft: Draft, outcome: Outcome, why: string): Verdict {
  draft.outcome = outcome;
  draft.why = why;
  return draft;
}

/** What the site's own answer to a question says. */
export interface Settled {
  /** The option chosen; null when nobody has answered, the answer has lapsed, or it is none of the options. */
  readonly choice: string | null;
  /** To be spread into the verdict. */
  readonly trace: Pick<Verdict, "answered" | "lapsed">;
  /** A sentence to add to the why: who settled it, or that the answer lapsed; empty when nobody answered. */
  readonly note: string;
}

/** What a finding keeps of the answer that decided it. */
export function answeredTo(question: Question, { answer, on, by }: Answer): Answered {
  return {
    question: question.id,
    asked: question.text,
    answer,
    ...(on === undefined ? {} : { on }),
    ...(by === undefined ? {} : { by }),
  };
}

export function settle(yard: Yard, question: Question, element: string | null, body: string | null): Settled {
  const found = yard.answer(question.id, element, body);
  if (!found) return { choice: null, trace: {}, note: "" };
  const { answer, lapsed, against } = found;
  if (lapsed) {
    const note = ` The answer "${answer.answer}" has lapsed, because what it was about has changed since.`;
    return { choice: null, trace: { lapsed: true }, note };
  }
  if (against) {
    const note = ` The answers "${answer.answer}" and "${against.answer}" contradict each other, and neither counts.`;
    return { choice: null, trace: {}, note };
  }
  if (!question.options.includes(answer.answer)) {
    const note = ` The answer "${answer.answer}" is none of the options and does not count.`;
    return { choice: null, trace: {}, note };
  }
  const answered = answeredTo(question, answer);
  const [who, day] = [answer.by?.trim() ?? "", answer.on?.trim() ?? ""];
  const by = [who === "" ? "" : ` by ${who}`, day === "" ? "" : ` on ${day}`];
  return {
    choice: answer.answer,
    trace: { answered },
    note: ` Settled by the answer "${answer.answer}"${by.join("")}.`,
  };
}

/** A question with two options, yes and no, and what its answer rests on besides the element and the pool. */
export function yesNo(id: string, text: string, restsOn?: Rest): Question {
  return { id, text, options: ["yes", "no"], ...(restsOn === undefined ? {} : { restsOn }) };
}

/** The two ends of a straight measurement, starting at the water; nothing for one that does not exist. */
export function witnessLine(witness: Witness | null): Point[] {
  return witness && Number.isFinite(witness.length) ? [witness.from, witness.to] : [];
}

/** Whether two paths have the same length, both absent included. */
export function pathLengthOf(route: Route | null): number | null {
  return route === null ? null : route.length;
}
