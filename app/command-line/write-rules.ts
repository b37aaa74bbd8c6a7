/** Rewrites the index of the rules, their headings and their table: `npm run rules`. A test fails while any is out of step. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { type RuleSource, rulesHeadingsText, rulesIndexText, rulesTableText } from "./rules-index.ts";

const catalogue = new URL("../../rules/catalogue/", import.meta.url);

const sources: RuleSource[] = [];
for (const entry of readdirSync(catalogue, { withFileTypes: true })) {
  const file = new URL(`${entry.name}/rule.ts`, catalogue);
  if (entry.isDirectory() && existsSync(file)) sources.push({ folder: entry.name, text: readFileSync(file, "utf8") });
}
writeFileSync(new URL("index.ts", catalogue), rulesIndexText(sources));
// Only now: the index has just been written.
const { RULES } = await import("../../rules/catalogue/index.ts");
writeFileSync(new URL("headings.ts", catalogue), rulesHeadingsText(RULES));
const table = rulesTableText(RULES);
writeFileSync(new URL("../README.md", catalogue), table);
process.stdout.write(
  `${table}\nWrote index.ts and headings.ts in rules/catalogue, and rules/README.md: ${sources.length} rules\n`,
);
