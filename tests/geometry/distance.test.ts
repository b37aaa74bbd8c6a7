import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaToArea, pathToArea, pathToPath, pointToArea, pointToPath } from "../../geometry/distance.ts";
import { areaFrom, contains, pathFrom, pathLength, pointAlong } from "../../geometry/outline.ts";
import type { PathData, Point, Witness } from "../../geometry/types.ts";
import { chordsOf, toPolyline } from "../oracles/bulge-chords.ts";
import { distance, lineShape, pointShape, ringShape } from "../oracles/jsts.ts";
import { arcOutline, openPath, position } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { placed, variantsOf } from "../oracles/variants.ts";
import { circle, kidney, rectangle, romanEnd, samples, squareAt } from "./sample-outlines.ts";

const open = (...vertices: PathData["vertices"][number][]): PathData => ({ vertices, closed: false });

function expectWitness({ length, from, to }: Witness): void {
  expect(Math.abs(Math.hypot(to[0] - from[0], to[1] - from[1]) - length)).toBeLessThan(1e-8);
}

describe("pointToArea", () => {
  it.each<[string, PathData, Point, number]>([
    // arithmetic
    ["square to an edge", rectangle, [200, 250], 58],
    ["from a corner", rectangle, [387, 196], 5],
    ["inside", rectangle, [10, 10], 0],
    ["on an edge", rectangle, [384, 77], 0],
    ["on a vertex", rectangle, [0, 192], 0],
    ["the nearest point inside an arc", romanEnd, [360 + 90, 96 + 120], 150 - 60],
    ["on an arc", romanEnd, [360 + 36, 96 + 48], 0],
    ["outside a circle", circle, [300, 400], 400],
  ])("%s, in every variant", (_, data, p, length) => {
    for (const { name, data: moved, place } of variantsOf(data)) {
      const witness = pointToArea(place(p), areaFrom(moved));
      expect(Math.abs(witness.length - length), name).toBeLessThan(1e-9);
      if (length === 0) expect(witness.length, name).toBe(0);
      expect(witness.to).toEqual(place(p));
      expectWitness(witness);
    }
  });

  it("on an island is the distance to the island's edge", () => {
    const area = areaFrom(rectangle, [squareAt(100, 100)]);
    expect(pointToArea([95, 103], area)).toMatchObject({ length: 15 });
    expect(pointToArea([100, 120], area).length).toBe(0);
    expect(pointToArea([100, 121], area).length).toBe(0);
  });

  it("is exactly 0 all along the boundary", () => {
    for (const [, data] of samples) {
      const area = areaFrom(data);
      const length = pathLength(area.outer);
      for (let i = 0; i < 200; i++)
        expect(pointToArea(pointAlong(area.outer, (length * i) / 200), area).length).toBe(0);
    }
  });

  it("agrees with halved chords and jsts, in every variant", () => {
    fc.assert(
      fc.property(arcOutline, position(400), (data, p) => {
        const chords = chordsOf(data, 1e-4);
        const wanted = distance(ringShape(chords), pointShape(p));
        for (const { name, data: moved, place } of variantsOf(data)) {
          const witness = pointToArea(place(p), areaFrom(moved));
          expect(Math.abs(witness.length - wanted), name).toBeLessThan(2e-4);
          expectWitness(witness);
          expect(Math.abs(pointToPath(place(p), pathFrom(moved)).length - toPolyline(p, chords, true))).toBeLessThan(
            2e-4,
          );
        }
      }),
      runs(60),
    );
  });
});

describe("pathToPath", () => {
  it.each<[string, PathData, PathData, number]>([
    // arithmetic
    ["parallel lines", open([0, 0], [100, 0]), open([20, 7], [60, 7]), 7],
    ["end to the middle of a line", open([0, 0], [100, 0]), open([50, 3], [50, 40]), 3],
    ["crossing lines", open([0, 0], [100, 0]), open([50, -3], [50, 40]), 0],
    ["touching ends", open([0, 0], [100, 0]), open([100, 0], [150, 40]), 0],
    ["line past the outside of an arc", open([-50, -25], [50, -25]), open([-20, 0, 1], [20, 0]), 5],
    ["line within an arc", open([-6, -8], [6, -8]), open([-20, 0, 1], [20, 0]), 10],
    ["arcs back to back", open([0, -10, 1], [0, 10]), open([30, -10, -1], [30, 10]), 10],
    ["arc inside an arc", open([0, -10, 1], [0, 10]), open([-5, -40, 1], [-5, 40]), 25],
    ["arcs of one center facing", open([0, -10, 1], [0, 10]), open([0, -30, 1], [0, 30]), 20],
    ["arcs of one center, apart in angle", open([0, -10, 1], [0, 10]), open([0, 30, 1], [0, -30]), 20],
    ["arcs that cross", open([-5, 0, 1], [5, 0]), open([1, 0, 1], [11, 0]), 0],
    ["more than half circles", open([-3, 0, 3], [3, 0]), open([17, 0, 3], [23, 0]), 10],
  ])("%s, in every variant", (_, a, b, length) => {
    const variants = variantsOf(a);
    for (const { name, place } of variants) {
      const flips = name.startsWith("mirrored");
      const one = pathFrom(placed(a, place, flips));
      const other = pathFrom(placed(b, place, flips));
      for (const witness of [pathToPath(one, other), pathToPath(other, one)]) {
        expect(Math.abs(witness.length - length), name).toBeLessThan(1e-9);
        expectWitness(witness);
      }
    }
  });

  it("agrees with jsts on random paths, its ends on the right ones", () => {
    fc.assert(
      fc.property(openPath(150), openPath(150), (a, b) => {
        const [chordsA, chordsB] = [chordsOf(a, 1e-3), chordsOf(b, 1e-3)];
        const witness = pathToPath(pathFrom(a), pathFrom(b));
        expect(Math.abs(witness.length - distance(lineShape(chordsA), lineShape(chordsB)))).toBeLessThan(2.1e-3);
        expect(toPolyline(witness.from, chordsA, false)).toBeLessThan(1.1e-3);
        expect(toPolyline(witness.to, chordsB, false)).toBeLessThan(1.1e-3);
        expectWitness(witness);
      }),
      runs(150),
    );
  });
});

describe("pathToArea and areaToArea", () => {
  it("are 0 where anything is inside", () => {
    const area = areaFrom(rectangle, [squareAt(200, 100)]);
    expect(pathToArea(pathFrom(open([10, 10], [20, 20])), area).length).toBe(0);
    expect(pathToArea(pathFrom(open([-10, 10], [20, 20])), area).length).toBe(0);
    expect(pathToArea(pathFrom(open([-10, 10], [500, 20])), area).length).toBe(0);
    // on the island, arithmetic
    expect(pathToArea(pathFrom(open([195, 100], [205, 110])), area)).toMatchObject({ length: 10 });
    expect(areaToArea(area, areaFrom(squareAt(50, 50))).length).toBe(0);
    expect(areaToArea(areaFrom(squareAt(50, 50)), area).length).toBe(0);
    expect(areaToArea(areaFrom(squareAt(0, 0)), area).length).toBe(0);
  });

  it("measure from islands and between bodies", () => {
    const area = areaFrom(rectangle, [squareAt(200, 100)]);
    const small = areaFrom({
      vertices: [
        [195, 100, 1],
        [205, 100, 1],
      ],
      closed: true,
    });
    expect(areaToArea(area, small).length).toBeCloseTo(15, 10);
    expect(areaToArea(small, area).length).toBeCloseTo(15, 10);
    // arithmetic: two circles of radius 100, centers 250 apart
    const far = areaFrom(placed(circle, ([x, y]) => [x + 150, y + 200]));
    const witness = areaToArea(areaFrom(circle), far);
    expect(witness.length).toBeCloseTo(50, 10);
    expect(witness.from[0]).toBeCloseTo(60, 9);
    expect(witness.to[1]).toBeCloseTo(120, 9);
  });

  it("give 55 in. and the fence's own witness", () => {
    // independent engine, 0.1 %: a fence 55 in. beside a rectangle
    const witness = pathToArea(pathFrom(open([-80, -55], [464, -55])), areaFrom(rectangle));
    expect(witness.length).toBe(55);
    expect(witness.to[1]).toBe(-55);
    expect(witness.from[1]).toBe(0);
  });

  it("agree with jsts on random outlines", () => {
    fc.assert(
      fc.property(arcOutline, arcOutline, openPath(500), position(450), (a, b, path, shift) => {
        const moved = placed(b, ([x, y]) => [x + shift[0], y + shift[1]]);
        const shapeA = ringShape(chordsOf(a, 1e-3));
        const [areaA, areaB] = [areaFrom(a), areaFrom(moved)];
        const between = areaToArea(areaA, areaB);
        expect(Math.abs(between.length - distance(shapeA, ringShape(chordsOf(moved, 1e-3))))).toBeLessThan(2.1e-3);
        expectWitness(between);
        const toPath = pathToArea(pathFrom(path), areaA);
        expect(Math.abs(toPath.length - distance(shapeA, lineShape(chordsOf(path, 1e-3))))).toBeLessThan(2.1e-3);
        if (toPath.length === 0) expect(contains(areaA, toPath.from)).toBe(true);
      }),
      runs(60),
    );
  });
});

describe("large outlines", () => {
  it("leave nothing out: 512 vertices against every edge by itself", () => {
    const vertices = Array.from({ length: 512 }, (_, i): [number, number, number] => {
      const angle = (2 * Math.PI * i) / 512;
      const radius = 200 * (1 + 0.15 * Math.sin(5 * angle));
      return [radius * Math.cos(angle), radius * Math.sin(angle), i % 4 === 0 ? 0.1 : 0];
    });
    const path = pathFrom({ vertices, closed: true });
    fc.assert(
      fc.property(position(700), (p) => {
        const single = path.edges.map((edge) => pointToPath(p, { edges: [edge], closed: false, bounds: path.bounds }));
        expect(pointToPath(p, path).length).toBe(Math.min(...single.map(({ length }) => length)));
      }),
      runs(100),
    );
  });

  it("treat a kidney's inward curve from inside its hollow", () => {
    const area = areaFrom(kidney);
    const chords = chordsOf(kidney, 1e-6);
    for (const p of [
      [70, 2],
      [70, 10],
      [60, -30],
      [205, 50],
    ] as Point[]) {
      const wanted = contains(area, p) ? 0 : toPolyline(p, chords, true);
      expect(Math.abs(pointToArea(p, area).length - wanted)).toBeLessThan(2e-6);
    }
  });
});
