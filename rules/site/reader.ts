/**
 * Reads a site file: the one door by which a document comes in, whoever wrote it.
 *
 * Stages: size and depth (loops only) -> is it a site, of which version -> migration -> the head of the document ->
 * each element -> ids. A refusal lists everything that the stage it failed in found; nothing is changed or repaired.
 * What is read is kept as it stands: key order, unknown fields, unknown kinds and every number.
 */
import { elementProblems, isKnownKind, schemaProblems } from "./element-check.ts";
import { elementSchemas } from "./elements.ts";
import { MOST_ELEMENTS, MOST_ENTRIES, MOST_PROBLEMS, MOST_VERTICES } from "./limits.ts";
import { migrate } from "./migrations.ts";
import { type Problem, type Refusal, type RefusalCode, refusalOf, shown } from "./refusal.ts";
import { headSchema, SITE_FORMAT, SITE_VERSION, type Site } from "./site.ts";
import { elementName, isPlainObject, refuseText, tooDeep, tooLarge, walkDocument } from "./size-check.ts";

export type { Problem, Refusal, RefusalCode } from "./refusal.ts";

export type ReadResult =
  | {
      readonly ok: true;
      readonly site: Site /** The older version it was brought up from. */;
      readonly migratedFrom?: number;
    }
  | { readonly ok: false; readonly refusal: Refusal };

/** Reads the text of a site file. A byte order mark at its start is passed over. */
export function readSite(text: string): ReadResult {
  const refusal = refuseText(text);
  if (refusal !== null) return { ok: false, refusal };
  const plain = text.startsWith("\uFEFF") ? text.slice(1) : text;
  let value: unknown;
  try {
    value = JSON.parse(plain);
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, refusal: tooDeep() };
    if (!(error instanceof SyntaxError)) throw error;
    const reason = plain.trim() === "" ? "it is empty" : error.message;
    return { ok: false, refusal: { code: "not-json", message: `This file is not JSON: ${reason}.`, problems: [] } };
  }
  return checkSite(value);
}

/** Checks a value that is already parsed. The site that is returned is that very value (or its migration), not a copy. */
export function checkSite(value: unknown): ReadResult {
  if (!isPlainObject(value)) return refused("not-a-site", [documentProblem(value)]);
  if (Array.isArray(value.elements) && value.elements.length > MOST_ELEMENTS) {
    const got = `${value.elements.length}`;
    return { ok: false, refusal: tooLarge(`at most ${MOST_ELEMENTS} elements`, got, null, "elements") };
  }
  const walk = walkDocument(value);
  if (walk.refusal !== null) return { ok: false, refusal: walk.refusal };
  if (value.format !== SITE_FORMAT) {
    const expected = JSON.stringify(SITE_FORMAT);
    return refused("not-a-site", [{ element: null, field: "format", expected, got: shown(value.format) }]);
  }
  const { version } = value;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 0) {
    const expected = `a whole number from 0 to ${SITE_VERSION}`;
    return refused("invalid", [{ element: null, field: "version", expected, got: shown(version) }]);
  }
  if (version > SITE_VERSION) {
    const problem = { element: null, field: "version", expected: `at most ${SITE_VERSION}`, got: `${version}` };
    return refused("too-new", [problem], "This site file was written by a newer version of the program.");
  }
  if (version === SITE_VERSION) return checkCurrent(value, walk.problems);
  const migrated = migrate(value, version, SITE_VERSION);
  if (!migrated.ok) return migrated;
  const result = checkCurrent(migrated.document, walk.problems);
  return result.ok ? { ...result, migratedFrom: version } : result;
}

/** Checks a document of the present version. `unheld`: the values that no JSON file can hold, wherever they lie. */
function checkCurrent(document: Readonly<Record<string, unknown>>, unheld: readonly Problem[]): ReadResult {
  const large = longListRefusal(document);
  if (large !== null) return { ok: false, refusal: large };
  const problems: Problem[] = [];
  const head = headSchema.safeParse(document);
  if (!head.success) {
    for (const found of schemaProblems(head.error.issues, headSchema, document)) {
      problems.push({ element: null, ...found });
    }
  }
  const { elements } = document;
  if (Array.isArray(elements)) {
    for (let i = 0; i < elements.length && problems.length <= MOST_PROBLEMS; i++) {
      problems.push(...elementProblems(elements[i], i));
    }
    problems.push(...repeatedIds(elements));
  } else problems.push({ element: null, field: "elements", expected: "a list of elements", got: shown(elements) });
  for (const problem of unheld) if (!problems.some((other) => covers(other, problem))) problems.push(problem);
  if (problems.length > 0) return refused("invalid", problems);
  return { ok: true, site: document as unknown as Site };
}

/** True when `other` already tells of the place of `problem` or of what holds it. */
function covers(other: Problem, problem: Problem): boolean {
  if (other.element !== problem.element || !problem.field.startsWith(other.field)) return false;
  const rest = problem.field.slice(other.field.length);
  return rest === "" || rest.startsWith(".") || rest.startsWith("[");
}

function refused(code: RefusalCode, problems: readonly Problem[], lead = ""): ReadResult {
  return { ok: false, refusal: refusalOf(code, problems, lead) };
}

function documentProblem(value: unknown): Problem {
  const expected = `an object with "format": ${JSON.stringify(SITE_FORMAT)}`;
  return { element: null, field: "document", expected, got: shown(value) };
}

/** A list that is longer than any that may be checked, in a field that the validator would go through. */
function longListRefusal(document: Readonly<Record<string, unknown>>): Refusal | null {
  const { amendments, answers, dimensions, settings, elements } = document;
  const { spools, gridRolls }: Record<string, unknown> = isPlainObject(settings) ? settings : {};
  const lists = { amendments, answers, dimensions, "settings.spools": spools, "settings.gridRolls": gridRolls };
  for (const [field, list] of Object.entries(lists)) {
    if (isLong(list, MOST_ENTRIES)) return tooLarge(`at most ${MOST_ENTRIES} entries`, `${list.length}`, null, field);
  }
  if (!Array.isArray(elements)) return null;
  for (let index = 0; index < elements.length; index++) {
    const element: unknown = elements[index];
    if (!isPlainObject(element) || !isKnownKind(element.kind)) continue;
    const name = elementName(element, index);
    for (const field of Object.keys(elementSchemas[element.kind].shape)) {
      const value = element[field];
      if (isLong(value, MOST_ENTRIES))
        return tooLarge(`at most ${MOST_ENTRIES} entries`, `${value.length}`, name, field);
      for (const path of Array.isArray(value) ? value : [value]) {
        if (!isPlainObject(path) || !isLong(path.vertices, MOST_VERTICES)) continue;
        return tooLarge(`at most ${MOST_VERTICES} vertices`, `${path.vertices.length}`, name, `${field}.vertices`);
      }
    }
  }
  return null;
}

function isLong(value: unknown, most: number): value is unknown[] {
  return Array.isArray(value) && value.length > most;
}

function repeatedIds(elements: readonly unknown[]): Problem[] {
  const problems: Problem[] = [];
  const places = new Map<string, number>();
  elements.forEach((element: unknown, index) => {
    if (problems.length > MOST_PROBLEMS) return;
    if (!isPlainObject(element) || typeof element.id !== "string" || element.id === "") return;
    const first = places.get(element.id);
    if (first === undefined) places.set(element.id, index);
    else {
      const expected = "an id that no other element has";
      const got = `the id of elements[${first}] again in elements[${index}]`;
      problems.push({ element: element.id, field: "id", expected, got });
    }
  });
  return problems;
}
