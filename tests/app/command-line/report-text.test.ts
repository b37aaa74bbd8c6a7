// The report as text. Sources: the project's report format (a count of nothing missing never stands alone while questions
// are open; every outcome is counted); otherwise common practice, no source.
import { describe, expect, it } from "vitest";
import { comparisonText } from "../../../app/command-line/comparison-text.ts";
import { missingSentence, reportText } from "../../../app/command-line/report-text.ts";
import { NARROWEST, textWidth, WIDEST, wrapped } from "../../../app/command-line/text-lines.ts";
import { comparisonBlocks } from "../../../app/drawing/comparison-list.ts";
import { concretePool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { compareEditions } from "../../../rules/compare-editions.ts";
import { findingsByPart } from "../../../rules/findings-by-part.ts";
import { recompute } from "../../../rules/recompute.ts";
import { OUTCOMES_WORST_FIRST } from "../../../rules/report.ts";
import { outcomeCount } from "../../../rules/words/outcomes.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

const reports = DEMO_SITES.map(({ name, site }) => ({ name, site, report: recompute(site) }));
const NONE = { bond: 0, exempt: 0, meets: 0, missing: 0, conflict: 0, review: 0 };
const squeezed = (text: string) => text.replace(/\s+/g, " ");

describe("local amendments", () => {
  it("are named by section and in the site's units, never by a name of ours", () => {
    const amendments = [{ parameter: "fixedMetal.distance", value: 72, reason: "invented ordinance 4" }];
    const site = siteOf([concretePool(), post(65)], { amendments });
    const comparison = compareEditions(site, "nec-2020", "nec-2023");
    const { before } = comparison.reports;
    const list = { units: "ft-in", width: 400, names: new Map<string, string>(), hasSeveralBodies: false } as const;
    const printed = comparisonBlocks(comparison, before, list).flatMap(({ draw }) =>
      draw([0, 0], 400).flatMap((item) => (item.kind === "text" ? [item.text] : [])),
    );
    const texts = [
      reportText(before, site, { width: 100 }),
      comparisonText(comparison, site, { width: 100 }),
      printed.join(" "),
    ];
    for (const text of texts) {
      // Five feet by the edition: NEC 680.26(B)(7).
      expect(squeezed(text)).toContain(`680.26(B)(7): 6' 0" here, invented ordinance 4`);
      expect(text).not.toContain("fixedMetal.distance =");
    }
  });
});

describe("the text of a report", () => {
  for (const { name, site, report } of reports) {
    it(`of ${name} holds every finding, every count and the cautions, and keeps its width`, () => {
      for (const width of [NARROWEST, WIDEST]) {
        const text = reportText(report, site, { width });
        expect(text.split("\n").filter((line) => line.length > width)).toEqual([]);
        const flat = squeezed(text);
        for (const outcome of OUTCOMES_WORST_FIRST)
          expect(flat).toContain(outcomeCount(outcome, report.counts[outcome]));
        for (const caution of report.cautions) expect(flat).toContain(squeezed(caution));
        for (const { why, remedy, question, section } of report.findings) {
          for (const part of [why, remedy, question?.text ?? "", section])
            expect(flat).toContain(squeezed(part).trim());
        }
      }
    });

    it(`of ${name} goes in the code's order`, () => {
      const text = reportText(report, site, { width: 100 });
      const places = findingsByPart(report).map(({ part }) => text.indexOf(`\n${part.title}  ${part.section}\n`));
      expect(places).not.toContain(-1);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    });
  }

  it("sets words off only on a terminal", () => {
    const [one] = reports;
    if (!one) throw new Error("There is no demo site.");
    expect(reportText(one.report, one.site, { width: 90 })).not.toContain("\u001b");
    expect(reportText(one.report, one.site, { width: 90, isTerminal: true })).toContain("\u001b[");
  });

  it("lets no name write to the terminal", () => {
    const [one] = reports;
    if (!one) throw new Error("There is no demo site.");
    const name = "\u001b[2J\u202egone\u0007";
    const site = { ...one.site, name, elements: one.site.elements.map((element) => ({ ...element, name })) };
    const text = reportText(recompute(site), site, { width: 90 });
    expect(text.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\u202e]/u);
  });
});

describe("the count of what is missing", () => {
  it("never stands alone while questions are open", () => {
    expect(missingSentence({ missing: 0, counts: { ...NONE, review: 2 } })).toMatch(/2 questions are open/);
    expect(missingSentence({ missing: 3, counts: { ...NONE, review: 1 } })).toMatch(/1 question is open/);
  });

  it("says that all is settled only where nothing is in conflict either", () => {
    expect(missingSentence({ missing: 0, counts: NONE })).toMatch(/Nothing is missing/);
    expect(missingSentence({ missing: 0, counts: { ...NONE, conflict: 1 } })).not.toMatch(/Nothing/);
  });
});

describe("lines", () => {
  it("are as wide as the terminal within reason", () => {
    expect([undefined, 40, 90, 200].map(textWidth)).toEqual([100, 80, 90, 100]);
  });

  it("are broken at spaces and keep every word", () => {
    const text = `one two ${"x".repeat(30)} three`;
    const lines = wrapped(text, 12, "- ", 2);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(12);
    expect(lines.join("").replace(/^- |[\s]/g, "")).toBe(text.replaceAll(" ", ""));
    expect(lines[0]).toBe("- one two");
  });
});
