/** What the reader refuses, and that each refusal names element, field and expectation. Source: the site format's own description. */
import { describe, expect, it } from "vitest";
import { checkSite, readSite } from "../../../rules/site/reader.ts";
import { onlyProblem, refusalOf } from "./refused.ts";
import { sample, sampleWith } from "./sample-site.ts";

describe("documents that are no site", () => {
  it.each([
    ["", "not-json", "it is empty"],
    ["   \n", "not-json", "it is empty"],
    ["{", "not-json", "not JSON"],
    ["pool", "not-json", "not JSON"],
    ['{"format": "copperband-site", "version": NaN}', "not-json", "not JSON"],
    ["[]", "not-a-site", "got []"],
    ["null", "not-a-site", "got null"],
    ["7", "not-a-site", "got 7"],
    ['"site"', "not-a-site", 'got "site"'],
    ["{}", "not-a-site", 'expected "copperband-site", got nothing'],
    ['{"format": "other", "version": 1, "elements": []}', "not-a-site", 'got "other"'],
  ])("%j", (text, code, words) => {
    const refusal = refusalOf(readSite(text));
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(words);
  });
});

describe("versions", () => {
  it("a newer one is refused as such", () => {
    const refusal = refusalOf(checkSite({ ...sample(), version: 2 }));
    expect(refusal.code).toBe("too-new");
    expect(refusal.problems).toEqual([{ element: null, field: "version", expected: "at most 1", got: "2" }]);
    expect(refusal.message).toContain("newer");
  });

  it.each([undefined, null, "1", 1.5, -1, true, [1]])("%j is none", (version) => {
    const refusal = refusalOf(checkSite({ ...sample(), version }));
    expect(refusal.code).toBe("invalid");
    expect(refusal.problems[0]).toMatchObject({
      element: null,
      field: "version",
      expected: "a whole number from 0 to 1",
    });
  });
});

describe("the head of the document", () => {
  it.each([
    [{ elements: undefined }, "elements", "a list of elements", "nothing"],
    [{ elements: {} }, "elements", "a list of elements", "an object"],
    [{ grade: "0" }, "grade", "a number from -1,000,000 to 1,000,000", '"0"'],
    [{ grade: 1e7 }, "grade", "a number from -1,000,000 to 1,000,000", "10000000"],
    [{ accuracy: -1 }, "accuracy", "a number from 0 to 1,000,000", "-1"],
    [{ name: 5 }, "name", "a text", "5"],
    [{ settings: { spools: [0] } }, "settings.spools[0]", "a number above 0, up to 1,000,000", "0"],
    [{ settings: [] }, "settings", "an object", "[]"],
    [{ display: { units: "furlong" } }, "display.units", '"ft-in", "ft", "in" or "m"', '"furlong"'],
    [{ position: { lon: 0, lat: 91 } }, "position.lat", "a number from -90 to 90", "91"],
    [{ amendments: [{ value: 1 }] }, "amendments[0].parameter", "a text", "nothing"],
    [{ answers: [{ question: "q", answer: true }] }, "answers[0].answer", "a text", "true"],
    [{ extra: { deep: [1, Number.POSITIVE_INFINITY] } }, "extra.deep[1]", "a finite number", "Infinity"],
  ])("%j", (change, field, expected, got) => {
    expect(onlyProblem(checkSite({ ...sample(), ...change }))).toEqual({ element: null, field, expected, got });
  });
});

const BOW_TIE = [
  [0, 0],
  [10, 10],
  [10, 0],
  [0, 10],
];

describe("elements without a name", () => {
  it("are named by their place", () => {
    const document = sample();
    document.elements.push(
      { kind: "tie", at: [0, 0], joins: [] },
      { id: "", kind: "statue" },
      { id: 4, kind: "statue" },
    );
    const { problems } = refusalOf(checkSite(document));
    const expected = "a text that is not empty";
    expect(problems).toEqual([
      { element: "elements[20]", field: "id", expected, got: "nothing" },
      { element: "elements[21]", field: "id", expected, got: '""' },
      { element: "elements[22]", field: "id", expected, got: "4" },
    ]);
  });

  it.each([
    [null, "null"],
    [3, "3"],
    ["pool", '"pool"'],
    [[], "[]"],
  ])("%j is no element", (element, got) => {
    const document = { ...sample(), elements: [element] };
    const problem = onlyProblem(checkSite(document));
    expect(problem).toEqual({
      element: "elements[0]",
      field: "elements[0]",
      expected: 'an object with "id" and "kind"',
      got,
    });
    expect(refusalOf(checkSite(document)).message).toBe(
      `Element elements[0]: expected an object with "id" and "kind", got ${got}.`,
    );
  });

  it.each([
    [undefined, "nothing"],
    [7, "7"],
    ["", '""'],
  ])("kind %j is none", (kind, got) => {
    const problem = onlyProblem(checkSite(sampleWith("statue-1", { kind })));
    expect(problem).toMatchObject({ element: "statue-1", field: "kind", got });
    expect(problem.expected).toContain("a kind of element: pool, inset");
  });
});

describe("ids", () => {
  it("twice the same is refused once for each repetition", () => {
    const document = sample();
    document.elements.push(
      { id: "pool-1", kind: "statue" },
      { id: "__proto__", kind: "statue" },
      { id: "pool-1", kind: "statue" },
    );
    const expected = "an id that no other element has";
    expect(refusalOf(checkSite(document)).problems).toEqual([
      { element: "pool-1", field: "id", expected, got: "the id of elements[0] again in elements[20]" },
      { element: "pool-1", field: "id", expected, got: "the id of elements[0] again in elements[22]" },
    ]);
  });
});

describe("many problems", () => {
  it("are all listed", () => {
    const document = sampleWith("pool-1", {
      body: "lake",
      shell: 5,
      outline: { vertices: BOW_TIE, closed: true },
      islands: [{ vertices: [[0, 0]], closed: true }],
    });
    document.grade = "low";
    const refusal = refusalOf(checkSite(document));
    expect(refusal.problems.map((problem) => problem.field)).toEqual([
      "grade",
      "outline",
      "islands[0].vertices",
      "body",
      "shell",
    ]);
    expect(refusal.message).toBe(
      'grade: expected a number from -1,000,000 to 1,000,000, got "low". There are 4 more problems.',
    );
  });

  it("are cut off at 50", () => {
    const elements = Array.from({ length: 300 }, () => ({ id: "same", kind: "pool" }));
    const refusal = refusalOf(checkSite({ ...sample(), elements }));
    expect(refusal.problems).toHaveLength(50);
    expect(refusal.message).toContain("There are more problems; the first 50 are listed.");
  });
});

describe("a refusal", () => {
  it("changes nothing", () => {
    const document = sampleWith("pool-1", { body: "lake", outline: { vertices: BOW_TIE, closed: true } });
    const before = structuredClone(document);
    refusalOf(checkSite(document));
    expect(document).toEqual(before);
  });
});
