import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pointToPath } from "../../geometry/distance.ts";
import {
  areaFrom,
  areaOf,
  centroidOf,
  contains,
  distanceAlongPath,
  flattenArea,
  flattenPath,
  pathFrom,
  pathLength,
  pointAlong,
  reversePath,
  signedArea,
  startingAt,
} from "../../geometry/outline.ts";
import { FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Point } from "../../geometry/types.ts";
import { chordsOf, polylineLength, toPolyline } from "../oracles/bulge-chords.ts";
import { covers, pointShape, ringShape } from "../oracles/jsts.ts";
import { arcOutline, position } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { placed, variantsOf } from "../oracles/variants.ts";
import { circle, kidney, rectangle, romanEnd, samples, squareAt, stadium } from "./sample-outlines.ts";

describe("areas and lengths", () => {
  it.each([
    // arithmetic
    ["rectangle", rectangle, 384 * 192, 2 * (384 + 192)],
    ["circle", circle, Math.PI * 100 ** 2, 200 * Math.PI],
    ["stadium", stadium, 200 * 120 + Math.PI * 60 ** 2, 400 + 120 * Math.PI],
    ["Roman end", romanEnd, 360 * 192 + (Math.PI * 60 ** 2) / 2, 2 * 360 + 192 + 2 * 36 + 60 * Math.PI],
  ])("of a %s in every variant", (_, data, area, length) => {
    for (const variant of variantsOf(data)) {
      const path = pathFrom(variant.data);
      expect(Math.abs(signedArea(path)) / area, variant.name).toBeCloseTo(1, 12);
      expect(pathLength(path) / length, variant.name).toBeCloseTo(1, 12);
      expect(signedArea(reversePath(path))).toBeCloseTo(-signedArea(path), 6);
      expect(areaOf(areaFrom(variant.data)) / area, variant.name).toBeCloseTo(1, 12);
    }
  });

  it("take 1172.491 in. round the Roman end", () => {
    // independent code, 0.1 %
    expect(pathLength(pathFrom(romanEnd)) / 1172.4914888945746).toBeCloseTo(1, 3);
  });

  it("set windings right and take holes away", () => {
    const area = areaFrom({ ...rectangle, vertices: [...rectangle.vertices].reverse() }, [squareAt(100, 100)]);
    expect(signedArea(area.outer)).toBeGreaterThan(0);
    expect(area.holes.map(signedArea)).toEqual([-1600]);
    expect(areaOf(area)).toBe(384 * 192 - 1600);
  });

  it("agree with halved chords on random outlines", () => {
    fc.assert(
      fc.property(arcOutline, (data) => {
        const chords = chordsOf(data, 1e-4);
        const path = pathFrom(data);
        const length = polylineLength(chords, true);
        expect(Math.abs(Math.abs(signedArea(path)) - ringShape(chords).getArea())).toBeLessThan(1e-4 * length);
        expect(pathLength(path) / length).toBeCloseTo(1, 5);
      }),
      runs(100),
    );
  });
});

describe("centroidOf", () => {
  it("finds the middle of symmetric outlines wherever they lie", () => {
    for (const data of [rectangle, circle, stadium]) {
      const middle: Point = data === rectangle ? [192, 96] : [0, 0];
      for (const { name, data: moved, place } of variantsOf(data)) {
        const [x, y] = centroidOf(areaFrom(moved));
        const [wantedX, wantedY] = place(middle);
        expect(Math.hypot(x - wantedX, y - wantedY), name).toBeLessThan(1e-8);
      }
    }
  });

  it("of a half disc lies 4 r / (3 pi) from its straight side, and weighs holes", () => {
    // common formula of mechanics; arithmetic for the hole
    const [x, y] = centroidOf(
      areaFrom({
        vertices: [
          [-30, 0, 1],
          [30, 0],
        ],
        closed: true,
      }),
    );
    expect(x).toBeCloseTo(0, 9);
    expect(y).toBeCloseTo((-4 * 30) / (3 * Math.PI), 9);
    const withHole = centroidOf(areaFrom(rectangle, [squareAt(100, 96)]));
    expect(withHole[0]).toBeCloseTo((384 * 192 * 192 - 1600 * 100) / (384 * 192 - 1600), 9);
    expect(withHole[1]).toBeCloseTo(96, 9);
  });

  it("of a flat bow lies two fifths of its height from the arc", () => {
    // common formula for a parabola, which a flat arc tends to
    const [, y] = centroidOf(
      areaFrom({
        vertices: [
          [0, 0, 1e-4],
          [200, 0],
        ],
        closed: true,
      }),
    );
    expect(y / (-0.6 * 1e-2)).toBeCloseTo(1, 6);
  });
});

describe("contains", () => {
  it("counts the boundary, every vertex and points on arcs", () => {
    for (const [name, data] of samples) {
      for (const variant of variantsOf(data)) {
        const area = areaFrom(variant.data);
        const length = pathLength(area.outer);
        for (let i = 0; i < 60; i++) {
          expect(contains(area, pointAlong(area.outer, (length * i) / 60)), `${name} ${variant.name}`).toBe(true);
        }
        for (const [x, y] of variant.data.vertices) expect(contains(area, [x, y])).toBe(true);
      }
    }
  });

  it("is right level with vertices and with the top of an arc", () => {
    // arithmetic: rays through vertices, along edges and through tangent points
    const area = areaFrom(stadium);
    for (const y of [-60, 0, 60]) {
      expect(contains(area, [-300, y])).toBe(false);
      expect(contains(area, [300, y])).toBe(false);
      expect(contains(area, [0, y])).toBe(true);
    }
    expect(contains(area, [-150, 60])).toBe(false);
    expect(contains(area, [159.999, 0])).toBe(true);
    expect(contains(area, [160.001, 0])).toBe(false);
    expect(contains(areaFrom(circle), [-80, 100])).toBe(false);
  });

  it("keeps its word near the greatest coordinate a site may have", () => {
    for (const [name, data] of samples) {
      const area = areaFrom(placed(data, ([x, y]) => [x + 999_000 + 1 / 3, y - 999_000 - 1 / 7]));
      const length = pathLength(area.outer);
      for (let i = 0; i < 500; i++) {
        const p = pointAlong(area.outer, (length * i) / 500);
        expect(contains(area, p), name).toBe(true);
        expect(pointToPath(p, area.outer).length, name).toBe(0);
      }
    }
  });

  it("leaves holes out but not their edge", () => {
    const area = areaFrom(rectangle, [squareAt(100, 100)]);
    expect(contains(area, [100, 100])).toBe(false);
    expect(contains(area, [80, 100])).toBe(true);
    expect(contains(area, [79, 100])).toBe(true);
    expect(contains(area, [120, 120])).toBe(true);
  });

  it("agrees with jsts, in every variant", () => {
    fc.assert(
      fc.property(arcOutline, fc.array(position(220), { minLength: 12, maxLength: 12 }), (data, points) => {
        const chords = chordsOf(data, 1e-3);
        const shape = ringShape(chords);
        for (const p of points) {
          if (toPolyline(p, chords, true) < 2e-3) continue;
          const inside = covers(shape, pointShape(p));
          for (const { name, data: moved, place } of variantsOf(data)) {
            expect(contains(areaFrom(moved), place(p)), name).toBe(inside);
          }
        }
      }),
      runs(40),
    );
  });
});

describe("walking along a path", () => {
  it("returns to where it was asked", () => {
    fc.assert(
      fc.property(arcOutline, fc.double({ min: 0, max: 1, noNaN: true }), (data, share) => {
        const path = pathFrom(data);
        const s = share * pathLength(path);
        const p = pointAlong(path, s);
        expect(toPolyline(p, chordsOf(data, 1e-4), true)).toBeLessThan(2e-4);
        const back = pointAlong(path, distanceAlongPath(path, p));
        expect(Math.hypot(back[0] - p[0], back[1] - p[1])).toBeLessThan(1e-7);
      }),
      runs(100),
    );
  });

  it("goes round a closed path and stops at the ends of an open one", () => {
    const round = pathFrom(rectangle);
    expect(pointAlong(round, 384 + 10)).toEqual([384, 10]);
    expect(pointAlong(round, -10)).toEqual([0, 10]);
    expect(pointAlong(round, 1152 + 5)).toEqual([5, 0]);
    const open = pathFrom({
      vertices: [
        [0, 0],
        [10, 0],
      ],
      closed: false,
    });
    expect(pointAlong(open, 15)).toEqual([10, 0]);
    expect(pointAlong(open, -1)).toEqual([0, 0]);
    expect(distanceAlongPath(open, [4, 9])).toBe(4);
    expect(startingAt(round, 2).edges[0]?.from).toEqual([384, 192]);
  });
});

describe("flattening", () => {
  it("stays within the tolerance and keeps every vertex", () => {
    for (const [, data] of samples) {
      for (const tolerance of [1, FLATTEN_TOLERANCE, 1 / 1024]) {
        const flat = flattenPath(pathFrom(data), tolerance);
        for (const p of chordsOf(data, tolerance / 20)) {
          expect(toPolyline(p, flat, true)).toBeLessThan(tolerance * 1.06);
        }
        for (const [x, y] of data.vertices) expect(flat).toContainEqual([x, y]);
      }
    }
  });

  it("closes rings in the right direction", () => {
    const [polygon] = flattenArea(areaFrom(kidney, []));
    const ring = polygon?.[0] ?? [];
    expect(ring[0]).toEqual(ring[ring.length - 1]);
    expect(
      flattenPath(
        pathFrom({
          vertices: [
            [0, 0, 1],
            [10, 0],
          ],
          closed: false,
        }),
      ).at(-1),
    ).toEqual([10, 0]);
  });
});
