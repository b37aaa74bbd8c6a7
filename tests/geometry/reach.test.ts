// Sources: the definition of reach in geometry/README.md; areas by arithmetic, Steiner's formula, or jsts where named.
import { describe, expect, it } from "vitest";
import { regionArea, regionContains } from "../../geometry/clipping.ts";
import { areaFrom, areaOf, flattenArea, pathLength } from "../../geometry/outline.ts";
import { directReach, reach } from "../../geometry/reach.ts";
import type { Barrier, PathData, Point, Region } from "../../geometry/types.ts";
import { chordsOf } from "../oracles/bulge-chords.ts";
import { buffer, difference, ringShape } from "../oracles/jsts.ts";
import { variantsOf } from "../oracles/variants.ts";

const POOL: PathData = {
  vertices: [
    [0, 0],
    [384, 0],
    [384, 192],
    [0, 192],
  ],
  closed: true,
};
const ROMAN: PathData = {
  vertices: [
    [0, 0],
    [360, 0],
    [360, 36, 1],
    [360, 156],
    [360, 192],
    [0, 192],
  ],
  closed: true,
};
const pool = areaFrom(POOL);

const solid = (...points: Point[]): Barrier => ({ id: "solid", shape: "solid", points });
const thin = (...points: Point[]): Barrier => ({ id: "thin", shape: "thin", points });
const footprint = ({ points }: Barrier): Region => [[[...points, points[0] as Point]]];

/** Off by at most 0.01 %. */
function expectArea(region: Region, area: number, name = ""): void {
  expect(Math.abs(regionArea(region) / area - 1), `${name}: ${regionArea(region)} for ${area}`).toBeLessThan(1e-4);
}

describe("reach in an open yard", () => {
  it("is the band of Steiner's formula round a convex pool, in every position and from every vertex", () => {
    for (const { name, data } of variantsOf(POOL)) {
      expectArea(reach(areaFrom(data), 36, [], []), 45543.49769195904, name); // Steiner's formula for parallel curves
      expectArea(directReach(areaFrom(data), 36, []), 45543.49769195904, name);
    }
    for (const { name, data } of variantsOf(ROMAN)) {
      expectArea(reach(areaFrom(data), 36, [], []), 45890.698539269826, name); // GEOS
      for (const d of [6, 60, 240]) {
        // The two inner corners of a Roman end make it not convex: jsts on fine chords.
        const shape = ringShape(chordsOf(data, 1e-4));
        expectArea(
          reach(areaFrom(data), d, [], []),
          difference(buffer(shape, d, 512), shape).getArea(),
          `${name} ${d}`,
        );
      }
    }
  });

  it("keeps the area of small and large round pools", () => {
    for (const radius of [2, 12, 36, 400]) {
      const round = areaFrom({
        vertices: [
          [radius, 0, 1],
          [-radius, 0, 1],
        ],
        closed: true,
      });
      for (const d of [1, 12, 36, 120]) {
        expectArea(reach(round, d, [], []), Math.PI * d * (2 * radius + d), `radius ${radius}, ${d}`);
      }
    }
  });

  it("covers an island from its edge inward, and no more than the island", () => {
    const island: PathData = {
      vertices: [
        [100, 60],
        [220, 60],
        [220, 140],
        [100, 140],
      ],
      closed: true,
    };
    const islanded = areaFrom(POOL, [island]);
    const outside = 45543.49769195904;
    const band12 = 2 * 12 * (384 + 192) + Math.PI * 144 + (120 * 80 - 96 * 56); // arithmetic
    expectArea(reach(islanded, 12, [], []), band12);
    expectArea(reach(islanded, 36, [], []), outside + 120 * 80 - 48 * 8); // arithmetic
    expectArea(reach(islanded, 50, [], []), 2 * 50 * 576 + Math.PI * 2500 + 120 * 80); // wholly covered
    const roundIsland: PathData = {
      vertices: [
        [130, 90, 1],
        [190, 90, 1],
      ],
      closed: true,
    };
    const d = 12;
    const ring = Math.PI * (900 - 18 * 18);
    expectArea(reach(areaFrom(POOL, [roundIsland]), d, [], []), 2 * d * 576 + Math.PI * d * d + ring);
    expectArea(reach(areaFrom(POOL, [roundIsland]), 36, [], []), outside + Math.PI * 900);
  });

  it("leaves out the water and what is excluded, and is empty at distance 0", () => {
    const slab: Region = [
      [
        [
          [0, 192],
          [100, 192],
          [100, 300],
          [0, 300],
          [0, 192],
        ],
      ],
    ];
    expectArea(reach(pool, 36, [], [slab]), 45543.49769195904 - 3600);
    expect(regionContains(reach(pool, 36, [], []), [100, 100])).toBe(false);
    expect(reach(pool, 0, [], [])).toEqual([]);
    expect(() => reach(pool, Number.NaN, [], [])).toThrow("not a distance");
    expect(() => directReach(pool, -1, [])).toThrow("not a distance");
  });

  it("draws the same whether a far barrier is given or not", () => {
    const far = solid([1000, 1000], [1100, 1000], [1100, 1100]);
    expect(reach(pool, 36, [far], [])).toEqual(reach(pool, 36, [], []));
  });
});

describe("reach round barriers", () => {
  it("agrees with independent code behind an open wall", () => {
    const wall = solid([100, 216], [280, 216], [280, 222], [100, 222]);
    for (const { name, data, place } of variantsOf(POOL)) {
      const turned = solid(...wall.points.map(place));
      // Independent code, open-wall case.
      expectArea(reach(areaFrom(data), 36, [turned], [footprint(turned)]), 43439.96471210303, name);
    }
  });

  it("wraps round the end of a thin wall as a quarter disc of what is left", () => {
    const wall = thin([-100, 216], [192, 216]);
    const region = reach(pool, 36, [wall], []);
    // Arithmetic: the strip loses 12 in. behind the wall, the corner's sector what lies above 24, and a quarter disc comes back.
    const sectorAbove = (36 * 36 * (Math.PI / 2 - Math.asin(24 / 36)) - 24 * Math.sqrt(36 * 36 - 24 * 24)) / 2;
    const wrapped = (Math.PI * 144) / 4;
    expectArea(region, 45543.49769195904 - 12 * 192 - sectorAbove + wrapped);
    expectArea(directReach(pool, 36, [wall]), 45543.49769195904 - 12 * 192 - sectorAbove);
    expect(regionContains(region, [184, 224])).toBe(true); // hypot(8, 8) is under 12
    expect(regionContains(region, [183, 225])).toBe(false); // hypot(9, 9) is over 12
    expect(regionContains(directReach(pool, 36, [wall]), [184, 224])).toBe(false);
  });

  it("goes on round a second corner with what is left then", () => {
    // A thin angle: its arm ends at (192, 216), and the path wraps round both ends of the far leg.
    const wall = solid([-100, 204], [192, 204], [192, 210], [-100, 210]);
    const region = reach(pool, 36, [wall], [footprint(wall)]);
    const [near, far] = [24, 18]; // left at (192, 204) and (192, 210)
    expect(near - 6).toBe(far);
    expect(regionContains(region, [192 - 17.9, 210.5])).toBe(true);
    expect(regionContains(region, [192 - 18.1, 210.5])).toBe(false);
    expect(regionContains(region, [192 - 12.6, 222.6])).toBe(true); // hypot 17.8
    expect(regionContains(region, [192 - 12.9, 222.9])).toBe(false); // hypot 18.2
  });

  it("does not enter a closed room nor leave a closed house", () => {
    const room = thin([100, 200], [200, 200], [200, 222], [100, 222], [100, 200]);
    const region = reach(pool, 36, [room], []);
    expect(regionContains(region, [150, 210])).toBe(false);
    expect(regionContains(region, [150, 199])).toBe(true);
    expect(regionContains(region, [198, 223])).toBe(true); // 30 up beside the room, then hypot(2, 1)
    const house = thin([-12, -12], [396, -12], [396, 204], [-12, 204], [-12, -12]);
    expectArea(reach(pool, 36, [house], []), 408 * 216 - 384 * 192); // arithmetic: all inside the house
    // The same house of four walls that only just touch or overlap.
    const walls = [
      solid([-14, -14], [398, -14], [398, -12], [-14, -12]),
      solid([396, -13], [398, -13], [398, 205], [396, 205]),
      solid([-14, 204], [396.0001, 204], [396.0001, 206], [-14, 206]),
      solid([-14, -12], [-12, -12], [-12, 204], [-14, 204]),
    ];
    expectArea(reach(pool, 36, walls, walls.map(footprint)), 408 * 216 - 384 * 192);
  });

  it("is cut by walls over the pool's edge and by walls through the whole pool", () => {
    const house = solid([192, -100], [500, -100], [500, 300], [192, 300]);
    // Half the pool is in the house: the band of the other half, square to its edges.
    const half = 36 * (192 + 2 * 192) + 2 * ((Math.PI * 36 * 36) / 4); // arithmetic
    expectArea(reach(pool, 36, [house], [footprint(house)]), half);
    const divider = thin([192, -300], [192, 500]);
    expectArea(reach(pool, 36, [divider], []), 45543.49769195904); // both sides are reached from their own edge
    // A slanting wall over the edge: the shadowed strip is reached from the wall's foot.
    const slant = thin([292, 92], [92, 292]);
    const region = reach(pool, 36, [slant], []);
    expect(regionContains(region, [175, 220])).toBe(true); // hypot(17, 28) from (192, 192)
    expect(regionContains(region, [170, 222])).toBe(false); // hypot(22, 30) is over 36, and (170, 222) is beyond the wall
    expect(regionContains(directReach(pool, 36, [slant]), [175, 220])).toBe(false);
  });

  it("ends at a wall along the pool's edge and wraps round its ends", () => {
    const along = thin([0, 192], [384, 192]);
    // Arithmetic: without the strip of that edge and its two corners' sectors, but with half discs round the wall's ends.
    const open = 36 * (2 * 192 + 384) + 2 * ((Math.PI * 36 * 36) / 4);
    const wrapped = 2 * ((Math.PI * 36 * 36) / 2);
    expectArea(reach(pool, 36, [along], []), open + wrapped);
    // Square and straight, the corners' own sectors stay, for a path goes round the water's corner, and so does the wall's far side.
    const region = directReach(pool, 36, [along]);
    expect(regionContains(region, [192, 200])).toBe(false);
    expect(regionContains(region, [-10, 100])).toBe(true);
  });

  it("does not leave the water through two solids that share a side over its edge", () => {
    const low = solid([-80, 60], [40, 60], [40, 80], [-80, 80]);
    const high = solid([-80, 80], [40, 80], [40, 100], [-80, 100]);
    const region = reach(pool, 12, [low, high], []);
    expect(regionContains(region, [-6, 70])).toBe(false);
    expect(regionContains(region, [-6, 90])).toBe(false);
    expect(regionContains(region, [-6, 101])).toBe(true);
  });

  it("gives nothing where the whole pool stands in a solid", () => {
    expect(reach(pool, 36, [solid([-50, -50], [450, -50], [450, 250], [-50, 250])], [])).toEqual([]);
  });

  it("is never less with more distance, and never more with another wall", () => {
    const walls = [solid([100, 205], [280, 205], [280, 210], [100, 210]), thin([400, -50], [400, 150])];
    let before = 0;
    for (const d of [5, 10, 15, 20, 40, 80, 160]) {
      const area = regionArea(reach(pool, d, walls, []));
      expect(area).toBeGreaterThan(before);
      expect(area).toBeLessThan(regionArea(reach(pool, d, [], [])) + 0.01);
      before = area;
    }
  });

  it("leaves no sliver inside: the open wall's band is one piece with two holes at most", () => {
    const wall = solid([100, 216], [280, 216], [280, 222], [100, 222]);
    const region = reach(pool, 36, [wall], [flattenArea(pool), footprint(wall)]);
    expect(region.length).toBe(1);
    expect(region[0]?.length).toBeLessThanOrEqual(2);
    expect(areaOf(pool)).toBe(384 * 192);
    expect(pathLength(pool.outer)).toBe(1152);
  });
});
