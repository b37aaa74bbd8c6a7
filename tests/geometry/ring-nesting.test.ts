import { describe, expect, it } from "vitest";
import { nestRings } from "../../geometry/ring-nesting.ts";
import type { Point } from "../../geometry/types.ts";
import { positions } from "../oracles/positions.ts";

const square = (x: number, y: number, side: number): Point[] =>
  positions(x, y, x + side, y, x + side, y + side, x, y + side);
const hole = (x: number, y: number, side: number): Point[] => square(x, y, side).reverse();

describe("rings of the clipping engine", () => {
  it("are outlines with the holes in them", () => {
    const [outer, inner, own] = [square(0, 0, 1000), square(300, 300, 200), hole(250, 250, 300)];
    expect(nestRings([inner, own, outer])).toEqual([[inner], [outer, own]]);
  });

  it("lose a hairline outside of every outline, where rounding folded an edge over", () => {
    const outer = square(0, 0, 100_000);
    // As the engine gave it along a slanting edge, in steps of the grid: 30,000 long, 124,594 square steps.
    const folded = positions(920720, -117227, 921899, -116870, 922061, -116812, 948727, -108564, 951581, -107681);
    folded.push([921899, -116870], [917867, -118110]);
    expect(nestRings([outer, folded])).toEqual([[outer]]);
  });

  it("are refused where a hole of any size lies outside of every outline", () => {
    expect(() => nestRings([square(0, 0, 1000), hole(5000, 5000, 100)])).toThrow("without an outline");
  });
});
