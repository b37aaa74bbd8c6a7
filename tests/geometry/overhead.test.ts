// Arithmetic (Pythagoras, the height of a parabola), and 4,000 positions along each wire as an oracle.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaFrom } from "../../geometry/outline.ts";
import {
  clearanceOver,
  heightAt,
  lowestHeight,
  type SpacePoint,
  type Span,
  spansOf,
  stretchesWithin,
} from "../../geometry/overhead.ts";
import { pointToArea } from "../../geometry/point-distance.ts";
import { derivative, product, rootsAndTurns, valueAt } from "../../geometry/polynomial.ts";
import type { Area, PathData, Point } from "../../geometry/types.ts";
import { arcOutline, position } from "../oracles/random-outlines.ts";
import { runs, seed } from "../oracles/seed.ts";
import { variantsOf } from "../oracles/variants.ts";
import { circle, rectangle, samples } from "./sample-outlines.ts";

const EVERYWHERE = 1e5;

function clear(vertices: SpacePoint[], sag: number, outline: PathData, level = 0, prism = EVERYWHERE) {
  const area = areaFrom(outline);
  return clearanceOver(stretchesWithin(spansOf(vertices, sag), area, prism), area, level);
}

const distance = (...of: Parameters<typeof clear>) => clear(...of)?.distance;

describe("a wire over or beside the water", () => {
  it("straight and level: its height, or the slant to the edge", () => {
    expect(
      distance(
        [
          [-100, 96, 270],
          [500, 96, 270],
        ],
        0,
        rectangle,
      ),
    ).toBe(270);
    expect(
      distance(
        [
          [-100, 292, 240],
          [500, 292, 240],
        ],
        0,
        rectangle,
      ),
    ).toBeCloseTo(260, 9);
    expect(
      distance(
        [
          [-100, 292, 258],
          [500, 292, 258],
        ],
        0,
        rectangle,
        18,
      ),
    ).toBeCloseTo(260, 9);
  });

  it("hangs lowest at mid-span by its sag, between slanted ends elsewhere", () => {
    const span: Span = { from: [0, 96, 300], to: [384, 96, 300], sag: 30 };
    expect(heightAt(span, 0.5)).toBe(270);
    expect(distance([span.from, span.to], 30, rectangle)).toBe(270);
    // z = 200 + 100 t - 40 t (1 - t) has its least where 60 + 80 t = 0: beyond the span, so at its low end.
    expect(lowestHeight({ span: { from: [0, 0, 200], to: [100, 0, 300], sag: 10 }, start: 0, end: 1 })).toBe(200);
    // z = 200 + 20 t - 200 t (1 - t): t = 0.45, z = 200 + 9 - 49.5.
    expect(lowestHeight({ span: { from: [0, 0, 200], to: [100, 0, 220], sag: 50 }, start: 0, end: 1 })).toBeCloseTo(
      159.5,
      9,
    );
  });

  it("nearest inside an arc, and to the edge of an island's ground", () => {
    const beside: SpacePoint[] = [
      [130, -300, 40],
      [130, 300, 40],
    ];
    expect(distance(beside, 0, circle)).toBeCloseTo(50, 9);
    const water = areaFrom(rectangle, [
      {
        closed: true,
        vertices: [
          [100, 50],
          [200, 50],
          [200, 150],
          [100, 150],
        ],
      },
    ]);
    const overIsland = spansOf(
      [
        [150, 99, 30],
        [150, 101, 30],
      ],
      0,
    );
    expect(clearanceOver(stretchesWithin(overIsland, water, EVERYWHERE), water, 0)?.distance).toBeCloseTo(
      Math.hypot(49, 30),
      0,
    );
  });

  it("lower than what it passes: only the plan counts", () => {
    const low: SpacePoint[] = [
      [-100, 292, 50],
      [500, 292, 50],
    ];
    expect(distance(low, 0, rectangle, 200)).toBeCloseTo(100, 9);
  });

  it("counts within the prism only, a wire that just touches it included", () => {
    const past: SpacePoint[] = [
      [-500, 312, 50],
      [900, 312, 50],
    ];
    expect(distance(past, 0, rectangle, 0, 120)).toBeCloseTo(130, 9);
    expect(
      clear(
        [...past].map(([x, y, z]): SpacePoint => [x, y + 0.01, z]),
        0,
        rectangle,
        0,
        120,
      ),
    ).toBeNull();
    const touching: SpacePoint[] = [
      [220, -500, 90],
      [220, 500, 90],
    ];
    expect(distance(touching, 0, circle, 0, 120)).toBeCloseTo(150, 6);
    const crossing: SpacePoint[] = [
      [-220, 0, 1000],
      [-1220, 0, 0],
    ];
    // Only its first point, 120 in. out, is in the prism: the rest comes down beyond it.
    expect(distance(crossing, 0, circle, 0, 120)).toBeCloseTo(Math.hypot(120, 1000), 6);
  });

  it.each(samples)("%s: the same turned, mirrored and from every vertex", (_, data) => {
    const line: SpacePoint[] = [
      [-220, 260, 310],
      [90, -30, 240],
      [420, 310, 280],
    ];
    const expected = distance(line, 25, data) as number;
    for (const { data: other, place, name } of variantsOf(data)) {
      const moved = line.map(([x, y, z]): SpacePoint => [...place([x, y]), z]);
      expect(distance(moved, 25, other), name).toBeCloseTo(expected, 6);
    }
    expect(distance([...line].reverse(), 25, data)).toBeCloseTo(expected, 6);
  });
});

describe("random wires", () => {
  const STEPS = 4000;

  function sampled(span: Span, area: Area, level: number): { least: number; step: number } {
    let least = Number.POSITIVE_INFINITY;
    let step = 0;
    let before: SpacePoint | null = null;
    for (let i = 0; i <= STEPS; i++) {
      const t = i / STEPS;
      const at: Point = [
        span.from[0] + (span.to[0] - span.from[0]) * t,
        span.from[1] + (span.to[1] - span.from[1]) * t,
      ];
      const z = span.from[2] + (span.to[2] - span.from[2]) * t - 4 * span.sag * t * (1 - t);
      least = Math.min(least, Math.hypot(pointToArea(at, area).length, Math.max(0, z - level)));
      if (before) step = Math.max(step, Math.hypot(at[0] - before[0], at[1] - before[1], z - before[2]));
      before = [at[0], at[1], z];
    }
    return { least, step };
  }

  it(`are no nearer than the answer, and come within half a step of it (${seed})`, () => {
    const height = fc.double({ min: -50, max: 400, noNaN: true });
    fc.assert(
      fc.property(
        arcOutline,
        position(600),
        position(600),
        height,
        height,
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: -20, max: 80, noNaN: true }),
        (outline, a, b, za, zb, sag, level) => {
          fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1]) > 1);
          const span: Span = { from: [...a, za], to: [...b, zb], sag };
          const area = areaFrom(outline);
          const exact = clearanceOver(stretchesWithin([span], area, EVERYWHERE), area, level)?.distance as number;
          const { least, step } = sampled(span, area, level);
          expect(exact).toBeLessThanOrEqual(least + 1e-7);
          expect(exact).toBeGreaterThanOrEqual(least - step / 2 - 1e-7);
        },
      ),
      runs(60),
    );
  });
});

describe("roots of a polynomial", () => {
  it("are found, double ones too, and nothing outside", () => {
    const cubic = product(product([-1, 1], [-1, 1]), [-0.25, 1]);
    const found = rootsAndTurns(cubic, 0, 2);
    for (const root of [0.25, 1]) expect(Math.min(...found.map((t) => Math.abs(t - root)))).toBeLessThan(1e-7);
    expect(rootsAndTurns([-5, 1], 0, 2)).toEqual([]);
    expect(rootsAndTurns([7], 0, 1)).toEqual([]);
    expect(valueAt(derivative([1, 2, 3]), 2)).toBe(14);
  });
});
