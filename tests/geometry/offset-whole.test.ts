/** Source of every value: arithmetic; the general construction, and each position measured. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pointAt } from "../../geometry/edge.ts";
import { type OffsetCurves, offsetCurves } from "../../geometry/offset.ts";
import { wholeOffset } from "../../geometry/offset-whole.ts";
import { areaFrom, pathLength } from "../../geometry/outline.ts";
import { pointToPath } from "../../geometry/point-distance.ts";
import type { Area, PathData, Point } from "../../geometry/types.ts";
import { circle } from "../oracles/outline-shapes.ts";
import { arcOutline, stairOutline } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { placed } from "../oracles/variants.ts";

const length = (curves: OffsetCurves): number => curves.loops.reduce((sum, loop) => sum + pathLength(loop.path), 0);

function toWater(p: Point, bodies: readonly Area[]): number {
  return Math.min(...bodies.flatMap((body) => [body.outer, ...body.holes]).map((path) => pointToPath(p, path).length));
}

const box = (x: number, y: number, size: number): PathData => ({
  vertices: [
    [x, y],
    [x + size, y],
    [x + size, y + size],
    [x, y + size],
  ],
  closed: true,
});

/** An L of two legs, its corner toward the ground at the origin, the ground there where x and y are both above 0. */
const bend: PathData = {
  vertices: [
    [-60, -60],
    [200, -60],
    [200, 0],
    [0, 0],
    [0, 200],
    [-60, 200],
  ],
  closed: true,
};

describe("offsets along the outline", () => {
  it("are given up for a small body wherever it stands in a corner toward the ground", () => {
    const alone = offsetCurves([areaFrom(bend)], 21);
    expect(wholeOffset([areaFrom(bend)], 21, false)).toHaveLength(1);
    // Within 21 in. of both legs a body of half an inch adds nothing as long as its own circle ends before (21, 21).
    for (const [x, y] of [
      [0.1, 0.1],
      [1, 3],
      [4, 4],
    ] as const) {
      const bodies = [areaFrom(bend), areaFrom(box(x, y, 0.5))];
      expect(wholeOffset(bodies, 21, false), `${x}, ${y}`).toBeNull();
      expect(length(offsetCurves(bodies, 21)), `${x}, ${y}`).toBeCloseTo(length(alone), 6);
    }
    // 60 in. from the legs it has a loop of its own at 21, and one with them at 36, whichever is asked for first.
    const apart = [areaFrom(bend), areaFrom(box(60, 60, 0.5))];
    expect(wholeOffset(apart, 21, false)).toHaveLength(2);
    expect([21, 36, 21].map((d) => offsetCurves(apart, d).loops.length)).toEqual([2, 1, 2]);
  });

  it("are given up where loops lie wholly under other water, or on each other", () => {
    const pool = areaFrom(circle);
    const inside = areaFrom(placed(circle, ([x, y]) => [x / 20, y / 20]));
    expect(wholeOffset([pool, inside], 1, false)).toBeNull();
    expect(wholeOffset([pool, areaFrom(circle)], 18, false)).toBeNull();
  });

  it("are at every smaller distance what they are without the greater one", () => {
    let followed = 0;
    fc.assert(
      fc.property(
        fc.oneof(arcOutline, stairOutline),
        fc.constantFrom(36, 24, 12, 5),
        fc.double({ min: 0.05, max: 0.99, noNaN: true }),
        fc.tuple(fc.integer({ min: -90, max: 90 }), fc.integer({ min: -90, max: 90 })),
        (data, far, share, [x, y]) => {
          const outlines = [data, box(x, y, 1)];
          const bodies = outlines.map((outline) => areaFrom(outline));
          const used = toWater([x, y], bodies.slice(0, 1)) > 2 ? bodies : bodies.slice(0, 1);
          if (!wholeOffset(used, far, false)) return;
          followed += 1;
          const d = far * share;
          offsetCurves(used, far);
          const known = offsetCurves(used, d);
          const fresh = offsetCurves(
            outlines.slice(0, used.length).map((outline) => areaFrom(outline)),
            d,
          );
          expect(known.loops.length).toBe(fresh.loops.length);
          expect(length(known)).toBeCloseTo(length(fresh), 6);
          for (const { path } of known.loops)
            for (const edge of path.edges)
              for (const t of [0, 0.3, 0.5, 0.9])
                expect(Math.abs(toWater(pointAt(edge, t), used) - d)).toBeLessThan(3e-6);
        },
      ),
      runs(600),
    );
    expect(followed).toBeGreaterThan(60);
  });
});
