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
