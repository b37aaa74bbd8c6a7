/** Typed lengths. The inch is 25.4 mm exactly (NIST Special Publication 811, appendix B); the other values are arithmetic. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lengthEntry } from "../../../app/entry/length-entry.ts";
import { parseLength } from "../../../app/entry/parse-length.ts";
import { lengthText, type Units } from "../../../rules/words/lengths.ts";
import { runs } from "../../oracles/seed.ts";

const UNITS: readonly Units[] = ["ft-in", "ft", "in", "m"];

function inchesOf(text: string, units: Units = "ft-in", mayBeNegative = false): number {
  const read = parseLength(text, units, { mayBeNegative });
  if (!read.ok) throw new Error(`${text}: ${read.reason}`);
  return read.inches;
}

function reasonOf(text: string, units: Units = "ft-in"): string {
  const read = parseLength(text, units);
  if (read.ok) throw new Error(`${text} was read as ${read.inches}`);
  return read.reason;
}

describe("a typed length", () => {
  // arithmetic
  it.each([
    [`16' 6 1/2"`, 198.5],
    [`16'6.5"`, 198.5],
    [`16'-6 1/2"`, 198.5],
    [`16' 6-1/2"`, 198.5],
    ["16' 6", 198],
    ["16ft 6in", 198],
    ["16 ft. 6 in.", 198],
    ["16 feet 6 inches", 198],
    ["16ft6in", 198],
    ["16'", 192],
    [`0' 18"`, 18],
    ["198in", 198],
    [`198"`, 198],
    ["198''", 198],
    [`1/2"`, 0.5],
    [`6 1/2"`, 6.5],
    [".5 ft", 6],
    ["1,200 in", 1200],
    ["16’ 6½”", 198.5],
    ["½ft", 6],
    ["6½'", 78],
    ["16′ 6 ¼″", 198.25],
    ["16' 6 1⁄2\"", 198.5],
    ["  16'   6\"  ", 198],
    ["+2 ft", 24],
    ["0", 0],
  ])("%s is %d in.", (text, inches) => {
    expect(inchesOf(text)).toBe(inches);
  });

  // NIST Special Publication 811, appendix B: 1 in. = 0.0254 m
  it.each([
    ["5.03m", 5.03 / 0.0254],
    ["503cm", 503 / 2.54],
    ["5030mm", 5030 / 25.4],
    ["0.0254 meters", 1],
    ["2.54 CM", 1],
  ])("%s is %d in.", (text, inches) => {
    expect(inchesOf(text)).toBe(inches);
  });

  it("without a unit is in the unit that lengths are shown in", () => {
    expect(inchesOf("16.5", "ft-in")).toBe(198);
    expect(inchesOf("16.5", "ft")).toBe(198);
    expect(inchesOf("16.5", "in")).toBe(16.5);
    expect(inchesOf("16.5", "m")).toBe(16.5 / 0.0254);
    expect(inchesOf("6 1/2", "ft-in")).toBe(78);
  });

  it("below zero is a level, never a length", () => {
    expect(inchesOf(`-1' 6"`, "ft-in", true)).toBe(-18);
    expect(inchesOf('−3"', "ft-in", true)).toBe(-3);
    expect(Object.is(inchesOf("-0", "ft-in", true), 0)).toBe(true);
    expect(reasonOf(`-1' 6"`)).toMatch(/below zero/);
  });

  it.each([
    ["", /Type a length/],
    ["   ", /Type a length/],
    ["16 6", /Mark the feet/],
    ["16 6 1/2", /Mark the feet/],
    ["5,03m", /point for decimals/],
    ["16.5' 6\"", /cannot be followed/],
    [`6" 16'`, /Only feet/],
    ["5m 3cm", /Only feet/],
    [`1' 2" 3"`, /nothing more/],
    ["1/0", /other than zero/],
    ["16 yd", /"yd" is no unit/],
    ["constructor", /cannot be read/],
    ["5 constructor", /no unit/],
    ["Infinity", /cannot be read/],
    ["NaN", /cannot be read/],
    ["1e3", /no unit|cannot be read/],
    ["1'--2\"", /cannot be read/],
    ["90000 ft", /farther than a site/],
    ["9".repeat(400), /farther than a site/],
    // Never a half and what follows as one: 1/26.
    [`16' ½6`, /inches/],
    ["½6", /Mark the feet and the inches/],
  ])("%j is refused in plain words", (text, reason) => {
    expect(reasonOf(text)).toMatch(reason);
    expect(reasonOf(text)).toMatch(/[.]$/);
  });

  it("never throws, and gives a finite length or a sentence, whatever is typed", () => {
    const piece = fc.constantFrom("1", "16", ".5", "1/2", "'", '"', " ", "-", "ft", "in", "m", ",", "½", "°", "x");
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece).map((list) => list.join("")),
        ),
        fc.constantFrom(...UNITS),
        (text, units) => {
          const read = parseLength(text, units);
          if (read.ok) expect(read.inches).toBeGreaterThanOrEqual(0);
          else expect(read.reason).toMatch(/^\S.*\.$/s);
        },
      ),
      runs(2000),
    );
  });
});

describe("round trips", () => {
  const inches = fc.oneof(
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.integer({ min: -16e6, max: 16e6 }).map((n) => n / 16),
    fc.double({ min: -1, max: 1, noNaN: true }),
  );

  it("what a field holds reads back as exactly the same length", () => {
    fc.assert(
      fc.property(inches, fc.constantFrom(...UNITS), (length, units) => {
        expect(inchesOf(lengthEntry(length, units), units, true)).toBe(length + 0);
      }),
      runs(3000),
    );
  });

  it("sixteenths of an inch are held as they are shown", () => {
    fc.assert(
      fc.property(fc.integer({ min: -160_000, max: 160_000 }), (n) => {
        expect(lengthEntry(n / 16, "ft-in")).toBe(lengthText(n / 16, "ft-in"));
      }),
      runs(100),
    );
  });

  it("what is shown reads back within half of its last digit, and shows the same again", () => {
    const half: Record<Units, number> = { "ft-in": 1 / 32, ft: 0.06, in: 0.005, m: 0.005 / 0.0254 };
    fc.assert(
      fc.property(inches, fc.constantFrom(...UNITS), (length, units) => {
        const text = lengthText(length, units);
        const again = inchesOf(text, units, true);
        expect(Math.abs(again - length)).toBeLessThanOrEqual(half[units] * (1 + 1e-9) + 1e-9);
        expect(lengthText(again, units).replace(/^-(?=0(\.0+)?( ft| m|")$)/, "")).toBe(
          text.replace(/^-(?=0(\.0+)?( ft| m|")$)/, ""),
        );
      }),
      runs(3000),
    );
  });
});
