// The rules' own examples; the source of each stands beside it in the rule's folder.
import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RULES } from "../../../rules/catalogue/index.ts";
import type { Rule, RuleExample } from "../../../rules/catalogue/rule.ts";
import { yardOf } from "./yards.ts";

async function examplesOf(rule: Rule): Promise<readonly RuleExample[]> {
  const file = new URL(`../../../rules/catalogue/${rule.id}/examples.ts`, import.meta.url);
  if (!existsSync(file)) return [];
  const loaded = (await import(file.href)) as { examples: readonly RuleExample[] };
  return loaded.examples;
}

const withExamples = await Promise.all(RULES.map(async (rule) => ({ rule, examples: await examplesOf(rule) })));

describe.each(withExamples)("$rule.id", ({ rule, examples }) => {
  it("shows itself at work", () => {
    expect(examples.length).toBeGreaterThan(0);
  });

  for (const example of examples) {
    it(example.name, () => {
      expect(example.source.length).toBeGreaterThan(0);
      const yard = yardOf(example.elements, { edition: example.edition, ...example.head });
      const { element, body, outcome, section } = example.expect;
      const verdicts = rule
        .judge(yard)
        .filter((verdict) => verdict.element === element && (body === undefined || verdict.body === body));
      expect(verdicts.map((verdict) => verdict.outcome)).toEqual([outcome]);
      if (section !== undefined) expect(verdicts[0]?.section ?? rule.sections[example.edition]).toBe(section);
    });
  }
});
