/**
 * The shared cases turned, mirrored, run the other way and started at every vertex: the same findings, measurements,
 * lengths and areas, and the same grid and branches. Source: symmetry of the plane (arithmetic).
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { alignedGrid } from "../../geometry/aligned-grid.ts";
import { branchTree } from "../../geometry/branches.ts";
import { flattenArea, flattenPath } from "../../geometry/outline.ts";
import { shortestRing } from "../../geometry/shortest-ring.ts";
import type { Barrier } from "../../geometry/types.ts";
import { Yard } from "../../rules/measures/yard.ts";
import { recompute } from "../../rules/recompute.ts";
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { differences } from "../support/situation.ts";
import { restartSite, reverseSite, transformSite } from "../support/transform-site.ts";

const FOLDER = new URL("../fixtures/cases/", import.meta.url);
const SLACK = 1e-5;
const SHARE = 0.0005;

const cases = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".site.json"))
  .map((name) => {
    const read = readSite(readFileSync(new URL(name, FOLDER), "utf8"));
    if (!read.ok) throw new Error(`${name}: ${read.refusal.message}`);
    return [name, read.site] as const;
  });

/** Every start of the pool's outline, both ways round, turned or not, mirrored or not. */
function drawingsOf(site: Site): { readonly name: string; readonly site: Site }[] {
  const pool = site.elements.find(({ kind }) => kind === "pool") as { outline?: { vertices: unknown[] } } | undefined;
  const starts = pool?.outline?.vertices.length ?? 1;
  return Array.from({ length: starts }, (_, start) => start).flatMap((start) =>
    [0, 37.3].flatMap((turn) =>
      [false, true].map((mirror) => {
        const restarted = restartSite(site, (count) => start % count);
        const walked = start % 2 === 0 ? restarted : reverseSite(restarted);
        return {
          name: `start ${start}, turned ${turn}, mirrored ${mirror}`,
          site: transformSite(walked, { turn, mirror }),
        };
      }),
    ),
  );
}

/** The grid over the band, the shortest ring, and branches from the ring to four places, chosen by the pool's own box of edges. */
function planFigures(site: Site): { grid: number; crossings: number; shortest: number; run: number } {
  const yard = new Yard(site);
  const waters = yard.bodies.map(({ water }) => water);
  const grid = alignedGrid(yard.band(yard.bodies[0] as Yard["bodies"][number]).region, 12, waters);
  const ring = shortestRing({ bodies: waters, min: 18, max: 24 });
  const parts = [...yard.all("metal"), ...yard.all("fence"), ...yard.all("device")].map((element) => {
    const shape = yard.shape(element);
    return {
      id: element.id,
      at: shape.kind === "point" ? [shape.at] : flattenPath("path" in shape ? shape.path : shape.area.outer),
    };
  });
  const blocked: Barrier[] = waters.flatMap((water, i) => {
    const [outer] = flattenArea(water)[0] ?? [];
    return outer ? [{ id: `water ${i}`, shape: "solid" as const, points: outer.slice(0, -1) }] : [];
  });
  const network = ring.ok ? ring.loops.map(({ path }) => [...path, ...path.slice(0, 1)]) : [];
  const tree = branchTree({ network, targets: parts, blocked, junctionAllowance: 12 });
  return {
    grid: grid.length,
    crossings: grid.crossings,
    shortest: ring.ok ? ring.length : Number.NaN,
    run: tree.branches.reduce((sum, { run }) => sum + run, 0),
  };
}

describe.each(cases)("%s", (_, site) => {
  const drawings = drawingsOf(site);

  it("is judged alike however it is drawn", () => {
    const report = recompute(site);
    for (const other of drawings)
      expect(differences(report, recompute(other.site), SLACK, SHARE), other.name).toEqual([]);
  });

  it("has the same grid, shortest ring and branches however it is drawn", () => {
    const from = planFigures(site);
    expect(from.shortest).toBeGreaterThan(0);
    expect(from.grid).toBeGreaterThan(0);
    for (const other of drawings) {
      const to = planFigures(other.site);
      expect(Math.abs(to.shortest - from.shortest), other.name).toBeLessThan(from.shortest * 2e-5);
      // The region comes from the clipping grid, so that a line may end a little farther on.
      expect(Math.abs(to.grid - from.grid), other.name).toBeLessThan(from.grid * 2e-3);
      expect(Math.abs(to.crossings - from.crossings), other.name).toBeLessThanOrEqual(from.crossings * 0.01);
      expect(Math.abs(to.run - from.run), other.name).toBeLessThan(0.05);
    }
  });
});
