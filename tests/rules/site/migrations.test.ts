/** The way from older versions. Source: this project's own description of version 0, at the head of migrations.ts. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { MIGRATIONS, migrate } from "../../../rules/site/migrations.ts";
import { checkSite, readSite } from "../../../rules/site/reader.ts";
import { SITE_VERSION } from "../../../rules/site/site.ts";
import { refusalOf } from "./refused.ts";

const STORED = readFileSync(new URL("../../fixtures/sites/version-0.site.json", import.meta.url), "utf8");

interface OldDocument {
  [field: string]: unknown;
  elements: Record<string, unknown>[];
}

const stored = () => JSON.parse(STORED) as OldDocument;

describe("the steps", () => {
  it("are numbered from 0, consecutive, and end at the present version", () => {
    expect(MIGRATIONS.map((step) => step.from)).toEqual(Array.from({ length: SITE_VERSION }, (_, i) => i));
  });

  it("refuse a version that no step starts from", () => {
    const result = migrate({}, SITE_VERSION, SITE_VERSION + 1);
    expect(result.ok ? null : result.refusal.code).toBe("migration-failed");
  });
});

describe("the stored file of version 0", () => {
  const result = readSite(STORED);
  if (!result.ok) throw new Error(result.refusal.message);
  const { site } = result;
  const element = (id: string) => site.elements.find((candidate) => candidate.id === id) as Record<string, unknown>;

  it("opens as a site of the present version, and says from which it came", () => {
    expect(site.version).toBe(SITE_VERSION);
    expect(result.migratedFrom).toBe(0);
  });

  it("gets the name of its edition", () => {
    expect(site.edition).toBe("nec-2020");
  });

  it("gets closed outlines, islands and holes, arcs and all, with no first vertex repeated", () => {
    expect(element("pool-1")).toMatchObject({
      outline: {
        vertices: [
          [0, 0],
          [360, 0],
          [360, 36],
          [360, 156, -0.5],
          [360, 192],
          [0, 192],
        ],
        closed: true,
      },
      islands: [
        {
          vertices: [
            [100, 80],
            [140, 80],
            [140, 110],
            [100, 110],
          ],
          closed: true,
        },
      ],
    });
    expect(element("deck-1")).toMatchObject({
      outline: {
        vertices: [
          [-60, -60],
          [440, -60],
          [440, 252],
          [-60, 252],
        ],
        closed: true,
      },
      holes: [
        {
          vertices: [
            [-50, -50],
            [-40, -50],
            [-40, -40],
          ],
          closed: true,
        },
      ],
    });
  });

  it("gets open paths, closed only where the last vertex repeated the first", () => {
    expect(element("fence-1").path).toEqual({
      vertices: [
        [-80, -55],
        [464, -55],
        [464, 260],
      ],
      closed: false,
    });
    expect(element("wall-1").path).toEqual({
      vertices: [
        [500, 0],
        [560, 0],
        [560, 60],
        [500, 60],
      ],
      closed: true,
    });
    expect(element("wires-1").path).toEqual({
      vertices: [
        [-200, 300, 330],
        [600, 300, 300],
      ],
      closed: false,
    });
    expect(element("pipe-1").shape).toEqual({
      vertices: [
        [0, 230],
        [90, 230],
      ],
      closed: false,
    });
    expect(element("grate-1").shape).toMatchObject({ closed: true });
    expect(element("pole-1").shape).toEqual({ point: [200, 250] });
  });

  it("keeps everything else where it was", () => {
    const old = stored();
    expect(Object.keys(site)).toEqual(Object.keys(old));
    expect(site.elements.map((item) => Object.keys(item))).toEqual(old.elements.map((item) => Object.keys(item)));
    expect(element("pump-1")).toEqual(old.elements.find((item) => item.id === "pump-1"));
    expect(element("statue-1")).toEqual(old.elements.find((item) => item.id === "statue-1"));
  });

  it("is not changed by being read", () => {
    const document = stored();
    expect(checkSite(document).ok).toBe(true);
    expect(document).toEqual(stored());
  });
});

describe("what version 0 could not hold", () => {
  it.each([
    [
      "the name of an edition",
      (old: OldDocument) => Object.assign(old, { edition: "nec-2020" }),
      null,
      "edition",
      "a year (version 0)",
    ],
    [
      "half a year",
      (old: OldDocument) => Object.assign(old, { edition: 2020.5 }),
      null,
      "edition",
      "a year (version 0)",
    ],
    [
      "an outline that is an object",
      (old: OldDocument) => Object.assign(old.elements[0] as object, { outline: {} }),
      "pool-1",
      "outline",
      "a list of vertices (version 0)",
    ],
    [
      "an island that is a number",
      (old: OldDocument) => Object.assign(old.elements[0] as object, { islands: [5] }),
      "pool-1",
      "islands[0]",
      "a list of vertices (version 0)",
    ],
    [
      "a path that is a text",
      (old: OldDocument) => Object.assign(old.elements[2] as object, { path: "x" }),
      "fence-1",
      "path",
      "a list of vertices (version 0)",
    ],
  ] as const)("%s", (_, spoil, element, field, expected) => {
    const document = stored();
    spoil(document);
    const refusal = refusalOf(checkSite(document));
    expect(refusal.code).toBe("migration-failed");
    expect(refusal.message).toContain("could not be brought to version 1");
    expect(refusal.problems).toMatchObject([{ element, field, expected }]);
  });

  it("what the present version refuses is refused after the migration too", () => {
    const document = stored();
    Object.assign(document.elements[0] as object, {
      body: "lake",
      outline: [
        [0, 0],
        [9, 9],
        [9, 0],
        [0, 9],
      ],
    });
    const refusal = refusalOf(checkSite(document));
    expect(refusal.code).toBe("invalid");
    expect(refusal.problems.map((problem) => problem.field)).toEqual(["outline", "body"]);
  });

  it("a document of version 0 without elements is refused as such", () => {
    const refusal = refusalOf(checkSite({ format: "copperband-site", version: 0 }));
    expect(refusal.problems).toMatchObject([{ element: null, field: "elements", expected: "a list of elements" }]);
  });
});
