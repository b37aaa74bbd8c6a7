/**
 * Depth, size and plain values, checked with loops only, before anything that calls itself sees the document.
 * A document that fails here never reaches the validator.
 */
import { MOST_CHARACTERS, MOST_LEVELS, MOST_PROBLEMS, MOST_VALUES } from "./limits.ts";
import { fieldName, type Problem, type Refusal, refusalOf, shown } from "./refusal.ts";

const QUOTE = 34;
const BACKSLASH = 92;
const OPEN_LIST = 91;
const CLOSE_LIST = 93;
const OPEN_OBJECT = 123;
const CLOSE_OBJECT = 125;

/** Refuses a text that is too long, or whose brackets nest too deep, before it is parsed. Null when it may be parsed. */
export function refuseText(text: string): Refusal | null {
  if (text.length > MOST_CHARACTERS) return tooLarge(`at most ${MOST_CHARACTERS} characters`, `${text.length}`);
  let level = 0;
  let inText = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (inText) {
      if (c === BACKSLASH) i++;
      else if (c === QUOTE) inText = false;
    } else if (c === QUOTE) inText = true;
    else if (c === OPEN_LIST || c === OPEN_OBJECT) {
      level++;
      if (level > MOST_LEVELS) return tooDeep();
    } else if (c === CLOSE_LIST || c === CLOSE_OBJECT) level--;
  }
  return null;
}

export function tooDeep(): Refusal {
  return refusalOf("too-deep", [
    {
      element: null,
      field: "document",
      expected: `lists and objects at most ${MOST_LEVELS} levels deep`,
      got: "more levels",
    },
  ]);
}

export function tooLarge(expected: string, got: string, element: string | null = null, field = "document"): Refusal {
  return refusalOf("too-large", [{ element, field, expected, got }]);
}

/** A list or object still to be looked into, and how it was reached. */
interface Visit {
  readonly value: object;
  readonly level: number;
  readonly key: PropertyKey;
  readonly parent: Visit | null;
}

/**
 * Walks a whole document. A refusal when it is too deep (a value that holds itself is) or too large; otherwise a
 * problem for every value that a JSON file cannot hold (not finite, a function, a date...), wherever it lies.
 */
export function walkDocument(document: object): { refusal: Refusal } | { refusal: null; problems: Problem[] } {
  const problems: Problem[] = [];
  const waiting: Visit[] = [{ value: document, level: 1, key: "", parent: null }];
  let values = 1;
  for (let visit = waiting.pop(); visit !== undefined; visit = waiting.pop()) {
    const isList = Array.isArray(visit.value);
    const keys = isList ? null : Object.keys(visit.value);
    const count = keys === null ? (visit.value as unknown[]).length : keys.length;
    values += count;
    if (values > MOST_VALUES) return { refusal: tooLarge(`at most ${MOST_VALUES} values`, "more") };
    for (let i = 0; i < count; i++) {
      const key = keys === null ? i : (keys[i] as string);
      const value = (visit.value as Record<PropertyKey, unknown>)[key];
      if (isContainer(value)) {
        if (visit.level === MOST_LEVELS) return { refusal: tooDeep() };
        waiting.push({ value, level: visit.level + 1, key, parent: visit });
      } else if (!isPlain(value) && !(value === undefined && !isList) && problems.length <= MOST_PROBLEMS) {
        problems.push(problemAt(document, visit, key, value));
      }
    }
  }
  return { refusal: null, problems };
}

/** True for a list or a plain object. */
function isContainer(value: unknown): value is object {
  return Array.isArray(value) || isPlainObject(value);
}

/** True for an object as JSON makes it (not a list, not a date, map or other special object). */
export function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && Object.prototype.toString.call(value) === "[object Object]";
}

function isPlain(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value === "string" || typeof value === "boolean" || value === null;
}

function problemAt(document: object, visit: Visit, key: PropertyKey, value: unknown): Problem {
  const place: PropertyKey[] = [key];
  for (let at: Visit = visit; at.parent !== null; at = at.parent) place.unshift(at.key);
  const expected = typeof value === "number" ? "a finite number" : "a value that JSON can hold";
  const [first, index, ...rest] = place;
  if (first !== "elements" || typeof index !== "number") {
    return { element: null, field: fieldName(place), expected, got: shown(value) };
  }
  const element = (document as { elements: unknown[] }).elements[index];
  const name = elementName(element, index);
  return { element: name, field: rest.length === 0 ? name : fieldName(rest), expected, got: shown(value) };
}

/** How a refusal names an element: its id, or its place in the file when it has none. */
export function elementName(element: unknown, index: number): string {
  if (isPlainObject(element) && typeof element.id === "string" && element.id !== "") return element.id;
  return `elements[${index}]`;
}
