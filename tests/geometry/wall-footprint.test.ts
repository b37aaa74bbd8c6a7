import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pointToPath } from "../../geometry/distance.ts";
import { nearestOnEdge } from "../../geometry/edge.ts";
import { areaOf, contains, pathFrom, pathLength } from "../../geometry/outline.ts";
import { findPathCrossing } from "../../geometry/self-crossing.ts";
import { CLIP_UNITS_PER_INCH, WALL_MITER_LIMIT } from "../../geometry/tolerances.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { wallFootprint } from "../../geometry/wall-footprint.ts";
import { chordsOf } from "../oracles/bulge-chords.ts";
import { covers, mitredStrip, pointShape } from "../oracles/jsts.ts";
import { openPath, position } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { variantsOf } from "../oracles/variants.ts";

const open = (...vertices: Vertex[]): PathData => ({ vertices, closed: false });
const closed = (...vertices: Vertex[]): PathData => ({ vertices, closed: true });
const quarter = Math.tan(Math.PI / 8);

describe("wallFootprint", () => {
  it("takes a wall that turns straight back, however thin", () => {
    // Arithmetic: as long as its longer leg; a wall too thin for the clipping grid is as thick as one step shows.
    for (const thickness of [1e-9, 1e-6, 1e-4, 0.01, 1]) {
      const area = wallFootprint(pathFrom(open([-60, -24], [-10, 192], [-35, 84])), thickness);
      const long = Math.hypot(50, 216);
      expect(areaOf(area)).toBeGreaterThan(long * thickness * 0.9);
      expect(areaOf(area)).toBeLessThan(long * (thickness + 8 / CLIP_UNITS_PER_INCH) * 1.1);
    }
  });

  it.each<[string, PathData, number, number, number, "traced" | "united"]>([
    // arithmetic: centerline length times thickness, as long as both sides can be traced
    ["straight", open([100, 219], [280, 219]), 6, 180 * 6, 0, "traced"],
    ["a corner", open([0, 0], [100, 0], [100, 100]), 6, 200 * 6, 0, "traced"],
    [
      "a zigzag",
      open([0, 0], [60, 0], [60, 60], [120, 60], [140, 200]),
      8,
      (180 + Math.hypot(20, 140)) * 8,
      0,
      "traced",
    ],
    ["a straight run over a vertex", open([0, 0], [60, 0], [110, 0]), 8, 880, 0, "traced"],
    ["a half round", open([-50, 0, 1], [50, 0]), 6, 50 * Math.PI * 6, 0, "traced"],
    [
      "a tangent bend",
      open([0, 0], [100, 0, quarter], [130, 30], [130, 90]),
      10,
      (160 + 15 * Math.PI) * 10,
      0,
      "traced",
    ],
    ["a square", closed([0, 0], [100, 0], [100, 100], [0, 100]), 6, 400 * 6, 1, "traced"],
    ["a circle", closed([-50, 0, 1], [50, 0, 1]), 6, 100 * Math.PI * 6, 1, "traced"],
    // united from strips: arithmetic
    ["a hairpin narrower than the wall", open([0, 0], [100, 0], [100, 2], [0, 2]), 6, 103 * 8, 0, "united"],
    ["a cross", open([0, 0], [100, 0], [100, 50], [50, 50], [50, -50]), 2, 300 * 2 - 4, 1, "united"],
    ["a square drawn open", open([0, 0], [100, 0], [100, 100], [0, 100], [0, 0]), 6, 400 * 6 - 9, 1, "united"],
    ["a ring too small to leave a hole", closed([0, 0], [4, 0], [4, 4], [0, 4]), 6, 100, 0, "united"],
  ])("%s, in every variant", (_, data, thickness, area, holes, how) => {
    for (const variant of variantsOf(data)) {
      const footprint = wallFootprint(pathFrom(variant.data), thickness);
      const rounding = how === "traced" ? 1e-9 * area : (2 * pathLength(footprint.outer)) / CLIP_UNITS_PER_INCH;
      expect(Math.abs(areaOf(footprint) - area), variant.name).toBeLessThan(rounding);
      expect(footprint.holes.length, variant.name).toBe(holes);
      for (const path of [footprint.outer, ...footprint.holes]) expect(findPathCrossing(path)).toBeNull();
    }
  });

  it("keeps true arcs", () => {
    const { outer, holes } = wallFootprint(pathFrom(open([-50, 0, 1], [50, 0])), 6);
    expect(holes).toEqual([]);
    expect(outer.edges.flatMap((edge) => (edge.kind === "arc" ? [edge.radius] : [])).sort()).toEqual([47, 53]);
  });

  it("miters a corner to its point and cuts a sharp one off", () => {
    // arithmetic: a square corner reaches half a thickness out both ways
    const square = wallFootprint(pathFrom(open([0, 0], [100, 0], [100, 100])), 6);
    expect(contains(square, [102.99, -2.99])).toBe(true);
    const sharp = wallFootprint(pathFrom(open([0, 0], [100, 0], [0, 10])), 6);
    expect(sharp.outer.bounds.maxX).toBeLessThan(100 + 3 * WALL_MITER_LIMIT);
    expect(contains(sharp, [104, 0])).toBe(false);
    // 160 degrees of turn: 1 / cos(80 degrees) = 5.76 is beyond the limit of 5; 150 degrees: 3.86 is not
    const turned = (degrees: number): Vertex => {
      const angle = (degrees * Math.PI) / 180;
      return [100 + 100 * Math.cos(angle), 100 * Math.sin(angle)];
    };
    expect(wallFootprint(pathFrom(open([0, 0], [100, 0], turned(160))), 6).outer.bounds.maxX).toBeLessThan(104);
    const reach = 3 / Math.cos((75 * Math.PI) / 180);
    const mitered = wallFootprint(pathFrom(open([0, 0], [100, 0], turned(150))), 6);
    expect(mitered.outer.bounds.maxX).toBeCloseTo(100 + reach * Math.cos((15 * Math.PI) / 180), 9);
  });

  it("joins lines and arcs that meet at an angle", () => {
    const data = open([0, 0], [60, 0, 0.6], [100, 40, -0.4], [150, 40], [150, 90]);
    for (const variant of variantsOf(data)) {
      const footprint = wallFootprint(pathFrom(variant.data), 7);
      const strip = mitredStrip(chordsOf(variant.data, 1e-5), 3.5, WALL_MITER_LIMIT);
      expect(Math.abs(areaOf(footprint) - strip.getArea()), variant.name).toBeLessThan(0.05);
    }
  });

  it("is where every point within half the thickness of a straight stretch is", () => {
    fc.assert(
      fc.property(
        openPath(120),
        fc.integer({ min: 1, max: 12 }),
        fc.array(position(130)),
        (data, thickness, points) => {
          const lines = open(...data.vertices.map(([x, y]): Vertex => [x, y]));
          fc.pre(gentle(lines.vertices) && endsApart(lines.vertices));
          const footprint = wallFootprint(pathFrom(lines), thickness);
          const strip = mitredStrip(chordsOf(lines, 1e-4), thickness / 2, WALL_MITER_LIMIT);
          // strips that had to be united lie on the clipping grid
          const rounding = (2 * pathLength(footprint.outer)) / CLIP_UNITS_PER_INCH;
          expect(Math.abs(areaOf(footprint) - strip.getArea())).toBeLessThan(rounding + 1e-6);
          for (const p of points) {
            const near = pointToPath(p, footprint.outer).length;
            if (near > 0.01) expect(contains(footprint, p)).toBe(covers(strip, pointShape(p)));
          }
        },
      ),
      runs(100),
    );
  });

  it("holds what lies square to its edges, whatever the path, and nothing beyond a miter's reach", () => {
    fc.assert(
      fc.property(
        openPath(60),
        fc.boolean(),
        fc.integer({ min: 1, max: 16 }),
        fc.array(position(70), { minLength: 30 }),
        ({ vertices }, round, thickness, points) => {
          const last = vertices[vertices.length - 1] as Vertex;
          const first = vertices[0] as Vertex;
          fc.pre(!round || (vertices.length > 2 && Math.hypot(first[0] - last[0], first[1] - last[1]) > 1));
          const path = pathFrom({ vertices, closed: round });
          const footprint = wallFootprint(path, thickness);
          for (const p of points) {
            const { length } = pointToPath(p, path);
            if (length > (thickness / 2) * WALL_MITER_LIMIT + 0.01) expect(contains(footprint, p)).toBe(false);
            for (const edge of path.edges) {
              const { t, distance } = nearestOnEdge(edge, p);
              if (t > 0 && t < 1 && distance < thickness / 2 - 0.01) expect(contains(footprint, p)).toBe(true);
            }
          }
        },
      ),
      runs(150),
    );
  });

  it("refuses a thickness that is none", () => {
    const path = pathFrom(open([0, 0], [100, 0]));
    for (const thickness of [0, -1, Number.NaN]) {
      expect(() => wallFootprint(path, thickness)).toThrow(String(thickness));
    }
  });
});

/** No corner turns so far that the miter limit comes into play, where jsts cuts corners its own way. */
function gentle(vertices: readonly Vertex[]): boolean {
  return vertices.every((at, i) => {
    const [before, after] = [vertices[i - 1], vertices[i + 1]];
    if (!before || !after) return true;
    const [a, b]: [Point, Point] = [
      [at[0] - before[0], at[1] - before[1]],
      [after[0] - at[0], after[1] - at[1]],
    ];
    return (a[0] * b[0] + a[1] * b[1]) / (Math.hypot(...a) * Math.hypot(...b)) > -0.8;
  });
}

/** jsts joins a line whose ends meet into a ring. */
function endsApart(vertices: readonly Vertex[]): boolean {
  const [first, last] = [vertices[0] as Vertex, vertices[vertices.length - 1] as Vertex];
  return Math.hypot(last[0] - first[0], last[1] - first[1]) > 0;
}
