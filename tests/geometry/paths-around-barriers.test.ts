// Sources: the definition of the shortest path in geometry/README.md; lengths by arithmetic unless another source is named.
import { describe, expect, it } from "vitest";
import { areaFrom, pathFrom } from "../../geometry/outline.ts";
import { shortestPathFromPath, shortestPathToArea } from "../../geometry/paths-around-barriers.ts";
import type { Barrier, PathData, Point } from "../../geometry/types.ts";
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
const pool = areaFrom(POOL);

const solid = (id: string, ...points: Point[]): Barrier => ({ id, shape: "solid", points });
const thin = (id: string, ...points: Point[]): Barrier => ({ id, shape: "thin", points });
const box = (id: string, x0: number, y0: number, x1: number, y1: number): Barrier =>
  solid(id, [x0, y0], [x1, y0], [x1, y1], [x0, y1]);

const lengthTo = (p: Point, ...barriers: Barrier[]): number | null =>
  shortestPathToArea(p, pool, barriers)?.length ?? null;

describe("shortest path to a position", () => {
  const wall = box("w", 100, 216, 280, 222);

  it("bends round the nearer end of a wall, whichever way the yard is turned or its outline started", () => {
    // Independent code, open-wall case: 121.78235124467012; arithmetic: 30 + hypot(90, 18).
    for (const { name, data, place } of variantsOf(POOL)) {
      const turned = solid("w", ...wall.points.map(place));
      const middle = shortestPathToArea(place([190, 240]), areaFrom(data), [turned]);
      expect(middle?.length, name).toBeCloseTo(121.78235124467012, 8);
      const route = shortestPathToArea(place([180, 240]), areaFrom(data), [turned]);
      expect(route?.length, name).toBeCloseTo(30 + Math.hypot(80, 18), 8);
      const expected = [[100, 192] as const, [100, 222] as const, [180, 240] as const].map(place);
      expect(route?.points.length, name).toBe(3);
      route?.points.forEach(([x, y], i) => {
        const [px, py] = expected[i] as Point;
        expect(Math.hypot(x - px, y - py), `${name}, point ${i}`).toBeLessThan(1e-8);
      });
    }
  });

  it("starts on the wall of the pool, ends at the position and is as long as its legs", () => {
    const route = shortestPathToArea([190, 240], pool, [wall]);
    expect(route?.points[2]).toEqual([190, 240]);
    const legs = (route?.points ?? []).slice(1).map((p, i) => {
      const from = route?.points[i] as Point;
      return Math.hypot(p[0] - from[0], p[1] - from[1]);
    });
    expect(legs.reduce((sum, leg) => sum + leg, 0)).toBeCloseTo(route?.length ?? Number.NaN, 10);
  });

  it("is 0 in the water and on its edge, straight where nothing stands between", () => {
    expect(shortestPathToArea([10, 10], pool, [wall])).toEqual({
      length: 0,
      points: [
        [10, 10],
        [10, 10],
      ],
    });
    expect(lengthTo([0, 100], wall)).toBe(0);
    expect(lengthTo([300, 240], wall)).toBe(48); // arithmetic
    expect(lengthTo([400, 204], wall)).toBe(20); // from the corner: hypot(16, 12)
    expect(lengthTo([190, 240])).toBe(48);
  });

  it("gives nothing beyond the limit, and counts a path as long as the limit", () => {
    expect(shortestPathToArea([190, 240], pool, [wall], { limit: 121.78 })).toBeNull();
    expect(shortestPathToArea([190, 240], pool, [wall], { limit: 121.78235124467012 })).not.toBeNull();
    expect(shortestPathToArea([190, 240], pool, [], { limit: 47.9 })).toBeNull();
    expect(shortestPathToArea([190, 240], pool, [], { limit: 48 })).not.toBeNull();
  });

  it("reaches the far face of a wall round its end, its near face straight, and nothing inside it", () => {
    expect(lengthTo([190, 222], wall)).toBeCloseTo(30 + 90, 10); // arithmetic
    expect(lengthTo([190, 216], wall)).toBe(24);
    expect(lengthTo([190, 219], wall)).toBeNull();
    // A box 1/100 in. inside the far face is on it.
    expect(lengthTo([190, 221.99], wall)).toBeCloseTo(30 + 90 + 0.01, 10);
    expect(lengthTo([100, 222], wall)).toBeCloseTo(30, 10);
  });

  it("walks round the arc of a pool: square to it, from its ends, or from anywhere for its center", () => {
    // A half disc of radius 60 bites into the deck; its center lies on the deck's line.
    const bitten = areaFrom({
      vertices: [
        [0, 0],
        [300, 0],
        [300, 200],
        [210, 200, 1],
        [90, 200],
        [0, 200],
      ],
      closed: true,
    });
    const bayed = areaFrom({
      vertices: [
        [0, 0],
        [300, 0],
        [300, 200],
        [210, 200, -1],
        [90, 200],
        [0, 200],
      ],
      closed: true,
    });
    expect(shortestPathToArea([150, 270], bitten, [thin("t", [0, 500], [1, 500])])?.length).toBeCloseTo(10, 9);
    // The bay's deck: a fence round its center leaves one opening, to the left.
    const ring = thin("t", [140, 190], [170, 190], [170, 230], [140, 230]);
    expect(shortestPathToArea([150, 200], bayed, [ring])?.length).toBeCloseTo(60, 9);
  });

  it("finds the farther tip of a crescent when the nearer is hidden", () => {
    // Inner circle of radius 60 about (0, 0), open by 60 degrees to the right; both tips are nearest points of both arcs.
    const tip = [60 * Math.cos(Math.PI / 6), 30] as const;
    const inner = Math.tan((300 / 4) * (Math.PI / 180));
    const crescent = areaFrom({
      vertices: [
        [tip[0], tip[1], 5],
        [tip[0], -tip[1], -inner],
      ],
      closed: true,
    });
    const wall = thin("t", [30, 5], [30, 60]);
    expect(shortestPathToArea([5, 0.2], crescent, [])?.length).toBeCloseTo(Math.hypot(tip[0] - 5, 29.8), 9);
    expect(shortestPathToArea([5, 0.2], crescent, [wall])?.length).toBeCloseTo(Math.hypot(tip[0] - 5, 30.2), 9);
  });

  it("bends twice round the two corners of a wide wall", () => {
    const house = box("h", 100, 212, 280, 300);
    // Arithmetic: straight up to the far corner (100, 300), then along the back.
    expect(lengthTo([150, 300], house)).toBeCloseTo(108 + 50, 9);
    expect(lengthTo([150, 310], house)).toBeCloseTo(108 + Math.hypot(50, 10), 9);
  });
});

describe("barriers and the water", () => {
  it("let a pool inside a house be left by its passage only", () => {
    const house = thin("house", [200, -60], [444, -60], [444, 252], [-60, 252], [-60, -60], [170, -60]);
    expect(lengthTo([185, -70], house)).toBe(70);
    // Arithmetic: over the passage's right end (200, -60).
    expect(lengthTo([300, -70], house)).toBeCloseTo(60 + Math.hypot(100, 10), 9);
    expect(lengthTo([400, 200], house)).toBeCloseTo(Math.hypot(16, 8), 9);
    const shut = thin("house", [-60, -60], [444, -60], [444, 252], [-60, 252], [-60, -60]);
    expect(lengthTo([300, -70], shut)).toBeNull();
  });

  it("part the pool's edge: beside a slanting wall the nearest wall of the pool is at its foot", () => {
    // A thin wall crosses the edge y = 192 at (192, 192) and leans to the left; the position lies above it, right of it.
    const slant = thin("slant", [292, 92], [92, 292]);
    // (172, 222): its own foot (172, 192) is behind the wall. Arithmetic: hypot(20, 30).
    expect(lengthTo([172, 222], slant)).toBeCloseTo(Math.hypot(20, 30), 9);
    expect(lengthTo([172, 202], slant)).toBe(10);
  });

  it("may cover part of the pool; the rest is still reached", () => {
    const house = box("house", 300, 100, 500, 400);
    expect(lengthTo([290, 250], house)).toBe(58);
    expect(lengthTo([400, 410], house)).toBeCloseTo(208 + Math.hypot(100, 10), 9);
    expect(lengthTo([390, 50], house)).toBe(6);
    expect(lengthTo([390, 150], house)).toBeNull();
  });

  it("reach an island's ground from its own edge", () => {
    const islanded = areaFrom(POOL, [
      {
        vertices: [
          [100, 60],
          [200, 60],
          [200, 140],
          [100, 140],
        ],
        closed: true,
      },
    ]);
    expect(shortestPathToArea([150, 90], islanded, [])?.length).toBe(30);
    // A thin ring on the island, open to the left.
    const ring = thin("ring", [140, 80], [160, 80], [160, 120], [140, 120]);
    expect(shortestPathToArea([150, 90], islanded, [ring])?.length).toBeCloseTo(20 + Math.hypot(10, 10), 9);
    const closed = thin("ring", [140, 80], [160, 80], [160, 120], [140, 120], [140, 80]);
    expect(shortestPathToArea([150, 90], islanded, [closed])).toBeNull();
  });

  it("stop a path where they touch the pool's edge or run along it, on the side away from the water", () => {
    const end = Math.hypot(192, 10);
    expect(lengthTo([192, 202], thin("t", [0, 192], [384, 192]))).toBeCloseTo(end, 9);
    expect(lengthTo([192, 202], thin("t", [0, 192], [384, 192]), thin("u", [0, 192], [0, 300]))).toBeCloseTo(end, 9);
    expect(lengthTo([192, 182], thin("t", [0, 192], [384, 192]))).toBe(0);
    // Along part of the edge: round the part's end (100, 192), which is a point of the pool's edge itself.
    expect(lengthTo([110, 202], thin("t", [100, 192], [300, 192]))).toBeCloseTo(Math.hypot(10, 10), 9);
    expect(lengthTo([90, 202], thin("t", [100, 192], [300, 192]))).toBe(10);
    // A solid on the deck's side of the edge; and one on the water's, whose way starts where its other face meets the edge.
    expect(lengthTo([192, 202], box("b", 0, 192, 384, 198))).toBeCloseTo(6 + Math.hypot(192, 4), 9);
    expect(lengthTo([192, 202], box("b", 0, 186, 384, 192))).toBeCloseTo(6 + end, 9);
    // A wall round a corner of the pool, flush with both edges, and a vertex of the pool part-way along it: round its end.
    const [a, b, c, d] = POOL.vertices as [Point, Point, Point, Point];
    const straight = areaFrom({ vertices: [a, b, c, [300, 192], d], closed: true });
    const flush = thin("t", [100, 192], [384, 192], [384, 60]);
    expect(shortestPathToArea([392, 200], straight, [flush])?.length).toBeCloseTo(Math.hypot(8, 140), 9);
    // Walls that touch a corner of the pool: across it, and leading away from it.
    expect(lengthTo([392, 200], thin("t", [284, 292], [484, 92]))).toBeGreaterThan(100);
    expect(lengthTo([380, 194], thin("t", [284, 292], [484, 92]))).toBe(2);
    expect(lengthTo([392, 200], thin("t", [384, 192], [484, 292]))).toBeCloseTo(Math.hypot(8, 8), 9);
    expect(lengthTo([192, 202], thin("t", [190, 192], [190, 300]))).toBe(10);
  });
});

describe("shortest path to an object along a path", () => {
  const wall = box("w", 100, 216, 280, 222);

  it("finds the part of a fence that is not behind the wall", () => {
    const fence = pathFrom({
      vertices: [
        [150, 230],
        [290, 230],
      ],
      closed: false,
    });
    expect(shortestPathFromPath(fence, pool, [])?.length).toBe(38);
    expect(shortestPathFromPath(fence, pool, [wall])?.length).toBeCloseTo(38, 9);
    const hidden = pathFrom({
      vertices: [
        [150, 230],
        [270, 230],
      ],
      closed: false,
    });
    // Arithmetic: up beside the wall to (280, 222), then to the fence's end.
    expect(shortestPathFromPath(hidden, pool, [wall])?.length).toBeCloseTo(30 + Math.hypot(10, 8), 9);
    expect(shortestPathFromPath(hidden, pool, [wall], { limit: 42 })).toBeNull();
  });

  it("ends where a wall cuts the fence, and is 0 where the fence is over the water", () => {
    // The fence climbs away to the right behind a thin wall that it crosses at (200, 230).
    const fence = pathFrom({
      vertices: [
        [100, 200],
        [300, 260],
      ],
      closed: false,
    });
    const cut = thin("t", [200, -50], [200, 400]);
    expect(shortestPathFromPath(fence, pool, [cut])?.length).toBe(8);
    const over = pathFrom({
      vertices: [
        [-50, 100],
        [50, 100],
      ],
      closed: false,
    });
    expect(shortestPathFromPath(over, pool, [cut])?.length).toBe(0);
  });

  it("starts at the foot of a slanting wall where the pool's edge behind it is hidden", () => {
    const slant = thin("slant", [292, 92], [92, 292]);
    const fence = pathFrom({
      vertices: [
        [172, 222],
        [180, 260],
      ],
      closed: false,
    });
    expect(shortestPathFromPath(fence, pool, [slant])?.length).toBeCloseTo(Math.hypot(20, 30), 9);
  });

  it("gives none for a fence in a closed room", () => {
    const room = thin("room", [150, 210], [230, 210], [230, 290], [150, 290], [150, 210]);
    const fence = pathFrom({
      vertices: [
        [160, 220],
        [220, 280],
      ],
      closed: false,
    });
    expect(shortestPathFromPath(fence, pool, [room])).toBeNull();
  });
});
