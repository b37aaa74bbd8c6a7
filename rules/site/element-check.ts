/** Everything that can be wrong with one element by itself. The editor asks the same before it takes an edit. */
import { z } from "zod";
import type { PathData } from "../../geometry/types.ts";
import { elementSchemas, KINDS, type Kind } from "./elements.ts";
import { expectedBy, schemaAt } from "./expected.ts";
import { geometryField, innerOutlineFields, readsHeights } from "./geometry-fields.ts";
import { islandProblems } from "./island-check.ts";
import { MOST_PROBLEMS } from "./limits.ts";
import { type PathRule, pathProblems } from "./path-check.ts";
import { either, type FieldProblem, fieldName, type Problem, shown } from "./refusal.ts";
import { elementName, isPlainObject } from "./size-check.ts";

const OUTLINE: PathRule = { closed: true, outline: true, third: "bulge" };

/** True for a kind this version knows. */
export function isKnownKind(kind: unknown): kind is Kind {
  return typeof kind === "string" && Object.hasOwn(elementSchemas, kind);
}

/** The problems of the element at `index` of the file. Empty: it may be taken as it is. */
export function elementProblems(element: unknown, index: number): Problem[] {
  const name = elementName(element, index);
  if (!isPlainObject(element)) {
    return [{ element: name, field: name, expected: 'an object with "id" and "kind"', got: shown(element) }];
  }
  const found: FieldProblem[] = [];
  if (typeof element.id !== "string" || element.id === "") {
    found.push({ field: "id", expected: "a text that is not empty", got: shown(element.id) });
  }
  const { kind } = element;
  if (typeof kind !== "string" || kind === "") {
    const expected = `a kind of element: ${either(KINDS)}`;
    found.push({ field: "kind", expected, got: shown(kind) });
  } else if (isKnownKind(kind)) {
    const geometry = geometryProblems(element, kind);
    found.push(
      ...geometry,
      ...fieldProblems(element, kind, new Set(geometry.map((problem) => firstStep(problem.field)))),
    );
  }
  return found.slice(0, MOST_PROBLEMS + 1).map((problem) => ({ element: name, ...problem }));
}

/** The problems of the paths of an element of a known kind. Positions (`at`) are left to the schema. */
function geometryProblems(element: Record<string, unknown>, kind: Kind): FieldProblem[] {
  const found: FieldProblem[] = [];
  const field = geometryField(kind);
  const value = element[field];
  if (field === "outline") found.push(...pathProblems(value, field, OUTLINE));
  else if (field === "path") found.push(...pathProblems(value, field, pathRule(kind)));
  else if (field === "shape" && isPlainObject(value) && !Object.hasOwn(value, "point")) {
    const isArea = value.closed === true && value.line !== true;
    found.push(...pathProblems(value, field, { closed: null, outline: isArea, third: "bulge" }));
  }
  for (const inner of innerOutlineFields(kind)) {
    const list = element[inner];
    if (!Array.isArray(list)) continue;
    list.forEach((outline, i) => {
      found.push(...pathProblems(outline, `${inner}[${i}]`, OUTLINE));
    });
  }
  const { islands } = element;
  if (kind === "pool" && found.length === 0 && Array.isArray(islands)) {
    found.push(...islandProblems(value as PathData, islands as PathData[]));
  }
  return found;
}

const MUST_BE_OPEN: ReadonlySet<Kind> = new Set(["opening", "overhead-line", "underground-run"]);

function pathRule(kind: Kind): PathRule {
  return {
    closed: MUST_BE_OPEN.has(kind) ? false : null,
    outline: false,
    third: readsHeights(kind) ? "height" : "bulge",
  };
}

/** What the schema of the kind finds, save in the fields whose paths were already found wrong. */
function fieldProblems(element: object, kind: Kind, told: ReadonlySet<string>): FieldProblem[] {
  const full = elementSchemas[kind];
  const { shape } = elementSchemas[kind];
  const rest = Object.entries<z.ZodType>(shape).filter(([field]) => !told.has(field));
  const schema = told.size === 0 ? full : z.looseObject(Object.fromEntries(rest));
  const result = schema.safeParse(element);
  if (result.success) return [];
  return schemaProblems(result.error.issues, full, element).filter((problem) => problem.field !== "id");
}

function firstStep(field: string): string {
  return /^[^.[]*/.exec(field)?.[0] ?? field;
}

/** A validator's findings in the words of a refusal. */
export function schemaProblems(
  issues: readonly z.core.$ZodIssue[],
  schema: z.core.$ZodType,
  value: unknown,
): FieldProblem[] {
  return issues.slice(0, MOST_PROBLEMS + 1).map((issue) => ({
    field: fieldName(issue.path),
    expected: expectedBy(schemaAt(schema, issue.path)),
    got: shown(valueAt(value, issue.path)),
  }));
}

function valueAt(value: unknown, place: readonly PropertyKey[]): unknown {
  let at = value;
  for (const step of place) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}
