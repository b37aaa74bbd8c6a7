/** Crossings, feet, touching points, headings, distances from the water, corners in line. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { candidatesNear, cornersInLine } from "../../../app/snapping/candidates.ts";
import { waterLimits } from "../../../app/snapping/limits.ts";
import { headings } from "../../../app/snapping/side-places.ts";
import { type SnapRule, snap } from "../../../app/snapping/snap.ts";
import { watersNear } from "../../../app/snapping/water-distance.ts";
import { pointToArea } from "../../../geometry/distance.ts";
import { edgeFromVertices, lineEdge } from "../../../geometry/edge.ts";
import { areaFrom } from "../../../geometry/outline.ts";
import { distanceBetween } from "../../../geometry/points.ts";
import type { Point } from "../../../geometry/types.ts";
import type { KnownElement } from "../../../rules/site/elements.ts";
import { siteWith } from "../tools/hand.ts";

const RULE: SnapRule = { tolerance: 8, grid: null };
const level = { edge: lineEdge([0, 0], [200, 0]), words: "side of Deck" };
const slanted = { edge: lineEdge([50, -50], [150, 50]), words: "side of Fence 1" };

describe("crossings of sides", () => {
  it("draw the pointer before the sides themselves, and say of what", () => {
    expect(snap([103, 4], { points: [], edges: [level, slanted] }, RULE)).toMatchObject({
      point: [100, 0],
      reason: "crossing of Deck and Fence 1",
    });
  });

  it("are none where sides only share a corner", () => {
    const next = { edge: lineEdge([200, 0], [200, 90]), words: "side of Deck" };
    expect(snap([196, 3], { points: [], edges: [level, next] }, RULE).reason).toBe("side of Deck");
  });
});

describe("a side that comes from a corner", () => {
  it("ends square to a side near the pointer", () => {
    expect(snap([73, 5], { points: [], edges: [level] }, { ...RULE, from: [70, 120] })).toEqual({
      point: [70, 0],
      reason: "square to side of Deck",
      guides: [
        [
          [70, 120],
          [70, 0],
        ],
      ],
    });
  });

  it("touches an arc without crossing it", () => {
    // Half circle of radius 60 round [0, 0], from [60, 0] counter-clockwise; from [120, 0] the touching point lies at 60 degrees.
    const arc = { edge: edgeFromVertices([60, 0, 1], [-60, 0]), words: "side of Pool" };
    const found = snap([33, 50], { points: [], edges: [arc] }, { ...RULE, from: [120, 0] });
    expect(found.reason).toBe("touching the arc of Pool");
    expect(distanceBetween(found.point, [30, 30 * Math.sqrt(3)])).toBeLessThan(1e-9);
  });

  it("runs parallel or square to another side, at a round length", () => {
    const from: Point = [300, 100];
    const ways = headings([slanted], from);
    const at = (x: number, y: number) =>
      snap([x, y], { points: [], edges: [] }, { ...RULE, grid: 12, from, headings: ways });
    const parallel = at(402, 205);
    expect(parallel.reason).toBe("parallel to side of Fence 1");
    expect(distanceBetween(parallel.point, from)).toBeCloseTo(144, 9);
    expect(parallel.point[0] - from[0]).toBeCloseTo(parallel.point[1] - from[1], 9);
    expect(at(200, 203).reason).toBe("square to side of Fence 1");
    expect(at(402, 120).reason).toBe("grid");
  });
});

/** A pool of 30 by 16 ft with a half circle at its right end. */
const pool = {
  id: "pool-1",
  kind: "pool",
  name: "Pool",
  outline: {
    vertices: [
      [0, 0],
      [360, 0, 1],
      [360, 192],
      [0, 192],
    ],
    closed: true,
  },
} as unknown as KnownElement;
const water = areaFrom((pool as unknown as { outline: Parameters<typeof areaFrom>[0] }).outline);

describe("a distance from the water", () => {
  const site = siteWith([pool], { edition: "nec-2020" });
  const rule = (kind: Parameters<typeof waterLimits>[1], more: Partial<SnapRule> = {}): SnapRule => ({
    ...RULE,
    grid: 12,
    limits: waterLimits(site, kind),
    waters: watersNear(site.elements, [0, 0], 1000),
    ...more,
  });

  it("comes from the edition in force, with what it is the limit of", () => {
    expect(waterLimits(site, "fence")).toEqual([{ distance: 60, words: "fixed metal" }]);
    expect(waterLimits(site, "conductor").map(({ distance }) => distance)).toEqual([18, 21, 24]);
    expect(waterLimits(site, "device").map(({ distance }) => distance)).toContain(72);
    const amended = siteWith([pool], { amendments: [{ parameter: "fixedMetal.distance", value: 66 }] });
    expect(waterLimits(amended, "fence")).toEqual([{ distance: 66, words: "fixed metal" }]);
    expect(waterLimits(site, "pool")).toEqual([]);
  });

  it("is exact beside a straight side and round an arc", () => {
    for (const at of [
      [100, -63],
      [500, 163],
      [490, 8],
    ] as Point[]) {
      const found = snap(at, { points: [], edges: [] }, rule("fence"));
      expect(found.reason).toBe(`5' 0" from Pool: fixed metal`);
      expect(pointToArea(found.point, water).length).toBeCloseTo(60, 9);
    }
  });

  it("is exact in line with a corner, and along a heading", () => {
    const lines = [{ with: [500, -200] as Point, name: "the last corner" }];
    const found = snap([503, 31], { points: [], edges: [] }, rule("fence", { lines }));
    expect(found.reason).toBe(`straight up or down from the last corner, 5' 0" from Pool: fixed metal`);
    expect(found.point[0]).toBe(500);
    expect(pointToArea(found.point, water).length).toBeCloseTo(60, 6);
    const ways = headings([slanted], [600, -40]);
    const along = snap([512, 50], { points: [], edges: [] }, rule("fence", { from: [600, -40], headings: ways }));
    expect(along.reason).toMatch(/^square to side of Fence 1, 5' 0" from Pool/);
    expect(pointToArea(along.point, water).length).toBeCloseTo(60, 6);
    expect(along.point[0] + along.point[1]).toBeCloseTo(560, 9);
  });

  it("draws nothing from inside the water", () => {
    expect(snap([100, 60], { points: [], edges: [] }, rule("fence")).reason).toBe("grid");
  });
});

describe("corners of other things in line", () => {
  const site = siteWith([pool]);

  it("come after everything else, the nearest first", () => {
    const others = cornersInLine(site.elements, [3, 400], 8, 500);
    expect(others.map(({ with: at }) => at)).toEqual([
      [0, 192],
      [0, 0],
    ]);
    expect(snap([3, 400], { points: [], edges: [] }, { ...RULE, grid: 12, others })).toMatchObject({
      point: [0, 396],
      reason: "in line with corner of Pool",
    });
    expect(cornersInLine(site.elements, [3, 400], 8, 100)).toEqual([]);
  });
});

describe("on a site of 2,000 elements", () => {
  it("only what lies near is looked at, however much there is", () => {
    const fences = Array.from({ length: 2000 }, (_, i) => ({
      id: `fence-${i}`,
      kind: "fence",
      path: {
        vertices: [
          [(i % 50) * 100, Math.floor(i / 50) * 100],
          [(i % 50) * 100 + 60, Math.floor(i / 50) * 100 + 30],
        ],
        closed: false,
      },
    })) as unknown as KnownElement[];
    const near = candidatesNear(fences, [2530, 2015], 9);
    expect(near.edges).toHaveLength(1);
    expect(near.points.length).toBeLessThanOrEqual(3);
    expect(cornersInLine(fences, [2500, 2015], 9, 360).length).toBeLessThanOrEqual(16);
  });
});
