/** Typed directions and numbers. All expectations: arithmetic (compass bearings run clockwise from north, plan angles the other way). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseBearing } from "../../../app/entry/parse-bearing.ts";
import { parseQuantity, partAreaText } from "../../../app/entry/parse-quantity.ts";
import { runs } from "../../oracles/seed.ts";

function degreesOf(text: string, north?: number): number {
  const read = parseBearing(text, north);
  if (!read.ok) throw new Error(`${text}: ${read.reason}`);
  return read.degrees;
}

describe("a typed direction", () => {
  it.each([
    ["90", 90],
    ["90 deg", 90],
    ["90°", 90],
    ["22.5", 22.5],
    ["-45", 315],
    ["360", 0],
    ["-.00000000000000000001", 0],
    ["45° 30'", 45.5],
    ["N", 90],
    ["east", 0],
    ["SW", 225],
    ["north-west", 135],
    ["N 45 E", 45],
    ["n45e", 45],
    ["N 30° W", 120],
    ["S 30° 15' W", 239.75],
    ["S 0 E", 270],
  ])("%s is %d degrees with north up", (text, degrees) => {
    expect(degreesOf(text)).toBeCloseTo(degrees, 12);
  });

  it("of the compass turns with the site's north", () => {
    expect(degreesOf("N", 0)).toBe(0);
    expect(degreesOf("E", 0)).toBe(270);
    expect(degreesOf("N 45 E", 120)).toBe(75);
    expect(degreesOf("45", 120)).toBe(45);
  });

  it.each([
    ["", /Type a direction/],
    ["up", /cannot be read/],
    ["N 95 E", /at most 90/],
    ["400", /between 0 and 360/],
    ["45° 75'", /up to 60/],
    ["N 45", /cannot be read/],
    ["1/0", /other than zero/],
  ])("%j is refused in plain words", (text, reason) => {
    const read = parseBearing(text);
    expect(read.ok ? read.degrees : read.reason).toMatch(reason);
  });

  it("reads back every plan angle and never throws", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359.999, noNaN: true }), (degrees) => {
        const text = degrees.toFixed(12);
        expect(degreesOf(text)).toBe(Number(text));
      }),
      runs(100),
    );
    fc.assert(
      fc.property(fc.string(), fc.double({ min: -1000, max: 1000, noNaN: true }), (text, north) => {
        const read = parseBearing(text, north);
        if (read.ok) expect(read.degrees).toBeGreaterThanOrEqual(0);
        if (read.ok) expect(read.degrees).toBeLessThan(360);
      }),
      runs(100),
    );
  });
});

describe("a typed number", () => {
  it.each([
    ["15 A", "amps", 15],
    ["240V", "volts", 240],
    ["8 AWG", "gauge", 8],
    ["#8", "gauge", 8],
    ["9 sq in", "area", 9],
    ["1 sq ft", "area", 144],
    ["4", "count", 4],
    ["1 1/2", "number", 1.5],
    ["-3", "number", -3],
  ] as const)("%s as %s is %d", (text, kind, value) => {
    const read = parseQuantity(text, kind);
    expect(read.ok && read.value).toBeCloseTo(value, 12);
  });

  it.each([
    ["4.5", "count", {}, /whole number/],
    ["x", "number", {}, /cannot be read/],
    ["", "number", {}, /Type a number/],
    ["15 V", "amps", {}, /does not fit/],
    ["-1", "amps", { least: 0 }, /at least 0/],
    ["2000000", "number", { most: 1e6 }, /at most 1,000,000/],
    ["5,5", "number", {}, /point for decimals/],
    ["5 constructor", "amps", {}, /does not fit/],
  ] as const)("%j as %s is refused", (text, kind, rule, reason) => {
    const read = parseQuantity(text, kind, rule);
    expect(read.ok ? String(read.value) : read.reason).toMatch(reason);
  });

  it("is shown for the area of a part in square inches while it is small", () => {
    expect(partAreaText(9)).toBe("9 sq in.");
    expect(partAreaText(2880)).toBe("20.0 sq ft");
    expect(partAreaText(1, "m")).toBe("6.5 sq cm");
  });
});
