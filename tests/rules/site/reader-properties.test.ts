/** Laws of the reader and writer on random documents. A failing run prints its seed and the smallest document found. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { KINDS } from "../../../rules/site/elements.ts";
import { MOST_PROBLEMS } from "../../../rules/site/limits.ts";
import { checkSite, type ReadResult, readSite } from "../../../rules/site/reader.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { seed } from "../../oracles/seed.ts";
import { sample } from "./sample-site.ts";

/** fast-check prints the path of the counterexample when a law fails. */
const settings: fc.Parameters<unknown> = {
  numRuns: 300,
  verbose: fc.VerbosityLevel.Verbose,
  seed,
};

/** Values as JSON holds them, names that JavaScript treats specially among the keys. */
const key = fc.oneof(
  fc.string(),
  fc.constantFrom("__proto__", "constructor", "vertices", "closed", "point", "id", "kind"),
);
const json = fc.letrec<{ value: unknown; list: unknown[]; object: Record<string, unknown> }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 4 },
    fc.oneof(
      fc.string(),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
      fc.constant(null),
      fc.integer(),
    ),
    tie("list"),
    tie("object"),
  ),
  list: fc.array(tie("value"), { maxLength: 5 }),
  object: fc.dictionary(key, tie("value"), { maxKeys: 5, noNullPrototype: true }),
}));

function wellFormed(result: ReadResult): void {
  if (result.ok) return;
  const { refusal } = result;
  expect(refusal.message).toMatch(/^\S.*\.$/s);
  expect(refusal.problems.length).toBeLessThanOrEqual(MOST_PROBLEMS);
  for (const problem of refusal.problems) {
    expect(problem.field).not.toBe("");
    expect(problem.expected).not.toBe("");
    expect(problem.got).not.toBe("");
  }
}

describe("random input", () => {
  it("never throws on any text", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => wellFormed(readSite(text))),
      settings,
    );
  });

  it("never throws on any value, those that JSON cannot hold included", () => {
    const anything = fc.anything({
      withBigInt: true,
      withDate: true,
      withMap: true,
      withSparseArray: true,
      withNullPrototype: true,
    });
    fc.assert(
      fc.property(anything, (value) => wellFormed(checkSite(value))),
      settings,
    );
    const document = (value: unknown) =>
      checkSite({ format: "copperband-site", version: 1, elements: [], extra: value });
    fc.assert(
      fc.property(anything, (value) => wellFormed(document(value))),
      settings,
    );
  });

  it("never throws on a site with one value replaced, names the element, and changes nothing", () => {
    const places = sample().elements.flatMap((element, i) => Object.keys(element).map((field) => [i, field] as const));
    const place = fc.constantFrom(...places);
    fc.assert(
      fc.property(place, json.value, fc.constantFrom(0, 1), ([index, field], value, version) => {
        const document = { ...sample(), version };
        const element = document.elements[index] as Record<string, unknown>;
        Object.defineProperty(element, field, { value, enumerable: true, writable: true, configurable: true });
        const before = structuredClone(document);
        const result = checkSite(document);
        wellFormed(result);
        expect(document).toEqual(before);
        if (!result.ok && result.refusal.code === "invalid" && field !== "id") {
          for (const problem of result.refusal.problems) expect(problem.element).toBe(element.id);
        }
      }),
      settings,
    );
  });

  it("never throws on elements of any kind with random fields", () => {
    const element = fc
      .tuple(fc.constantFrom(...KINDS), json.object)
      .map(([kind, fields]) => ({ ...fields, id: "a", kind }));
    fc.assert(
      fc.property(element, (item) => wellFormed(checkSite({ ...sample(), elements: [item] }))),
      settings,
    );
  });
});

describe("random sites", () => {
  const coordinate = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  /** Fields of nobody's: names with a space, which no schema has, and those that JavaScript treats specially. */
  const ownKey = fc.oneof(
    fc.string().map((name) => `own ${name}`),
    fc.constantFrom("__proto__", "constructor", "valueOf"),
  );
  const own = fc.dictionary(ownKey, json.value, { maxKeys: 3, noNullPrototype: true });
  const part = fc.tuple(coordinate, coordinate, own).map(([x, y, fields]) => ({
    ...fields,
    shape: { point: [x, y], ...fields },
    kind: "metal",
  }));
  const pad = fc.tuple(coordinate, coordinate, own).map(([x, y, fields]) => ({
    at: [x, y],
    ...fields,
    kind: "equipment",
    unit: "pump",
    z: x,
    volts: Math.abs(y),
  }));
  const fence = fc.tuple(fc.array(coordinate, { minLength: 2, maxLength: 40 }), own).map(([heights, fields]) => ({
    kind: "fence",
    path: { closed: false, vertices: heights.map((y, i) => [i / 3, y]), ...fields },
  }));
  const odd = own.map((fields) => ({ ...fields, kind: "a kind of tomorrow" }));
  const elements = fc.array(fc.oneof(part, pad, fence, odd), { maxLength: 6 });
  const site = fc.tuple(elements, own).map(([list, fields]) => ({
    format: "copperband-site",
    version: 1,
    ...fields,
    elements: list.map((element, i) => ({ ...element, id: `e${i}` })),
  }));

  it("are read, written and read again without losing a field, its place or a digit", () => {
    fc.assert(
      fc.property(site, (document) => {
        const read = readSite(JSON.stringify(document));
        if (!read.ok) throw new Error(read.refusal.message);
        const text = writeSite(read.site);
        const again = readSite(text);
        if (!again.ok) throw new Error(again.refusal.message);
        expect(JSON.stringify(again.site)).toBe(JSON.stringify(document));
        expect(writeSite(again.site)).toBe(text);
      }),
      settings,
    );
  });
});
