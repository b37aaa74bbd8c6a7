import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { differenceRegions, offsetRegion, regionArea, regionContains } from "../../geometry/clipping.ts";
import { areaFrom, flattenArea } from "../../geometry/outline.ts";
import { CLIP_UNITS_PER_INCH, FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import { buffer, regionShape } from "../oracles/jsts.ts";
import { boxRegion, ringRegion } from "../oracles/positions.ts";
import { arcOutline, stairOutline } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { variantsOf } from "../oracles/variants.ts";
import { ell, rectangle, romanEnd, squareAt } from "./sample-outlines.ts";
import { expectWellFormed } from "./well-formed.ts";

describe("offsetRegion", () => {
  it("of a 16 by 32 ft rectangle by 36 in.", () => {
    // arithmetic: 2 d (W + H) + pi d^2 around it
    const pool = flattenArea(areaFrom(rectangle));
    const wanted = 2 * 36 * (384 + 192) + Math.PI * 36 ** 2;
    const coarse = regionArea(differenceRegions(offsetRegion(pool, 36), pool));
    expect(coarse).toBeLessThan(wanted);
    expect(coarse / wanted).toBeCloseTo(1, 3);
    const fine = regionArea(differenceRegions(offsetRegion(pool, 36, 1 / 1024), pool));
    expect(fine / wanted).toBeCloseTo(1, 5);
  });

  it("covers the true offset when widened by the tolerance", () => {
    const area = areaFrom(romanEnd);
    const wide = offsetRegion(flattenArea(area), 36 + 2 * FLATTEN_TOLERANCE + 2 / CLIP_UNITS_PER_INCH);
    for (let i = 0; i < 360; i++) {
      const [ux, uy] = [Math.cos((i * Math.PI) / 180), Math.sin((i * Math.PI) / 180)];
      // the end's own circle, and a round corner
      if (ux > 0) expect(regionContains(wide, [360 + 96 * ux, 96 + 96 * uy])).toBe(true);
      if (ux < 0 && uy < 0) expect(regionContains(wide, [36 * ux, 36 * uy])).toBe(true);
    }
  });

  it("narrows, down to nothing, and keeps holes", () => {
    // arithmetic
    expect(regionArea(offsetRegion(boxRegion(0, 0, 10, 10), -2))).toBe(36);
    expect(offsetRegion(boxRegion(0, 0, 10, 10), -6)).toEqual([]);
    const frame = differenceRegions(boxRegion(0, 0, 100, 100), boxRegion(20, 20, 60, 60));
    const wide = offsetRegion(frame, 10, 1 / 1024);
    expect(regionArea(wide)).toBeCloseTo(120 * 120 - (4 - Math.PI) * 100 - 40 * 40, 0);
    expect(offsetRegion(frame, 31)[0]?.length).toBe(1);
  });

  it("does not mind the direction of a ring, overlaps or a spike", () => {
    const wanted = regionArea(offsetRegion(boxRegion(0, 0, 40, 20), 5));
    expect(regionArea(offsetRegion(ringRegion(0, 0, 0, 20, 40, 20, 40, 0), 5))).toBe(wanted);
    expect(regionArea(offsetRegion([...boxRegion(0, 0, 30, 20), ...boxRegion(10, 0, 30, 20)], 5))).toBe(wanted);
    expect(regionArea(offsetRegion(ringRegion(0, 0, 40, 0, 70, 0, 40, 0, 40, 20, 0, 20), 5))).toBe(wanted);
  });

  it("gives the same area in every variant", () => {
    for (const data of [ell, squareAt(3, 4), romanEnd]) {
      const first = regionArea(offsetRegion(flattenArea(areaFrom(data)), 24, 1 / 1024));
      for (const { name, data: moved } of variantsOf(data)) {
        expect(regionArea(offsetRegion(flattenArea(areaFrom(moved)), 24, 1 / 1024)) / first, name).toBeCloseTo(1, 5);
      }
    }
  });

  it("agrees with jsts", () => {
    fc.assert(
      fc.property(fc.oneof(arcOutline, stairOutline), fc.integer({ min: 1, max: 60 }), (data, d) => {
        const flat = flattenArea(areaFrom(data));
        const ours = offsetRegion(flat, d, 1 / 1024);
        expectWellFormed(ours);
        expect(regionArea(ours) / buffer(regionShape(flat), d, 128).getArea()).toBeCloseTo(1, 3);
      }),
      runs(60),
    );
  });
});
