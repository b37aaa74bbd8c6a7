import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaFrom, distanceAlongPath, pathLength } from "../../geometry/outline.ts";
import { pointToPath } from "../../geometry/point-distance.ts";
import { evenTies, largestGap } from "../../geometry/ties.ts";
import type { Region } from "../../geometry/types.ts";
import { kidney, rectangle, romanEnd } from "../oracles/outline-shapes.ts";
import { runs } from "../oracles/seed.ts";
import { variantsOf } from "../oracles/variants.ts";

const outer = areaFrom(rectangle).outer;
const total = pathLength(outer);
const box = (x0: number, y0: number, x1: number, y1: number): Region => [
  [
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
      [x0, y0],
    ],
  ],
];

describe("ties with none recorded", () => {
  it("divide the outline evenly, arcs by their length", () => {
    // NEC 680.26(B)(2)(a): at least four, evenly spaced; restated.
    for (const data of [rectangle, romanEnd, kidney]) {
      for (const variant of variantsOf(data)) {
        const path = areaFrom(variant.data).outer;
        for (const count of [4, 5, 7]) {
          const ties = evenTies({ outer: path, count, existing: [] });
          expect(ties.length).toBe(count);
          const places = ties.map((tie) => tie.distanceAlong);
          expect(largestGap(pathLength(path), places)).toBeCloseTo(pathLength(path) / count, 6);
          for (const { at, distanceAlong } of ties) {
            expect(pointToPath(at, path).length).toBeLessThan(1e-7);
            const along = distanceAlongPath(path, at);
            const off = Math.abs(along - distanceAlong);
            expect(Math.min(off, pathLength(path) - off)).toBeLessThan(1e-5);
          }
        }
      }
    }
  });

  it("turn together to miss what is kept clear", () => {
    const keepClear = [...box(-5, -5, 5, 5), ...box(280, -5, 296, 5)];
    const ties = evenTies({ outer, count: 4, existing: [], keepClear });
    expect(ties.some((tie) => tie.blocked)).toBe(false);
    expect(
      largestGap(
        total,
        ties.map((tie) => tie.distanceAlong),
      ),
    ).toBeCloseTo(288, 9);
  });

  it("fall on a preferred place", () => {
    const ties = evenTies({ outer, count: 4, existing: [], preferred: [400] });
    expect(ties.map((tie) => tie.distanceAlong)).toContain(400);
  });

  it("say so where no clear place is left", () => {
    const ties = evenTies({ outer, count: 4, existing: [], keepClear: box(-50, -50, 500, 500) });
    expect(ties.every((tie) => tie.blocked)).toBe(true);
  });
});

describe("ties with some recorded", () => {
  it("only fill what is needed, into the widest gaps", () => {
    // Arithmetic: 0 and 100 leave gaps of 100 and 1052 in.; two more make the larger one three of 350 2/3.
    const ties = evenTies({ outer, count: 4, existing: [100, 0] });
    expect(ties.length).toBe(2);
    expect(ties[0]?.distanceAlong).toBeCloseTo(100 + 1052 / 3, 9);
    expect(ties[1]?.distanceAlong).toBeCloseTo(100 + 2104 / 3, 9);
    expect(evenTies({ outer, count: 4, existing: [0, 1, 2, 3] })).toEqual([]);
    expect(evenTies({ outer, count: 4, existing: [0, 1, 2, 3, 4] })).toEqual([]);
  });

  it("make the largest gap as small as any other way of adding them", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 1151 }), { minLength: 1, maxLength: 3 }),
        fc.array(fc.integer({ min: 0, max: 1151 }), { minLength: 3, maxLength: 3 }),
        (existing, others) => {
          const needed = 4 - existing.length;
          const ties = evenTies({ outer, count: 4, existing }).map((tie) => tie.distanceAlong);
          expect(ties.length).toBe(needed);
          const ours = largestGap(total, [...existing, ...ties]);
          expect(ours).toBeLessThanOrEqual(largestGap(total, [...existing, ...others.slice(0, needed)]) + 1e-6);
        },
      ),
      runs(500),
    );
  });

  it("step aside from what is kept clear", () => {
    const ties = evenTies({ outer, count: 4, existing: [0, 288, 576], keepClear: box(80, 180, 110, 200) });
    expect(ties.length).toBe(1);
    expect(ties[0]?.blocked).toBe(false);
    expect(Math.abs((ties[0]?.distanceAlong ?? 0) - 864)).toBeLessThan(30);
  });
});

describe("largest gap", () => {
  it("counts round the seam; alone or without ties it is all of the outline", () => {
    expect(largestGap(100, [10, 90])).toBe(80);
    expect(largestGap(100, [90, 20, 10])).toBe(70);
    expect(largestGap(100, [30])).toBe(100);
    expect(largestGap(100, [])).toBe(100);
    expect(largestGap(100, [-10, 110])).toBe(80);
  });
});
