// The same yard turned by 33 degrees, mirrored, moved by 1,000 ft, with its outlines started elsewhere or run the other
// way, has the same findings, measurements, lengths and areas. Source: symmetry of the plane (arithmetic); that a turned or
// mirrored yard is judged alike follows from the code, which knows no directions.
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import type { Site } from "../../rules/site/site.ts";
import { DEMO_SITES } from "../support/demo-sites.ts";
import { differences } from "../support/situation.ts";
import { restartSite, reverseSite, transformSite } from "../support/transform-site.ts";

/** Rounding of turned coordinates, far below anything measured. */
const SLACK = 1e-5;
/** Moved by 12,000 in. the arcs' centers round by some 1e-12 of that; arcs near straight magnify it. */
const SHARE = 0.0005;

const variants: readonly (readonly [string, (site: Site) => Site])[] = [
  ["turned by 33 degrees", (site) => transformSite(site, { turn: 33 })],
  ["mirrored", (site) => transformSite(site, { mirror: true })],
  ["mirrored and turned by 90 degrees", (site) => transformSite(site, { mirror: true, turn: 90 })],
  ["moved by 1,000 ft", (site) => transformSite(site, { move: [12_000, -12_000] })],
  ["with outlines started at their second vertex", (site) => restartSite(site, () => 1)],
  ["with outlines started at their last vertex", (site) => restartSite(site, (count) => count - 1)],
  ["with every path run the other way", reverseSite],
];

describe.each(DEMO_SITES.map((demo) => [demo.name, demo.site] as const))("%s", (_, site) => {
  const report = recompute(site);
  it.each(variants)("is judged alike %s", (_, variant) => {
    expect(differences(report, recompute(variant(site)), SLACK, SHARE)).toEqual([]);
  });
});
