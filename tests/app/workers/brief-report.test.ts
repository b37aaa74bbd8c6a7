/** Brief reports: what may stay as it was sent, and what may not. Source: arithmetic. */
import { describe, expect, it } from "vitest";
import { briefReport, LARGE_REPORT } from "../../../app/workers/brief-report.ts";
import type { Finding, Outcome, Report } from "../../../rules/report.ts";

const finding = (i: number, outcome: Outcome, why: string) =>
  ({ id: `finding-${i}`, rule: "fixed-metal", element: `post-${i}`, outcome, why }) as unknown as Finding;

function reportOf(count: number, why: string, changed: Readonly<Record<number, Outcome>> = {}): Report {
  const findings = Array.from({ length: count }, (_, i) => finding(i, changed[i] ?? "exempt", why));
  return { findings, missing: why.length } as unknown as Report;
}

const nobody = new Set<string>();

describe("a brief report", () => {
  const sent = reportOf(LARGE_REPORT, "before");

  it("leaves findings that only changed in their figures as they were sent, and nothing else of the report", () => {
    const now = reportOf(LARGE_REPORT, "later on");
    const brief = briefReport(sent, now, nobody);
    expect(brief.findings.every((one, i) => one === sent.findings[i])).toBe(true);
    expect(brief.missing).toBe(now.missing);
  });

  it("holds every finding that turned, by its outcome", () => {
    const brief = briefReport(sent, reportOf(LARGE_REPORT, "after", { 7: "bond", 9: "review" }), nobody);
    expect(brief.findings.flatMap(({ why }, i) => (why === "after" ? [i] : []))).toEqual([7, 9]);
    expect(brief.findings[7]?.outcome).toBe("bond");
  });

  it("holds every finding that is looked at, by its own id or its element's", () => {
    const brief = briefReport(sent, reportOf(LARGE_REPORT, "after"), new Set(["finding-3", "post-5"]));
    expect(brief.findings.flatMap(({ why }, i) => (why === "after" ? [i] : []))).toEqual([3, 5]);
  });

  it("follows findings that come, go and change places", () => {
    const now = { ...reportOf(LARGE_REPORT + 1, "after") };
    const turned = { ...now, findings: [...now.findings].reverse() } as Report;
    const brief = briefReport(sent, turned, nobody);
    expect(brief.findings.map(({ id }) => id)).toEqual(turned.findings.map(({ id }) => id));
    expect(brief.findings[0]?.why).toBe("after");
  });

  it("is the whole report on a small site, and where nothing is left as it was", () => {
    const small = reportOf(LARGE_REPORT - 1, "after");
    expect(briefReport(reportOf(LARGE_REPORT - 1, "before"), small, nobody)).toBe(small);
    expect(briefReport(sent, sent, nobody)).toBe(sent);
  });
});
