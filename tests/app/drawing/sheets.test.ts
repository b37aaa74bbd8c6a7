// Sheets: nothing left out, nothing over the edge, a usual scale. Common practice, no source, unless a check says otherwise.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fittingScale, PAPER_NAMES, PAPERS } from "../../../app/drawing/paper.ts";
import { TEXT_POINTS } from "../../../app/drawing/scene.ts";
import type { Sheet } from "../../../app/drawing/sheet.ts";
import { planSheets } from "../../../app/drawing/sheets.ts";
import { itemPoints } from "../../../app/drawing/text-width.ts";
import { findingNumbers } from "../../../rules/findings-by-part.ts";
import { runs } from "../../oracles/seed.ts";
import { DRAWN, POOL, siteOf } from "./drawn-sites.ts";

/** A yard with so many metal parts that no single sheet lists them. */
function crowdedYard() {
  const posts = Array.from({ length: 300 }, (_, i) => ({
    id: `post-${i}`,
    kind: "metal",
    part: "post",
    shape: { point: [-40 - (i % 20) * 9, -40 - Math.floor(i / 20) * 9] },
    z: [0, 40],
  }));
  return siteOf([POOL, ...posts]);
}

function listed(sheets: readonly Sheet[]): number[] {
  return sheets.flatMap(({ groups }) =>
    groups
      .filter(({ name }) => name === "lists")
      .flatMap(({ items }) => items.flatMap((item) => (item.kind === "mark" ? item.number : []))),
  );
}

/** Texts of the sheets' own furniture that reach over the edge of the paper. */
function overTheEdge(sheets: readonly Sheet[]): string[] {
  return sheets.flatMap(({ width, height, groups }) =>
    groups
      .filter(({ view }) => view.scale === 1)
      .flatMap(({ items }) =>
        items.flatMap((item) => {
          if (item.kind !== "text") return [];
          const long = itemPoints(item);
          const left = item.at[0] - (item.anchor === "end" ? long : item.anchor === "middle" ? long / 2 : 0);
          const isInside =
            left >= 0 && left + long <= width && item.at[1] >= 0 && item.at[1] + TEXT_POINTS[item.size] <= height;
          return isInside ? [] : [item.text];
        }),
      ),
  );
}

describe("the sheets", () => {
  for (const { name, site, report } of [...DRAWN, { ...crowdedYard(), name: "a crowded yard" }]) {
    it(`of ${name} list every finding once, in order, within the paper`, () => {
      const sheets = planSheets(site, report);
      const numbers = [...findingNumbers(report).values()];
      expect(listed(sheets)).toEqual(numbers);
      expect(overTheEdge(sheets)).toEqual([]);
    });
  }

  it("go on to further sheets when the lists are long", () => {
    const { site, report } = crowdedYard();
    expect(planSheets(site, report).length).toBeGreaterThan(1);
  });

  it("say when the plan does not bear the number of every finding", () => {
    const isSaid = ({ site, report }: Pick<(typeof DRAWN)[number], "site" | "report">) =>
      planSheets(site, report).some(({ groups }) =>
        groups.some(({ items }) => items.some((item) => item.kind === "text" && item.text.includes("not settled"))),
      );
    expect(isSaid(crowdedYard())).toBe(true);
    expect(isSaid(siteOf([POOL]))).toBe(false);
  });

  it("stay on one small sheet when there is little to say", () => {
    const { site, report } = siteOf([]);
    const sheets = planSheets(site, report);
    expect(sheets.map(({ width, height }) => [width, height])).toEqual([[792, 612]]);
  });

  it("come on the paper that is asked for", () => {
    const { site, report } = siteOf([POOL]);
    for (const paper of PAPER_NAMES) {
      const { width, height } = PAPERS[paper];
      for (const sheet of planSheets(site, report, { paper }))
        expect([sheet.width, sheet.height]).toEqual([width, height]);
    }
  });
});

describe("a scale", () => {
  it("says what it is (arithmetic)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 2e6, noNaN: true }),
        fc.double({ min: 10, max: 2e6, noNaN: true }),
        (width, height) => {
          const { words, pointsPerInch } = fittingScale(width, height, 500, 500, "ft-in");
          const inchesToFoot = /^(\d+)(?:\/(\d+))?" = 1'$/.exec(words);
          const feetToInch = /^1" = (\d+)'$/.exec(words);
          const expected = inchesToFoot
            ? ((Number(inchesToFoot[1]) / Number(inchesToFoot[2] ?? 1)) * 72) / 12
            : 72 / (12 * Number(feetToInch?.[1]));
          expect(pointsPerInch).toBeCloseTo(expected, 12);
          expect(width * pointsPerInch).toBeLessThanOrEqual(500);
          expect(height * pointsPerInch).toBeLessThanOrEqual(500);
        },
      ),
      runs(100),
    );
  });

  it("is metric on a metric site (arithmetic)", () => {
    const { words, pointsPerInch } = fittingScale(600, 400, 500, 500, "m");
    expect(pointsPerInch).toBeCloseTo(72 / Number(/^1 : (\d+)$/.exec(words)?.[1]), 12);
  });

  it("is the largest that fits (arithmetic)", () => {
    // 480 x 360 in. at 1/8 in. to a foot take 360 x 270 points; at 3/16 they would take 540.
    expect(fittingScale(480, 360, 500, 500, "ft-in").words).toBe(`1/8" = 1'`);
  });
});
