import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clipLines, differenceRegions, regionContains, unionRegions } from "../../geometry/clipping.ts";
import { areaFrom, flattenArea } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { polylineLength } from "../oracles/bulge-chords.ts";
import { difference, intersection, lineShape, regionShape } from "../oracles/jsts.ts";
import { boxRegion, positions } from "../oracles/positions.ts";
import { arcOutline, position } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";

const square = boxRegion(0, 0, 10, 10);
const frame = differenceRegions(square, boxRegion(3, 3, 4, 4));
const length = (lines: readonly (readonly Point[])[]): number =>
  lines.reduce((sum, line) => sum + polylineLength(line, false), 0);

// arithmetic throughout
describe("clipLines", () => {
  it("cuts a line into what is inside and outside, in order", () => {
    expect(clipLines([positions(-5, 5, 15, 5)], frame)).toEqual({
      inside: [positions(0, 5, 3, 5), positions(7, 5, 10, 5)],
      outside: [positions(-5, 5, 0, 5), positions(3, 5, 7, 5), positions(10, 5, 15, 5)],
    });
  });

  it("keeps a line's own vertices and adds none in a straight stretch", () => {
    const corner = positions(1, 1, 2, 1, 2, 2);
    expect(clipLines([corner], square).inside).toEqual([corner]);
    expect(clipLines([positions(5, -3, 5, 5, 13, 5)], square)).toEqual({
      inside: [positions(5, 0, 5, 5, 10, 5)],
      outside: [positions(5, -3, 5, 0), positions(10, 5, 13, 5)],
    });
  });

  it("counts the boundary as inside, along it and through corners", () => {
    expect(clipLines([positions(-5, 0, 15, 0)], square).inside).toEqual([positions(0, 0, 10, 0)]);
    expect(clipLines([positions(3, 1, 3, 9)], frame).inside).toEqual([positions(3, 1, 3, 9)]);
    expect(clipLines([positions(-5, -5, 15, 15)], square).inside).toEqual([positions(0, 0, 10, 10)]);
    // through one corner only
    const past = positions(-5, 5, 5, -5);
    expect(clipLines([past], square)).toEqual({ inside: [], outside: [past] });
  });

  it("does not mind lines that turn straight back, or rest", () => {
    const { inside, outside } = clipLines([positions(-5, 5, 15, 5, -5, 5, 5, 5, 5, 5)], square);
    expect(length(inside)).toBe(25);
    expect(length(outside)).toBe(25);
  });

  it("of nothing gives nothing", () => {
    expect(clipLines([], square)).toEqual({ inside: [], outside: [] });
    expect(clipLines([positions(1, 1), []], square)).toEqual({ inside: [], outside: [] });
    expect(clipLines([positions(1, 1, 2, 2)], [])).toEqual({ inside: [], outside: [positions(1, 1, 2, 2)] });
  });

  it("agrees with jsts and loses no length", () => {
    fc.assert(
      fc.property(arcOutline, arcOutline, fc.array(position(220), { minLength: 2, maxLength: 6 }), (a, b, line) => {
        fc.pre(length([line]) > 1);
        const region = differenceRegions(unionRegions([flattenArea(areaFrom(a))]), flattenArea(areaFrom(b)));
        const { inside, outside } = clipLines([line], region);
        // segment by segment: jsts counts ground that a line covers twice only once
        const shape = regionShape(region);
        const segments = line.slice(1).map((p, i) => lineShape([line[i] as Point, p]));
        const sum = (lengths: number[]): number => lengths.reduce((total, one) => total + one, 0);
        expect(length(inside)).toBeCloseTo(sum(segments.map((one) => intersection(one, shape).getLength())), 5);
        expect(length(outside)).toBeCloseTo(sum(segments.map((one) => difference(one, shape).getLength())), 5);
        expect(length(inside) + length(outside)).toBeCloseTo(length([line]), 7);
        for (const [pieces, wanted] of [
          [inside, true],
          [outside, false],
        ] as const) {
          for (const piece of pieces) {
            const [from, to] = [piece[0] as Point, piece[1] as Point];
            if (distanceBetween(from, to) < 0.01) continue;
            expect(regionContains(region, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2])).toBe(wanted);
          }
        }
      }),
      runs(80),
    );
  });
});
