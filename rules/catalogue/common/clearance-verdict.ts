/** Turns what a clearance asks for, and whether it is so, into the verdict on one thing as seen from one body of water. */
import type { Body, Yard } from "../../measures/yard.ts";
import type { Rest } from "../../report.ts";
import type { KnownElement } from "../../site/elements.ts";
import { worstOf } from "../across-bodies.ts";
import type { Verdict } from "../rule.ts";
import { bondedBodies } from "./storable.ts";
import type { OpenFact, Truth } from "./truth.ts";
import { BARE, type Draft, draftOf, marginOfConflict, settle, settledAs, subjectName, yesNo } from "./verdicts.ts";

export interface ClearanceWords {
  /** Id of the one question that is asked where something stays open. */
  readonly question: string;
  /** What its answer rests on besides the thing and the pool. */
  readonly restsOn?: Rest;
  /** What is drawn: a clause that starts a sentence, without its full stop. */
  readonly is: string;
  /** What is wanted: a clause as in "it stands at least 5 ft off". */
  readonly wanted: string;
  /** Why it matters or what breaks, a clause after "but"; only for a conflict. */
  readonly breaks: string;
  /** What settles a conflict, starts with a verb, with its full stop. */
  readonly remedy: string;
}

type Measurements = Pick<Verdict, "element" | "body" | "measured" | "required" | "margin" | "witness" | "limits"> &
  Partial<Pick<Verdict, "section" | "alsoSections" | "basis" | "extent">>;

/** A verdict with the measurements and no word yet. */
function measuredDraft(about: Measurements): Draft {
  const draft = draftOf(about);
  if (about.section !== undefined) draft.section = about.section;
  if (about.alsoSections !== undefined) draft.alsoSections = about.alsoSections;
  if (about.basis !== undefined) draft.basis = about.basis;
  if (about.extent !== undefined) draft.extent = about.extent;
  return draft;
}

/** `yes` meets, `no` is a conflict, open is a question until the site answers it. */
export function clearanceVerdict(yard: Yard, about: Measurements, truth: Truth, words: ClearanceWords): Verdict {
  const base = measuredDraft(about);
  if (truth.state === "yes") return settledAs(base, "meets", `${words.is}: ${words.wanted}.`);
  const broken = { ...base, margin: marginOfConflict(base.margin), remedy: words.remedy };
  if (truth.state === "no") return { ...broken, outcome: "conflict", why: `${words.is}, but ${words.breaks}.` };
  const question = yesNo(words.question, questionText(truth.facts, words.wanted), words.restsOn);
  const settled = settle(yard, question, about.element, about.body);
  const { trace, note } = settled;
  if (settled.choice === "yes")
    return { ...base, ...trace, outcome: "meets", why: `${words.is}; ${words.wanted}.${note}` };
  if (settled.choice === "no")
    return { ...broken, ...trace, outcome: "conflict", why: `${words.is}, but ${words.breaks}.${note}` };
  const says = truth.facts.map((fact) => fact.says).join(" ");
  const remedy = `${truth.facts.map((fact) => fact.remedy).join("; ")}.`;
  return { ...base, ...trace, outcome: "review", why: `${words.is}. ${says}${note}`, remedy, question };
}

function questionText(facts: readonly OpenFact[], wanted: string): string {
  const [only] = facts;
  if (facts.length === 1 && only) return only.asks;
  return `Looked at on site, is it so that ${wanted}? Open: ${facts.map(({ asks }) => asks).join(" ")}`;
}

/**
 * One verdict for an element: the worst over the permanent bodies of water. Where every pool is storable the section
 * does not apply, and the verdict says so; where the site has no water there is none.
 */
export function worstOver(yard: Yard, element: KnownElement, judgeAt: (body: Body) => Verdict): Verdict[] {
  const bodies = bondedBodies(yard);
  if (bodies.length === 0) {
    const body = yard.nearestBody(element);
    if (body === null) return [];
    const why = `${subjectName(element)}: every pool of this site is storable, and this section is for permanent ones.`;
    return [{ ...BARE, element: element.id, body: body.id, outcome: "exempt", why }];
  }
  const worst = worstOf(bodies, judgeAt);
  return worst ? [worst] : [];
}
