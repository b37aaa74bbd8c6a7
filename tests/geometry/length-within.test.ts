import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lengthWithin, pointToArea } from "../../geometry/distance.ts";
import { edgeLength, pointAt } from "../../geometry/edge.ts";
import { areaFrom, pathFrom, pathLength } from "../../geometry/outline.ts";
import type { Area, Path, PathData, Point } from "../../geometry/types.ts";
import { arcOutline, openPath, position } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { placed, turnedBy, variantsOf } from "../oracles/variants.ts";
import { circle, rectangle, squareAt } from "./sample-outlines.ts";

const open = (...vertices: PathData["vertices"][number][]): PathData => ({ vertices, closed: false });

/** Length by sampling: independent of how the path is cut, good to a step at every end of a stretch. */
function sampledLength(path: Path, area: Area, limit: number, step: number): number {
  let sum = 0;
  for (const edge of path.edges) {
    const count = Math.ceil(edgeLength(edge) / step);
    for (let i = 0; i < count; i++) {
      if (pointToArea(pointAt(edge, (i + 0.5) / count), area).length <= limit) sum += edgeLength(edge) / count;
    }
  }
  return sum;
}

describe("lengthWithin", () => {
  it("of a fence along a rectangle", () => {
    const fence = open([-80, -55], [464, -55]);
    for (const { name, data, place } of variantsOf(rectangle)) {
      const moved = pathFrom(placed(fence, place, name.startsWith("mirrored")));
      const { length, pieces } = lengthWithin(moved, areaFrom(data), 60);
      // independent engine, 0.1 %
      expect(length / 431.958301142505, name).toBeCloseTo(1, 3);
      // arithmetic: 384 and two legs of the triangle 60, 55
      expect(length, name).toBeCloseTo(384 + 2 * Math.sqrt(60 ** 2 - 55 ** 2), 8);
      expect(pieces.length, name).toBe(1);
      expect(pathLength(pieces[0] as Path)).toBeCloseTo(length, 8);
    }
  });

  it.each<[string, PathData, PathData, number, number, number]>([
    // arithmetic
    ["a line past a circle", open([-300, -130], [300, -130]), circle, 50, 2 * Math.sqrt(150 ** 2 - 130 ** 2), 1],
    ["a line across a circle at limit 0", open([-300, 60], [300, 60]), circle, 0, 160, 1],
    ["a line that touches the limit", open([-300, -150], [300, -150]), circle, 50, 0, -1],
    ["a line exactly at the limit", open([0, -60], [384, -60]), rectangle, 60, 384, 1],
    ["a line just beyond it", open([0, -60.001], [384, -60.001]), rectangle, 60, 0, 0],
    [
      "an arc round a corner at the limit",
      open([-60, 0, Math.tan(Math.PI / 8)], [0, -60]),
      rectangle,
      60,
      30 * Math.PI,
      1,
    ],
    ["a path inside", open([10, 10], [20, 10], [20, 30]), rectangle, 12, 30, 1],
    ["a path far off", open([1000, 10], [1010, 10]), rectangle, 12, 0, 0],
    ["a path in, out and in again", open([100, -5], [100, -105], [200, -105], [200, -5]), rectangle, 25, 40, 2],
  ])("of %s", (_, path, data, limit, wanted, count) => {
    for (const degrees of [0, 33, 90]) {
      const turn = turnedBy(degrees);
      const found = lengthWithin(pathFrom(placed(path, turn)), areaFrom(placed(data, turn)), limit);
      // a touch may count for what lies within LIMIT_TOLERANCE of the limit: 2 * sqrt(2 * 150 * 1e-6) = 0.035 in.
      expect(Math.abs(found.length - wanted)).toBeLessThan(count < 0 ? 0.04 : 1e-4);
      if (count >= 0) expect(found.pieces.length).toBe(count);
    }
  });

  it("counts an island's distance to its edge", () => {
    const area = areaFrom(rectangle, [squareAt(200, 100)]);
    // arithmetic: across the island, 12 in. are farther than 14 in. from its edges of 40
    expect(lengthWithin(pathFrom(open([150, 100], [250, 100])), area, 14).length).toBeCloseTo(88, 9);
  });

  it("joins the last stretch of a closed path to its first", () => {
    const loop = pathFrom({
      vertices: [
        [192, -20],
        [192, 212],
        [900, 212],
        [900, -20],
      ],
      closed: true,
    });
    const { length, pieces } = lengthWithin(loop, areaFrom(rectangle), 24);
    // arithmetic: the edge across, and along both sides to the corners and round them
    expect(length).toBeCloseTo(232 + 2 * (192 + Math.sqrt(24 ** 2 - 20 ** 2)), 8);
    expect(pieces.length).toBe(1);
    const ring = pathFrom({
      vertices: [
        [-9, -9],
        [393, -9],
        [393, 201],
        [-9, 201],
      ],
      closed: true,
    });
    const all = lengthWithin(ring, areaFrom(rectangle), 24);
    expect(all.length).toBeCloseTo(pathLength(ring), 9);
    expect(all.pieces.map(({ closed }) => closed)).toEqual([true]);
  });

  it("agrees with sampling on random paths and outlines, and its pieces keep the limit", () => {
    fc.assert(
      fc.property(
        arcOutline,
        openPath(300),
        position(200),
        fc.integer({ min: 0, max: 120 }),
        (data, path, shift, limit) => {
          const area = areaFrom(data);
          const moved = pathFrom(placed(path, ([x, y]): Point => [x + shift[0], y + shift[1]]));
          const { length, pieces } = lengthWithin(moved, area, limit);
          const step = 0.25;
          // every end of a stretch may be off by a step, and touches by their own length
          const slack = 2 * step * (pieces.length + 1) + step * moved.edges.length;
          expect(Math.abs(length - sampledLength(moved, area, limit, step))).toBeLessThan(slack);
          expect(pieces.reduce((sum, piece) => sum + pathLength(piece), 0)).toBeCloseTo(length, 6);
          for (const piece of pieces) {
            for (const edge of piece.edges) {
              for (const t of [0, 0.3, 0.5, 0.9, 1]) {
                expect(pointToArea(pointAt(edge, t), area).length).toBeLessThan(limit + 1.1e-6);
              }
            }
          }
        },
      ),
      runs(60),
    );
  });
});
