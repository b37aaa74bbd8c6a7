import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  arcContainsAngle,
  bulgeOf,
  distanceToEdge,
  edgeFromVertices,
  edgeLength,
  movedSideways,
  nearestOnEdge,
  partOfEdge,
  pointAt,
  reverseEdge,
  splitEdge,
  tangentAt,
} from "../../geometry/edge.ts";
import { edgeBounds } from "../../geometry/edge-boxes.ts";
import { boundsOfPoints } from "../../geometry/points.ts";
import type { ArcEdge, Edge, Point, Vertex } from "../../geometry/types.ts";
import { chordsOf, polylineLength, toPolyline } from "../oracles/bulge-chords.ts";
import { runs } from "../oracles/seed.ts";

const anyBulge = fc.oneof(
  fc.double({ min: -8, max: 8, noNaN: true }),
  fc.integer({ min: -4000, max: 4000 }).map((thousandths) => thousandths / 1000),
  fc.constantFrom(1, -1, 0.414213562373095, -0.414213562373095, 3, -3),
);
const coordinate = fc.integer({ min: -300_000, max: 300_000 }).map((thousandths) => thousandths / 1000);
const ends = fc
  .tuple(coordinate, coordinate, anyBulge, coordinate, coordinate)
  .filter(([x0, y0, , x1, y1]) => Math.hypot(x1 - x0, y1 - y0) > 1);

function chords(from: Vertex, to: Vertex, tolerance: number): Point[] {
  return chordsOf({ vertices: [from, to], closed: false }, tolerance);
}

function expectPoint(p: Point, q: Point, digits = 9): void {
  expect(p[0]).toBeCloseTo(q[0], digits);
  expect(p[1]).toBeCloseTo(q[1], digits);
}

describe("edgeFromVertices", () => {
  it("makes a half circle of bulge 1, bowed to the right of travel", () => {
    // arithmetic: chord 20, so radius 10; counter-clockwise from the left end the half circle runs below
    const arc = edgeFromVertices([-10, 0, 1], [10, 0]) as ArcEdge;
    expect(arc.kind).toBe("arc");
    expectPoint(arc.center, [0, 0], 12);
    expect(arc.radius).toBe(10);
    expect(arc.sweep).toBe(Math.PI);
    expectPoint(pointAt(arc, 0.5), [0, -10], 12);
  });

  it("makes more than a half circle above bulge 1", () => {
    // arithmetic: bulge 3 on a chord of 6: radius 3 * (1 + 9) / (2 * 3) = 5, height of the bow 3 * 3 = 9
    const arc = edgeFromVertices([-3, 0, 3], [3, 0]) as ArcEdge;
    expect(arc.radius).toBe(5);
    expectPoint(arc.center, [0, -4], 12);
    expectPoint(pointAt(arc, 0.5), [0, -9], 12);
    expect(arc.sweep).toBeCloseTo(4 * Math.atan(3), 14);
  });

  it("turns a negative bulge clockwise", () => {
    const arc = edgeFromVertices([-10, 0, -1], [10, 0]);
    expectPoint(pointAt(arc, 0.5), [0, 10], 12);
  });

  it("takes a bulge too flat to differ from its chord for a line", () => {
    expect(edgeFromVertices([0, 0, 1e-12], [10, 0]).kind).toBe("line");
    expect(edgeFromVertices([0, 0], [10, 0]).kind).toBe("line");
  });

  it("gives the bulge back", () => {
    fc.assert(
      fc.property(ends, ([x0, y0, bulge, x1, y1]) => {
        fc.pre(Math.abs(bulge) > 1e-6);
        expect(bulgeOf(edgeFromVertices([x0, y0, bulge], [x1, y1])) / bulge).toBeCloseTo(1, 9);
      }),
      runs(200),
    );
  });
});

describe("points, length and bounds", () => {
  it("agree with halved chords", () => {
    fc.assert(
      fc.property(ends, ([x0, y0, bulge, x1, y1]) => {
        const edge = edgeFromVertices([x0, y0, bulge], [x1, y1]);
        const line = chords([x0, y0, bulge], [x1, y1], 1e-6);
        expect(edgeLength(edge) / polylineLength(line, false)).toBeCloseTo(1, 5);
        for (const t of [0, 0.13, 0.5, 0.77, 1]) expect(toPolyline(pointAt(edge, t), line, false)).toBeLessThan(2e-6);
        const box = edgeBounds(edge);
        const rough = boundsOfPoints(line);
        for (const [exact, inscribed] of [
          [box.minX, rough.minX],
          [box.minY, rough.minY],
          [-box.maxX, -rough.maxX],
          [-box.maxY, -rough.maxY],
        ] as const) {
          expect(exact).toBeLessThanOrEqual(inscribed + 1e-9);
          expect(exact).toBeGreaterThan(inscribed - 2e-6);
        }
      }),
      runs(150),
    );
  });

  it("start and end on the stored numbers, whichever way the edge is walked", () => {
    fc.assert(
      fc.property(ends, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ([x0, y0, bulge, x1, y1], t) => {
        const edge = edgeFromVertices([x0, y0, bulge], [x1, y1]);
        expect(pointAt(edge, 0)).toEqual([x0, y0]);
        expect(pointAt(edge, 1)).toEqual([x1, y1]);
        const back = reverseEdge(edge);
        expectPoint(pointAt(back, 1 - t), pointAt(edge, t), 8);
        const [first, second] = splitEdge(edge, t);
        expect(first.to).toEqual(second.from);
        expect(edgeLength(first) + edgeLength(second)).toBeCloseTo(edgeLength(edge), 8);
        expectPoint(pointAt(partOfEdge(edge, t / 2, t), 0.5), pointAt(edge, 0.75 * t), 8);
      }),
      runs(200),
    );
  });

  it("have tangents along the curve, of length 1", () => {
    fc.assert(
      fc.property(ends, fc.double({ min: 0.05, max: 0.95, noNaN: true }), ([x0, y0, bulge, x1, y1], t) => {
        const edge = edgeFromVertices([x0, y0, bulge], [x1, y1]);
        const [ux, uy] = tangentAt(edge, t);
        expect(Math.hypot(ux, uy)).toBeCloseTo(1, 12);
        const [before, after] = [pointAt(edge, t - 1e-5), pointAt(edge, t + 1e-5)];
        const step = Math.hypot(after[0] - before[0], after[1] - before[1]);
        expect((after[0] - before[0]) / step).toBeCloseTo(ux, 5);
        expect((after[1] - before[1]) / step).toBeCloseTo(uy, 5);
      }),
      runs(200),
    );
  });
});

describe("nearestOnEdge", () => {
  const lower = edgeFromVertices([-10, 0, 1], [10, 0]);

  it("finds the point inside an arc", () => {
    // arithmetic: 3-4-5, scaled: straight out from the center through [6, -8]
    const near = nearestOnEdge(lower, [12, -16]);
    expectPoint(near.point, [6, -8], 12);
    expect(near.distance).toBeCloseTo(10, 12);
    expect(nearestOnEdge(lower, [3, -4]).distance).toBeCloseTo(5, 12);
  });

  it("falls back to an end outside the arc's angle", () => {
    expect(nearestOnEdge(lower, [13, 4])).toMatchObject({ point: [10, 0], t: 1, distance: 5 });
  });

  it("gives the radius at the center", () => {
    expect(nearestOnEdge(lower, [0, 0]).distance).toBe(10);
  });

  it("gives exactly 0 on the edge", () => {
    fc.assert(
      fc.property(ends, fc.double({ min: 0, max: 1, noNaN: true }), ([x0, y0, bulge, x1, y1], t) => {
        const edge = edgeFromVertices([x0, y0, bulge], [x1, y1]);
        expect(nearestOnEdge(edge, pointAt(edge, t)).distance).toBe(0);
      }),
      runs(300),
    );
  });

  it("agrees with halved chords, and so does the distance alone", () => {
    fc.assert(
      fc.property(ends, coordinate, coordinate, ([x0, y0, bulge, x1, y1], x, y) => {
        const edge = edgeFromVertices([x0, y0, bulge], [x1, y1]);
        const near = nearestOnEdge(edge, [x, y]);
        const rough = toPolyline([x, y], chords([x0, y0, bulge], [x1, y1], 1e-6), false);
        expect(Math.abs(near.distance - rough)).toBeLessThan(2e-6);
        expect(Math.abs(distanceToEdge(edge, [x, y]) - near.distance)).toBeLessThan(1e-9);
        expect(Math.hypot(near.point[0] - x, near.point[1] - y)).toBeCloseTo(near.distance, 8);
        expectPoint(pointAt(edge, near.t), near.point, 8);
      }),
      runs(300),
    );
  });

  it("keeps its digits on very flat arcs", () => {
    // arithmetic: the middle of the chord is bulge times half the chord from the arc
    for (const bulge of [1e-3, 1e-4, 1e-5, 1e-6, 1e-7]) {
      const arc = edgeFromVertices([0, 0, bulge], [200, 0]);
      expect(Math.abs(nearestOnEdge(arc, [100, 0]).distance - bulge * 100)).toBeLessThan(1e-10);
      expect(nearestOnEdge(arc, [100, 50]).distance).toBeCloseTo(50 + bulge * 100, 9);
    }
  });
});

describe("arcContainsAngle and movedSideways", () => {
  it("counts the ends and nothing beyond", () => {
    const arc = edgeFromVertices([10, 0, Math.tan(Math.PI / 8)], [0, 10]) as ArcEdge;
    expect(arcContainsAngle(arc, 0)).toBe(true);
    expect(arcContainsAngle(arc, 1)).toBe(true);
    expect(arcContainsAngle(arc, -0.001)).toBe(false);
    expect(arcContainsAngle(arc, Math.PI / 2 + 0.001)).toBe(false);
    expect(arcContainsAngle(arc, 1 + 2 * Math.PI)).toBe(true);
  });

  it("keeps the center and shrinks to nothing", () => {
    const arc = edgeFromVertices([-10, 0, 1], [10, 0]);
    const moved = movedSideways(arc, 4) as Edge & ArcEdge;
    expect(moved.radius).toBe(6);
    expectPoint(moved.from, [-6, 0], 12);
    expect(movedSideways(arc, 10)).toBeNull();
    expect((movedSideways(arc, -4) as ArcEdge).radius).toBe(14);
  });
});
