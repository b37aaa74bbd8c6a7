import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alignedGrid, shellGrid } from "../../geometry/aligned-grid.ts";
import { differenceRegions, offsetRegion, regionArea, regionContains } from "../../geometry/clipping.ts";
import { gridOver } from "../../geometry/grid.ts";
import { areaFrom, flattenArea, pathLength } from "../../geometry/outline.ts";
import type { Point, Region } from "../../geometry/types.ts";
import { intersection, lineShape, regionShape } from "../oracles/jsts.ts";
import * as shapes from "../oracles/outline-shapes.ts";
import { arcOutline } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";

const band = (water: Region): Region => differenceRegions(offsetRegion(water, 36), water);

/** Every line of the lattice cut by jsts. */
function cutByJsts(region: Region, spacing: number, [x0, y0]: Point): number {
  const points = region.flat(2);
  const low = (k: 0 | 1): number => Math.min(...points.map((p) => p[k])) - 1;
  const high = (k: 0 | 1): number => Math.max(...points.map((p) => p[k])) + 1;
  const shape = regionShape(region);
  let length = 0;
  for (let i = Math.ceil((low(0) - x0) / spacing); x0 + i * spacing < high(0); i++) {
    const x = x0 + i * spacing;
    length += intersection(
      lineShape([
        [x, low(1)],
        [x, high(1)],
      ]),
      shape,
    ).getLength();
  }
  for (let i = Math.ceil((low(1) - y0) / spacing); y0 + i * spacing < high(1); i++) {
    const y = y0 + i * spacing;
    length += intersection(
      lineShape([
        [low(0), y],
        [high(0), y],
      ]),
      shape,
    ).getLength();
  }
  return length;
}

describe("grid over a region", () => {
  it("of a rectangle is arithmetic", () => {
    const region = flattenArea(areaFrom(shapes.rectangle));
    const grid = gridOver(region, 12, [6, 6]);
    expect(grid.length).toBeCloseTo(32 * 192 + 16 * 384, 9);
    expect(grid.crossings).toBe(32 * 16);
    expect(grid.lines.length).toBe(48);
    expect(grid.loose).toBe(0);
  });

  it("is cut as jsts cuts it, for every outline, and near 2 / 12 in. to the square inch", () => {
    for (const [name, data] of Object.entries(shapes.concaveOutlines)) {
      const region = band(flattenArea(areaFrom(data)));
      const grid = gridOver(region, 12);
      expect(grid.length, name).toBeCloseTo(cutByJsts(region, 12, grid.origin), 4);
      expect(Math.abs(grid.length / (regionArea(region) / 6) - 1), name).toBeLessThan(0.03);
      const drawn = grid.lines.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
      expect(drawn).toBeCloseTo(grid.length, 6);
      for (const origin of [[0, 0], [3, 7], grid.origin] as const) {
        expect(grid.length).toBeLessThanOrEqual(gridOver(region, 12, origin).length * 1.01);
      }
    }
  });

  it("counts a crossing for every lattice point inside", () => {
    fc.assert(
      fc.property(arcOutline, fc.double({ min: 0.1, max: 11.9, noNaN: true }), (data, shift) => {
        const region = flattenArea(areaFrom(data));
        const origin: Point = [shift, 0.37 * shift + 0.123];
        let inside = 0;
        for (let i = -50; i <= 50; i++) {
          for (let j = -50; j <= 50; j++) {
            if (regionContains(region, [origin[0] + i * 12, origin[1] + j * 12])) inside++;
          }
        }
        expect(gridOver(region, 12, origin).crossings).toBe(inside);
      }),
      { ...runs(60), interruptAfterTimeLimit: 20_000 },
    );
  });

  it("leaves holes out, and an empty region empty", () => {
    const ground = gridOver(
      flattenArea(
        areaFrom(
          {
            vertices: [
              [0, 0],
              [120, 0],
              [120, 120],
              [0, 120],
            ],
            closed: true,
          },
          [
            {
              vertices: [
                [33, 33],
                [93, 33],
                [93, 93],
                [33, 93],
              ],
              closed: true,
            },
          ],
        ),
      ),
      12,
      [6, 6],
    );
    // Arithmetic: 20 lines of 120 in., ten of them broken by 60 in.; 100 crossings less the 25 in the hole.
    expect(ground.length).toBeCloseTo(20 * 120 - 10 * 60, 9);
    expect(ground.crossings).toBe(75);
    expect(gridOver([], 12)).toEqual({ length: 0, crossings: 0, lines: [], origin: [0, 0], loose: 0 });
  });

  it("refuses a spacing that is none", () => {
    expect(() => gridOver([], 0)).toThrow("0");
    expect(() => gridOver([], Number.NaN)).toThrow("NaN");
  });
});

describe("grid along a pool's direction", () => {
  const pool = areaFrom(shapes.rectangle);
  const slab = (x: number, y: number, w: number, h: number): Region => [
    [
      [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
        [x, y],
      ],
    ],
  ];

  it("leaves no piece of ground without copper, however small beside its spacing and however the yard is turned", () => {
    // Arithmetic: 60 x 24 in. takes 2 lines of 60 and 5 of 24; 10 x 7 in. one each way through its middle, crossing there.
    const ground = [...slab(50, -30, 60, 24), ...slab(205.3, -13.7, 10, 7)];
    const turns = { level: 0, upright: Math.PI / 2, askew: 0.3, far: 2.1 };
    for (const [name, angle] of Object.entries(turns)) {
      for (const mirror of [1, -1]) {
        const place = ([x, y]: Point): Point => [
          x * mirror * Math.cos(angle) - y * Math.sin(angle),
          x * mirror * Math.sin(angle) + y * Math.cos(angle),
        ];
        const placed = ground.map((polygon) => polygon.map((ring) => ring.map(place)));
        const water = areaFrom({
          vertices: shapes.rectangle.vertices.map(([x, y]) => place([x, y])),
          closed: true,
        });
        const grid = alignedGrid(placed, 12, [water]);
        expect(grid.length, name).toBeCloseTo(2 * 60 + 5 * 24 + 10 + 7, 6);
        expect(grid.crossings, name).toBe(2 * 5 + 1);
        expect(grid.loose, name).toBe(0);
      }
    }
  });

  it("lays nothing over a seam between surfaces", () => {
    const seam = slab(205.3, -13.7, 10, 1 / 256);
    expect(alignedGrid(seam, 12, [pool])).toMatchObject({ length: 0, crossings: 0, loose: 0, lines: [] });
  });
});

describe("grid of a shell", () => {
  it("is the floor's grid and the developed walls'", () => {
    const pool = areaFrom(shapes.rectangle);
    const floor = gridOver(flattenArea(pool), 12);
    // Arithmetic: 96 uprights of 60 in., five rows round 1152 in., a crossing each.
    const shell = shellGrid(pool, 60, 12);
    expect(shell.length).toBeCloseTo(floor.length + 96 * 60 + 5 * 1152, 6);
    expect(shell.crossings).toBe(floor.crossings + 480);
    expect(shellGrid(pool, 0, 12).length).toBeCloseTo(floor.length, 9);
    expect(() => shellGrid(pool, -1, 12)).toThrow("-1");
  });

  it("of round walls goes by arc length", () => {
    const pool = areaFrom(shapes.circle);
    const uprights = Math.ceil(pathLength(pool.outer) / 12);
    const shell = shellGrid(pool, 48, 12);
    const floor = shellGrid(pool, 0, 12);
    expect(shell.length - floor.length).toBeCloseTo(uprights * 48 + 4 * 120 * Math.PI, 6);
  });
});
