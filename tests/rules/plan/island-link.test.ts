/** The ring of an island in the plan: joined to the shell, with its copper and connectors. Figures: arithmetic. */
import { describe, expect, it } from "vitest";
import { concretePool, deck, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { transformSite } from "../../support/transform-site.ts";
import { reportOf, siteOf } from "../recorded/yards.ts";

const island = {
  closed: true,
  vertices: [
    [130, 55],
    [254, 55],
    [254, 137],
    [130, 137],
  ],
};
const outer = 1152 + 42 * Math.PI;
const inner = 2 * (124 - 42) + 2 * (82 - 42);

describe("the ring of an island", () => {
  it("is joined to the shell's steel by a link as long as the offset, which is in the takeoff", () => {
    const { ring, takeoff } = reportOf([concretePool({ islands: [island] })]);
    expect(ring.length).toBeCloseTo(outer + inner, 3);
    expect(ring.links).toHaveLength(1);
    expect(ring.links?.[0]?.length).toBeCloseTo(21, 6);
    expect(takeoff.conductor.ring).toBeCloseTo(outer + inner + 21, 3);
    const counts = new Map(takeoff.hardware.map(({ item, count }) => [item, count]));
    expect(counts.get("direct-burial clamp, wire to shell steel")).toBe(4 + 1);
    expect(counts.get("direct-burial connector, wire to wire")).toBe(1);
  });

  it("has no link where the shell does not conduct, nor where there is no island", () => {
    expect(reportOf([linerPool({ islands: [island] })]).ring.links).toBeUndefined();
    expect(reportOf([concretePool()]).ring.links).toBeUndefined();
  });

  it("is what parts on the island are joined to: no branch crosses the water", () => {
    const lamp = {
      id: "lamp",
      kind: "metal",
      shape: { point: [192, 96] },
      part: "light pole",
      z: [0, 90],
      fixed: true,
    };
    const { branches } = recompute(siteOf([concretePool({ islands: [island] }), lamp]));
    // Arithmetic: the island is 82 in. high, its ring 21 in. inside of its edge.
    expect(branches.map(({ to, run, penetration }) => [to, run, penetration])).toEqual([["lamp", 41 - 21, undefined]]);
  });

  it("is not needed where grid or steel lies on the island: its parts are joined to that, wherever its lines end", () => {
    // Its edge lies between the steps of the clipping grid: level and upright lines end a hair outside of it.
    const low = {
      closed: true,
      vertices: [
        [130.15, 90.15],
        [190.3, 90.15],
        [190.3, 102.3],
        [130.15, 102.3],
      ],
    };
    const lamp = {
      id: "lamp",
      kind: "metal",
      shape: { point: [160, 96] },
      part: "light pole",
      z: [0, 90],
      fixed: true,
    };
    for (const steel of ["none", "rebar"]) {
      const paving = deck({
        steel,
        outline: {
          closed: true,
          vertices: [
            [-60, -60],
            [444, -60],
            [444, 252],
            [-60, 252],
          ],
        },
      });
      for (const turn of [0, 17.2, 33.7, 211.3]) {
        const site = siteOf([concretePool({ islands: [low] }), paving, lamp], { edition: "nec-2023" });
        const { branches } = recompute(transformSite(site, { turn }));
        expect(branches.map(({ to, penetration }) => [to, penetration])).toEqual([["lamp", undefined]]);
        // Nowhere on the island is farther from a line of 12 in. spacing, or from its edge, than this (arithmetic).
        expect(branches[0]?.run).toBeLessThan(6.5);
      }
    }
  });
});
