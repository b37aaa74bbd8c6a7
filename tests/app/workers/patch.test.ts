/** Patches between sites and reports give back what they were made of. Source: arithmetic. */
import { describe, expect, it } from "vitest";
import {
  listPatch,
  patchedList,
  patchedReport,
  patchedSite,
  reportPatch,
  sitePatch,
} from "../../../app/workers/patch.ts";
import { Recomputer } from "../../../rules/recompute.ts";
import type { Site } from "../../../rules/site/site.ts";
import { numbersFrom } from "../../oracles/random-yards.ts";
import { seed } from "../../oracles/seed.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

const objects = (count: number) => Array.from({ length: count }, (_, i) => ({ i }));

describe("lists", () => {
  it("come back as the very same entries after any change", () => {
    const next = numbersFrom(seed);
    for (let n = 0; n < 300; n++) {
      const before = objects(Math.floor(next() * 12));
      const after = before.filter(() => next() < 0.8);
      for (let k = Math.floor(next() * 4); k > 0; k--)
        after.splice(Math.floor(next() * (after.length + 1)), 0, { i: -k });
      if (next() < 0.3) after.reverse();
      const back = patchedList(before, listPatch(before, after));
      expect(back.length).toBe(after.length);
      for (const [i, one] of after.entries()) expect(back[i]).toBe(one);
    }
  });

  it("send one entry where one has taken the place of another", () => {
    const before = objects(1000);
    const after = before.map((one, i) => (i === 500 ? { i: -1 } : one));
    expect(listPatch(before, after)).toEqual([
      { from: 0, count: 500 },
      { added: [{ i: -1 }] },
      { from: 501, count: 499 },
    ]);
  });
});

describe("fields of a site", () => {
  const before = {
    name: "Alder Row 1",
    edition: "nec-2020",
    underlay: { picture: "data:," },
    elements: [],
  } as unknown as Site;

  it("are sent only where they differ, and are gone where they are gone", () => {
    const { edition: _, ...rest } = before;
    const after = { ...rest, name: "Alder Row 2", north: 90 } as Site;
    const patch = sitePatch(before, after);
    expect(patch.head).toEqual({ name: "Alder Row 2", north: 90 });
    expect(patch.gone).toEqual(["edition"]);
    expect(patchedSite(before, structuredClone(patch))).toEqual(after);
  });
});

describe("sites and reports", () => {
  const { site } =
    DEMO_SITES.find(({ name }) => name === "busy-yard") ?? (DEMO_SITES[0] as (typeof DEMO_SITES)[number]);
  const moved: Site = { ...site, name: "Other", elements: site.elements.slice(1) };

  it("come back whole, with what an edit left alone as the same objects", () => {
    const back = patchedSite(site, sitePatch(site, moved));
    expect(back).toEqual(moved);
    expect(back.elements[3]).toBe(moved.elements[3]);
    const recomputer = new Recomputer();
    const [before, after] = [recomputer.recompute(site), recomputer.recompute(moved)];
    // As the worker's message copies it.
    const sent = structuredClone(reportPatch(before, after));
    expect(patchedReport(before, sent)).toEqual(after);
  });
});
