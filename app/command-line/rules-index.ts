/** The text of the rules' index and of their table: one folder a rule, in alphabetical order. */

import { PARTS, type Rule } from "../../rules/catalogue/rule.ts";
import { EDITION_IDS } from "../../rules/editions/edition.ts";

/** A rule's folder and the text of its `rule.ts`. */
export interface RuleSource {
  readonly folder: string;
  readonly text: string;
}

/** The index that lists every rule. A folder whose file exports no rule is an error. */
export function rulesIndexText(sources: readonly RuleSource[]): string {
  const sorted = [...sources].sort((a, b) => (a.folder < b.folder ? -1 : 1));
  const entries = sorted.map(({ folder, text }) => {
    const exported = /export const (\w+): Rule\b/.exec(text)?.[1];
    if (exported === undefined) throw new Error(`rules/catalogue/${folder}/rule.ts exports no rule`);
    const name = folder.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    const imported = exported === name ? name : `${exported} as ${name}`;
    return { name, path: folder, line: `import { ${imported} } from "./${folder}/rule.ts";` };
  });
  const type = { path: "rule.ts", line: 'import type { Rule } from "./rule.ts";' };
  const imports = [...entries, type].sort((a, b) => (a.path < b.path ? -1 : 1));
  return [
    "/** Every rule of the catalogue. Written by `npm run rules` from the folders beside it; not to be edited by hand. */",
    ...imports.map((entry) => entry.line),
    "",
    "export const RULES: readonly Rule[] = [",
    ...entries.map((entry) => `  ${entry.name},`),
    "];",
    "",
  ].join("\n");
}

/** Title and part of every rule, without the rules themselves: for lists that need no more. */
export function rulesHeadingsText(rules: readonly Rule[]): string {
  const sorted = [...rules].sort((a, b) => (a.id < b.id ? -1 : 1));
  return [
    "/** Title and part of every rule, without the rules. Written by `npm run rules`; not to be edited by hand. */",
    'import type { PartId } from "./rule.ts";',
    "",
    "export interface RuleHeading {",
    "  readonly title: string;",
    "  readonly part: PartId;",
    "}",
    "",
    "export const RULE_HEADINGS: ReadonlyMap<string, RuleHeading> = new Map<string, RuleHeading>([",
    ...sorted.map(({ id, title, part }) => `  ["${id}", { title: ${JSON.stringify(title)}, part: "${part}" }],`),
    "]);",
    "",
  ].join("\n");
}

/** The table of the rules, in the order in which they are shown. */
export function rulesTableText(rules: readonly Rule[]): string {
  const order = (rule: Rule) => PARTS.findIndex((part) => part.id === rule.part);
  const sorted = [...rules].sort((a, b) => order(a) - order(b) || (a.id < b.id ? -1 : 1));
  const rows = sorted.map((rule) => {
    const sections = [...new Set(EDITION_IDS.map((id) => rule.sections[id] ?? "not in this edition"))];
    return `| \`${rule.id}\` | ${sections.join(", ")} | ${rule.subjects} | ${rule.measure} |`;
  });
  return [
    "# The rules",
    "",
    "One folder a rule in `catalogue`: `rule.ts` holds the record and its judgement, `examples.ts` the yards that show it at work and",
    "run as tests. The numbers stand in `editions`. Written by `npm run rules`.",
    "",
    "| rule | section | looks at | measures |",
    "| --- | --- | --- | --- |",
    ...rows,
    "",
  ].join("\n");
}
