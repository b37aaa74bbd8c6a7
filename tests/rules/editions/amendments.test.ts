// Local amendments that cannot act are named with what is wrong, and the site is judged without them. Source: the site format
// (named overrides with a reason; no number of a site beyond 1,000,000 in.). Which values cannot be: common practice, no source.
import { describe, expect, it } from "vitest";
import { post } from "../../../rules/catalogue/common/example-yard.ts";
import { editionInForce } from "../../../rules/editions/in-force.ts";
import { recompute } from "../../../rules/recompute.ts";
import { concretePool, ringCopper, siteOf } from "../recorded/yards.ts";

const amend = (parameter: string, value: unknown, reason: string | undefined = "ordinance") => ({
  parameter,
  value,
  ...(reason === undefined ? {} : { reason }),
});
const inForce = (...amendments: object[]) => editionInForce(siteOf([concretePool()], { amendments }));

describe("a local amendment", () => {
  it.each<[string, unknown, RegExp]>([
    ["fixedMetal.distance", 1e9, /at most 1,000,000/],
    ["fixedMetal.distance", -1, /not be negative/],
    ["perimeter.ties", 1e6, /at most 1,000$/],
    ["perimeter.ties", 1001, /at most 1,000$/],
    ["fixedMetal.distance", "60", /a number/],
    ["grid.spacing", 0, /at least 1 in/],
    ["grid.spacing", 0.0001, /at least 1 in/],
    ["shell.gridSpacing", 0, /at least 1 in/],
    ["ring.coverFrom", "moon", /subgrade or grade/],
    ["perimeter.grid", "yes", /true or false/],
    ["shell.conductive", "cast-concrete", /a list/],
    ["ring.min", 30, /ring\.min, above the greatest, ring\.max/],
    ["receptacle.requiredTo", 60, /receptacle\.requiredFrom, above/],
  ])("cannot make %s %s", (parameter, value, reason) => {
    const { useless, amendments } = inForce(amend(parameter, value));
    expect(useless).toHaveLength(1);
    expect(useless[0]?.reason).toMatch(reason);
    expect(amendments).toEqual([]);
    const finding = recompute(siteOf([concretePool(), ringCopper()], { amendments: [amend(parameter, value)] }), {
      withoutRoutes: true,
    }).findings.find(({ rule }) => rule === "local-amendments");
    expect(finding?.outcome).toBe("review");
    expect(finding?.why).toContain(parameter);
  });

  it("may move both limits of a pair, and up to the other one", () => {
    for (const both of [[amend("ring.min", 30), amend("ring.max", 36)], [amend("ring.min", 24)]]) {
      const { useless, amendments } = inForce(...both);
      expect([useless.length, amendments.length]).toEqual([0, both.length]);
    }
  });

  it("may be as large as a site, and acts with a question where it gives no reason", () => {
    for (const reason of [undefined, "", "  "]) {
      const given = { parameter: "fixedMetal.distance", value: 1e6, ...(reason === undefined ? {} : { reason }) };
      const report = recompute(siteOf([concretePool()], { amendments: [given] }), { withoutRoutes: true });
      expect(report.amendments).toHaveLength(1);
      const finding = report.findings.find(({ rule }) => rule === "local-amendments");
      expect(finding).toMatchObject({ outcome: "review" });
      expect(finding?.why).toContain("without a reason: fixedMetal.distance = 1000000");
    }
  });

  // Five feet in plan: NEC 680.26(B)(7).
  it("is named by its section and in the site's units in every finding that reads it", () => {
    const given = { parameter: "fixedMetal.distance", value: 72, reason: "city rule 7" };
    const noteIn = (units: "ft-in" | "m") => {
      const site = siteOf([concretePool(), post(65)], { amendments: [given], display: { units } });
      return recompute(site, { withoutRoutes: true }).findings.find(({ rule }) => rule === "fixed-metal")?.why;
    };
    expect(noteIn("ft-in")).toContain(`Local amendment in force (680.26(B)(7): 6' 0" here, city rule 7).`);
    expect(noteIn("m")).toContain("(680.26(B)(7): 1.83 m here, city rule 7)");
  });

  it("that takes a rule's limit away is told where the rule would have asked", () => {
    const pump = { id: "pump", kind: "equipment", at: [600, 100], unit: "pump", electric: true, volts: 240 };
    const shed = {
      id: "shed",
      kind: "building",
      outline: {
        closed: true,
        vertices: [
          [560, 60],
          [640, 60],
          [640, 140],
          [560, 140],
        ],
      },
    };
    const outcomes = (edition: string, amendments: object[]) =>
      recompute(siteOf([concretePool(), pump, shed], { edition, amendments }), { withoutRoutes: true })
        .findings.filter(({ rule }) => ["other-equipment-distance", "equipment-room-receptacle"].includes(rule))
        .map(({ outcome, why }) => [outcome, why.includes("city rule 7")]);
    const taken = [
      amend("otherEquipment.distance", null, "city rule 7"),
      amend("receptacle.equipmentRoom", false, "city rule 7"),
    ];
    expect(outcomes("nec-2020", taken)).toEqual([
      ["exempt", true],
      ["exempt", true],
    ]);
    expect(outcomes("nec-2020", [])).toHaveLength(2);
    expect(outcomes("nec-2017", [])).toEqual([]);
  });
});
