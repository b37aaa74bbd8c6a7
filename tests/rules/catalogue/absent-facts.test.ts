// The site format: an absent field is unknown, and an unknown fact never turns something asked for into a pass.
import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RULES } from "../../../rules/catalogue/index.ts";
import type { RuleExample } from "../../../rules/catalogue/rule.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { Yard } from "../../../rules/measures/yard.ts";
import type { Outcome } from "../../../rules/report.ts";
import { ABSENT_MEANS } from "../../../rules/site/defaults.ts";
import { checkSite } from "../../../rules/site/reader.ts";

type Document = Record<string, unknown> & { elements: Record<string, unknown>[] };

const ASKS: ReadonlySet<Outcome> = new Set<Outcome>(["bond", "missing", "conflict", "review"]);

/**
 * Levels that the format itself fills in, beside ABSENT_MEANS; islands are no fact but part of the drawing: where none is
 * drawn there is water. Source: the site format's text.
 */
const GIVEN_ANYWAY = ["waterLevel", "grade", "accuracy", "islands"];
const FILLED_IN: ReadonlySet<string> = new Set([...Object.keys(ABSENT_MEANS), ...GIVEN_ANYWAY]);

/** A site that contradicts itself is asked about, and is not once the wrong half is gone: the removal settles it. */
const CONTRADICTIONS: ReadonlySet<string> = new Set([
  "storable, yet of concrete",
  "low voltage, yet a hundredth over the contact limit",
  "a light of a pool that is not drawn",
  "another one that is not drawn",
]);

const examples: RuleExample[] = [];
for (const rule of RULES) {
  const file = new URL(`../../../rules/catalogue/${rule.id}/examples.ts`, import.meta.url);
  if (existsSync(file)) examples.push(...((await import(file.href)) as { examples: RuleExample[] }).examples);
}

function documentOf(example: RuleExample, edition: string): Document {
  const head = { format: "copperband-site", version: 1, ...example.head, edition };
  return JSON.parse(JSON.stringify({ ...head, elements: example.elements })) as Document;
}

/** Which things something is asked of: elements, and for findings without one the rule and body. Null: the reader refuses it. */
function askedOf(document: Document): Set<string> | null {
  const read = checkSite(structuredClone(document));
  if (!read.ok) return null;
  const yard = new Yard(read.site);
  const asked = new Set<string>();
  for (const rule of RULES) {
    for (const { element, body, outcome } of rule.judge(yard)) {
      if (ASKS.has(outcome)) asked.add(element ?? `${rule.id} ${body}`);
    }
  }
  return asked;
}

/** Every document that lacks one field of the given one, with what is missing. */
function* lackingOne(document: Document): Generator<[string, Document]> {
  for (const field of Object.keys(document)) {
    if (["elements", "format", "version", "amendments", "answers"].includes(field) || FILLED_IN.has(field)) continue;
    const copy = structuredClone(document);
    delete copy[field];
    yield [field, copy];
  }
  for (const [index, element] of document.elements.entries()) {
    for (const field of Object.keys(element)) {
      if (FILLED_IN.has(field)) continue;
      const copy = structuredClone(document);
      delete copy.elements[index]?.[field];
      yield [`${String(element.id)}.${field}`, copy];
    }
  }
}

describe.each(EDITION_IDS)("a fact that goes missing, %s", (edition) => {
  it.each(examples.filter((example) => !CONTRADICTIONS.has(example.name)))("$name", (example) => {
    const document = documentOf(example, edition);
    const before = askedOf(document);
    expect(before).not.toBeNull();
    const lost: string[] = [];
    for (const [missing, copy] of lackingOne(document)) {
      const after = askedOf(copy);
      if (after === null) continue;
      for (const thing of before ?? []) if (!after.has(thing)) lost.push(`${thing} without ${missing}`);
    }
    expect(lost).toEqual([]);
  });
});
