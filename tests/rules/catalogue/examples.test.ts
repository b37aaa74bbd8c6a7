// The rules' own examples, each under every edition; the source of each stands beside it in the rule's folder. The whole
// report is made, so that what is recorded counts as well.
import { describe, expect, it } from "vitest";
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { recompute } from "../../../rules/recompute.ts";
import { examplesByRule, expectedUnder, siteOfExample } from "../../support/rule-examples.ts";

describe.each(await examplesByRule())("$rule.id", ({ rule, examples }) => {
  it("shows itself at work, each example with a name of its own and a source", () => {
    expect(examples.length).toBeGreaterThan(0);
    expect(new Set(examples.map(({ name }) => name)).size).toBe(examples.length);
    for (const { source } of examples) expect(source.trim()).not.toBe("");
  });

  for (const example of examples) {
    for (const edition of EDITION_IDS) {
      it(`${example.name}, ${edition}`, () => {
        const { element, body, section } = example.expect;
        const found = recompute(siteOfExample(example, edition), { withoutRoutes: true }).findings.filter(
          (finding) =>
            finding.rule === rule.id && finding.element === element && (body ?? finding.body) === finding.body,
        );
        const outcome = expectedUnder(example, edition);
        expect(found.map((finding) => finding.outcome)).toEqual(outcome === "none" ? [] : [outcome]);
        // Report format: the margin is that of the deciding measurement, so none of a conflict is in hand.
        if (outcome === "conflict") expect(found[0]?.margin ?? 0).toBeLessThanOrEqual(LIMIT_TOLERANCE);
        if (section !== undefined && edition === example.edition) expect(found[0]?.section).toBe(section);
      });
    }
  }
});
