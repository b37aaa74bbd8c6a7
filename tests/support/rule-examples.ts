/** The examples that stand in the rules' folders, and the sites that they describe. */
import { existsSync } from "node:fs";
import { RULES } from "../../rules/catalogue/index.ts";
import type { Rule, RuleExample } from "../../rules/catalogue/rule.ts";
import type { EditionId } from "../../rules/editions/edition.ts";
import type { Site } from "../../rules/site/site.ts";
import { siteOf } from "../rules/catalogue/yards.ts";

export interface ExamplesOfRule {
  readonly rule: Rule;
  readonly examples: readonly RuleExample[];
}

export async function examplesByRule(): Promise<ExamplesOfRule[]> {
  return Promise.all(
    RULES.map(async (rule) => {
      const file = new URL(`../../rules/catalogue/${rule.id}/examples.ts`, import.meta.url);
      if (!existsSync(file)) return { rule, examples: [] };
      const loaded = (await import(file.href)) as { examples: readonly RuleExample[] };
      return { rule, examples: loaded.examples };
    }),
  );
}

/** The example's site, naming the given edition unless the example is about what is named. */
export function siteOfExample(example: RuleExample, edition: EditionId): Site {
  return siteOf(example.elements, { edition, ...example.head });
}

/** What has to come of an example under an edition; "none" where the rule has nothing to say there. */
export function expectedUnder(example: RuleExample, edition: EditionId) {
  if (edition === example.edition) return example.expect.outcome;
  return example.elsewhere?.[edition] ?? example.expect.outcome;
}
