/**
 * Yes, no, or open: what a rule asks for, put together from facts of which some may not be given.
 *
 * `all` is no as soon as one part is no; `any` is yes as soon as one part is yes. What stays open keeps the facts that
 * would settle it, so that one question can name them.
 */
import { exceeds, reaches } from "../../measures/compare.ts";
import type { Yard } from "../../measures/yard.ts";
import { speakerOf } from "./verdicts.ts";

/** A fact that would settle something open. */
export interface OpenFact {
  /** A sentence for the why. */
  readonly says: string;
  /** A question, yes being what the code wants. */
  readonly asks: string;
  /** Starts with a verb, no full stop. */
  readonly remedy: string;
}

export interface Truth {
  readonly state: "yes" | "no" | "open";
  readonly facts: readonly OpenFact[];
}

export const YES: Truth = { state: "yes", facts: [] };
export const NO: Truth = { state: "no", facts: [] };

export function open(...facts: readonly OpenFact[]): Truth {
  return { state: "open", facts };
}

/** Yes when every part is, no when one is not. */
export function all(...parts: readonly Truth[]): Truth {
  if (parts.some(({ state }) => state === "no")) return NO;
  return gathered(parts, YES);
}

/** Yes when one part is, no when none can be. */
export function any(...parts: readonly Truth[]): Truth {
  if (parts.some(({ state }) => state === "yes")) return YES;
  return gathered(parts, NO);
}

/** The same in both cases, or open: `fact` says which of them holds. */
export function eitherWay(one: Truth, other: Truth, fact: OpenFact): Truth {
  if (one.state === other.state && one.state !== "open") return one;
  return open(...distinct([fact, ...one.facts, ...other.facts]));
}

function gathered(parts: readonly Truth[], otherwise: Truth): Truth {
  const facts = parts.flatMap((part) => (part.state === "open" ? part.facts : []));
  return facts.length === 0 ? otherwise : open(...distinct(facts));
}

function distinct(facts: readonly OpenFact[]): OpenFact[] {
  return facts.filter((fact, i) => facts.findIndex(({ asks }) => asks === fact.asks) === i);
}

/** A field that the drawing does not give: what it would tell, and the question. */
export function notGiven(field: string, what: string, asks: string): OpenFact {
  return { says: `${what} (\`${field}\`) is not given.`, asks: `${asks} (\`${field}\`)`, remedy: `Give \`${field}\`` };
}

/** A flag that has to be as wanted; absent: open. */
export function flag(value: boolean | undefined, fact: OpenFact): Truth {
  return value === undefined ? open(fact) : value ? YES : NO;
}

/** A measurement that has to reach a minimum; as near to it as the drawing may be off: open. `what`: "the distance". */
export function atLeast(yard: Yard, value: number, minimum: number, what: string): Truth {
  const answer = reaches(value, minimum, yard.accuracy);
  if (answer !== "doubtful") return answer === "yes" ? YES : NO;
  return open(withinAccuracy(yard, minimum, what, "at least"));
}

/** A measurement that may not be more than a maximum. */
export function atMost(yard: Yard, value: number, maximum: number, what: string): Truth {
  const answer = exceeds(value, maximum, yard.accuracy);
  if (answer !== "doubtful") return answer === "no" ? YES : NO;
  return open(withinAccuracy(yard, maximum, what, "at most"));
}

export function withinAccuracy(yard: Yard, limit: number, what: string, than: string): OpenFact {
  const say = speakerOf(yard);
  return {
    says: `The drawing may be off by ${say.length(yard.accuracy)}, and ${what} is as near to ${say.length(limit)} as that.`,
    asks: `Measured on site, is ${what} ${than} ${say.length(limit)}?`,
    remedy: `Measure ${what} on site`,
  };
}
