// The same site under two editions. Sources stand beside each yard; otherwise common practice, no source.
import { describe, expect, it } from "vitest";
import { concretePool, deck, post } from "../../rules/catalogue/common/example-yard.ts";
import { compareEditions, type FindingChange, saysOtherwise } from "../../rules/compare-editions.ts";
import { EDITION_IDS, type EditionId } from "../../rules/editions/edition.ts";
import { recompute } from "../../rules/recompute.ts";
import { DEMO_SITES } from "../support/demo-sites.ts";
import { siteOf } from "./catalogue/yards.ts";

/** What changes about one thing in a yard with one fact. */
function changeIn(elements: readonly object[], rule: string, element: string | null, from: EditionId, to: EditionId) {
  const comparison = compareEditions(siteOf(elements), from, to);
  const found = comparison.changes.filter((change) => change.rule === rule && change.element === element);
  return { comparison, found, change: found[0] as FindingChange };
}

const receptacle = (changes: object) => ({
  id: "outlet",
  kind: "device",
  device: "receptacle",
  at: [200, 312],
  z: 24,
  gfci: false,
  generalPurpose: true,
  indoor: false,
  ...changes,
});

describe("one fact", () => {
  it("plain concrete round a pool: a ring until 2020, a grid from 2023 (NEC 680.26(B)(2), restated)", () => {
    const { comparison, change } = changeIn(
      [concretePool(), deck()],
      "perimeter-surfaces",
      "deck",
      "nec-2020",
      "nec-2023",
    );
    expect(change.differs).toContain("reason");
    expect(change.before?.remedy).toMatch(/ring/);
    expect(change.after?.why).toMatch(/lone ring does not serve/);
    expect(change.because).toContain("perimeter.ringUnderPaving");
    const area = comparison.reports.before.band[0]?.area;
    expect(comparison.bands).toEqual([
      {
        pool: "pool",
        surface: "deck",
        before: [{ bonding: "ring", area }],
        after: [{ bonding: "grid", area }],
      },
    ]);
    const differing = comparison.parameters.find(({ id }) => id === "perimeter.ringUnderPaving");
    expect(differing).toMatchObject({
      rules: expect.arrayContaining(["Perimeter surfaces"]),
      before: { value: true, unit: "yes/no", section: "680.26(B)(2)", basis: "published" },
      after: { value: false, basis: "published" },
    });
    expect(differing?.after.says).not.toBe(differing?.before.says);
  });

  it("a raised wood deck: a question until 2020, exempt from 2023 (NEC 680.26(B)(2)(c), restated)", () => {
    const wood = deck({ material: "wood", support: "raised", supports: "nonconductive" });
    const { change } = changeIn([concretePool(), wood], "perimeter-surfaces", "deck", "nec-2020", "nec-2023");
    expect(change).toMatchObject({ before: { outcome: "review" }, after: { outcome: "exempt" } });
    expect(change.differs).toEqual(expect.arrayContaining(["outcome", "question"]));
    expect(change.because).toContain("perimeter.nonconductiveExempt");
  });

  it("a heater at 3 ft: no rule until 2017, a conflict from 2020 (NEC 680.22(E), restated; one source)", () => {
    const heater = { id: "unit", kind: "equipment", unit: "heater", at: [200, 228], electric: true, volts: 240 };
    const { change } = changeIn([concretePool(), heater], "other-equipment-distance", "unit", "nec-2017", "nec-2020");
    expect(change).toMatchObject({
      differs: ["only"],
      before: null,
      after: { outcome: "conflict", section: "680.22(E)" },
    });
    const back = changeIn([concretePool(), heater], "other-equipment-distance", "unit", "nec-2020", "nec-2017");
    expect(back.change).toMatchObject({ differs: ["only"], before: { outcome: "conflict" }, after: null });
  });

  it("a receptacle of 240 V without GFCI: exempt until 2020, a conflict from 2023 (NEC 680.22(A)(4), from memory)", () => {
    const elements = [concretePool(), receptacle({ volts: 240, amps: 30 })];
    const { change } = changeIn(elements, "receptacle-gfci", "outlet", "nec-2020", "nec-2023");
    expect(change).toMatchObject({ before: { outcome: "exempt" }, after: { outcome: "conflict" } });
    expect(change.because).toEqual(["receptacle.gfciVolts", "receptacle.gfciAmps"]);
  });

  it("an ordinary receptacle without GFCI: the same, on a limit that is less sure in 2023", () => {
    const elements = [concretePool(), receptacle({ volts: 120, amps: 20 })];
    const { change } = changeIn(elements, "receptacle-gfci", "outlet", "nec-2020", "nec-2023");
    expect(change.differs).toEqual(["basis"]);
    expect(saysOtherwise(change)).toBe(false);
  });

  it("a metal post at 4 ft: the same in every edition (NEC 680.26(B)(7), restated)", () => {
    for (const from of EDITION_IDS) {
      for (const to of EDITION_IDS) {
        const { found } = changeIn([concretePool(), post(48)], "fixed-metal", "post", from, to);
        expect(found).toEqual([]);
      }
    }
  });
});

describe("the pool with a spa", () => {
  const demo = DEMO_SITES.find(({ name }) => name === "pool-and-spa");
  if (!demo) throw new Error("there is no demo site pool-and-spa");
  const comparison = compareEditions(demo.site, "nec-2023", "nec-2020");

  it("takes a ring instead of a grid under 2020 (NEC 680.26(B)(2), restated)", () => {
    expect(
      comparison.bands.map(({ surface, before, after }) => [surface, before[0]?.bonding, after[0]?.bonding]),
    ).toEqual([
      ["deck-1", "grid", "ring"],
      ["deck-1", "grid", "ring"],
    ]);
    const total = (name: string) => comparison.totals.find((one) => one.name === name);
    expect(total("bandGridLength")?.before).toBeGreaterThan(0);
    expect(total("bandGridLength")?.after).toBe(0);
    expect(total("ringLength")?.after).toBeGreaterThan(total("ringLength")?.before ?? Number.POSITIVE_INFINITY);
    expect(total("copper")?.after).toBeLessThan(total("copper")?.before ?? 0);
  });

  it("changes for the surfaces alone: what lies in them, and how deep", () => {
    const otherwise = comparison.changes.filter(saysOtherwise);
    expect(otherwise.map(({ element, body }) => `${element} ${body}`)).toEqual([
      "lawn-1 pool-1",
      "deck-1 pool-1",
      "beam-1 pool-1",
    ]);
  });
});

describe.each(DEMO_SITES.map((demo) => [demo.name, demo.site] as const))("%s", (_, site) => {
  it("is not changed by the same edition, and counts every finding", () => {
    const same = compareEditions(site, "nec-2020", "nec-2020");
    expect({ changes: same.changes, bands: same.bands, parameters: same.parameters }).toEqual({
      changes: [],
      bands: [],
      parameters: [],
    });
    expect(same.same).toBe(same.reports.before.findings.length);
    expect(same.reports.before).toEqual(recompute(site, { as: "nec-2020" }));
  });

  it("changes back as it changed", () => {
    const there = compareEditions(site, "nec-2017", "nec-2023");
    const back = compareEditions(site, "nec-2023", "nec-2017");
    const name = (change: FindingChange) => JSON.stringify([change.rule, change.element, change.before, change.after]);
    const turned = (change: FindingChange) =>
      JSON.stringify([change.rule, change.element, change.after, change.before]);
    expect(back.changes.map(turned).sort()).toEqual(there.changes.map(name).sort());
    expect(back.same).toBe(there.same);
    expect(back.totals).toEqual(there.totals.map((total) => ({ ...total, before: total.after, after: total.before })));
  });

  it("accounts for every finding of both reports once", () => {
    const { changes, same, reports } = compareEditions(site, "nec-2017", "nec-2023");
    const onlyAfter = changes.filter(({ before }) => before === null).length;
    const onlyBefore = changes.filter(({ after }) => after === null).length;
    expect(same + changes.length - onlyAfter).toBe(reports.before.findings.length);
    expect(same + changes.length - onlyBefore).toBe(reports.after.findings.length);
  });
});

describe("local amendments", () => {
  it("act under both editions, and what they change no longer differs", () => {
    const amendments = [{ parameter: "perimeter.ringUnderPaving", value: false, reason: "invented ordinance 4" }];
    const site = siteOf([concretePool(), deck()], { amendments });
    const { bands, parameters, reports } = compareEditions(site, "nec-2020", "nec-2023");
    expect(bands).toEqual([]);
    expect(parameters.map(({ id }) => id)).not.toContain("perimeter.ringUnderPaving");
    expect(reports.before.amendments).toEqual(reports.after.amendments);
  });
});
