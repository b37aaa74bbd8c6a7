/** Yards put together for the tests of rules: reads a site through the one door, then measures it. */
import type { Rule, Verdict } from "../../../rules/catalogue/rule.ts";
import { Yard } from "../../../rules/measures/yard.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import { SITE_FORMAT, SITE_VERSION, type Site } from "../../../rules/site/site.ts";

/** A site document of the given elements, read as a file would be; fields that are undefined are absent. */
export function siteOf(elements: readonly object[], head: object = {}): Site {
  const document = {
    format: SITE_FORMAT,
    version: SITE_VERSION,
    name: "Test yard",
    edition: "nec-2020",
    ...head,
    elements,
  };
  const read = checkSite(JSON.parse(JSON.stringify(document)));
  if (!read.ok) throw new Error(`${read.refusal.message} ${JSON.stringify(read.refusal.problems)}`);
  return read.site;
}

export function yardOf(elements: readonly object[], head: object = {}): Yard {
  return new Yard(siteOf(elements, head));
}

/** The one verdict of a rule on an element (null: the body's own, or the site's). */
export function verdictOf(rule: Rule, yard: Yard, element: string | null): Verdict {
  const found = rule.judge(yard).filter((verdict) => verdict.element === element);
  if (found.length !== 1) throw new Error(`${rule.id} gives ${found.length} verdicts on ${element}`);
  return found[0] as Verdict;
}
