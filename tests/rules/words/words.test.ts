// Common practice, no source, unless a check names another: how the program words its numbers and outcomes.
import { describe, expect, it } from "vitest";
import { OUTCOMES_WORST_FIRST } from "../../../rules/report.ts";
import { tied, untied, wordsOf } from "../../../rules/words/breaks.ts";
import { elementName, namesOf, sortOf } from "../../../rules/words/element-names.ts";
import { briefTexts, decidingText, measuredTexts } from "../../../rules/words/measured.ts";
import { OUTCOME_WORDS, outcomeCount } from "../../../rules/words/outcomes.ts";

describe("outcomes", () => {
  it("have six different words; bond is said as needs bonding (the report's contract)", () => {
    expect(new Set(OUTCOMES_WORST_FIRST.map((outcome) => OUTCOME_WORDS[outcome])).size).toBe(6);
    expect(OUTCOME_WORDS.bond).toBe("needs bonding");
  });

  it("are counted with the right ending", () => {
    expect([0, 1, 2].map((count) => outcomeCount("bond", count))).toEqual([
      "0 need bonding",
      "1 needs bonding",
      "2 need bonding",
    ]);
    expect(outcomeCount("review", 1)).toBe("1 question");
    expect(outcomeCount("meets", 2)).toBe("2 meet");
  });
});

describe("measurements", () => {
  const finding = {
    measured: { horizontal: 55, path: 55, vertical: -20, wettedArea: 9.5, ratedAmps: 60 },
    required: { horizontal: 60, wettedArea: 9, tailSize: 8 },
  };

  it("stand with their limit and their unit", () => {
    expect(measuredTexts(finding)).toEqual([
      `straight distance in plan 4' 7" (limit 5' 0")`,
      `shortest path round barriers 4' 7"`,
      `depth below the water 1' 8"`,
      "metal in the water 9.5 sq in (limit 9 sq in)",
      "rating 60 A",
      "asked for: tail 8 AWG",
    ]);
  });

  it("never seem to equal a limit that they miss (the report's contract)", () => {
    const [text] = measuredTexts({ measured: { horizontal: 59.99 }, required: { horizontal: 60 } });
    expect(text).toBe(`straight distance in plan 4' 11.99" (limit 5' 0")`);
  });

  it("that do not exist say so", () => {
    expect(measuredTexts({ measured: { path: null }, required: { path: 60 } })).toEqual([
      `no path round the barriers (limit 5' 0")`,
    ]);
  });

  it("are told in brief only where a limit stands against them", () => {
    expect(briefTexts(finding)).toEqual([
      `4' 7" in plan, limit 5' 0"`,
      "9.5 sq in of metal in the water, limit 9 sq in",
    ]);
  });

  // Ring 1' 6" to 2' 0" out, solid 8 AWG: NEC 680.26(B)(2); fittings of 4 in. reaching in 1 in.: 680.26(B)(5).
  it("tell in a row what is at fault, and nothing that keeps its limit", () => {
    const ring = { measured: { offsetMin: 21, offsetMax: 32 }, required: { offsetMin: 18, offsetMax: 24 } };
    expect(decidingText({ ...ring, margin: -8, outcome: "conflict" })).toBe(`2' 8" at most, limit 2' 0"`);
    expect(decidingText({ ...ring, margin: 3, outcome: "meets" })).toBe(`1' 9" at least, limit 1' 6"`);
    const anchor = {
      measured: { largestDimension: 3, penetration: 2.5 },
      required: { largestDimension: 4, penetration: 1 },
    };
    expect(decidingText({ ...anchor, margin: null, outcome: "bond" })).toBe(`2 1/2" into the structure, limit 1"`);
    const stranded = { measured: { awg: 8 }, required: { awg: 8 } };
    expect(decidingText({ ...stranded, margin: null, outcome: "conflict" })).toBe("");
    expect(decidingText({ measured: { wires: 2 }, required: { wires: 1 }, margin: null, outcome: "conflict" })).toBe(
      "2 in the clamp, limit 1",
    );
    expect(decidingText({ ...finding, margin: -5, outcome: "bond" })).toBe(`4' 7" in plan, limit 5' 0"`);
    const band = { measured: { area: 4000, gap: 106 }, required: { width: 36 }, margin: null };
    expect(decidingText({ ...band, outcome: "missing" })).toBe(`8' 10" open`);
  });

  it("follow the site's units", () => {
    expect(briefTexts({ measured: { horizontal: 50 }, required: { horizontal: 60 } }, "m")).toEqual([
      "1.27 m in plan, limit 1.52 m",
    ]);
  });

  it("tell what is open in a perimeter from the widest way between its ties", () => {
    expect(measuredTexts({ measured: { gap: 12 }, required: {} })).toEqual([`open in the perimeter bonding 1' 0"`]);
    expect(measuredTexts({ measured: { largestGap: 480 }, required: { largestGap: 360 } })).toEqual([
      `largest gap between ties 40' 0" (limit 30' 0")`,
    ]);
  });

  it("that are not known are not said to be none", () => {
    expect(measuredTexts({ measured: { rimAbove: null }, required: { rimAbove: 28 } })).toEqual([
      `rim above the ground not known (limit 2' 4")`,
    ]);
  });

  it("with a name of no rule of today are still told", () => {
    expect(measuredTexts({ measured: { setBack: 12 }, required: {} })).toEqual([`set back 1' 0"`]);
  });
});

describe("line breaks", () => {
  it("never part a figure from its fraction or unit", () => {
    expect(wordsOf(`lay 12' 6 1/2" of 8 AWG over 4.1 sq ft`)).toEqual([
      "lay",
      `12'\u00a06\u00a01/2"`,
      "of",
      "8\u00a0AWG",
      "over",
      "4.1\u00a0sq\u00a0ft",
    ]);
  });

  it("never part a day from its month", () => {
    expect(tied("by jt on 2026-11-26, ring-2026")).toBe("by jt on 2026\u201111\u201126, ring-2026");
  });

  it("leave the text as it was", () => {
    const text = `5' 0" in plan, 3 ft 4 in. and 2 amperes on 2026-05-01`;
    expect(untied(tied(text))).toBe(text);
  });
});

describe("elements", () => {
  it("go by their name, else by what they are", () => {
    expect(elementName({ id: "fence-2", kind: "fence", name: " South run " })).toBe("South run");
    expect(elementName({ id: "m-1", kind: "metal", part: "ladder" })).toBe("ladder 1");
    expect(sortOf({ id: "s", kind: "surface", material: "artificial-turf" })).toBe("artificial turf");
    expect(sortOf({ id: "s", kind: "surface", material: "concrete" })).toBe("concrete surface");
    expect(elementName({ id: "z", kind: "sky-hook" })).toBe("sky hook z");
  });

  it("without a name and of the same number are told by their ids", () => {
    const ladders = ["deep-1", "steps-1", "ladder-2"].map((id) => ({ id, kind: "metal", part: "ladder" }));
    expect([...namesOf(ladders).values()]).toEqual(["ladder deep-1", "ladder steps-1", "ladder 2"]);
  });
});
