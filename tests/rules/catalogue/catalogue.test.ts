// What every rule of the catalogue owes. Source: the project's own report format and house style; otherwise common
// practice, no source.
import { describe, expect, it } from "vitest";
import { RULES } from "../../../rules/catalogue/index.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { Yard } from "../../../rules/measures/yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Finding, Outcome } from "../../../rules/report.ts";
import { readsOf } from "../../support/changed-editions.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";
import { examplesByRule, siteOfExample } from "../../support/rule-examples.ts";

const catalogue = await examplesByRule();

const MEETING: readonly Outcome[] = ["meets", "exempt"];
const FAILING: readonly Outcome[] = ["bond", "missing", "conflict"];
const DOUBTFUL: readonly Outcome[] = ["review"];

/** Rules that put a question or settle which rules apply: they ask for nothing by themselves. */
const ASKS_FOR_NOTHING: ReadonlySet<string> = new Set([
  "edition-in-force",
  "local-amendments",
  "named-pool",
  "storable-pool",
  "unknown-kind",
  "water-drawn",
]);
/** It speaks only of amendments that do not act. */
const NEVER_MEETS: ReadonlySet<string> = new Set(["local-amendments"]);

describe("the catalogue", () => {
  it("has one rule to an id and to a title", () => {
    expect(new Set(RULES.map(({ id }) => id)).size).toBe(RULES.length);
    expect(new Set(RULES.map(({ title }) => title)).size).toBe(RULES.length);
  });
});

describe.each(catalogue)("$rule.id", ({ rule, examples }) => {
  const outcomes = examples.map(({ expect: { outcome } }) => outcome);
  const shows = (some: readonly Outcome[]) => outcomes.some((outcome) => some.includes(outcome));

  it("shows a meeting, a failing and a doubtful yard", () => {
    expect(shows(DOUBTFUL)).toBe(true);
    expect(shows(MEETING)).toBe(!NEVER_MEETS.has(rule.id));
    expect(shows(FAILING)).toBe(!ASKS_FOR_NOTHING.has(rule.id));
  });

  it("reads every number that it names", () => {
    const read = new Set<string>();
    for (const example of examples) {
      for (const edition of EDITION_IDS) {
        for (const id of readsOf(edition, () => rule.judge(new Yard(siteOfExample(example, edition))))) read.add(id);
      }
    }
    expect(rule.parameters.filter((id) => !read.has(id))).toEqual([]);
  });

  it("finds words for whatever it finds in its examples", () => {
    for (const example of examples) {
      const { findings } = recompute(siteOfExample(example, example.edition), { withoutRoutes: true });
      expect(findings.filter((finding) => finding.rule === rule.id).flatMap(faultsOf)).toEqual([]);
    }
  });
});

describe.each(DEMO_SITES)("$name", ({ site }) => {
  it.each(EDITION_IDS)("has words for every finding, and no finding twice, %s", (edition) => {
    const { findings } = recompute(site, { as: edition });
    expect(findings.flatMap(faultsOf)).toEqual([]);
    expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
  });
});

/** What a finding's words lack. */
function faultsOf({ id, outcome, why, remedy, question, section, basis }: Finding): string[] {
  const faults: string[] = [];
  if (!/^[A-Z0-9"“].*[.!?]$/s.test(why)) faults.push(`${id}: why is no sentence: ${why}`);
  if (/undefined|NaN|\[object|null/.test(why + remedy)) faults.push(`${id}: a value is missing: ${why} ${remedy}`);
  const asks = FAILING.includes(outcome) || outcome === "review";
  if (asks && !/^[A-Z].*[.!?]$/s.test(remedy)) faults.push(`${id}: no remedy: ${remedy}`);
  if (!/^\d+\.\d+/.test(section)) faults.push(`${id}: section ${section}`);
  if (basis === undefined) faults.push(`${id}: no basis`);
  if (outcome === "review" && question === undefined) faults.push(`${id}: asks nothing`);
  if (question) {
    if (!/^[a-z][a-z0-9-]*$/.test(question.id)) faults.push(`${id}: question ${question.id}`);
    if (!question.text.includes("?")) faults.push(`${id}: no question: ${question.text}`);
    if (question.options.length < 2 || question.options.length > 3)
      faults.push(`${id}: ${question.options.length} answers`);
  }
  return faults;
}
