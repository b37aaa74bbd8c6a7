import { describe, expect, it } from "vitest";
import { orientation } from "../../geometry/orientation.ts";

describe("orientation", () => {
  it("is positive to the left with y up", () => {
    // arithmetic: twice the area of a right triangle with legs of 1
    expect(orientation([0, 0], [1, 0], [0, 1])).toBe(1);
    expect(orientation([0, 0], [1, 0], [0, -1])).toBe(-1);
  });

  it("is exactly 0 on the line and signed beside it, where rounding would lie", () => {
    // arithmetic: 0.1, 0.2 and 0.3 are not on one line in binary; neighbors of a double on a diagonal are off it
    expect(orientation([0.5, 0.5], [12, 12], [24, 24])).toBe(0);
    expect(orientation([0.5, 0.5], [12, 12], [24, 24 + 2 ** -48])).toBeGreaterThan(0);
    expect(orientation([0.5 + 2 ** -52, 0.5], [12, 12], [24, 24])).toBeLessThan(0);
    expect(orientation([0.5, 0.5 + 2 ** -52], [12, 12], [24, 24])).toBeGreaterThan(0);
  });
});
