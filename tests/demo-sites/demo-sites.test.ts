// Each demo site against the findings beside it, which were worked out by hand from the code's facts before the program
// ran; every entry of those files names its source. Exit codes and the order of worst outcomes: the report's contract.
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import type { Finding, Report } from "../../rules/report.ts";
import {
  DEMO_FILES,
  DEMO_SITES,
  type DemoSite,
  exitCodeOf,
  type WantedFigure,
  type WantedFinding,
} from "../support/demo-sites.ts";

/** Measured values of the files are rounded to 1/10,000 in. */
const ROUNDED = 1e-3;
/** Areas and lengths agree with an independent calculation within 0.1 % (the contract of the check values). */
const SHARE = 0.001;

/** Whether a section is the part of the article itself or lies in it: 680.9(A) in 680.9, but not 680.90. */
const liesIn = (section: string, part: string) => section === part || section.startsWith(`${part}(`);

const isAbout = (finding: Finding, want: WantedFinding): boolean =>
  finding.element === want.element &&
  (want.body === undefined || finding.body === want.body || (finding.alsoBodies ?? []).includes(want.body)) &&
  [finding.section, ...finding.alsoSections].some((section) => liesIn(section, want.section));

function misfit(finding: Finding, want: WantedFinding): string | null {
  if (finding.outcome !== want.outcome) return `${finding.rule} is ${finding.outcome}: ${finding.why}`;
  for (const [name, value] of Object.entries(want.measured ?? {})) {
    const got = finding.measured[name];
    if (typeof got !== "number" || Math.abs(got - value) > ROUNDED) return `${finding.rule} measures ${name} ${got}`;
  }
  if (want.extent !== undefined && !(Math.abs((finding.extent ?? Number.NaN) - want.extent) <= ROUNDED))
    return `${finding.rule} gives the extent ${finding.extent}`;
  return null;
}

/** Null, or what stands in the report instead of the wanted finding. */
function notFound(report: Report, want: WantedFinding): string | null {
  const about = report.findings.filter((finding) => isAbout(finding, want));
  const misfits = about.map((finding) => misfit(finding, want));
  if (misfits.includes(null)) return null;
  const name = [want.section, want.element ?? want.body, want.outcome, JSON.stringify(want.measured ?? {})].join(" ");
  return `${name}: ${about.length === 0 ? "no such finding" : misfits.join("; ")}`;
}

function figureOf(report: Report, { figure, pool, surface }: WantedFigure): { value: number; bonding?: string } {
  if (figure === "ring") return { value: report.ring.length };
  if (figure === "shortest ring") return { value: report.ring.shortestLegal };
  if (figure === "ties") return { value: report.ties.length };
  const band = report.band.find((entry) => entry.pool === pool);
  if (surface === undefined) return { value: band?.area ?? Number.NaN };
  const piece = band?.bySurface.find((entry) => entry.surface === surface);
  return { value: piece?.area ?? Number.NaN, bonding: piece?.bonding };
}

describe.each(DEMO_SITES.map((demo) => [demo.name, demo] as const))("%s", (_, demo: DemoSite) => {
  const { site, wanted } = demo;
  const report = recompute(site);

  it("gives every finding that it must give", () => {
    expect(wanted.findings.length).toBeGreaterThan(0);
    expect(wanted.findings.map((want) => notFound(report, want)).filter((line) => line !== null)).toEqual([]);
  });

  it("has the areas and lengths of an independent calculation", () => {
    for (const want of wanted.figures) {
      const got = figureOf(report, want);
      const name = [want.figure, want.pool, want.surface].filter(Boolean).join(" ");
      expect(got.value, name).toBeGreaterThanOrEqual(want.value * (1 - SHARE));
      expect(got.value, name).toBeLessThanOrEqual(want.value * (1 + SHARE));
      if (want.bonding !== undefined) expect(got.bonding, name).toBe(want.bonding);
    }
  });

  it("counts what is missing and ends with the exit code that it says", () => {
    expect(exitCodeOf(report)).toBe(wanted.exit);
    if (wanted.missing !== undefined) expect(report.missing).toBe(wanted.missing);
  });

  it("gives every metal and every fence that may be metal one finding of its own", () => {
    // Source: the report's contract.
    const parts = ["680.26(B)(3)", "680.26(B)(5)", "680.26(B)(7)"];
    for (const element of site.elements) {
      if (element.kind !== "metal" && !(element.kind === "fence" && element.metal !== false)) continue;
      const own = report.findings.filter((f) => f.element === element.id && parts.some((p) => f.section.startsWith(p)));
      expect(
        own.map((finding) => finding.rule),
        element.id,
      ).toHaveLength(1);
    }
  });

  it("says no two things about one element under one rule, nor about a body's own, and adds up", () => {
    const keys = report.findings.map(({ rule, element, body }) => `${rule} ${element ?? `of ${body}`}`);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
    expect(new Set(report.findings.map((finding) => finding.id)).size).toBe(report.findings.length);
    for (const [outcome, count] of Object.entries(report.counts)) {
      expect(report.findings.filter((finding) => finding.outcome === outcome)).toHaveLength(count);
    }
    for (const band of report.band) {
      // Source: the report's contract (areas by surface sum to the area); each piece is clipped on a grid of 1/4096 in.
      const sum = band.bySurface.reduce((total, piece) => total + piece.area, 0);
      expect(Math.abs(sum - band.area)).toBeLessThan(0.0005 * band.area);
    }
  });
});

describe("the folder of demo sites", () => {
  it("holds six sites or more, each with its findings", () => {
    expect(DEMO_SITES.length).toBeGreaterThanOrEqual(6);
    const names = DEMO_SITES.flatMap(({ name }) => [`${name}.site.json`, `${name}.findings.json`]);
    expect(DEMO_FILES.filter((file) => /\.(site|findings)\.json$/.test(file))).toEqual(names.sort());
  });

  it("says of each site that it is invented, and each finding's source", () => {
    for (const { name, site, wanted } of DEMO_SITES) {
      expect((site as { invented?: unknown }).invented, name).toBe(true);
      expect(wanted.site).toBe(`${name}.site.json`);
      for (const { source } of [...wanted.findings, ...wanted.figures]) expect(source.length, name).toBeGreaterThan(8);
    }
  });

  it("names every element as people would say it", () => {
    for (const { name, site } of DEMO_SITES) {
      for (const element of site.elements)
        expect((element as { name?: unknown }).name, `${name} ${element.id}`).toMatch(/^[A-Z]/);
    }
  });
});
