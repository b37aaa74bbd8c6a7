import { describe, expect, it } from "vitest";
import { box, concretePool } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { siteOf } from "../catalogue/yards.ts";

describe("a slab smaller than one spacing of the grid that it needs", () => {
  it("has copper in the plan and in the takeoff, and still needs bonding", () => {
    const pad = {
      id: "pad",
      kind: "surface",
      outline: box(100.3, -17, 110.3, -7),
      material: "concrete",
      steel: "none",
    };
    const report = recompute(siteOf([concretePool(), pad], { edition: "nec-2023" }));
    const piece = report.band[0]?.bySurface.find(({ surface }) => surface === "pad");
    expect(piece).toMatchObject({ bonding: "grid" });
    // Arithmetic: one line of 10 in. each way.
    expect(report.grid.band.length).toBeCloseTo(20, 3);
    expect(report.grid.band.crossings).toBe(1);
    expect(report.takeoff.conductor.grid).toBeGreaterThan(19.9);
    const outcomes = report.findings.filter(({ element }) => element === "pad").map(({ outcome }) => outcome);
    expect(outcomes).toContain("bond");
  });
});
