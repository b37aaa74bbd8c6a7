import { describe, expect, it } from "vitest";
import { drawn, refusalOf } from "./measured.ts";

// Every refusal names the dimension and the range. Source: arithmetic.
describe("dimensions that cannot be", () => {
  it.each([
    ["rectangle", { length: 0 }, "length", "Length has to be above zero; it is zero."],
    [
      "rectangle",
      { length: 384, width: 192, radius: 97 },
      "radius",
      "Corner radius has to be between zero and 8' 0\" (half of the shorter side); it is 8' 1\".",
    ],
    [
      "rectangle-corners",
      { length: 384, width: 192, lowerRight: 96, upperRight: 120 },
      "upperRight",
      "Upper right radius has to be between zero and 8' 0\" (the width less the lower right radius); it is 10' 0\".",
    ],
    [
      "rectangle-corners",
      { length: 384, width: 192, lowerRight: 200, upperRight: 0 },
      "lowerRight",
      "Lower right radius has to be between zero and 16' 0\" (the width); it is 16' 8\".",
    ],
    [
      "roman-end",
      { length: 360, width: 192, arcWidth: 120, arcDepth: 61 },
      "arcDepth",
      "Arc depth has to be above zero and at most 5' 0\" (half of the arc's width); it is 5' 1\".",
    ],
    [
      "roman-end",
      { width: 192, arcWidth: 193 },
      "arcWidth",
      "Arc width has to be above zero and at most 16' 0\" (the width); it is 16' 1\".",
    ],
    [
      "double-roman-end",
      { length: 120, width: 192, arcWidth: 120, arcDepth: 60 },
      "length",
      "Length overall has to be above 10' 0\" (the depths of both arcs); it is 10' 0\".",
    ],
    [
      "grecian",
      { length: 384, width: 192, cut: 20, cutAcross: 97 },
      "cutAcross",
      "Cut along the width has to be above zero and at most 8' 0\" (half of the width); it is 8' 1\".",
    ],
    ["oval", { length: 200, width: 216 }, "length", "Length has to be at least 18' 0\" (the width); it is 16' 8\"."],
    ["round", { diameter: 0 }, "diameter", "Diameter has to be above zero; it is zero."],
    [
      "kidney",
      { length: 384, large: 216, small: 220 },
      "small",
      "Small end has to be above zero and at most 18' 0\" (the large end); it is 18' 4\".",
    ],
    [
      "kidney",
      { length: 480, large: 216, small: 168, inner: 48 },
      "inner",
      "Inside radius has to be above 4' 0\" (half of the gap between the ends); it is 4' 0\".",
    ],
    [
      "kidney",
      { length: 384, outer: 190 },
      "outer",
      "Outside radius has to be above 16' 0\" (half of the length); it is 15' 10\".",
    ],
    ["lazy-l", { bend: 90 }, "bend", "Bend has to be between 5 degrees and 85 degrees; it is 90 degrees."],
    [
      "true-l",
      { length: 144, width: 192, legLength: 360, legWidth: 144 },
      "length",
      "Length has to be above 12' 0\" (what the other arm takes of it); it is 12' 0\".",
    ],
    [
      "true-l",
      { length: 480, width: 192, legLength: 360, legWidth: 168, radius: 90 },
      "radius",
      "Corner radius can be at most 7' 0\" with these sides; it is 7' 6\".",
    ],
    [
      "true-l",
      { length: 480, width: 192, legLength: 360, legWidth: 168, radius: 24, insideRadius: 150 },
      "insideRadius",
      "Inside corner radius can be at most 12' 0\" with these sides; it is 12' 6\".",
    ],
  ] as const)("%s %j", (id, typed, field, reason) => {
    expect(refusalOf(id, typed)).toMatchObject({ field, reason });
  });

  it("a neck no wider than where the ends cross, or as wide as the small end", () => {
    // Ends of 100 with centers 100 apart cross 2 sqrt(100^2 - 50^2) = 173.2 apart.
    const sizes = { length: 300, large: 200, small: 200 };
    expect(refusalOf("figure-8", { ...sizes, neck: 173 }).reason).toContain("above 14' 5");
    expect(refusalOf("figure-8", { ...sizes, neck: 200 }).reason).toContain("narrower than the small end");
    expect(drawn("figure-8", { ...sizes, neck: 174 }).vertices).toHaveLength(4);
  });

  it("a kidney whose long sides would meet", () => {
    const refusal = refusalOf("kidney", { length: 480, large: 130, small: 120, outer: 4000, inner: 116 });
    expect(refusal.field).toBe("inner");
    expect(refusal.reason).toContain("makes the long sides meet");
  });

  it("sizes at their limits are drawn", () => {
    expect(drawn("rectangle", { length: 384, width: 192, radius: 96 }).vertices).toHaveLength(6);
    expect(drawn("roman-end", { length: 360, width: 192, arcWidth: 192, arcDepth: 96 }).vertices).toHaveLength(4);
    expect(drawn("true-l", { length: 480, width: 192, legLength: 360, legWidth: 168, radius: 84 }).closed).toBe(true);
    const corners = { length: 384, width: 192, lowerRight: 96, upperRight: 96, lowerLeft: 96, upperLeft: 96 };
    expect(drawn("rectangle-corners", corners).vertices).toHaveLength(6);
  });
});
