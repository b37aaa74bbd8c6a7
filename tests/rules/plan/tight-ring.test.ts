/** The ring pulled tight among walls and buildings: it stays in front of them, whatever they are drawn as. */
import { describe, expect, it } from "vitest";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import { turnedBy } from "../../oracles/variants.ts";

const ell = [
  [0, 0],
  [300, 0],
  [300, 150],
  [150, 150],
  [150, 300],
  [0, 300],
];

const frame = (x0: number, y0: number, x1: number, y1: number) => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

function ringOf(outline: readonly (readonly number[])[], ...elements: readonly object[]): Report["ring"] {
  const pool = { id: "pool", kind: "pool", outline: { vertices: outline, closed: true }, body: "pool" };
  const read = checkSite({
    format: "copperband-site",
    version: 1,
    edition: "nec-2020",
    elements: [{ ...pool, shell: "sprayed-concrete", steel: "bare", depth: 60 }, ...elements],
  });
  if (!read.ok) throw new Error(JSON.stringify(read));
  return recompute(read.site).ring;
}

const wall = (vertices: readonly (readonly number[])[], closed: boolean, thickness = 6) => ({
  id: "wall",
  kind: "wall",
  path: { vertices, closed },
  thickness,
  top: 72,
  permanent: true,
});

/** The tight ring's positions; none when there is no room for one. */
const tight = (ring: Report["ring"]) => (ring.short?.loops ?? []).flatMap(({ path }) => path);

describe("the ring pulled tight", () => {
  it("stays inside a building that holds the pool", () => {
    // The corner of the house stands 20 in. off the inner corner of the pool, where the string would cut across.
    const house = [
      [-60, -60],
      [360, -60],
      [360, 170],
      [170, 170],
      [170, 360],
      [-60, 360],
    ];
    const ring = ringOf(ell, { id: "house", kind: "building", outline: { vertices: house, closed: true }, top: 120 });
    const open = ringOf(ell);
    const beyond = tight(ring).filter(([x, y]) => x > 170 + 0.01 && y > 170 + 0.01);
    expect(tight(ring).length).toBeGreaterThan(0);
    expect(beyond).toEqual([]);
    // Arithmetic: it bends round that corner, so each way it is longer than the straight one and shorter than the even ring.
    expect(ring.shortestLegal).toBeGreaterThan(open.shortestLegal + 1);
    expect(ring.shortestLegal).toBeLessThan(ring.length);
  });

  it("goes round a closed wall that stands in its way", () => {
    const post = wall(frame(172, 172, 180, 180), true, 2);
    const inside = tight(ringOf(ell, post)).filter(([x, y]) => x > 171.01 && y > 171.01);
    expect(inside).toEqual([]);
  });

  it("says that its shortest length is that of a part, where a wall leaves no legal ring all round", () => {
    const pool = frame(0, 0, 384, 192);
    // A wall of 6 in., its face 14 in. off: the ring's least line at 18 runs in it, and behind it copper is no ring.
    const [from, to] = [100, 280];
    const beside = wall(
      [
        [from, 209],
        [to, 209],
      ],
      false,
    );
    const walled = ringOf(pool, beside);
    const open = ringOf(pool);
    expect(open.legalIn).toBeUndefined();
    // Arithmetic: round corners of 18 in. and straight sides.
    expect(open.shortestLegal).toBeCloseTo(2 * (384 + 192) + 36 * Math.PI, 1);
    expect(walled.legalIn).toBe("part");
    // Arithmetic: less what the wall and the ground behind it take, to an eighth of an inch at either end.
    expect(Math.abs(walled.shortestLegal - (open.shortestLegal - (to - from)))).toBeLessThan(0.25);
    // A wall 30 in. off takes nothing.
    const far = ringOf(
      pool,
      wall(
        [
          [from, 225],
          [to, 225],
        ],
        false,
      ),
    );
    expect(far.legalIn).toBeUndefined();
    expect(far.shortestLegal).toBeCloseTo(open.shortestLegal, 6);
  });

  it("counts a stretch along a keep-out's edge as one where it fits, however the yard is turned", () => {
    // The keep-out ends at 18 in. on two sides of the pool and covers the third; its edges are open to a ring.
    const lengths = [0, 17.2, 90, 211.7].map((angle) => {
      const turn = turnedBy(angle);
      const placed = (vertices: readonly (readonly number[])[]) => vertices.map(([x = 0, y = 0]) => turn([x, y]));
      const keepOut = { vertices: placed(frame(-10, -18, 430, 210)), closed: true };
      const ring = ringOf(placed(frame(0, 0, 384, 192)), { id: "keep", kind: "keep-out", outline: keepOut });
      expect(ring.legalIn).toBe("part");
      return ring.shortestLegal;
    });
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThan(0.1);
    // Arithmetic: both long sides and the short side that it leaves free, with round corners between.
    expect(Math.min(...lengths)).toBeGreaterThan(2 * 384 + 192);
  });

  it("is none where walls leave no room in front of them, though there is room behind", () => {
    const around = ringOf(frame(0, 0, 384, 192), wall(frame(-17, -17, 401, 209), true));
    expect(around.short).toBeUndefined();
    // Arithmetic: a rectangle at 14 in.; less than 18 but for 8 pieces beside its corners.
    expect(around.length).toBeCloseTo(2 * (412 + 220), 1);
    const close = (around.tooClose ?? []).reduce((sum, { length }) => sum + length, 0);
    expect(close).toBeCloseTo(2 * (412 + 220) - 8 * (14 - Math.sqrt(18 ** 2 - 14 ** 2)), 1);
    // A wall of 6 in. at 14: its back is 20 in. from the water, and the perimeter ends at its face.
    const beside = wall(
      [
        [100, 209],
        [280, 209],
      ],
      false,
    );
    expect(ringOf(frame(0, 0, 384, 192), beside).short).toBeUndefined();
  });
});
