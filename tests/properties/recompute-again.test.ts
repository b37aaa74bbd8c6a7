/**
 * A report made after an edit, with everything kept that the edit left as it was, equals the report made from nothing.
 * Chains of random edits of the demo sites and of a crowd: elements moved, taken out, doubled, put elsewhere in the file,
 * facts left out, an answer, another edition, a setting; now and then back to a site from before.
 * Oracle: `recompute` from nothing. Source: arithmetic. A long run: COPPERBAND_TIMES=20.
 */
import { describe, expect, it } from "vitest";
import { moved } from "../../app/edits/moved.ts";
import { Recomputer, recompute } from "../../rules/recompute.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { crowdedSite } from "../benchmarks/crowd.ts";
import { numbersFrom } from "../oracles/random-yards.ts";
import { runs, seed } from "../oracles/seed.ts";
import { DEMO_SITES } from "../support/demo-sites.ts";
import { optionalFieldsOf, without } from "../support/optional-fields.ts";

type Element = KnownElement | UnknownElement;

const EDITS = runs(16).numRuns;

/** Every third report with its routes: they take most of the time. */
const ROUTES_EVERY = 3;

function edited(site: Site, next: () => number): Site {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  const at = Math.floor(next() * site.elements.length);
  const element = site.elements[at] as Element;
  const others = site.elements.filter((_, i) => i !== at);
  const kind = next();
  if (kind < 0.45) {
    const far = next() < 0.5 ? 6 : 90;
    const place = moved(element, (next() - 0.5) * far, (next() - 0.5) * far) ?? element;
    return { ...site, elements: site.elements.map((one, i) => (i === at ? place : one)) };
  }
  if (kind < 0.55) return { ...site, elements: others };
  if (kind < 0.65) {
    const copy = moved(element, 30, -20) ?? element;
    return {
      ...site,
      elements: [...site.elements, { ...copy, id: `${element.id}-${Math.floor(next() * 1e9)}` } as Element],
    };
  }
  if (kind < 0.72) return { ...site, elements: [...others, element] };
  if (kind < 0.87) {
    const fields = optionalFieldsOf(site);
    return fields.length === 0 ? site : without(site, pick(fields));
  }
  if (kind < 0.91) {
    const asked = recompute(site, { withoutRoutes: true }).findings.filter(({ question }) => question);
    if (asked.length === 0) return site;
    const finding = pick(asked);
    const answer = {
      question: finding.question?.id ?? "",
      element: finding.element,
      answer: pick(finding.question?.options ?? []),
    };
    return { ...site, answers: [...(site.answers ?? []), answer] };
  }
  if (kind < 0.95) return { ...site, edition: pick(["nec-2017", "nec-2020", "nec-2023"]) };
  return { ...site, settings: { ...site.settings, ringOffset: 18 + next() * 6 } };
}

const SITES: readonly (readonly [string, Site])[] = [
  ...DEMO_SITES.map(({ name, site }) => [name, site] as const),
  ["crowd of 120", crowdedSite(120, 48)],
];

describe.each(SITES)("%s", (name, first) => {
  it("gives the same report with and without what was kept", () => {
    const next = numbersFrom(seed + name.length);
    const recomputer = new Recomputer();
    const past: Site[] = [];
    let site: Site = first;
    for (let i = 0; i < EDITS; i++) {
      const withoutRoutes = i % ROUTES_EVERY !== 0;
      expect(recomputer.recompute(site, { withoutRoutes }), `edit ${i}`).toEqual(recompute(site, { withoutRoutes }));
      past.push(site);
      site = next() < 0.1 ? (past[Math.floor(next() * past.length)] as Site) : edited(site, next);
    }
  });
});

describe("what is kept", () => {
  const site = crowdedSite(300, 48);
  const post = site.elements.findIndex(({ id }) => id.startsWith("post-"));
  const shifted = (dx: number): Site => {
    const elements = site.elements.map((one, i) => (i === post ? (moved(one, dx, 0) ?? one) : one));
    return { ...site, elements };
  };

  it("gives the very same finding for a thing that an edit leaves alone", () => {
    const recomputer = new Recomputer();
    const before = recomputer.recompute(site);
    const after = recomputer.recompute(shifted(1));
    const name = site.elements[post]?.id;
    for (const [i, finding] of after.findings.entries()) {
      if (finding.element === name) expect(finding).not.toEqual(before.findings[i]);
      else if (finding.element !== null) expect(finding).toBe(before.findings[i]);
    }
    expect(after.band).toBe(before.band);
    expect(after.ring.loops).toBe(before.ring.loops);
  });
});
