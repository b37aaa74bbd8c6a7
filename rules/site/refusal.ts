/** Why a site file is refused: what is wrong, where, what was expected and what was found there. */
import { MOST_PROBLEMS } from "./limits.ts";

export type RefusalCode =
  | "not-json"
  | "not-a-site"
  | "too-new"
  | "migration-failed"
  | "too-large"
  | "too-deep"
  | "invalid";

/** One thing wrong. */
export interface Problem {
  /** The element's id, `elements[3]` where it has none, null where the problem lies outside the elements. */
  readonly element: string | null;
  /** The field inside the element (or inside the document), as `outline.vertices[2]`. */
  readonly field: string;
  readonly expected: string;
  readonly got: string;
}

export interface Refusal {
  readonly code: RefusalCode;
  /** One or two plain sentences for the screen. */
  readonly message: string;
  /** Every problem found, in the order of the file, at most MOST_PROBLEMS. Empty where the text could not be read at all. */
  readonly problems: readonly Problem[];
}

/** A problem before it is known in which element it lies. */
export type FieldProblem = Omit<Problem, "element">;

/** How much of a value is repeated in a refusal, characters. */
const LONGEST_SHOWN = 60;

/** A value in a few words, for the `got` of a problem. Never longer than a line, never throws. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") {
    return JSON.stringify(value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}...` : value);
  }
  if (Array.isArray(value)) return shownList(value);
  if (typeof value === "object" && value !== null) return "an object";
  if (typeof value === "function") return "a function";
  if (typeof value === "symbol") return "a symbol";
  return String(value);
}

function shownList(list: readonly unknown[]): string {
  if (list.length <= 4 && list.every((item) => typeof item !== "object" || item === null)) {
    const text = `[${list.map(shown).join(", ")}]`;
    if (text.length <= LONGEST_SHOWN) return text;
  }
  return `a list of ${list.length}`;
}

/** `a`, `a or b`, `a, b or c`. */
export function either(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} or ${words[words.length - 1]}`;
}

const PLAIN_NAME = /^[A-Za-z_$][\w$-]*$/;

/** A place as it is written in a refusal: `outline.vertices[2]`, `["odd name"].z`. */
export function fieldName(path: readonly PropertyKey[]): string {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") text += `[${step}]`;
    else if (PLAIN_NAME.test(String(step))) text += text === "" ? String(step) : `.${String(step)}`;
    else text += `[${JSON.stringify(String(step))}]`;
  }
  return text;
}

/** A problem as one sentence. */
export function sentenceOf(problem: Problem): string {
  const { element, field, expected, got } = problem;
  const place =
    element === null
      ? field
      : field === element
        ? `Element ${element}`
        : `Element ${element.startsWith("elements[") ? element : JSON.stringify(element)}, field ${field}`;
  return `${place}: expected ${expected}, got ${got}.`;
}

/** A refusal whose message is its first problem and the count of the others. */
export function refusalOf(code: RefusalCode, problems: readonly Problem[], lead = ""): Refusal {
  const [first] = problems;
  const parts = [lead, first ? sentenceOf(first) : "", countOfOthers(problems.length - 1)];
  return { code, message: parts.filter((part) => part !== "").join(" "), problems: problems.slice(0, MOST_PROBLEMS) };
}

function countOfOthers(others: number): string {
  if (others < 1) return "";
  if (others >= MOST_PROBLEMS) return `There are more problems; the first ${MOST_PROBLEMS} are listed.`;
  return others === 1 ? "There is 1 more problem." : `There are ${others} more problems.`;
}
