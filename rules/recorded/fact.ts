/**
 * One fact of recorded copper held against the code: good, bad, or not given (then there is a question, whose answer
 * in the site settles it).
 */
import { settle, yesNo } from "../catalogue/common/verdicts.ts";
import type { Verdict } from "../catalogue/rule.ts";
import type { ParameterId } from "../editions/parameter-types.ts";
import type { Yard } from "../measures/yard.ts";
import type { Question, Rest } from "../report.ts";
import { leastOf, type Standing } from "./standing.ts";

export interface Fact {
  /** The field of the site file that it rests on. */
  readonly field: string;
  /** `no`: it breaks the rule. `doubtful`: the field is not given, or says something that nobody can judge. */
  readonly standing: Standing;
  /** What is so and why it matters, a sentence; empty where all is well. */
  readonly says: string;
  /** What settles it, starting with a verb; empty where all is well. */
  readonly remedy: string;
  readonly limits: readonly ParameterId[];
  readonly question?: Question;
  /** That an answer of the site decided, or has lapsed; to be spread into the verdict. */
  readonly trace: Pick<Verdict, "answered" | "lapsed">;
  readonly note: string;
}

const UNANSWERED = { trace: {}, note: "" } as const;

export function good(field: string, limits: readonly ParameterId[] = []): Fact {
  return { field, standing: "sure", says: "", remedy: "", limits, ...UNANSWERED };
}

export function bad(field: string, says: string, remedy: string, limits: readonly ParameterId[] = []): Fact {
  return { field, standing: "no", says, remedy, limits, ...UNANSWERED };
}

/** What an open fact asks. `yes` means that it is as the code wants it, unless the options say otherwise. */
export interface Ask {
  readonly yard: Yard;
  readonly element: string;
  readonly body: string | null;
  readonly id: string;
  readonly text: string;
  /** In place of yes and no: the last option means that it is not as the code wants it, every other that it is. */
  readonly options?: readonly string[];
  /** What its answer rests on besides the element and the pool. */
  readonly restsOn?: Rest;
}

/** A fact that the site leaves open: doubtful until the site holds an answer. */
export function open(field: string, says: string, remedy: string, ask: Ask, limits: readonly ParameterId[] = []): Fact {
  const { id, text, options, restsOn } = ask;
  const asked = yesNo(id, text, restsOn);
  const question = options === undefined ? asked : { ...asked, options };
  const { choice, trace, note } = settle(ask.yard, question, ask.element, ask.body);
  if (choice !== null && choice === question.options.at(-1))
    return { field, standing: "no", says, remedy, limits, question, trace, note };
  if (choice !== null) return { field, standing: "sure", says: "", remedy: "", limits, trace, note };
  return { field, standing: "doubtful", says, remedy, limits, question, trace, note };
}

/** A fault that an answer of the site can lift; without one it stands as a fault. */
export function badUnlessAnswered(
  field: string,
  says: string,
  remedy: string,
  ask: Ask,
  limits: readonly ParameterId[] = [],
): Fact {
  const asked = open(field, says, remedy, ask, limits);
  return asked.standing === "doubtful" ? { ...asked, standing: "no" } : asked;
}

export function standingOfFacts(facts: readonly Fact[]): Standing {
  return leastOf(facts.map((fact) => fact.standing));
}

/**
 * The part of a verdict that follows from its facts: conflict when any is bad, review with the first open question when
 * any is open, else meets. `lead` opens the why; `fine` is said when all is well.
 */
export function verdictOfFacts(
  facts: readonly Fact[],
  lead: string,
  fine: string,
): Pick<Verdict, "outcome" | "why" | "remedy" | "question" | "answered" | "lapsed"> {
  const faults = facts.filter((fact) => fact.standing === "no");
  const doubts = facts.filter((fact) => fact.standing === "doubtful");
  const notes = facts.map((fact) => fact.note).join("");
  const trace = Object.assign({}, ...facts.map((fact) => fact.trace)) as Pick<Verdict, "answered" | "lapsed">;
  const told = [...faults, ...doubts].map((fact) => fact.says);
  const why = `${[lead, ...(told.length > 0 ? told : [fine])].join(" ")}${notes}`;
  const remedy = [...faults, ...doubts]
    .map((fact) => fact.remedy)
    .filter((text, i, all) => text !== "" && all.indexOf(text) === i);
  const question = faults.length > 0 ? faults.find((fact) => fact.question)?.question : doubts[0]?.question;
  return {
    outcome: faults.length > 0 ? "conflict" : doubts.length > 0 ? "review" : "meets",
    why,
    remedy: remedy.join(" "),
    ...(question ? { question } : {}),
    ...trace,
  };
}
