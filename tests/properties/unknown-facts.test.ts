/**
 * A fact that is left out never makes a yard look safer: no finding vanishes, and none turns from needs bonding,
 * missing, conflict or question into meets or exempt. Where the format defines what absence means (rules/site/defaults.ts),
 * leaving the field out equals writing that value. Source: the site format's own words on absent fields.
 *
 * The suite draws COPPERBAND_FACTS fields of each demo site (16); COPPERBAND_FACTS=all leaves out every one.
 */
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import type { Finding, Outcome, Report } from "../../rules/report.ts";
import { numbersFrom } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";
import { DEMO_SITES } from "../support/demo-sites.ts";
import { type OptionalField, optionalFieldsOf, withDefault, without } from "../support/optional-fields.ts";
import { keyOf, situationsOf } from "../support/situation.ts";

const asked = process.env.COPPERBAND_FACTS ?? "16";
/** Random sets of facts left out of each site at once. */
const SUBSETS = asked === "all" ? 60 : 4;
const WARNINGS: readonly Outcome[] = ["bond", "missing", "conflict", "review"];

/** A shuffled part of the fields, always the same for one printed number. */
function drawn(fields: OptionalField[], name: string): OptionalField[] {
  if (asked === "all") return fields;
  const rank = (field: OptionalField) => {
    let hash = seed;
    for (const c of `${name} ${field.element} ${field.field}`) hash = Math.imul(hash ^ c.charCodeAt(0), 0x01000193);
    return hash >>> 0;
  };
  return [...fields].sort((a, b) => rank(a) - rank(b)).slice(0, Number(asked));
}

/** The three parts of which every metal has one finding: a fact that is left out may move it from one to another. */
const METAL_RULES = ["structure-metal", "fittings", "fixed-metal"];
/** Judged once for each body; the element named is whatever decided. */
const RULES_BY_BODY = ["water-contact", "required-receptacle"];

/** The finding of another report about the same thing. */
function counterpart(report: Report, { rule, element, body }: Finding): Finding | undefined {
  if (RULES_BY_BODY.includes(rule)) return report.findings.find((f) => f.rule === rule && f.body === body);
  if (element === null) return report.findings.find((f) => f.rule === rule && f.element === null && f.body === body);
  const rules = METAL_RULES.includes(rule) ? METAL_RULES : [rule];
  return report.findings.find((f) => rules.includes(f.rule) && f.element === element);
}

/** What looks safer than before. */
function passes(before: Report, after: Report): string[] {
  const lines: string[] = [];
  for (const finding of before.findings) {
    const now = counterpart(after, finding);
    if (now === undefined) lines.push(`${keyOf(finding)} vanished`);
    else if (WARNINGS.includes(finding.outcome) && !WARNINGS.includes(now.outcome))
      lines.push(`${keyOf(finding)}: ${finding.outcome} -> ${now.outcome}`);
  }
  return lines;
}

describe.each(DEMO_SITES.map((demo) => [demo.name, demo.site] as const))("%s", (name, site) => {
  const report = recompute(site, { withoutRoutes: true });
  const fields = drawn(optionalFieldsOf(site), name);

  it(`looks no safer when a fact is left out (${asked} fields)`, () => {
    const wrong: string[] = [];
    for (const field of fields) {
      const lines: string[] = [];
      const defaulted = withDefault(site, field);
      const left = recompute(without(site, field), { withoutRoutes: true });
      if (defaulted === null) lines.push(...passes(report, left));
      else {
        const [a, b] = [situationsOf(recompute(defaulted, { withoutRoutes: true })), situationsOf(left)];
        if (JSON.stringify([...a]) !== JSON.stringify([...b])) lines.push("differs from its default written out");
      }
      wrong.push(...lines.map((line) => `${field.element} without ${field.field}: ${line}`));
    }
    expect(wrong).toEqual([]);
  }, 600_000);

  it("looks no safer when several facts are left out at once", () => {
    const next = numbersFrom(seed);
    for (let n = 0; n < SUBSETS; n++) {
      const share = next();
      const left = optionalFieldsOf(site).filter(() => next() < share);
      // What absence is defined to mean is written out first, so that only unknown facts differ.
      const written = left.reduce((made, field) => withDefault(made, field) ?? made, site);
      const bare = left.reduce(without, site);
      const lines = passes(recompute(written, { withoutRoutes: true }), recompute(bare, { withoutRoutes: true }));
      expect(lines, left.map(({ element, field }) => `${element}.${field}`).join(" ")).toEqual([]);
    }
  });
});
