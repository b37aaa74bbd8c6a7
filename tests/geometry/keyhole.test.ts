/** An area with holes as one ring. Figures: arithmetic; what it holds is asked of the area itself. */
import { describe, expect, it } from "vitest";
import { branchTree } from "../../geometry/branches.ts";
import { keyholeRing } from "../../geometry/keyhole.ts";
import { areaFrom, areaOf, contains } from "../../geometry/outline.ts";
import { ringArea, ringWinding } from "../../geometry/rings.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import type { PathData, Point } from "../../geometry/types.ts";
import { numbersFrom } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";
import { placed, startedAt, turnedBy } from "../oracles/variants.ts";

const box = (x0: number, y0: number, x1: number, y1: number): PathData => ({
  vertices: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
});
const disc = (x: number, y: number, radius: number): PathData => ({
  vertices: [
    [x - radius, y, 1],
    [x + radius, y, 1],
  ],
  closed: true,
});

const outer = box(0, 0, 400, 200);
// One behind another, so that the way out of the second leads over the first; a round one.
const holes = [box(150, 80, 250, 120), box(260, 85, 300, 115), disc(60, 100, 30), box(160, 125, 240, 150)];

describe(`an area with holes as one ring, seed ${seed}`, () => {
  it("holds what the area holds, once, however it is drawn", () => {
    const next = numbersFrom(seed);
    for (const angle of [0, 17.2, 90, 211]) {
      for (let start = 0; start < 2; start++) {
        const draw = (data: PathData) => placed(startedAt(data, start), turnedBy(angle), false);
        const area = areaFrom(draw(outer), holes.map(draw));
        const ring = keyholeRing(area, FINE_FLATTEN_TOLERANCE);
        expect(Math.abs(ringArea(ring) - areaOf(area))).toBeLessThan(0.2);
        for (let n = 0; n < 500; n++) {
          const p = turnedBy(angle)([420 * next() - 10, 220 * next() - 10]);
          const nearRound = Math.abs(Math.hypot(...difference(p, turnedBy(angle)([60, 100]))) - 30) < 0.01;
          if (!nearRound) expect(ringWinding(ring, p)).toBe(contains(area, p) ? 1 : 0);
        }
      }
    }
  });

  it("is the outline where there are none", () => {
    expect(keyholeRing(areaFrom(outer), FINE_FLATTEN_TOLERANCE)).toEqual(outer.vertices);
  });

  it("keeps branches on the ground of a hole and out of the water round it", () => {
    const water = areaFrom(outer, holes);
    const tree = branchTree({
      network: [
        [
          [170, 90],
          [170, 110],
        ],
        [
          [-21, -21],
          [421, -21],
        ],
      ],
      targets: [
        { id: "lamp", at: [230, 100] },
        { id: "other island", at: [200, 140] },
        { id: "yard", at: [200, -50] },
      ],
      blocked: [{ id: "pool", shape: "solid", points: keyholeRing(water, FINE_FLATTEN_TOLERANCE) }],
      junctionAllowance: 12,
    });
    expect(tree.branches.map(({ to, run, penetration }) => [to, run, penetration])).toEqual([
      ["yard", 29, undefined],
      ["lamp", 60, undefined],
    ]);
    expect(tree.unreachable).toEqual(["other island"]);
  });
});

function difference([x, y]: Point, [u, v]: Point): [number, number] {
  return [x - u, y - v];
}
