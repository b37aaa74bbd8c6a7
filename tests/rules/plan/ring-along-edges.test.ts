/** A ring over a part of the perimeter that runs along the very edge of its ground: the face of a wall, the edge of a slab. */
import { describe, expect, it } from "vitest";
import { box } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { transformSite } from "../../support/transform-site.ts";

const pool = { body: "pool", shell: "sprayed-concrete", steel: "bare", depth: 60 };

function yardOf(...elements: readonly object[]): Site {
  return siteOf({ id: "pool", kind: "pool", outline: box(0, 0, 384, 192), ...pool }, ...elements);
}

function siteOf(...elements: readonly object[]): Site {
  const read = checkSite({
    format: "copperband-site",
    version: 1,
    edition: "nec-2020",
    elements,
  });
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.site;
}

function lengthsOf(site: Site): number[] {
  return [0, 10, 17.2, 33, 47, 90, 120, 211, 301].map(
    (turn) => recompute(transformSite(site, { turn, move: [1 / 7, 1 / 3] })).ring.length,
  );
}

const slab = { kind: "surface", material: "concrete", steel: "rebar", level: 0 };

describe("a ring over a part of the perimeter", () => {
  it("follows the face of a wall that ends its ground", () => {
    const path = {
      vertices: [
        [-100, 215],
        [484, 215],
      ],
      closed: false,
    };
    const wall = { id: "wall", kind: "wall", path, thickness: 6, top: 72, permanent: true };
    // Arithmetic: the slab serves the side below y = 96; above it 2 x 96 in. of sides, two arcs cut off where they are 20 in.
    // up, and between them the wall's face, 20 in. from the water.
    const length = 2 * 96 + 2 * 21 * Math.asin(20 / 21) + 384 + 2 * Math.sqrt(21 ** 2 - 20 ** 2);
    for (const found of lengthsOf(yardOf({ ...slab, id: "slab", outline: box(-100, -100, 484, 96) }, wall)))
      expect(Math.abs(found - length)).toBeLessThan(0.1);
  });

  it("ends at a house that stands on the inside wall: there is no ground before its face", () => {
    const slabBelow = { ...slab, id: "slab", outline: box(-100, -100, 484, 96) };
    // Arithmetic: above the slab 2 x 96 in. of sides and two quarter turns; of the top what the house leaves, and along its
    // two sides in to the water.
    for (const [x0, x1] of [
      [100, 300],
      [-50, 250],
      [0.3, 383.7],
    ] as const) {
      const house = { id: "house", kind: "building", top: 120, outline: box(x0, 192, x1, 300) };
      const left = x0 > 0 ? 21 * Math.PI * 0.5 + x0 + 21 : 21;
      const length = 2 * 96 + left + 21 * Math.PI * 0.5 + (384 - x1) + 21;
      for (const found of lengthsOf(yardOf(slabBelow, house))) expect(Math.abs(found - length)).toBeLessThan(0.1);
    }
  });

  it("follows the edge of a slab at its own offset", () => {
    // Arithmetic: a slab as wide as the ring's offset on one side serves nothing there; the ring runs along its edge all round.
    const strip = { ...slab, id: "strip", outline: box(0, -21, 384, 0) };
    const lengths = lengthsOf(yardOf(strip));
    expect(Math.abs((lengths[0] ?? 0) - (1152 + 42 * Math.PI))).toBeLessThan(0.1);
    for (const found of lengths) expect(Math.abs(found - (lengths[0] ?? 0))).toBeLessThan(0.1);
  });

  it("is as long over the whole stretch wherever between its limits it lies, where paving ends between them", () => {
    // A coping with steel 20 in. wide, lawn beyond: the lawn asks for a ring all round, whether it runs before or in it.
    const coping = { ...slab, id: "coping", outline: box(-20, -20, 404, 212) };
    const site = yardOf(coping);
    for (const ringOffset of [18, 19, 21, 24]) {
      const { ring } = recompute({ ...site, settings: { ...site.settings, ringOffset } });
      // Arithmetic: the length of a parallel curve at that offset.
      expect(Math.abs(ring.length - (1152 + 2 * ringOffset * Math.PI))).toBeLessThan(0.2);
      // Arithmetic: the string lies at 18 in. all round.
      expect(Math.abs(ring.shortestLegal - (1152 + 36 * Math.PI))).toBeLessThan(0.2);
      expect(Math.abs((ring.short?.length ?? 0) - (1152 + 38 * Math.PI))).toBeLessThan(0.2);
    }
  });

  it("is the same from every vertex of the pool, where lawn goes on beside a corner of paving", () => {
    const paving = { id: "slab", ...slab, outline: box(-36, -18, -18, 203.1) };
    const planting = { id: "planting", kind: "keep-out", outline: box(-36, 195.1, 300, 216.37) };
    const vertices = [
      [0, 0],
      [360, 0],
      [360, 36, 1],
      [360, 156],
      [360, 192],
      [0, 192],
    ] as const;
    const lengths = vertices.map((_, k) => {
      const outline = { vertices: [...vertices.slice(k), ...vertices.slice(0, k)], closed: true };
      return recompute(siteOf({ id: "pool", kind: "pool", outline, ...pool }, paving, planting)).ring.length;
    });
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThan(0.01);
  });
});
