/** Curves through taped points. Source: circle geometry. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { curveThrough } from "../../../app/taping/curve-through.ts";
import { tangentAt } from "../../../geometry/edge.ts";
import { areaFrom, areaOf, pathFrom, pathLength } from "../../../geometry/outline.ts";
import type { Edge, Point } from "../../../geometry/types.ts";
import { runs } from "../../oracles/seed.ts";

const onCircle = (radius: number, degrees: number): Point => [
  radius * Math.cos((degrees * Math.PI) / 180),
  radius * Math.sin((degrees * Math.PI) / 180),
];

describe("points of a circle", () => {
  it("give the circle back, also when they lie unevenly", () => {
    const points = [0, 50, 80, 170, 220, 300].map((degrees) => onCircle(120, degrees));
    const path = curveThrough(
      points,
      points.map(() => true),
      true,
    );
    expect(pathLength(pathFrom(path))).toBeCloseTo(2 * Math.PI * 120, 6);
    expect(areaOf(areaFrom(path))).toBeCloseTo(Math.PI * 120 * 120, 4);
  });

  it("give half a circle between straight sides: an end of 192 in. across", () => {
    const points: Point[] = [
      [0, -96],
      ...[-90, -45, 0, 45, 90].map((d): Point => [300 + onCircle(96, d)[0], onCircle(96, d)[1]]),
      [0, 96],
    ];
    const path = curveThrough(points, [false, true, true, true, true, false, false], true);
    expect(pathLength(pathFrom(path))).toBeCloseTo(600 + 192 + Math.PI * 96, 6);
  });
});

describe("sides", () => {
  it("stay straight when they are not curved, or when nothing says how one alone bends", () => {
    const square: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    expect(curveThrough(square, [false, false, false, false], true).vertices).toEqual(square);
    expect(curveThrough(square, [true, false, false, false], true).vertices).toEqual(square);
  });

  it("stay straight where an arc would have to turn right round to end in its direction", () => {
    // The third point lies back on the way to the second: a slip of the hand.
    const folded: Point[] = [
      [0, 0],
      [100, 0],
      [200, 0],
      [101, 0.01],
    ];
    const { vertices } = curveThrough(folded, [false, true, true, false], false);
    expect(Math.max(...vertices.map(([, , bulge = 0]) => Math.abs(bulge)))).toBeLessThan(40);
  });

  it("meet without a corner at every point between two curved ones, and inside every pair of arcs", () => {
    const around = fc.array(fc.double({ min: 60, max: 240, noNaN: true }), { minLength: 4, maxLength: 12 });
    fc.assert(
      fc.property(around, (radii) => {
        const points = radii.map((radius, i) => onCircle(radius, (i * 360) / radii.length));
        const { edges } = pathFrom(
          curveThrough(
            points,
            points.map(() => true),
            true,
          ),
        );
        for (const [i, edge] of edges.entries()) {
          const before = edges[(i + edges.length - 1) % edges.length] as Edge;
          const [u, v] = [tangentAt(before, 1), tangentAt(edge, 0)];
          expect(Math.abs(u[0] * v[1] - u[1] * v[0])).toBeLessThan(1e-6);
          expect(u[0] * v[0] + u[1] * v[1]).toBeGreaterThan(0);
        }
        for (const point of points)
          expect(edges.some(({ from }) => from[0] === point[0] && from[1] === point[1])).toBe(true);
      }),
      runs(200),
    );
  });
});
