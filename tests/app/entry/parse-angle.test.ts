import { describe, expect, it } from "vitest";
import { parseAngle } from "../../../app/entry/parse-angle.ts";

// Source: arithmetic (60 minutes to the degree).
describe("typed angles", () => {
  it.each([
    ["45", 45],
    ["45 deg", 45],
    ["-22.5", -22.5],
    ["22 1/2°", 22.5],
    ["7° 30'", 7.5],
    ["+ 90 degrees", 90],
    ["360", 360],
    ["0", 0],
  ])("%s", (text, degrees) => expect(parseAngle(text)).toEqual({ ok: true, degrees }));

  it.each(["", "steep", "N 45 E", "361", "1/0", "10 70'", "12' 6\""])("refuses %j with a sentence", (text) => {
    const read = parseAngle(text);
    expect(read.ok).toBe(false);
    expect(read.ok ? "" : read.reason).toMatch(/^["A-Z].*\.$/);
  });
});
