/** A plan that lays the short ring: what is joined to the ring is joined to that one. Figures: arithmetic. */
import { describe, expect, it } from "vitest";
import { pointToPath } from "../../../geometry/distance.ts";
import { pathFrom } from "../../../geometry/outline.ts";
import type { Point } from "../../../geometry/types.ts";
import { concretePool } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { pump, siteOf } from "../recorded/yards.ts";

describe("the short ring", () => {
  it("is where branches and ties end, 19 in. from the wall, not at the even ring", () => {
    const report = recompute(siteOf([concretePool(), pump], { settings: { ringStyle: "short", ringMargin: 1 } }));
    const paths = (report.ring.short?.loops ?? []).map(({ path }) =>
      pathFrom({ vertices: path.map(([x, y]) => [x, y]), closed: false }),
    );
    const toRing = (p: Point) => Math.min(...paths.map((path) => pointToPath(p, path).length));
    expect(report.branches).toHaveLength(1);
    for (const { path } of report.branches) expect(toRing(path[0] as Point)).toBeLessThan(0.01);
    expect(report.branches[0]?.run).toBeCloseTo(600 - 384 - 19, 2);
    expect(report.ties).toHaveLength(4);
    for (const { to } of report.ties) expect(toRing(to)).toBeLessThan(0.01);
    expect(report.takeoff.conductor.ties).toBeCloseTo(4 * 19, 1);
  });
});
