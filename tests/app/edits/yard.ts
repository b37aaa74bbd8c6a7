/** A small invented yard for tests of edits, and short ways to apply them. */
import type { Edit, Refused } from "../../../app/edits/edit.ts";
import type { KnownElement } from "../../../rules/site/elements.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { sample } from "../../rules/site/sample-site.ts";

/** The sample of the reader's tests, which holds every kind: read, and frozen so that an edit that changes it throws. */
export function sampleYard(): Site {
  const read = checkSite(sample());
  if (!read.ok) throw new Error(read.refusal.message);
  return deepFreeze(read.site);
}

/** The site after an edit; the site that comes of it has to be readable, and the one before it untouched. */
export function applied(site: Site, edit: Edit): Site {
  const result = edit.apply(deepFreeze(site));
  if (!result.ok) throw new Error(`Refused: ${result.reason}`);
  const read = checkSite(result.site);
  if (!read.ok) throw new Error(`Not readable: ${read.refusal.message}`);
  return deepFreeze(result.site);
}

export function refusalOf(site: Site, edit: Edit): Refused {
  const result = edit.apply(deepFreeze(site));
  if (result.ok) throw new Error(`"${result.label ?? edit.label}" was not refused.`);
  if (!/^[A-Z"].*\.$/s.test(result.reason)) throw new Error(`Not a sentence: ${result.reason}`);
  return result;
}

export function labelOf(site: Site, edit: Edit): string {
  const result = edit.apply(site);
  return (result.ok ? result.label : undefined) ?? edit.label;
}

export function element(site: Site, id: string): KnownElement {
  const found = site.elements.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`There is no "${id}".`);
  return found as KnownElement;
}

/** One field of an element. */
export function field(site: Site, id: string, name: string): unknown {
  return (element(site, id) as Readonly<Record<string, unknown>>)[name];
}

export function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}
