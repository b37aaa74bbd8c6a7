/**
 * Answers and ties on the demo sites, with the whole work behind them: what the editor records is what the rules read.
 * Expectations: arithmetic (an answer just given has not lapsed, a tie just recorded is there).
 */
import { describe, expect, it } from "vitest";
import { answerQuestion } from "../../../app/edits/answer-question.ts";
import { recordTie } from "../../../app/edits/record-tie.ts";
import { loadDemos } from "../../../app/files/gallery.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { applied } from "./yard.ts";

const demos = (await loadDemos()).map(({ id, text }) => {
  const read = readSite(text);
  if (!read.ok) throw new Error(`${id}: ${read.refusal.message}`);
  return { id, site: read.site };
});

const reported = (site: Site): Report => recompute(site, { withoutRoutes: true });

describe("a question answered on the spot", () => {
  it("has not lapsed, whichever answer is given, on any demo", () => {
    let asked = 0;
    for (const { id, site } of demos) {
      for (const finding of reported(site).findings) {
        for (const option of finding.question?.options ?? []) {
          asked++;
          const after = applied(site, answerQuestion(finding, option, "AB", "2026-05-01"));
          const lapsed = reported(after).findings.filter((one) => one.id === finding.id && one.lapsed);
          expect([id, finding.id, option, lapsed.length]).toEqual([id, finding.id, option, 0]);
        }
      }
    }
    expect(asked).toBeGreaterThan(5);
  });
});

describe("a proposed tie that is tapped", () => {
  it("is recorded on every demo that proposes one, and the next tap finds it there", () => {
    let tapped = 0;
    for (const { id, site } of demos) {
      const before = reported(site).ties;
      const open = before.filter((tie) => !tie.present);
      const [tie] = open;
      if (!tie) continue;
      tapped++;
      const after = reported(applied(site, recordTie(tie))).ties;
      const made = after.filter((one) => one.present).length - before.filter((one) => one.present).length;
      expect([id, made]).toEqual([id, 1]);
    }
    expect(tapped).toBeGreaterThan(2);
  });
});
