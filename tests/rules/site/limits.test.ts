/** Depth and size: hostile or broken documents are refused in plain words, quickly, and never by a stack overflow. */
import { describe, expect, it } from "vitest";
import {
  MOST_CHARACTERS,
  MOST_ELEMENTS,
  MOST_ENTRIES,
  MOST_LEVELS,
  MOST_TIES,
  MOST_VALUES,
  MOST_VERTICES,
} from "../../../rules/site/limits.ts";
import { checkSite, readSite } from "../../../rules/site/reader.ts";
import { refusalOf } from "./refused.ts";
import { sample, sampleWith } from "./sample-site.ts";

/** A list in a list in a list... */
function nested(levels: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < levels; i++) value = [value];
  return value;
}

describe("depth", () => {
  it("takes the deepest document allowed and refuses one level more, as text and as a value", () => {
    // The document is level 1, so a field may hold one level less.
    const deepest = { ...sample(), extra: nested(MOST_LEVELS - 1) };
    const deeper = { ...sample(), extra: nested(MOST_LEVELS) };
    expect(checkSite(deepest).ok).toBe(true);
    expect(readSite(JSON.stringify(deepest)).ok).toBe(true);
    expect(refusalOf(checkSite(deeper)).code).toBe("too-deep");
    expect(refusalOf(readSite(JSON.stringify(deeper))).code).toBe("too-deep");
  });

  it.each(["[", '{"a":', '[{"a":'])("does not overflow on a million of %j", (open) => {
    expect(refusalOf(readSite(open.repeat(1_000_000))).code).toBe("too-deep");
    expect(
      refusalOf(readSite(`{"format":"copperband-site","version":1,"elements":${open.repeat(1_000_000)}`)).code,
    ).toBe("too-deep");
  });

  it("does not overflow on a value of a million levels", () => {
    expect(refusalOf(checkSite({ ...sample(), extra: nested(1_000_000) })).code).toBe("too-deep");
  });

  it("refuses a value that holds itself", () => {
    const document: Record<string, unknown> = sample();
    document.extra = { itself: document };
    expect(refusalOf(checkSite(document)).code).toBe("too-deep");
  });

  it("does not count brackets inside texts", () => {
    const extra = `${'\\"'}${"[{".repeat(1000)}`;
    expect(readSite(JSON.stringify({ ...sample(), extra })).ok).toBe(true);
    expect(readSite(JSON.stringify({ ...sample(), extra: `${extra}\\` })).ok).toBe(true);
  });
});

describe("size", () => {
  it("refuses a text that is too long before parsing it", () => {
    const refusal = refusalOf(readSite(" ".repeat(MOST_CHARACTERS + 1)));
    expect(refusal.code).toBe("too-large");
    expect(refusal.message).toContain(`at most ${MOST_CHARACTERS} characters`);
  });

  it("refuses too many elements", () => {
    const elements = Array.from({ length: MOST_ELEMENTS + 1 }, (_, i) => ({ id: `s${i}`, kind: "statue" }));
    const refusal = refusalOf(checkSite({ ...sample(), elements }));
    expect(refusal.code).toBe("too-large");
    expect(refusal.problems).toEqual([
      { element: null, field: "elements", expected: `at most ${MOST_ELEMENTS} elements`, got: `${MOST_ELEMENTS + 1}` },
    ]);
    expect(checkSite({ ...sample(), elements: elements.slice(1) }).ok).toBe(true);
  });

  it("refuses too many vertices, naming the path, and takes the most allowed", () => {
    const vertices = Array.from({ length: MOST_VERTICES + 1 }, (_, i) => [i, i % 2]);
    for (const [id, field] of [
      ["fence-1", "path"],
      ["pool-1", "outline"],
      ["rail-1", "shape"],
    ] as const) {
      const refusal = refusalOf(checkSite(sampleWith(id, { [field]: { vertices, closed: true } })));
      expect(refusal.code).toBe("too-large");
      expect(refusal.problems).toEqual([
        {
          element: id,
          field: `${field}.vertices`,
          expected: `at most ${MOST_VERTICES} vertices`,
          got: `${MOST_VERTICES + 1}`,
        },
      ]);
    }
    expect(checkSite(sampleWith("fence-1", { path: { vertices: vertices.slice(1), closed: false } })).ok).toBe(true);
  });

  it("takes an outline of the most vertices allowed", () => {
    const vertices = Array.from({ length: MOST_VERTICES }, (_, i) => {
      const angle = (2 * Math.PI * i) / MOST_VERTICES;
      return [5000 * Math.cos(angle), 5000 * Math.sin(angle)];
    });
    expect(checkSite(sampleWith("tree-1", { outline: { vertices, closed: true } })).ok).toBe(true);
  });

  it("refuses long lists of anything else that is read", () => {
    const list = Array.from({ length: MOST_ENTRIES + 1 }, () => 5);
    expect(refusalOf(checkSite(sampleWith("tie-1", { joins: list }))).problems[0]).toMatchObject({
      element: "tie-1",
      field: "joins",
    });
    expect(refusalOf(checkSite({ ...sample(), answers: list })).problems[0]).toMatchObject({
      element: null,
      field: "answers",
    });
    expect(refusalOf(checkSite({ ...sample(), settings: { spools: list } })).problems[0]).toMatchObject({
      field: "settings.spools",
    });
  });

  it("refuses more ties than any pool has", () => {
    expect(checkSite({ ...sample(), settings: { ties: MOST_TIES } }).ok).toBe(true);
    expect(refusalOf(checkSite({ ...sample(), settings: { ties: MOST_TIES + 1 } })).problems[0]).toMatchObject({
      field: "settings.ties",
      expected: "a number from 0 to 1,000",
    });
  });

  it("refuses wrong values by the thousand without an overflow", () => {
    const many = (value: unknown, count = MOST_ENTRIES) => Array.from({ length: count }, () => value);
    const vertices = { vertices: many("x"), closed: true };
    for (const result of [
      checkSite(sampleWith("tie-1", { joins: many(5) })),
      checkSite(sampleWith("pool-1", { islands: many(5), outline: vertices })),
      checkSite(sampleWith("pool-1", { islands: many(vertices, 40) })),
      checkSite({ ...sample(), answers: many(5) }),
      checkSite({ ...sample(), elements: many(5, MOST_ELEMENTS) }),
    ]) {
      const refusal = refusalOf(result);
      expect(refusal.code).toBe("invalid");
      expect(refusal.problems).toHaveLength(50);
    }
  });

  it("refuses a small value that unfolds into a huge one", () => {
    let wide: unknown = [1, 2, 3, 4];
    for (let i = 0; i < 30; i++) wide = [wide, wide];
    const refusal = refusalOf(checkSite({ ...sample(), wide }));
    expect(refusal.code).toBe("too-large");
    expect(refusal.message).toContain(`at most ${MOST_VALUES} values`);
  });
});
