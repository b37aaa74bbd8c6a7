// The same yards under another edition. Source: NEC 680.26(B)(2), restated: until 2020 a lone ring serves under plain
// concrete, from 2023 it does not (published restatements agree); the reach of fixed metal is the same in all three.
import { describe, expect, it } from "vitest";
import { EDITION_IDS } from "../../rules/editions/edition.ts";
import { recompute } from "../../rules/recompute.ts";
import { DEMO_SITES, exitCodeOf } from "../support/demo-sites.ts";

const siteOf = (name: string) => {
  const found = DEMO_SITES.find((demo) => demo.name === name);
  if (!found) throw new Error(`there is no demo site ${name}`);
  return found.site;
};

describe("the fully bonded yard", () => {
  const site = siteOf("fully-bonded");

  it.each(["nec-2017", "nec-2020"] as const)("leaves nothing open under %s", (edition) => {
    expect(exitCodeOf(recompute(site, { as: edition }))).toBe(0);
  });

  it("lacks a grid or steel under its concrete under nec-2023", () => {
    const report = recompute(site, { as: "nec-2023" });
    expect(exitCodeOf(report)).toBe(1);
    const deck = report.findings.find(({ rule, element }) => rule === "perimeter-surfaces" && element === "deck-1");
    expect(deck?.outcome).toBe("missing");
    expect(report.grid.band.length).toBeGreaterThan(0);
  });
});

describe.each(DEMO_SITES.map((demo) => [demo.name, demo.site] as const))("%s", (_, site) => {
  it("has the same verdicts on fixed metal and the same band in every edition", () => {
    const seen = EDITION_IDS.map((edition) => {
      const report = recompute(site, { as: edition });
      expect(report.edition).toBe(edition);
      const metal = report.findings.filter(({ rule }) => rule === "fixed-metal");
      return {
        metal: metal.map(({ element, outcome, measured }) => ({ element, outcome, measured })),
        bands: report.band.map(({ pool, area }) => ({ pool, area })),
      };
    });
    expect(seen[1]).toEqual(seen[0]);
    expect(seen[2]).toEqual(seen[0]);
  });
});
