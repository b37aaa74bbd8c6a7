// Where a wall or building leaves a ring no room: NEC 680.26(B)(2), restated, 18 in.; lengths: arithmetic.
import { describe, expect, it } from "vitest";
import type { Point } from "../../../geometry/types.ts";
import { box, concretePool, deck, line } from "../../../rules/catalogue/common/example-yard.ts";
import { rule } from "../../../rules/catalogue/ring-room/rule.ts";
import { turnedBy } from "../../oracles/variants.ts";
import { verdictOf, yardOf } from "./yards.ts";

const wall = (away: number, changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: line(100, 192 + away + 3, 300, 192 + away + 3),
  thickness: 6,
  top: 72,
  permanent: true,
  reinforced: false,
  ...changes,
});
const judge = (elements: readonly object[], head: object = {}) =>
  rule.judge(yardOf([concretePool(), ...elements], head));

describe("room for the ring before a wall", () => {
  it("is asked about under the least distance, with the length of the stretch", () => {
    for (const edition of ["nec-2017", "nec-2020", "nec-2023"]) {
      const verdict = verdictOf(rule, yardOf([concretePool(), wall(14)], { edition }), "wall");
      expect(verdict).toMatchObject({ outcome: "review", question: { id: "ring-too-near" } });
      expect(verdict.measured.horizontal).toBeCloseTo(14, 9);
      expect(verdict.margin).toBeCloseTo(-4, 9);
      expect(verdict.extent).toBeCloseTo(200, 3);
    }
    expect(judge([wall(17.99)])).toHaveLength(1);
    expect(judge([wall(18)])).toEqual([]);
    expect(judge([wall(18.5)])).toEqual([]);
    expect(judge([wall(18.5)], { accuracy: 1 })).toMatchObject([{ outcome: "review" }]);
    expect(judge([wall(19.01)], { accuracy: 1 })).toEqual([]);
  });

  it("asks nothing where the wall does not end the perimeter, or where no ring is laid", () => {
    expect(judge([wall(14, { top: 59.99 })])).toEqual([]);
    expect(judge([wall(14, { permanent: false })])).toEqual([]);
    // Drawn without its thickness, a wall's face may stand nearer than its line does.
    expect(judge([wall(17, { thickness: undefined })])).toMatchObject([{ outcome: "review" }]);
    expect(judge([wall(27.5, { thickness: undefined })])).toEqual([]);
    for (const open of ["top", "permanent"]) {
      expect(judge([wall(14, { [open]: undefined })])).toMatchObject([{ outcome: "review" }]);
    }
    expect(judge([deck({ steel: "rebar" }), wall(14)])).toEqual([]);
    expect(judge([deck({ steel: "none" }), wall(14)], { edition: "nec-2023" })).toEqual([]);
  });

  it("takes the level of the ground all along a wall that is as near everywhere, not of one place of it", () => {
    const paving = (x0: number, x1: number, level?: number) => ({
      id: "paving",
      kind: "surface",
      outline: box(x0, 192, x1, 206),
      material: "lawn",
      level,
    });
    const reversed = { path: line(300, 209, 100, 209) };
    for (const [x0, x1] of [
      [90, 150],
      [150, 250],
      [250, 310],
    ] as const) {
      for (const drawn of [{}, reversed]) {
        // Level with the datum it is 72 in. high, above a raised piece 48 in.: too low to end the perimeter there.
        expect(judge([paving(x0, x1, 0), wall(14, drawn)])).toMatchObject([{ outcome: "review" }]);
        expect(judge([paving(x0, x1, 24), wall(14, drawn)])).toEqual([]);
        // 40 in. above the datum, but who knows how high above the piece whose level is not given.
        expect(judge([paving(x0, x1), wall(14, { ...drawn, top: 40 })])).toMatchObject([{ outcome: "review" }]);
      }
    }
  });

  it("looks at buildings, also at the one that the pool is in, and not at one that rises out of the water", () => {
    const house = (outline: object) => ({ id: "house", kind: "building", outline, top: 120, metalCladding: false });
    expect(judge([house(box(0, 206, 384, 400))])).toMatchObject([{ element: "house", outcome: "review" }]);
    expect(judge([house(box(-100, -100, 484, 206))])).toMatchObject([{ element: "house", outcome: "review" }]);
    expect(judge([house(box(-100, -100, 484, 292))])).toEqual([]);
    expect(judge([house(box(0, 192, 384, 400))])).toEqual([]);
    // Nor at the back of a thin one.
    expect(judge([wall(0)])).toEqual([]);
    expect(judge([wall(0, { path: line(0, 195, 384, 195) })])).toEqual([]);
  });

  it("is as long however the yard is turned, where a wall crosses the pool's edge", () => {
    const vertices = [
      [0, 0],
      [300, 0],
      [300, 200],
      [185, 200],
      [185, 60],
      [115, 60],
      [115, 200],
      [0, 200],
    ].map(([x = 0, y = 0]): Point => [x, y]);
    const ends: Point[] = [
      [50.37, 213.1],
      [103.1, -36],
    ];
    const extents = [0, 17.2, 45, 90, 120.3, 211].map((angle) => {
      const turn = turnedBy(angle);
      const pool = { ...concretePool(), outline: { vertices: vertices.map(turn), closed: true } };
      const across = wall(0, { path: { vertices: ends.map(turn), closed: false } });
      return verdictOf(rule, yardOf([pool, across]), "wall").extent ?? 0;
    });
    expect(Math.min(...extents)).toBeGreaterThan(10);
    expect(Math.max(...extents) - Math.min(...extents)).toBeLessThan(0.01);
  });

  it("leaves recorded copper to the rule on its place", () => {
    const ring = { id: "ring", kind: "conductor", role: "ring", path: line(0, -21, 384, -21) };
    expect(judge([wall(14), ring])).toMatchObject([{ outcome: "exempt" }]);
    // Copper of the shell, and of another pool's perimeter, lies elsewhere.
    const grid = { id: "grid", kind: "conductor", role: "grid", path: line(10, 90, 370, 90) };
    expect(judge([wall(14), grid])).toMatchObject([{ outcome: "review" }]);
    expect(judge([wall(14), { ...ring, path: line(0, -200, 384, -200) }])).toMatchObject([{ outcome: "review" }]);
  });
});

describe("room for the ring beside a keep-out", () => {
  const keepOut = (outline: object) => ({ id: "pad", kind: "keep-out", outline });

  it("is asked about where it covers all the ground from 18 to 24 in., with the length of that", () => {
    const verdict = verdictOf(rule, yardOf([concretePool(), keepOut(box(100, 202, 200, 222))]), "pad");
    expect(verdict).toMatchObject({ outcome: "review", question: { id: "ring-too-near" } });
    expect(verdict.measured.horizontal).toBeCloseTo(10, 9);
    expect(verdict.extent).toBeCloseTo(100, 1);
    for (const [nearest, farthest, count] of [
      [18, 24, 1],
      [18.01, 24, 0],
      [18, 23.99, 0],
      [-20, 24, 1],
      [-20, 23.99, 0],
      [25, 40, 0],
    ] as const)
      expect(judge([keepOut(box(100, 192 + nearest, 200, 192 + farthest))]), `${nearest} to ${farthest}`).toHaveLength(
        count,
      );
    // Within what the drawing may be off, room on either side of it is no sure room.
    expect(judge([keepOut(box(100, 211, 200, 215))], { accuracy: 1 })).toMatchObject([{ outcome: "review" }]);
    expect(judge([keepOut(box(100, 211.01, 200, 215))], { accuracy: 1 })).toEqual([]);
  });

  it("is asked about at a corner of the pool, and all round where it covers everything", () => {
    // Arithmetic: a quarter of the circle of 18 in. round the corner.
    const corner = verdictOf(rule, yardOf([concretePool(), keepOut(box(-40, -40, 0, 0))]), "pad");
    expect(corner.extent).toBeCloseTo(9 * Math.PI, 1);
    const all = verdictOf(rule, yardOf([concretePool(), keepOut(box(-60, -60, 444, 252))]), "pad");
    expect(all.outcome).toBe("review");
    expect(all.extent).toBeCloseTo(1152 + 36 * Math.PI, 1);
  });

  it("is the same where a slab lies along the keep-out's edge, however the yard is turned", () => {
    const extents = [0, 17.2, 90, 211].map((angle) => {
      const turn = turnedBy(angle);
      const placed = (x0: number, y0: number, x1: number, y1: number) => ({
        vertices: box(x0, y0, x1, y1).vertices.map(([x = 0, y = 0]) => turn([x, y])),
        closed: true,
      });
      const pool = { ...concretePool(), outline: placed(0, 0, 384, 192) };
      const slab = {
        id: "slab",
        kind: "surface",
        outline: placed(100, 192, 150, 240),
        material: "concrete",
        steel: "rebar",
      };
      const yard = yardOf([pool, slab, keepOut(placed(-30, -30, 420, 192 + 30))]);
      return verdictOf(rule, yard, "pad").extent ?? 0;
    });
    expect(Math.max(...extents) - Math.min(...extents)).toBeLessThan(1 / 1000);
    // Arithmetic: all round at 18 in., less the 50 in. where steel serves.
    for (const extent of extents) expect(extent).toBeCloseTo(1152 + 36 * Math.PI - 50, 1);
  });

  it("is asked about before a house that stands at the least distance, however the yard is turned", () => {
    for (const angle of [0, 17.2, 33.7, 90, 145, 211.3, 301]) {
      const turn = turnedBy(angle);
      const placed = (x0: number, y0: number, x1: number, y1: number) => ({
        vertices: box(x0, y0, x1, y1).vertices.map(([x = 0, y = 0]) => turn([x, y])),
        closed: true,
      });
      const pool = { ...concretePool(), outline: placed(0, 0, 384, 192) };
      const house = { id: "house", kind: "building", outline: placed(0, 210, 384, 400), top: 120 };
      const yard = yardOf([pool, house, keepOut(placed(100, 205, 200, 230))]);
      // Arithmetic: the keep-out is 100 in. wide.
      expect(verdictOf(rule, yard, "pad").extent, `turned ${angle}`).toBeCloseTo(100, 1);
    }
  });

  it("asks nothing where no ring is laid, or where copper is recorded", () => {
    const pad = keepOut(box(100, 202, 200, 222));
    expect(judge([deck({ steel: "rebar" }), pad])).toEqual([]);
    const ring = { id: "ring", kind: "conductor", role: "ring", path: line(0, -21, 384, -21) };
    expect(judge([pad, ring])).toMatchObject([{ outcome: "exempt" }]);
  });
});
