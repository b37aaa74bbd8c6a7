import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom, pathLength } from "../../geometry/outline.ts";
import { pointToPath } from "../../geometry/point-distance.ts";
import { findSelfCrossing } from "../../geometry/self-crossing.ts";
import { type ShortestRing, shortestRing } from "../../geometry/shortest-ring.ts";
import type { Area, PathData, Point, Region } from "../../geometry/types.ts";
import { chordsOf } from "../oracles/bulge-chords.ts";
import * as shapes from "../oracles/outline-shapes.ts";
import { arcOutline } from "../oracles/random-outlines.ts";
import { searchedRing } from "../oracles/ring-search.ts";
import { runs } from "../oracles/seed.ts";
import { variantsOf } from "../oracles/variants.ts";

const limits = { min: 18, max: 24 };

function solved(ring: ShortestRing): Extract<ShortestRing, { ok: true }> {
  if (!ring.ok) throw new Error(`no ring: ${ring.reason} at ${ring.where}`);
  return ring;
}

function evenLength(bodies: readonly Area[], d: number): number {
  return offsetCurves(bodies, d).loops.reduce((sum, loop) => sum + pathLength(loop.path), 0);
}

/** Every position of the ring, and the middle of every side, lies between the limits. */
function expectLegal(ring: ShortestRing, bodies: readonly Area[], min = limits.min, max = limits.max): void {
  for (const { path } of solved(ring).loops) {
    path.forEach((p, i) => {
      const next = path[(i + 1) % path.length] as Point;
      const middle: Point = [(p[0] + next[0]) / 2, (p[1] + next[1]) / 2];
      for (const at of [p, middle]) {
        const distance = Math.min(
          ...bodies.flatMap((body) => [body.outer, ...body.holes]).map((outline) => pointToPath(at, outline).length),
        );
        expect(distance).toBeGreaterThan(min - 1e-6);
        expect(distance).toBeLessThan(max + 1e-6);
      }
    });
  }
}

describe("shortest legal ring", () => {
  it("of a convex outline is the offset at the nearer limit", () => {
    // Steiner's formula: P + 2 pi d.
    for (const data of [shapes.rectangle, shapes.circle, shapes.stadium]) {
      const body = areaFrom(data);
      const ring = solved(shortestRing({ bodies: [body], ...limits }));
      const exact = pathLength(body.outer) + 2 * Math.PI * 18;
      expect(ring.length).toBeGreaterThanOrEqual(exact - 1e-4);
      expect(ring.length).toBeLessThan(exact * 1.00001);
      expect(ring.loops.map((loop) => loop.bodies)).toEqual([[0]]);
    }
  });

  it("of the Roman end cuts across its notches", () => {
    // Published check value of this project's geometry, from GEOS on chords: 1260.96 within 0.05 %.
    const ring = solved(shortestRing({ bodies: [areaFrom(shapes.romanEnd)], ...limits }));
    expect(Math.abs(ring.length / 1260.9624 - 1)).toBeLessThan(0.0005);
  });

  it("keeps a margin inside both limits when asked", () => {
    const body = areaFrom(shapes.wideU);
    const ring = shortestRing({ bodies: [body], min: 19, max: 23 });
    expectLegal(ring, [body], 19, 23);
    expect(solved(ring).length).toBeGreaterThan(solved(shortestRing({ bodies: [body], ...limits })).length);
  });

  it("is the same turned, mirrored and from every vertex, legal, and no longer than any even ring", () => {
    for (const [name, data] of Object.entries(shapes.concaveOutlines)) {
      const first = solved(shortestRing({ bodies: [areaFrom(data)], ...limits }));
      for (const variant of variantsOf(data)) {
        const body = areaFrom(variant.data);
        const ring = shortestRing({ bodies: [body], ...limits });
        expect(Math.abs(solved(ring).length - first.length), `${name} ${variant.name}`).toBeLessThan(0.02);
        expectLegal(ring, [body]);
        for (const d of [18, 20, 22, 24]) expect(solved(ring).length).toBeLessThan(evenLength([body], d) * 1.00001);
      }
    }
  });
});

describe("shortest legal ring against a search of all corner pairs", () => {
  const inWater: Record<string, Point> = {
    romanEnd: [100, 100],
    ell: [80, 80],
    wideU: [150, 30],
    tee: [180, 240],
    plus: [180, 180],
    zed: [185, 130],
    kidney: [110, 60],
    keyhole: [120, 80],
    hourglass: [130, 80],
    star: [0, 0],
    wideInlet: [150, 30],
  };
  const found: string[] = [];

  for (const [name, center] of Object.entries(inWater)) {
    it(name, () => {
      const data = shapes.concaveOutlines[name] as PathData;
      const ring = solved(shortestRing({ bodies: [areaFrom(data)], ...limits }));
      const searched = searchedRing(chordsOf(data, 0.06), 18, 24, center, 16);
      expect(Math.abs(ring.length / searched - 1)).toBeLessThan(0.0008);
      if (evenLength([areaFrom(data)], 18) / ring.length > 1.005) found.push(name);
    });
  }

  it("covers at least ten where the string leaves the nearer limit by more than half a percent", () => {
    expect(found.length).toBeGreaterThanOrEqual(10);
  });
});

describe("shortest legal ring round several bodies", () => {
  const box = (x: number, y: number, w = 100, h = 100): PathData => ({
    vertices: [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
    closed: true,
  });

  it("goes round both where their outer limits meet, apart where not", () => {
    for (const [gap, loops] of [
      [30, 1],
      [45, 1],
      [48.5, 2],
      [200, 2],
    ] as const) {
      const bodies = [areaFrom(box(0, 0)), areaFrom(box(100 + gap, 0))];
      const ring = shortestRing({ bodies, ...limits });
      expectLegal(ring, bodies);
      expect(solved(ring).loops.length, `gap ${gap}`).toBe(loops);
      const named = solved(ring).loops.flatMap((loop) => loop.bodies);
      expect(named).toEqual([0, 1]);
    }
  });

  it("goes round an island's ground with a loop of its own", () => {
    const body = areaFrom(box(0, 0, 300, 300), [box(100, 100)]);
    const ring = solved(shortestRing({ bodies: [body], ...limits }));
    // Arithmetic: the tightest loop round the ground beyond 24 in. is that square of 52 in.
    expect(ring.loops.map((loop) => loop.length).sort((a, b) => a - b)[0]).toBeCloseTo(4 * 52, 3);
    const small = areaFrom(box(0, 0, 300, 300), [box(100, 100, 40, 40)]);
    expect(solved(shortestRing({ bodies: [small], ...limits })).loops.length).toBe(1);
  });
});

describe("shortest legal ring and obstacles", () => {
  const square = (x: number, y: number, w: number, h = w): Region => [
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
  const pool = areaFrom(shapes.rectangle);
  const free = solved(shortestRing({ bodies: [pool], ...limits })).length;
  const withObstacle = (...obstacles: Region[]) =>
    shortestRing({ bodies: [pool], ...limits, obstacles: obstacles.flat() });

  it("is not moved by what it does not cross", () => {
    expect(solved(withObstacle(square(100, -40, 15))).length).toBe(free);
    expect(solved(withObstacle(square(100, -10, 8))).length).toBe(free);
    expect(solved(withObstacle(square(120, -22, 2))).length).toBe(free);
  });

  it("passes an obstacle that stands on it, on the shorter side", () => {
    // Arithmetic: over a post 2 in. long and 2 in. proud of the nearer limit, from and back to the corners' bends.
    const ring = solved(withObstacle(square(191, -20, 2, 2.001)));
    const leg = Math.hypot(191, 2);
    expect(ring.length).toBeGreaterThan(free);
    expect(ring.length).toBeLessThan(free + 2 * (leg - 191) + 0.01);
  });

  it("does not run through where two obstacles overlap", () => {
    // The same post twice, and once in two halves that share a strip: as one post (arithmetic: the same ground).
    const post = solved(withObstacle(square(191, -20, 2, 2.001))).length;
    const twice = solved(withObstacle(square(191, -20, 2, 2.001), square(191, -20, 2, 2.001))).length;
    const halves = solved(withObstacle(square(191, -20, 1.5, 2.001), square(191.5, -20, 1.5, 2.001))).length;
    expect(twice).toBeCloseTo(post, 9);
    expect(halves).toBeCloseTo(post, 3);
  });

  it("says where nothing legal is left", () => {
    const cut = withObstacle(square(100, -30, 16));
    expect(cut.ok).toBe(false);
    if (!cut.ok) {
      expect(cut.reason).toBe("blocked");
      expect(cut.where[0]).toBeGreaterThan(95);
      expect(cut.where[0]).toBeLessThan(121);
      expect(cut.where[1]).toBeLessThan(-15);
    }
    const walledIn = withObstacle(
      square(-25, -25, 434, 8),
      square(-25, 209, 434, 8),
      square(-25, -25, 8, 242),
      square(401, -25, 8, 242),
    );
    expect(walledIn.ok).toBe(false);
  });

  it("refuses limits that do not rise", () => {
    expect(() => shortestRing({ bodies: [pool], min: 24, max: 18 })).toThrow("24 to 18");
  });
});

describe("shortest legal ring of random outlines", () => {
  it("is legal and no longer than an even ring", () => {
    fc.assert(
      fc.property(
        arcOutline.filter((data) => findSelfCrossing(data) === null),
        (data) => {
          const body = areaFrom(data);
          const ring = shortestRing({ bodies: [body], ...limits });
          expectLegal(ring, [body]);
          for (const d of [18, 21, 24])
            expect(solved(ring).length).toBeLessThan(evenLength([body], d) * 1.00002 + 0.001);
        },
      ),
      { ...runs(60), interruptAfterTimeLimit: 20_000 },
    );
  });
});
