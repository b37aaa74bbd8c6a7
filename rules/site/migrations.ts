/**
 * The way from older versions of the site file to the present one: numbered steps, one version each, run in order.
 *
 * A step that has been released is never edited, and it depends on nothing that may change: no schema, no list of
 * kinds. One stored file for every old version (tests/fixtures/sites) has to open for ever.
 *
 * Version 0, the first draft of the format, differed from version 1 in two things:
 * - paths were bare lists of vertices: `"outline": [[0, 0], [384, 0], [384, 192, 0.5]]`. Outlines, islands and holes
 *   were closed; a `path` or the `shape` of a metal part was closed where its last vertex repeated the first;
 * - `edition` was the year of the code as a number (2020), not the name of an edition (`nec-2020`).
 */
import { type Problem, type Refusal, refusalOf, shown } from "./refusal.ts";
import { elementName, isPlainObject } from "./size-check.ts";

type Document = Readonly<Record<string, unknown>>;

export type StepResult = { readonly document: Document } | { readonly problems: readonly Problem[] };

/** One step: takes a document of version `from`, gives one of version `from + 1`. It never changes what it is given. */
export interface Migration {
  readonly from: number;
  readonly title: string;
  readonly apply: (document: Document) => StepResult;
}

const toVersion1: Migration = {
  from: 0,
  title: "Paths become objects with vertices and closed; the edition becomes a name",
  apply(document) {
    const problems: Problem[] = [];
    const migrated: Record<string, unknown> = { ...document };
    const { edition, elements } = document;
    if (edition !== undefined) {
      if (typeof edition === "number" && Number.isInteger(edition)) migrated.edition = `nec-${edition}`;
      else problems.push({ element: null, field: "edition", expected: "a year (version 0)", got: shown(edition) });
    }
    if (Array.isArray(elements)) {
      migrated.elements = elements.map((element, index) => {
        if (!isPlainObject(element)) return element;
        const name = elementName(element, index);
        const next: Record<string, unknown> = { ...element };
        const wrong = (field: string, value: unknown) =>
          problems.push({ element: name, field, expected: "a list of vertices (version 0)", got: shown(value) });
        for (const field of ["outline", "path", "shape"] as const) {
          const value = element[field];
          if (Array.isArray(value)) next[field] = pathOfVersion0(value, field === "outline");
          else if (value !== undefined && !(field === "shape" && isPlainObject(value))) wrong(field, value);
        }
        for (const field of ["islands", "holes"] as const) {
          const list = element[field];
          if (!Array.isArray(list)) continue;
          next[field] = list.map((value, i) => {
            if (Array.isArray(value)) return pathOfVersion0(value, true);
            wrong(`${field}[${i}]`, value);
            return value;
          });
        }
        return next;
      });
    }
    return problems.length > 0 ? { problems } : { document: migrated };
  },
};

/** A bare list of version 0 as a path of version 1. A last vertex that repeats the first closes the path and is dropped. */
function pathOfVersion0(list: readonly unknown[], alwaysClosed: boolean): { vertices: unknown[]; closed: boolean } {
  const first: unknown = list[0];
  const last: unknown = list[list.length - 1];
  const repeats =
    list.length > 2 && Array.isArray(first) && Array.isArray(last) && first[0] === last[0] && first[1] === last[1];
  return { vertices: repeats ? list.slice(0, -1) : [...list], closed: alwaysClosed || repeats };
}

/** Every step, oldest first: the one at place n leads from version n to version n + 1. */
export const MIGRATIONS: readonly Migration[] = [toVersion1];

/**
 * Brings a document of an older version to version `to`. The document given is left as it is.
 * Refused (`migration-failed`) where a step meets something that its version could not hold, or no step starts there.
 */
export function migrate(
  document: Document,
  from: number,
  to: number,
): { readonly ok: true; readonly document: Document } | { readonly ok: false; readonly refusal: Refusal } {
  let current = document;
  for (let version = from; version < to; version++) {
    const step = MIGRATIONS[version];
    if (step === undefined) {
      const problem = { element: null, field: "version", expected: `a version from 0 to ${to}`, got: `${version}` };
      return { ok: false, refusal: refusalOf("migration-failed", [problem]) };
    }
    const result = step.apply(current);
    if ("problems" in result) {
      const lead = `This site file of version ${from} could not be brought to version ${to}.`;
      return { ok: false, refusal: refusalOf("migration-failed", result.problems, lead) };
    }
    current = { ...result.document, version: version + 1 };
  }
  return { ok: true, document: current };
}
