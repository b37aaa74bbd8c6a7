/** Links between the loops of pools that lie apart: as short as can be, whatever vertex an outline starts at. Figures: arithmetic. */
import { describe, expect, it } from "vitest";
import { concretePool } from "../../../rules/catalogue/common/example-yard.ts";
import { reportOf } from "../recorded/yards.ts";

type Corner = readonly [number, number, number?];

const round = (x: number, y: number, radius: number): Corner[] => [
  [x - radius, y, 1],
  [x + radius, y, 1],
];

const box = (x0: number, y0: number, x1: number, y1: number): Corner[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

function linksOf(others: readonly object[], ...outlines: readonly (readonly Corner[])[]): number[] {
  const pools = outlines.map((vertices, i) =>
    concretePool({ id: `pool-${i + 1}`, outline: { vertices, closed: true }, islands: undefined }),
  );
  return (reportOf([...pools, ...others]).ring.links ?? []).map(({ length }) => length);
}

const startedAt = (outline: readonly Corner[], start: number) => [...outline.slice(start), ...outline.slice(0, start)];

describe("the link between the loops of two pools", () => {
  it("runs from where they are nearest, between the places of a step too", () => {
    const far = round(400, 130, 100);
    const link = Math.hypot(400, 130) - 100 - 100 - 2 * 21;
    for (const start of [0, 1]) {
      const [found, ...more] = linksOf([], startedAt(round(0, 0, 100), start), startedAt(far, 1 - start));
      expect(more).toEqual([]);
      expect(Math.abs((found ?? 0) - link)).toBeLessThan(0.01);
    }
  });

  it("ends where a loop is nearest to the corner at which it bends", () => {
    // A hedge's footing hides each loop from the other; the way is shortest over its lower corners, straight down from both.
    const footing = {
      id: "footing",
      kind: "keep-out",
      outline: { vertices: box(240, -60, 250, 500), closed: true },
    };
    const [left, right] = [box(0, 0, 192, 384), box(298, 0, 490, 384)];
    // From a corner of the footing to the rounded corner of a loop: its distance from the pool's corner, less the offset.
    const link = 2 * (Math.hypot(48, 60) - 21) + 10;
    for (const start of [0, 1, 2, 3]) {
      const [found] = linksOf([footing], startedAt(left, start), startedAt(right, 3 - start));
      expect(Math.abs((found ?? 0) - link)).toBeLessThan(0.01);
    }
  });
});
