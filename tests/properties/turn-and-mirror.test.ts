/**
 * Laws of arranging on the demo sites and the sample: mirrored twice, or turned and turned back, everything lies where it
 * lay to a billionth of an inch; with everything turned or mirrored the findings say the same. Source: symmetry of the
 * plane (arithmetic). A failing law prints its seed; run it again with COPPERBAND_SEED.
 */
import { describe, expect, it } from "vitest";
import { mirrorElements, turnElements } from "../../app/edits/turn-elements.ts";
import { recompute } from "../../rules/recompute.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { applied, sampleYard } from "../app/edits/yard.ts";
import { numbersFrom } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";
import { DEMO_SITES } from "../support/demo-sites.ts";
import { differences } from "../support/situation.ts";

/** Inches. */
const SAME = 1e-9;
/** Rounding of turned coordinates, far below anything measured, inches; and a share of lengths of the plan. */
const SLACK = 1e-5;
const SHARE = 0.0005;

/** The largest difference of any two numbers at the same place; infinite where anything else differs. */
function farthest(a: unknown, b: unknown): number {
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b);
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null)
    return a === b ? 0 : Number.POSITIVE_INFINITY;
  const keys = Object.keys(a);
  if (keys.join() !== Object.keys(b).join()) return Number.POSITIVE_INFINITY;
  return Math.max(
    0,
    ...keys.map((key) => farthest((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key])),
  );
}

/** Every kind of the format; what this version does not know cannot be turned. */
const sample = sampleYard();
const known = { ...sample, elements: sample.elements.filter(({ kind }) => isKnownKind(kind)) };
const sites = [{ name: "the sample", site: known }, ...DEMO_SITES];

describe.each(sites.map(({ name, site }, i) => [name, site, i] as const))("%s", (_, site, i) => {
  const next = numbersFrom(seed + i);
  const ids = site.elements.map(({ id }) => id);
  const place = () => [(next() - 0.5) * 2000, (next() - 0.5) * 2000] as const;

  it("comes back from a mirror's mirror and from a turn", () => {
    for (let n = 0; n < 10; n++) {
      const [at, angle] = [place(), next() * 720 - 360];
      const there = applied(site, mirrorElements(ids, at, angle));
      expect(farthest(there, site), `seed ${seed}: mirrored at ${angle}`).toBeGreaterThan(SAME);
      expect(
        farthest(applied(there, mirrorElements(ids, at, angle)), site),
        `seed ${seed}: mirrored at ${angle}`,
      ).toBeLessThan(SAME);
      const turned = applied(site, turnElements(ids, angle, at));
      expect(
        farthest(applied(turned, turnElements(ids, -angle, at)), site),
        `seed ${seed}: turned ${angle}`,
      ).toBeLessThan(SAME);
    }
  });

  it("is judged alike when all of it is turned or mirrored", () => {
    const report = recompute(site);
    for (const edit of [
      turnElements(ids, next() * 360, place()),
      turnElements(ids, 90, place()),
      mirrorElements(ids, place(), next() * 180),
      mirrorElements(ids, place(), 90),
    ]) {
      expect(differences(report, recompute(applied(site, edit)), SLACK, SHARE), `seed ${seed}: ${edit.label}`).toEqual(
        [],
      );
    }
  });
});
