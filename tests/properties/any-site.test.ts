/**
 * Any site that may be read has a report: no exception, no number that is not finite, no endless work, nothing asked for
 * that is left out in silence. Sites that may not be read are refused with a reason. Source: arithmetic (the report's own
 * contract); what a band must hold is asked of the exact paths.
 *
 * The suite draws COPPERBAND_SITES sites (300); COPPERBAND_SITES=10000 for a long run. Sites that once failed, or took far too long, stay in
 * fixtures/sites.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import { checkSite, readSite } from "../../rules/site/reader.ts";
import { seed } from "../oracles/seed.ts";
import { anySite } from "../support/any-site.ts";
import { reportProblems } from "../support/report-check.ts";

const SITES = Number(process.env.COPPERBAND_SITES ?? 300);
const FIXTURES = new URL("../fixtures/sites/", import.meta.url);

describe("any site", () => {
  it(
    `${SITES} sites have a whole report or a reason why not`,
    () => {
      let read = 0;
      for (let i = 0; i < SITES; i++) {
        const result = checkSite(anySite(seed + i));
        if (!result.ok) {
          expect(result.refusal.problems.length, `site ${seed + i}`).toBeGreaterThan(0);
          continue;
        }
        read += 1;
        expect(reportProblems(result.site, recompute(result.site)), `site ${seed + i}`).toEqual([]);
      }
      // Most of what is drawn has to come through: otherwise nothing was tried.
      expect(read).toBeGreaterThan(SITES / 3);
    },
    SITES * 2_000,
  );
});

describe("sites that once failed or took far too long", () => {
  it.each(readdirSync(FIXTURES).filter((file) => file.startsWith("any-")))("%s", (file) => {
    const result = readSite(readFileSync(new URL(file, FIXTURES), "utf8"));
    if (!result.ok) throw new Error(result.refusal.message);
    expect(reportProblems(result.site, recompute(result.site))).toEqual([]);
  });
});
