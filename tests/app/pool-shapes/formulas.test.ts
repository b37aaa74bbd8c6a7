import { describe, expect, it } from "vitest";
import { pathFrom } from "../../../geometry/outline.ts";
import type { ArcEdge, PathData } from "../../../geometry/types.ts";
import { areaInside, drawn, lengthOf, sharpestCorner, sizeOf } from "./measured.ts";

const { PI, abs, acos, atan, hypot, sin, sqrt, tan } = Math;

/** Angle between the sides p and q of a triangle, across from r (law of cosines). */
const across = (p: number, q: number, r: number) => acos((p * p + q * q - r * r) / (2 * p * q));

// Source of every figure here: arithmetic, from the formulas of plane geometry written out in each test.
describe("rectangles", () => {
  it("with sharp corners", () => {
    const outline = drawn("rectangle", { length: 384, width: 192 });
    expect(outline.vertices).toEqual([
      [-192, -96],
      [192, -96],
      [192, 96],
      [-192, 96],
    ]);
  });

  it("with one radius lose four corners of a square less a circle", () => {
    const [l, w, r] = [420, 210, 30];
    const outline = drawn("rectangle", { length: l, width: w, radius: r });
    expect(areaInside(outline)).toBeCloseTo(l * w - (4 - PI) * r * r, 8);
    expect(lengthOf(outline)).toBeCloseTo(2 * (l + w) - (8 - 2 * PI) * r, 8);
    expect(outline.vertices).toHaveLength(8);
    expect(sharpestCorner(outline)).toBeLessThan(1e-12);
    expect(sizeOf(outline)).toEqual([l, w]);
  });

  it("with the largest radius are two half circles and two sides, and no sides when square", () => {
    const long = drawn("rectangle", { length: 300, width: 200, radius: 100 });
    expect(long.vertices).toHaveLength(6);
    expect(lengthOf(long)).toBeCloseTo(200 + 200 * PI, 8);
    const round = drawn("rectangle", { length: 200, width: 200, radius: 100 });
    expect(round.vertices).toHaveLength(4);
    expect(areaInside(round)).toBeCloseTo(PI * 1e4, 8);
  });

  it("with a radius for each corner", () => {
    const radii = { lowerLeft: 0, lowerRight: 24, upperRight: 60, upperLeft: 12 };
    const outline = drawn("rectangle-corners", { length: 400, width: 200, ...radii });
    const [sum, squares] = [24 + 60 + 12, 24 ** 2 + 60 ** 2 + 12 ** 2];
    expect(areaInside(outline)).toBeCloseTo(80_000 - (1 - PI / 4) * squares, 8);
    expect(lengthOf(outline)).toBeCloseTo(1200 - (2 - PI / 2) * sum, 8);
    expect(outline.vertices[0]).toEqual([-200, -100]);
    expect(outline.vertices).toHaveLength(7);
  });
});

describe("arcs at the ends", () => {
  /** Area and length of a circle's segment by its chord and height. */
  function segment(chord: number, height: number) {
    const radius = (chord * chord) / (8 * height) + height / 2;
    const angle = 4 * atan((2 * height) / chord);
    return { area: (radius * radius * (angle - sin(angle))) / 2, length: radius * angle };
  }

  it.each([
    [360, 192, 120, 60],
    [432, 216, 144, 30],
    [400, 180, 180, 90],
  ])("Roman end, %d by %d, arc of %d by %d", (l, w, arcWidth, arcDepth) => {
    const { area, length } = segment(arcWidth, arcDepth);
    const one = drawn("roman-end", { length: l, width: w, arcWidth, arcDepth });
    expect(areaInside(one)).toBeCloseTo((l - arcDepth) * w + area, 7);
    expect(lengthOf(one)).toBeCloseTo(2 * (l - arcDepth) + w + (w - arcWidth) + length, 8);
    expect(sizeOf(one)[0]).toBeCloseTo(l, 9);
    const both = drawn("double-roman-end", { length: l, width: w, arcWidth, arcDepth });
    expect(areaInside(both)).toBeCloseTo((l - 2 * arcDepth) * w + 2 * area, 7);
    expect(lengthOf(both)).toBeCloseTo(2 * (l - 2 * arcDepth) + 2 * (w - arcWidth) + 2 * length, 8);
    expect(sizeOf(both)[0]).toBeCloseTo(l, 9);
    expect(sizeOf(both)[1]).toBeCloseTo(w, 9);
  });

  it("a Roman end starts with a half circle five eighths as wide as the pool, to the foot", () => {
    const outline = drawn("roman-end", { length: 432, width: 192 });
    expect(lengthOf(outline)).toBeCloseTo(2 * (432 - 60) + 192 + 72 + 60 * PI, 8);
  });

  it("oval: two half circles", () => {
    const outline = drawn("oval", { length: 396, width: 216 });
    expect(areaInside(outline)).toBeCloseTo(180 * 216 + (PI * 216 * 216) / 4, 7);
    expect(lengthOf(outline)).toBeCloseTo(360 + 216 * PI, 8);
    expect(sharpestCorner(outline)).toBeLessThan(1e-12);
    expect(areaInside(drawn("oval", { length: 200, width: 200 }))).toBeCloseTo(PI * 1e4, 8);
  });

  it("round", () => {
    const outline = drawn("round", { diameter: 90 });
    expect(areaInside(outline)).toBeCloseTo(PI * 45 * 45, 8);
    expect(lengthOf(outline)).toBeCloseTo(90 * PI, 8);
    expect(sharpestCorner(outline)).toBeLessThan(1e-12);
  });
});

describe("Grecian", () => {
  it("loses four triangles", () => {
    const outline = drawn("grecian", { length: 384, width: 192, cut: 48, cutAcross: 36 });
    expect(areaInside(outline)).toBeCloseTo(384 * 192 - 2 * 48 * 36, 9);
    expect(lengthOf(outline)).toBeCloseTo(2 * (384 - 96) + 2 * (192 - 72) + 4 * 60, 9);
    expect(outline.vertices).toHaveLength(8);
  });

  it("with cuts of half a side has no side left there", () => {
    expect(drawn("grecian", { length: 200, width: 200, cut: 100, cutAcross: 50 }).vertices).toHaveLength(6);
    expect(drawn("grecian", { length: 200, width: 200, cut: 100, cutAcross: 100 }).vertices).toHaveLength(4);
  });
});

describe("L shapes", () => {
  it("true L: two rectangles", () => {
    const outline = drawn("true-l", { length: 480, width: 192, legLength: 360, legWidth: 168 });
    expect(areaInside(outline)).toBeCloseTo(480 * 192 + (360 - 192) * 168, 8);
    expect(lengthOf(outline)).toBeCloseTo(2 * (480 + 360), 9);
    expect(sizeOf(outline)).toEqual([480, 360]);
  });

  it("lazy L: two trapezoids that share the line from corner to corner", () => {
    const [l, w, leg, legW, bend] = [420, 192, 300, 144, 40];
    const angle = (bend * PI) / 180;
    // Along each outer side, from the outer corner to the foot of the inner one.
    const back = (legW - w * Math.cos(angle)) / sin(angle);
    const legBack = (w - legW * Math.cos(angle)) / sin(angle);
    const outline = drawn("lazy-l", { length: l, width: w, legLength: leg, legWidth: legW, bend });
    expect(areaInside(outline)).toBeCloseTo((w * (2 * l - back)) / 2 + (legW * (2 * leg - legBack)) / 2, 7);
    expect(lengthOf(outline)).toBeCloseTo(2 * l + 2 * leg + w + legW - back - legBack, 8);
  });

  it("rounded corners shorten a corner that turns by t by 2 tan(t/2) - t of the radius", () => {
    const sizes = { length: 420, width: 192, legLength: 300, legWidth: 192, bend: 45 };
    const [r, inside] = [24, 60];
    const [sharp, round] = [drawn("lazy-l", sizes), drawn("lazy-l", { ...sizes, radius: r, insideRadius: inside })];
    const shorter = (t: number) => 2 * tan(t / 2) - t;
    // Four square corners and the outer one of the bend lose, the inner one loses too.
    const loss = 4 * shorter(PI / 2) * r + shorter(PI / 4) * r + shorter(PI / 4) * inside;
    expect(lengthOf(round)).toBeCloseTo(lengthOf(sharp) - loss, 8);
    // Outer corners lose area, the inner corner gains it.
    const piece = (t: number) => tan(t / 2) - t / 2;
    const change = -(4 * piece(PI / 2) + piece(PI / 4)) * r * r + piece(PI / 4) * inside * inside;
    expect(areaInside(round)).toBeCloseTo(areaInside(sharp) + change, 6);
    expect(sharpestCorner(round)).toBeLessThan(1e-9);
  });
});

describe("round ends that go on smoothly", () => {
  it("kidney: arcs by the triangles of their centers", () => {
    const [l, large, small, outer, inner] = [384, 216, 168, 288, 96];
    const outline = drawn("kidney", { length: l, large, small, outer, inner });
    const [a, b] = [large / 2, small / 2];
    const c = l - a - b;
    // Sides of the triangle of the ends' centers and a joining arc's center: differences outward, sums inward.
    const [oa, ob, ia, ib] = [outer - a, outer - b, inner + a, inner + b];
    const [atOuter, atInner] = [across(oa, ob, c), across(ia, ib, c)];
    const [aToOuter, aToInner] = [across(oa, c, ob), across(ia, c, ib)];
    const [bToOuter, bToInner] = [across(ob, c, oa), across(ib, c, ia)];
    // An end runs from opposite the outer center round its far side to the inner center, both below the axis.
    const endA = PI + aToOuter - aToInner;
    const endB = PI + bToOuter - bToInner;
    expect(lengthOf(outline)).toBeCloseTo(a * endA + b * endB + outer * atOuter + inner * atInner, 7);
    // The sectors, and the quadrilateral of the centers walked in their order.
    const heron = (p: number, q: number, r: number) => {
      const s = (p + q + r) / 2;
      return sqrt(s * (s - p) * (s - q) * (s - r));
    };
    const sectors = (a * a * endA + b * b * endB + outer * outer * atOuter - inner * inner * atInner) / 2;
    expect(areaInside(outline)).toBeCloseTo(sectors + heron(ia, ib, c) - heron(oa, ob, c), 5);
    expect(sharpestCorner(outline)).toBeLessThan(1e-9);
    expect(sizeOf(outline)[0]).toBeCloseTo(l, 8);
  });

  it.each([
    [384, 216, 180, 135],
    [384, 192, 192, 120],
    [480, 216, 168, 60],
    [300, 200, 120, 112],
  ])("figure 8, %d long, ends %d and %d, neck %d", (l, large, small, neck) => {
    const outline = drawn("figure-8", { length: l, large, small, neck });
    const [a, b] = [large / 2, small / 2];
    const c = l - a - b;
    const arcs = outline.vertices.filter((vertex) => (vertex[2] ?? 0) < 0);
    expect(arcs).toHaveLength(2);
    // The neck's own radius comes out of the drawing; that it touches both ends and leaves the neck is checked from it.
    const circles = circlesOf(outline).filter(({ sweep }) => sweep < 0);
    for (const circle of circles) {
      const ends = circlesOf(outline).filter(({ sweep }) => sweep > 0);
      for (const end of ends) {
        const apart = hypot(circle.center[0] - end.center[0], circle.center[1] - end.center[1]);
        expect(apart).toBeCloseTo(circle.radius + end.radius, 7);
      }
      expect(abs(circle.center[1]) - circle.radius).toBeCloseTo(neck / 2, 8);
    }
    const r = circles[0]?.radius ?? 0;
    const [atNeck, atA, atB] = [across(r + a, r + b, c), across(r + a, c, r + b), across(r + b, c, r + a)];
    const length = 2 * r * atNeck + a * (2 * PI - 2 * atA) + b * (2 * PI - 2 * atB);
    expect(lengthOf(outline)).toBeCloseTo(length, 6);
    expect(sharpestCorner(outline)).toBeLessThan(1e-7);
    expect(sizeOf(outline)[0]).toBeCloseTo(l, 8);
    expect(sizeOf(outline)[1]).toBeCloseTo(large, 8);
  });
});

function circlesOf(outline: PathData): ArcEdge[] {
  return pathFrom(outline).edges.filter((edge) => edge.kind === "arc");
}
