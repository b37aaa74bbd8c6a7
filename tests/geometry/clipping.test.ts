import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cleanRing,
  differenceRegions,
  intersectRegions,
  offsetRegion,
  regionArea,
  unionRegions,
} from "../../geometry/clipping.ts";
import { lineEdge, movedSideways } from "../../geometry/edge.ts";
import { areaFrom, flattenArea } from "../../geometry/outline.ts";
import { CLIP_UNITS_PER_INCH } from "../../geometry/tolerances.ts";
import type { Edge, Point, Region } from "../../geometry/types.ts";
import { countCells, windingAt } from "../oracles/cells.ts";
import { difference, intersection, isValid, regionShape, union } from "../oracles/jsts.ts";
import { boxRegion, positions, ringRegion } from "../oracles/positions.ts";
import { arcOutline, position, stairOutline } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { placed } from "../oracles/variants.ts";
import { expectWellFormed } from "./well-formed.ts";

describe("cleanRing", () => {
  it.each<[string, Point[], Point[]]>([
    ["keeps a clean ring", positions(0, 0, 9, 0, 9, 9), positions(0, 0, 9, 0, 9, 9)],
    ["drops the repeated first position", positions(0, 0, 9, 0, 9, 9, 0, 0), positions(0, 0, 9, 0, 9, 9)],
    ["drops repeats", positions(0, 0, 0, 0, 9, 0, 9, 9, 9, 9), positions(0, 0, 9, 0, 9, 9)],
    ["drops straight runs", positions(0, 0, 4, 0, 9, 0, 9, 9), positions(0, 0, 9, 0, 9, 9)],
    ["drops a spike out and back", positions(0, 0, 9, 0, 20, 0, 9, 0, 9, 9), positions(0, 0, 9, 0, 9, 9)],
    ["drops a spike that falls short", positions(0, 0, 20, 0, 9, 0, 9, 9), positions(0, 0, 9, 0, 9, 9)],
    [
      "drops spikes upon spikes",
      positions(0, 0, 9, 0, 9, -5, 9, -9, 9, 0, 30, 0, 9, 0, 9, 9),
      positions(0, 0, 9, 0, 9, 9),
    ],
    ["looks across the seam", positions(4, 0, 9, 0, 9, 9, 0, 0), positions(9, 0, 9, 9, 0, 0)],
    ["leaves nothing of a line", positions(0, 0, 9, 0, 4, 0, 7, 0), []],
    ["leaves nothing of two positions", positions(0, 0, 9, 0), []],
    ["leaves nothing of nothing", [], []],
  ])("%s", (_, ring, wanted) => {
    expect(cleanRing(ring)).toEqual(wanted);
  });

  it("ends in a ring without a straight or reversing corner, of the same winding everywhere", () => {
    fc.assert(
      fc.property(backtracking, (ring) => {
        const clean = cleanRing(ring);
        for (const [i, b] of clean.entries()) {
          const a = clean[(i + clean.length - 1) % clean.length] as Point;
          const c = clean[(i + 1) % clean.length] as Point;
          expect((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])).not.toBe(0);
        }
        const same = countCells(8, (x, y) => windingAt(ring, x, y) === (clean.length ? windingAt(clean, x, y) : 0));
        expect(same).toBe(64);
      }),
      runs(500),
    );
  });
});

/** Axis-parallel rings that turn back on themselves all the time. */
const backtracking: fc.Arbitrary<Point[]> = fc
  .array(fc.record({ across: fc.integer({ min: 0, max: 2 }), to: fc.integer({ min: 0, max: 8 }) }), {
    minLength: 3,
    maxLength: 16,
  })
  .map((steps) => {
    let [x, y] = [0, 0];
    const ring: Point[] = [];
    for (const { across, to } of steps) {
      if (across > 0) x = to;
      else y = to;
      ring.push([x, y]);
    }
    // home along the axes
    ring.push([x, 0], [0, 0]);
    return ring;
  });

describe("edges that turn back on themselves", () => {
  it("do not hang: rings that the bare engine never comes back from", () => {
    // found by random trials of the engine alone; with these two it runs until memory is gone
    const a = ringRegion(0, 3, 0, 5, 0, 3, 7, 3, 7, 7, 7, 2, 4, 2, 4, 1, 2, 1, 1, 1, 7, 1, 0, 1, 7, 1);
    const b = ringRegion(5, 6, 4, 6, 6, 6, 1, 6, 1, 4, 0, 4, 0, 6, 7, 6, 3, 6, 5, 6, 0, 6, 0, 4, 7, 4);
    for (const op of [differenceRegions, intersectRegions, (p: Region, q: Region) => unionRegions([p, q])]) {
      expectWellFormed(op(a, b));
    }
  });

  it("leave every area right, by counting cells", () => {
    fc.assert(
      fc.property(backtracking, backtracking, (a, b) => {
        const holds = (ring: Point[]) => (x: number, y: number) => windingAt(ring, x, y) !== 0;
        const [inA, inB] = [holds(a), holds(b)];
        const [regionA, regionB] = [ringRegion(...a.flat()), ringRegion(...b.flat())];
        const common = intersectRegions(regionA, regionB);
        const rest = differenceRegions(regionA, regionB);
        expectWellFormed(common);
        expectWellFormed(rest);
        expect(regionArea(common)).toBe(countCells(8, (x, y) => inA(x, y) && inB(x, y)));
        expect(regionArea(rest)).toBe(countCells(8, (x, y) => inA(x, y) && !inB(x, y)));
        expect(regionArea(unionRegions([rest, common]))).toBe(countCells(8, inA));
        expect(regionArea(unionRegions([unionRegions([regionA]), unionRegions([regionB])]))).toBe(
          countCells(8, (x, y) => inA(x, y) || inB(x, y)),
        );
      }),
      runs(400),
    );
  });
});

describe("union, intersection and difference", () => {
  it("of boxes", () => {
    // arithmetic
    const [a, b] = [boxRegion(0, 0, 10, 10), boxRegion(5, 5, 10, 10)];
    expect(regionArea(unionRegions([a, b]))).toBe(175);
    expect(regionArea(intersectRegions(a, b))).toBe(25);
    expect(regionArea(differenceRegions(a, b))).toBe(75);
    expect(differenceRegions(boxRegion(0, 0, 10, 10), boxRegion(3, 3, 4, 4))[0]?.length).toBe(2);
    expect(unionRegions([boxRegion(0, 0, 10, 10), boxRegion(10, 0, 10, 10)]).length).toBe(1);
  });

  it("of nothing", () => {
    const a = boxRegion(0, 0, 10, 10);
    expect(unionRegions([])).toEqual([]);
    expect(unionRegions([[], []])).toEqual([]);
    expect(intersectRegions(a, [])).toEqual([]);
    expect(intersectRegions([], a)).toEqual([]);
    expect(differenceRegions([], a)).toEqual([]);
    expect(regionArea(differenceRegions(a, []))).toBe(100);
    expect(offsetRegion([], 5)).toEqual([]);
    expect(unionRegions([ringRegion(0, 0, 9, 0, 4, 0)])).toEqual([]);
  });

  it("keep a hole that touches its outline a hole", () => {
    // arithmetic: a hole that comes to within rounding of its outline in one point
    const result = differenceRegions(boxRegion(0, 0, 100, 100), ringRegion(0, 50, 40, 20, 40, 80));
    expect(regionArea(result)).toBe(10_000 - 1200);
    // strips of a wall round a thin triangle: the engine's own tree took the hole for an outline
    const corners = positions(11.814, -19.251, 44.123, 29.757, 57.414, 32.987, 0, -36.735);
    const strips = [0, 1, 2].map((i) => stripOf(corners[i] as Point, corners[i + 1] as Point, 1));
    const united = unionRegions(strips);
    expect(united.map((polygon) => polygon.length)).toEqual([2]);
    expect(regionArea(united) / unionArea(strips)).toBeCloseTo(1, 4);
  });

  it("name a position that is none", () => {
    expect(() => unionRegions([ringRegion(0, 0, Number.NaN, 4, 4, 4)])).toThrow("NaN");
    expect(() => unionRegions([ringRegion(0, 0, 4, Number.POSITIVE_INFINITY, 4, 4)])).toThrow("Infinity");
  });

  it("agree with jsts, near the origin and far from it", () => {
    fc.assert(
      fc.property(arcOutline, fc.oneof(arcOutline, stairOutline), position(150), fc.boolean(), (a, b, shift, far) => {
        const place = ([x, y]: Point): Point => (far ? [x + 800_000, y - 700_000] : [x, y]);
        const regionA = flattenArea(areaFrom(placed(a, place)));
        const regionB = flattenArea(areaFrom(placed(b, ([x, y]) => place([x + shift[0], y + shift[1]]))));
        const [shapeA, shapeB] = [regionShape(regionA), regionShape(regionB)];
        for (const [ours, theirs] of [
          [unionRegions([regionA, regionB]), union(shapeA, shapeB)],
          [intersectRegions(regionA, regionB), intersection(shapeA, shapeB)],
          [differenceRegions(regionA, regionB), difference(shapeA, shapeB)],
        ] as const) {
          expectWellFormed(ours);
          expect(isValid(regionShape(ours))).toBe(true);
          // the grid moves every vertex by up to half a unit
          expect(Math.abs(regionArea(ours) - theirs.getArea())).toBeLessThan(
            (2 * theirs.getLength() + 1) / CLIP_UNITS_PER_INCH,
          );
        }
      }),
      runs(80),
    );
  });
});

/** The strip of half-width `half` along a segment. */
function stripOf(from: Point, to: Point, half: number): Region {
  const left = movedSideways(lineEdge(from, to), half) as Edge;
  const right = movedSideways(lineEdge(from, to), -half) as Edge;
  return ringRegion(...left.from, ...left.to, ...right.to, ...right.from);
}

/** Area covered by regions, jsts. */
function unionArea(regions: readonly Region[]): number {
  return regions.map(regionShape).reduce(union).getArea();
}
