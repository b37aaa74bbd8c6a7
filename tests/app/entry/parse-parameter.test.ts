// Values of the code's numbers as they are typed. Common practice, no source.
import { describe, expect, it } from "vitest";
import { parameterEntry, parseParameter } from "../../../app/entry/parse-parameter.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { EDITIONS } from "../../../rules/editions/in-force.ts";

describe("a typed value", () => {
  it.each([
    ["6'", "in", 72],
    [`5' 6 1/2"`, "in", 66.5],
    ["1.5 m", "in", 1.5 / 0.0254],
    ["yes", "yes/no", true],
    ["N", "yes/no", false],
    ["copper, Stainless steel,", "list", ["copper", "stainless-steel"]],
    ["grade", "word", "grade"],
    ["6 AWG", "AWG", 6],
    ["20 V", "V", 20],
    ["12", "sq in", 12],
    ["1.3", "factor", 1.3],
    ["5", "count", 5],
  ])("%s (%s)", (text, unit, value) => {
    const read = parseParameter(text, unit);
    expect(read).toEqual({ ok: true, value: typeof value === "number" ? expect.closeTo(value, 9) : value });
  });

  it.each([
    ["", "in"],
    ["perhaps", "yes/no"],
    ["-3", "in"],
    ["-3", "V"],
    ["4.5", "count"],
    ["wide", "in"],
  ])("%s (%s) is refused with a reason", (text, unit) => {
    const read = parseParameter(text, unit);
    expect(read.ok).toBe(false);
    expect(read.ok ? "" : read.reason).toMatch(/\.$/);
  });

  it("is written as it is read, for every number of every edition and every unit of length", () => {
    for (const edition of EDITION_IDS) {
      for (const { value, unit } of Object.values(EDITIONS[edition].parameters)) {
        if (value === null) continue;
        for (const units of ["ft-in", "in", "ft", "m"] as const) {
          const read = parseParameter(parameterEntry(value, unit, units), unit, units);
          if (!read.ok) throw new Error(read.reason);
          if (typeof value === "number") expect(read.value).toBeCloseTo(value, 6);
          else expect(read.value).toEqual(value);
        }
      }
    }
  });
});
