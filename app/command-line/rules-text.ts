/** `rules [TEXT]`: the rules that a word or a section finds, with their limits in one edition. */

import type { EditionId } from "../../rules/editions/edition.ts";
import { EDITION_WHEN_UNNAMED, editionInForce } from "../../rules/editions/in-force.ts";
import type { RuleFound } from "../../rules/search.ts";
import { searchRules } from "../../rules/search-instead.ts";
import { SITE_FORMAT, SITE_VERSION, type Site } from "../../rules/site/site.ts";
import { foundInstead } from "../../rules/words/other-names.ts";
import { CLEAR, FAULTS, type Terminal } from "./terminal.ts";
import { penFor, spread, textWidth, wrapped } from "./text-lines.ts";

/** No site at all: an edition without local amendments. */
const NO_SITE: Site = { format: SITE_FORMAT, version: SITE_VERSION, elements: [] };

/** Prints the rules; 1 where none is found. */
export async function listRules(text: string, as: EditionId | undefined, terminal: Terminal): Promise<number> {
  const edition = editionInForce(NO_SITE, as ?? EDITION_WHEN_UNNAMED);
  const { found, instead } = searchRules(text, edition);
  const width = textWidth(terminal.columns);
  const pen = penFor(terminal.isTerminal);
  if (found.length === 0) {
    await terminal.complain(
      `No rule of ${edition.title} holds all of this. Try one word, or a section such as 680.26(B)(7).\n`,
    );
    return FAULTS;
  }
  const count = `${found.length} ${found.length === 1 ? "rule" : "rules"}, limits by ${edition.title}.`;
  const head = wrapped(`${foundInstead(text, instead)}${count}`, width);
  const blocks = found.map((one) => ruleLines(one, width, (title) => pen(title, "strong")));
  await terminal.write(`${[head, ...blocks].map((lines) => lines.join("\n")).join("\n\n")}\n`);
  return CLEAR;
}

function ruleLines({ rule, section, limits }: RuleFound, width: number, strong: (text: string) => string): string[] {
  const [first = "", ...rest] = spread(`${rule.title} (${rule.id})`, section ?? "not in this edition", width);
  return [
    first.replace(rule.title, strong(rule.title)),
    ...rest,
    ...wrapped(rule.subjects, width, "  Looks at: ", 4),
    ...wrapped(rule.measure, width, "  Measures: ", 4),
    ...limits.flatMap((limit) =>
      wrapped(`${limit.value}. ${limit.says} ${limit.section}, ${limit.basis}.`, width, "  Limit: ", 4),
    ),
    ...wrapped(rule.protects, width, "  Why: ", 4),
  ];
}
