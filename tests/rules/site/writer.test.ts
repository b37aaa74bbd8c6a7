import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type ReadResult, readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { SAMPLE_TEXT, sample } from "./sample-site.ts";

function siteOf(result: ReadResult): Site {
  if (!result.ok) throw new Error(result.refusal.message);
  return result.site;
}

const small = (fields: object, element: object): Site =>
  ({ format: "copperband-site", version: 1, ...fields, elements: [{ id: "a", kind: "statue", ...element }] }) as Site;

describe("the text of a site", () => {
  it("reads back as the same site, keys in the same order", () => {
    const text = writeSite(siteOf(readSite(SAMPLE_TEXT)));
    expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(sample()));
  });

  it("is the same whenever it is written", () => {
    const once = writeSite(siteOf(readSite(SAMPLE_TEXT)));
    expect(writeSite(siteOf(readSite(once)))).toBe(once);
  });

  it("gives the document and every element a line for each field, and what fits stays on its line", () => {
    const url = new URL("../../fixtures/cases/open-wall.site.json", import.meta.url);
    const text = writeSite(siteOf(readSite(readFileSync(url, "utf8"))));
    expect(text.split("\n").slice(0, 13)).toEqual([
      "{",
      '  "format": "copperband-site",',
      '  "version": 1,',
      '  "name": "Saltbush Way, walled",',
      '  "edition": "nec-2020",',
      '  "display": { "units": "ft-in" },',
      '  "settings": {},',
      '  "elements": [',
      "    {",
      '      "id": "p",',
      '      "kind": "pool",',
      '      "outline": { "vertices": [[0, 0], [384, 0], [384, 192], [0, 192]], "closed": true },',
      '      "body": "pool",',
    ]);
    expect(text.endsWith("\n  ]\n}\n")).toBe(true);
  });

  it("gives each vertex of a long path its own line", () => {
    const vertices = Array.from({ length: 30 }, (_, i) => [i / 3, i % 2, 0.125]);
    const lines = writeSite(small({}, { outline: { vertices, closed: true } })).split("\n");
    expect(lines).toContain("          [0.3333333333333333, 1, 0.125],");
    expect(lines.every((line) => line.length <= 121)).toBe(true);
  });

  it("keeps every digit, the sign of zero, and texts of any kind", () => {
    const values = [0.1 + 0.2, 1e-300, 1.7976931348623157e308, -0, 123456.78901234567, 5e-324];
    const texts = ['"quoted"', "line\nbreak", "\u2028", "\uD83C", "\u0000", "ÅΩ"];
    const site = small({ extra: values }, { texts, deep: { er: [[{}], [], {}, [null, true]] } });
    const back = siteOf(readSite(writeSite(site)));
    expect(back).toEqual(site);
    expect(Object.is((back.extra as number[])[3], -0)).toBe(true);
  });

  it("leaves out fields that are undefined", () => {
    expect(writeSite(small({ name: undefined }, { top: undefined }))).toBe(writeSite(small({}, {})));
  });

  it("writes an empty list of elements", () => {
    expect(writeSite({ format: "copperband-site", version: 1, elements: [] })).toBe(
      '{\n  "format": "copperband-site",\n  "version": 1,\n  "elements": []\n}\n',
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses to write %d", (value) => {
    expect(() => writeSite(small({}, { top: value }))).toThrow(`cannot hold the number ${value}`);
  });

  it("keeps a field called __proto__", () => {
    const text = SAMPLE_TEXT.replace('"grade": 0', '"__proto__": { "a": 1 }');
    const back = writeSite(siteOf(readSite(text)));
    expect(back).toContain('"__proto__": { "a": 1 }');
  });
});
