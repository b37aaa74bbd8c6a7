// Sources: the definition of the shortest path in geometry/README.md; lengths by arithmetic unless another source is named.
import { describe, expect, it } from "vitest";
import { areaFrom } from "../../geometry/outline.ts";
import { shortestPathToArea, sightLine } from "../../geometry/paths-around-barriers.ts";
import type { Barrier, PathData, Point } from "../../geometry/types.ts";

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

describe("walls that meet", () => {
  it("leave no way through a shared corner, neither of solids nor of thin walls", () => {
    // Two boxes share only the point (190, 220).
    const left = box("l", 60, 200, 190, 220);
    const right = box("r", 190, 220, 340, 240);
    // Arithmetic: below `right` and left of nothing: straight 27. Above `left`: round its left end.
    expect(lengthTo([200, 219], left, right)).toBe(27);
    expect(lengthTo([189, 221], left, right)).toBeCloseTo(28 + Math.hypot(129, 1), 9);
    expect(sightLine([200, 210], [180, 230], [left, right])).toBe(false);
    expect(sightLine([200, 215], [180, 225], [left, right])).toBe(false);
    const a = thin("a", [60, 210], [190, 210]);
    const b = thin("b", [190, 210], [340, 210]);
    expect(lengthTo([190, 230], a, b)).toBeCloseTo(18 + Math.hypot(130, 20), 9);
    expect(sightLine([190, 200], [190, 220], [a, b])).toBe(false);
  });

  it("leave no way along the seam of two solids that share a side", () => {
    const left = box("l", 60, 200, 190, 240);
    const right = box("r", 190, 200, 340, 240);
    expect(sightLine([190, 195], [190, 245], [left, right])).toBe(false);
    expect(lengthTo([190, 220], left, right)).toBeNull();
    // Arithmetic: up the right end to (340, 240), then back along the far face; the left end is farther by 130 - 150.
    expect(lengthTo([190, 240], left, right)).toBeCloseTo(48 + 130, 9);
  });

  it("leave no way through a gap or an overlap of a hundredth of an inch, but through an inch", () => {
    const left = box("l", 60, 200, 190, 206);
    const far = 14 + Math.hypot(130, 14);
    for (const gap of [-0.01, -1e-9, 0, 1e-9, 1e-7, 1e-5, 0.01]) {
      const right = box("r", 190 + gap, 200, 340, 206);
      expect(lengthTo([190, 220], left, right), `gap ${gap}`).toBeCloseTo(far, 6);
    }
    expect(lengthTo([190.5, 220], left, box("r", 191, 200, 340, 206))).toBe(28);
  });

  it("leave no way past a T joint or a crossing, on either side of a thin wall", () => {
    // The stem stands on the bar; a path along the bar cannot pass the stem.
    const bar = thin("bar", [100, 210], [280, 210]);
    const stem = thin("stem", [190, 210], [190, 300]);
    expect(lengthTo([195, 215], bar, stem)).toBeCloseTo(18 + Math.hypot(85, 5), 9);
    expect(sightLine([150, 210], [250, 210], [bar, stem])).toBe(true); // below the bar
    expect(sightLine([150, 210.5], [250, 210.5], [bar, stem])).toBe(false);
    const cross = thin("cross", [190, 200], [190, 300]);
    expect(sightLine([150, 210], [250, 210], [bar, cross])).toBe(false);
    expect(lengthTo([185, 212], bar, cross)).toBeCloseTo(18 + Math.hypot(85, 2), 9);
  });

  it("block a line through two corners of a solid, and one that would have to change sides along a wall", () => {
    const box20 = box("b", 100, 210, 120, 230);
    expect(sightLine([95, 205], [125, 235], [box20])).toBe(false);
    expect(sightLine([100, 210], [120, 230], [box20])).toBe(false);
    expect(sightLine([95, 215], [105, 205], [box20])).toBe(true); // touches the corner only
    // Through the inner corner of an L and out at its outer one.
    const corner = solid("l", [0, 300], [60, 300], [60, 310], [10, 310], [10, 360], [0, 360]);
    expect(sightLine([20, 320], [-10, 290], [corner])).toBe(false);
    // A thin bar with a stem above it and, farther on, one below it.
    const bar = thin("bar", [100, 210], [280, 210]);
    const above = thin("above", [160, 210], [160, 300]);
    const below = thin("below", [220, 210], [220, 195]);
    expect(sightLine([120, 210], [200, 210], [bar, above, below])).toBe(true);
    expect(sightLine([180, 210], [270, 210], [bar, above, below])).toBe(true);
    expect(sightLine([120, 210], [270, 210], [bar, above, below])).toBe(false);
    // Two boxes on two sides of one line, sharing a corner on it: no way along the line from face to face.
    const low = box("low", 60, 200, 190, 220);
    const high = box("high", 190, 220, 340, 240);
    expect(sightLine([100, 220], [300, 220], [low, high])).toBe(false);
    expect(sightLine([100, 220], [190, 220], [low, high])).toBe(true);
  });

  it("close a room: nobody gets in, whatever way its corners are put together", () => {
    const room = thin("room", [150, 210], [230, 210], [230, 290], [150, 290], [150, 210]);
    expect(lengthTo([190, 250], room)).toBeNull();
    const four = [
      box("s", 150, 210, 230, 214),
      box("n", 150, 286, 230, 290),
      box("w", 150, 214, 154, 286),
      box("e", 226, 214, 230, 286),
    ];
    expect(lengthTo([190, 250], ...four)).toBeNull();
    expect(sightLine([190, 250], [190, 150], four)).toBe(false);
    // One passage 10 in. wide in the far side: arithmetic by hand through (180, 290).
    const open = thin("room", [190, 290], [230, 290], [230, 210], [150, 210], [150, 290], [180, 290]);
    expect(lengthTo([180, 280], open)).toBeCloseTo(98 + 30 + 10, 9);
  });

  it("close a room whose wall ends on its own side", () => {
    const room = thin("room", [150, 210], [230, 210], [230, 290], [170, 290], [170, 210]);
    expect(lengthTo([200, 250], room)).toBeNull();
    expect(lengthTo([160, 250], room)).toBeCloseTo(18 + Math.hypot(10, 40), 9);
  });

  it("are reached on their lines from either side, whichever way they were drawn", () => {
    for (const wall of [thin("t", [100, 210], [280, 210]), thin("t", [280, 210], [100, 210])]) {
      expect(lengthTo([190, 210], wall)).toBe(18);
      expect(sightLine([190, 230], [190, 210], [wall])).toBe(true);
      expect(sightLine([190, 190], [190, 210], [wall])).toBe(true);
      expect(sightLine([190, 210], [190, 230], [wall])).toBe(true);
    }
    const clockwise = solid("c", [100, 216], [100, 222], [280, 222], [280, 216]);
    expect(lengthTo([190, 216], clockwise)).toBe(24);
    expect(lengthTo([190, 222], clockwise)).toBeCloseTo(120, 9);
  });

  it("make a courtyard: the way leads round an arm to its mouth", () => {
    const court = solid(
      "court",
      [100, 210],
      [280, 210],
      [280, 300],
      [270, 300],
      [270, 220],
      [110, 220],
      [110, 300],
      [100, 300],
    );
    // Arithmetic: up to (100, 300), across the arm's end, down to the floor.
    expect(lengthTo([110, 220], court)).toBeCloseTo(108 + 10 + 80, 9);
    expect(lengthTo([190, 230], court)).toBeCloseTo(108 + 10 + Math.hypot(80, 70), 9);
  });
});

describe("sight lines", () => {
  const wall = box("w", 100, 216, 280, 222);

  it("pass beside a wall and along its face, not through it", () => {
    expect(sightLine([190, 200], [190, 240], [wall])).toBe(false);
    expect(sightLine([90, 200], [90, 240], [wall])).toBe(true);
    expect(sightLine([50, 222], [350, 222], [wall])).toBe(true);
    expect(sightLine([100, 200], [100, 240], [wall])).toBe(true);
    expect(sightLine([190, 219], [190, 240], [wall])).toBe(false);
    expect(sightLine([190, 219], [190, 219], [])).toBe(true);
  });

  it("refuse a position that is not a number", () => {
    expect(() => sightLine([Number.NaN, 0], [1, 1], [wall])).toThrow("not a position");
    expect(() => shortestPathToArea([1, Number.POSITIVE_INFINITY], pool, [wall])).toThrow("not a position");
    expect(() => lengthTo([190, 240], solid("bad", [0, 0], [1, Number.NaN], [2, 2]))).toThrow("barrier bad");
  });
});
