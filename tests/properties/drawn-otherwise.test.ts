/**
 * Demo sites turned by any angle, mirrored or not, moved up to 1,000 ft, each path started at any vertex and run either
 * way: the same findings, measurements, lengths and areas. Source: symmetry of the plane (arithmetic).
 *
 * The suite draws COPPERBAND_DRAWINGS drawings of each site (4).
 */
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import { numbersFrom } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";
import { DEMO_SITES } from "../support/demo-sites.ts";
import { differences } from "../support/situation.ts";
import { restartSite, reverseSite, transformSite } from "../support/transform-site.ts";

const drawings = Number(process.env.COPPERBAND_DRAWINGS ?? 4);
/** Rounding of turned coordinates 1,000 ft from the origin, far below anything measured, inches. */
const SLACK = 1e-5;
const SHARE = 0.0005;

describe.each(DEMO_SITES.map((demo, i) => [demo.name, demo.site, i] as const))("%s", (_, site, i) => {
  it(`is judged alike in ${drawings} other drawings`, () => {
    const report = recompute(site);
    const next = numbersFrom(seed + i);
    for (let n = 0; n < drawings; n++) {
      const turn = next() * 360;
      const mirror = next() < 0.5;
      const move = [(next() - 0.5) * 24_000, (next() - 0.5) * 24_000] as const;
      let other = restartSite(site, (count) => Math.floor(next() * count));
      if (next() < 0.5) other = reverseSite(other);
      other = transformSite(other, { turn, mirror, move });
      expect(
        differences(report, recompute(other), SLACK, SHARE),
        `turned ${turn}, mirrored ${mirror}, moved ${move}`,
      ).toEqual([]);
    }
  });
});
