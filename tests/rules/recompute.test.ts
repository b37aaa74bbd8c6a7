/**
 * The published example cases: every figure of the report within 0.1 % of an independent engine.
 * Source of the expected values: GEOS and independent code, as stored beside each case.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { type Transform, transformSite } from "../support/transform-site.ts";

interface Expected {
  readonly bandArea: Readonly<Record<string, number>>;
  readonly metal: Readonly<Record<string, { readonly horizontal: number; readonly path: number }>>;
  readonly fences: Readonly<Record<string, { readonly horizontal: number; readonly within60: number }>>;
  readonly cord: Readonly<Record<string, number>>;
  readonly ring18: number;
  readonly ring21: number;
  readonly ring24: number;
  readonly ringShortest: number;
}

const FOLDER = new URL("../fixtures/cases/", import.meta.url);
const TENTH_OF_A_PERCENT = 0.001;

function near(value: unknown, expected: number): void {
  expect(typeof value).toBe("number");
  expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(expected * TENTH_OF_A_PERCENT);
}

function check(site: Site, expected: Expected): void {
  const report = recompute(site);
  for (const [pool, area] of Object.entries(expected.bandArea)) {
    const band = report.band.find((one) => one.pool === pool);
    near(band?.area, area);
    const parts = band?.bySurface.reduce((sum, piece) => sum + piece.area, 0) ?? 0;
    near(parts, area);
  }
  const finding = (element: string, section: RegExp) =>
    report.findings.find((one) => one.element === element && section.test(one.section));
  for (const [id, { horizontal, path }] of Object.entries(expected.metal)) {
    const found = finding(id, /^680\.26\(B\)\(7\)$/);
    near(found?.measured.horizontal, horizontal);
    near(found?.measured.path, path);
  }
  for (const [id, { horizontal, within60 }] of Object.entries(expected.fences)) {
    const found = finding(id, /^680\.26\(B\)\(7\)$/);
    near(found?.measured.horizontal, horizontal);
    near(found?.extent, within60);
  }
  for (const [id, path] of Object.entries(expected.cord)) near(finding(id, /^680\.22\(A\)/)?.measured.path, path);
  near(report.ring.length, expected.ring21);
  near(report.ring.shortestLegal, expected.ringShortest);
  for (const [offset, length] of [
    [18, expected.ring18],
    [24, expected.ring24],
  ] as const) {
    near(recompute({ ...site, settings: { ...site.settings, ringOffset: offset } }).ring.length, length);
  }
}

const cases = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".site.json"))
  .map((name) => name.replace(".site.json", ""));

describe("the example cases", () => {
  it("are there", () => expect(cases).toHaveLength(3));

  describe.each(cases)("%s", (name) => {
    const read = readSite(readFileSync(new URL(`${name}.site.json`, FOLDER), "utf8"));
    if (!read.ok) throw new Error(read.refusal.message);
    const expected = JSON.parse(readFileSync(new URL(`${name}.expected.json`, FOLDER), "utf8")) as Expected;

    it("gives the figures of the independent engine", () => check(read.site, expected));

    it.each([
      ["turned by 33 degrees", { turn: 33 }],
      ["mirrored", { mirror: true }],
      ["moved by 1,000 ft", { move: [12_000, -12_000] }],
    ] satisfies [string, Transform][])("gives them %s", (_, transform) =>
      check(transformSite(read.site, transform), expected),
    );

    it("gives them from every first vertex of the pool", () => {
      const pool = read.site.elements.find((element) => element.kind === "pool");
      const vertices = (pool as { outline: { vertices: unknown[] } }).outline.vertices;
      for (let i = 1; i < vertices.length; i++) {
        const outline = { vertices: [...vertices.slice(i), ...vertices.slice(0, i)], closed: true };
        const elements = read.site.elements.map((element) => (element === pool ? { ...element, outline } : element));
        check({ ...read.site, elements } as Site, expected);
      }
    });
  });
});
