import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { edgeFromVertices, nearestOnEdge, reverseEdge } from "../../geometry/edge.ts";
import { crossings } from "../../geometry/edge-crossings.ts";
import type { Edge, Point, Vertex } from "../../geometry/types.ts";
import { chordsOf, toPolyline } from "../oracles/bulge-chords.ts";
import { runs } from "../oracles/seed.ts";
import { turnedBy } from "../oracles/variants.ts";

const edge = (a: Vertex, b: Vertex): Edge => edgeFromVertices(a, b);

function expectSame(found: Point[], wanted: Point[]): void {
  expect(found.length, JSON.stringify(found)).toBe(wanted.length);
  for (const p of wanted) {
    expect(
      found.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-7),
      `${p} among ${JSON.stringify(found)}`,
    ).toBe(true);
  }
}

type Ends = readonly [Vertex, Vertex];
const line = (x0: number, y0: number, x1: number, y1: number): Ends => [
  [x0, y0],
  [x1, y1],
];
const arc = (x0: number, y0: number, bulge: number, x1: number, y1: number): Ends => [
  [x0, y0, bulge],
  [x1, y1],
];

/** Each case in both orders, both directions and turned. */
function check(a: Ends, b: Ends, ...wanted: Point[]): void {
  for (const degrees of [0, 17, 90, 200]) {
    const turn = turnedBy(degrees);
    const place = ([x, y, bulge]: Vertex): Vertex => [...turn([x, y]), bulge ?? 0] as const;
    const [e, f] = [edge(place(a[0]), place(a[1])), edge(place(b[0]), place(b[1]))];
    for (const one of [e, reverseEdge(e)]) {
      for (const other of [f, reverseEdge(f)]) {
        expectSame(crossings(one, other), wanted.map(turn));
        expectSame(crossings(other, one), wanted.map(turn));
      }
    }
  }
}

// The wanted points are arithmetic: 3-4-5 triangles and the like.
describe("crossings", () => {
  it("of two lines", () => {
    check(line(0, 0, 10, 10), line(0, 10, 10, 0), [5, 5]);
    check(line(0, 0, 10, 0), line(5, 0, 5, 7), [5, 0]);
    check(line(0, 0, 10, 0), line(10, 0, 20, 5), [10, 0]);
    check(line(0, 0, 10, 0), line(0, 1, 10, 1));
    check(line(0, 0, 10, 0), line(5, 0.001, 5, 7));
  });

  it("of lines that overlap: the ends of the overlap", () => {
    check(line(0, 0, 10, 0), line(4, 0, 20, 0), [4, 0], [10, 0]);
    check(line(0, 0, 10, 0), line(2, 0, 3, 0), [2, 0], [3, 0]);
    check(line(0, 0, 10, 0), line(10, 0, 20, 0), [10, 0]);
    check(line(0, 0, 10, 0), line(11, 0, 20, 0));
  });

  it("of a line and an arc", () => {
    const lower = arc(-10, 0, 1, 10, 0);
    check(line(-20, -6, 20, -6), lower, [-8, -6], [8, -6]);
    check(line(0, -6, 20, -6), lower, [8, -6]);
    check(line(-20, 6, 20, 6), lower);
    check(line(-20, -11, 20, -11), lower);
    check(line(-20, -10, 20, -10), lower, [0, -10]);
    // more than a half circle, center [0, -4], radius 5
    check(line(-20, -4, 20, -4), arc(-3, 0, 3, 3, 0), [-5, -4], [5, -4]);
    check(line(-20, 0.5, 20, 0.5), arc(-3, 0, 3, 3, 0));
  });

  it("of two arcs", () => {
    // circles of radius 5 with centers 6 apart meet 4 above and below the middle
    check(arc(-5, 0, 1, 5, 0), arc(1, 0, 1, 11, 0), [3, -4]);
    check(arc(-5, 0, 1, 5, 0), arc(1, 0, -1, 11, 0));
    check(arc(0, -5, 1, 0, 5), arc(6, -5, -1, 6, 5), [3, -4], [3, 4]);
    // touching from outside and from inside
    check(arc(0, -5, 1, 0, 5), arc(10, -5, -1, 10, 5), [5, 0]);
    check(arc(0, -5, 1, 0, 5), arc(2, -3, 1, 2, 3), [5, 0]);
  });

  it("of arcs of one circle: the ends of what they share", () => {
    check(arc(-10, 0, 1, 10, 0), arc(0, -10, 1, 0, 10), [0, -10], [10, 0]);
    check(arc(-10, 0, 1, 10, 0), arc(10, 0, 1, -10, 0), [-10, 0], [10, 0]);
    check(arc(-10, 0, 1, 10, 0), arc(-6, 8, -Math.tan(0.1), 6, 8));
  });

  it("lie on both edges, and are as many as chords see", () => {
    let compared = 0;
    const coordinate = fc.integer({ min: -100_000, max: 100_000 }).map((thousandths) => thousandths / 1000);
    const vertex = fc.tuple(coordinate, coordinate, fc.double({ min: -3, max: 3, noNaN: true }));
    fc.assert(
      fc.property(vertex, vertex, vertex, vertex, (a0, a1, b0, b1) => {
        fc.pre(Math.hypot(a1[0] - a0[0], a1[1] - a0[1]) > 5 && Math.hypot(b1[0] - b0[0], b1[1] - b0[1]) > 5);
        const [a, b] = [edge(a0, a1), edge(b0, b1)];
        const found = crossings(a, b);
        for (const p of found) {
          expect(nearestOnEdge(a, p).distance).toBeLessThan(1e-8);
          expect(nearestOnEdge(b, p).distance).toBeLessThan(1e-8);
        }
        // Chords count the same away from tangents and ends.
        const counted = chordCrossings(chordsOf({ vertices: [a0, a1], closed: false }, 1e-4), b0, b1);
        if (counted === null) return;
        compared++;
        expect(found.length).toBe(counted);
      }),
      runs(400),
    );
    expect(compared).toBeGreaterThan(100);
  });
});

/** Changes of side along a's chords while over b's chords; null when a tangent or an end is too near to call. */
function chordCrossings(chords: Point[], b0: Vertex, b1: Vertex): number | null {
  const other = chordsOf({ vertices: [b0, b1], closed: false }, 1e-4);
  const [start, end] = [chords[0] as Point, chords[chords.length - 1] as Point];
  let count = 0;
  const met: Point[] = [];
  for (let i = 0; i + 1 < chords.length; i++) {
    for (let j = 0; j + 1 < other.length; j++) {
      const [a, b, c, d] = [chords[i], chords[i + 1], other[j], other[j + 1]] as [Point, Point, Point, Point];
      const denominator = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
      const t = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / denominator;
      const s = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / denominator;
      if (!(t >= 0 && t < 1 && s >= 0 && s < 1)) continue;
      count++;
      met.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
      const lengths = Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(d[0] - c[0], d[1] - c[1]);
      if (Math.abs(denominator) < 0.1 * lengths) return null;
    }
  }
  const otherEnds = [other[0] as Point, other[other.length - 1] as Point];
  if ([start, end].some((p) => toPolyline(p, other, false) < 0.05)) return null;
  if (otherEnds.some((p) => toPolyline(p, chords, false) < 0.05)) return null;
  return nearlyTouching(chords, other, met) ? null : count;
}

/** True when the chords come close somewhere that is not one of the meetings found. */
function nearlyTouching(line: Point[], other: Point[], met: Point[]): boolean {
  return line.some(
    (p) =>
      met.every((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) > 1) &&
      other.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 0.05),
  );
}
