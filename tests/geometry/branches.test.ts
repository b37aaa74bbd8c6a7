import { describe, expect, it } from "vitest";
import { branchTree } from "../../geometry/branches.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom } from "../../geometry/outline.ts";
import type { Barrier, Point } from "../../geometry/types.ts";
import { expectSound, named, solid } from "../oracles/branch-checks.ts";
import { rectangle } from "../oracles/outline-shapes.ts";
import type { Box } from "../oracles/steiner-search.ts";
import { turnedBy } from "../oracles/variants.ts";

const line: readonly Point[] = [
  [0, 0],
  [300, 0],
];

describe("branches on open ground", () => {
  it("go straight and square to the network", () => {
    const tree = branchTree({ network: [line], targets: named([[120, 80]]), blocked: [], junctionAllowance: 12 });
    expect(tree.branches).toEqual([
      {
        to: "part 0",
        path: [
          [120, 0],
          [120, 80],
        ],
        run: 80,
        from: "network",
      },
    ]);
  });

  it("may be chained from part to part", () => {
    const parts: Point[] = [
      [100, 200],
      [110, 200],
      [120, 200],
    ];
    const tree = branchTree({ network: [line], targets: named(parts), blocked: [], junctionAllowance: 12 });
    expectSound(tree, parts, line, []);
    expect(tree.length).toBeCloseTo(220, 9);
    expect(tree.joints).toBe(0);
  });

  it("take a joint where it saves more than its allowance", () => {
    // Torricelli's construction: three corners of an equilateral triangle of side s are joined by s times the root of 3.
    const side = 100;
    const far: Point[] = [
      [0, 0],
      [-0.001, 0],
    ];
    const parts: Point[] = [
      [side, 0],
      [side / 2, (side * Math.sqrt(3)) / 2],
    ];
    const saving = 2 * side - side * Math.sqrt(3);
    const withJoint = branchTree({
      network: [far],
      targets: named(parts),
      blocked: [],
      junctionAllowance: saving - 0.1,
    });
    expect(withJoint.length).toBeCloseTo(side * Math.sqrt(3), 3);
    expect(withJoint.joints).toBe(1);
    const without = branchTree({ network: [far], targets: named(parts), blocked: [], junctionAllowance: saving + 0.1 });
    expect(without.length).toBeCloseTo(2 * side, 3);
    expect(without.joints).toBe(0);
  });

  it("join the corners of a square by two joints", () => {
    // Known shortest network of a unit square: 1 + root 3.
    const square: Point[] = [
      [100, 0],
      [100, 100],
      [0, 100],
    ];
    for (const degrees of [0, 17, 90, 133]) {
      const place = turnedBy(degrees);
      const tree = branchTree({
        network: [[place([0, 0]), place([0, 0])]],
        targets: named(square.map(place)),
        blocked: [],
        junctionAllowance: 0,
      });
      expect(tree.length).toBeCloseTo(100 * (1 + Math.sqrt(3)), 3);
      expect(tree.joints).toBe(2);
    }
  });

  it("use the best of a part's connection points, and the part itself as a way on", () => {
    const rail: Point[] = [
      [100, 30],
      [100, 90],
      [160, 90],
    ];
    const tree = branchTree({
      network: [line],
      targets: [
        { id: "rail", at: rail },
        { id: "far", at: [170, 95] },
      ],
      blocked: [],
      junctionAllowance: 12,
    });
    expect(tree.branches.map(({ to, run }) => [to, Math.round(run * 1000)])).toEqual([
      ["rail", 30000],
      ["far", Math.round(Math.hypot(10, 5) * 1000)],
    ]);
  });

  it("meet exact paths as they meet lines, and have no length on the network itself", () => {
    const ring = offsetCurves([areaFrom(rectangle)], 21).loops.map((loop) => loop.path);
    const tree = branchTree({
      network: ring,
      targets: named([
        [405, 100],
        [500, 100],
      ]),
      blocked: [],
      junctionAllowance: 12,
    });
    expect(tree.branches.map(({ run }) => run)).toEqual([0, 95]);
  });
});

describe("branches round solids", () => {
  const house: Box = { x0: 100, y0: 60, x1: 300, y1: 200 };

  it("bend at corners", () => {
    const parts: Point[] = [[180, 260]];
    const tree = branchTree({
      network: [line],
      targets: named(parts),
      blocked: [solid(house, 0)],
      junctionAllowance: 12,
    });
    expectSound(tree, parts, line, [house]);
    // Arithmetic: straight up the house's side, then on to the part.
    expect(tree.length).toBeCloseTo(200 + Math.hypot(80, 60), 9);
  });

  it("go round the water and the house that the straight line crosses", () => {
    const water: Box = { x0: -100, y0: 20, x1: 220, y1: 50 };
    const parts: Point[] = [[200, 260]];
    for (const degrees of [0, 29, 180]) {
      for (const mirror of [1, -1]) {
        const turn = turnedBy(degrees);
        const place = ([x, y]: Point): Point => turn([x * mirror, y]);
        const placed = (box: Box, i: number): Barrier => {
          const { points, ...barrier } = solid(box, i);
          return { ...barrier, points: points.map(place) };
        };
        const tree = branchTree({
          network: [line.map(place)],
          targets: named(parts.map(place)),
          blocked: [placed(water, 0), placed(house, 1)],
          junctionAllowance: 12,
        });
        // Arithmetic: past the water's east end, up the house's east side to its corner (300, 200), then to the part.
        expect(tree.length).toBeCloseTo(200 + Math.hypot(100, 60), 9);
        expect(tree.branches).toHaveLength(1);
      }
    }
  });

  it("lay what two of them share once, joined at the corner", () => {
    const parts: Point[] = [
      [180, 260],
      [180, 230],
      [110, 400],
    ];
    const tree = branchTree({
      network: [line],
      targets: named(parts),
      blocked: [solid(house, 0)],
      junctionAllowance: 12,
    });
    expectSound(tree, parts, line, [house]);
  });

  it("leave a network that runs along a solid's face or into it, from where it is open", () => {
    // Arithmetic: from where the copper meets the house or its corner, straight or round the corner to the part.
    const runs = (network: readonly Point[], part: Point) =>
      branchTree({
        network: [network],
        targets: named([part]),
        blocked: [solid(house, 0)],
        junctionAllowance: 12,
      }).branches.map(({ run }) => run);
    for (const into of [0, 1e-4, -1e-4]) {
      // Along the lower face, as the clipping grid leaves it; the part stands round the corner.
      const along = runs(
        [
          [100, 60 + into],
          [300, 60 + into],
        ],
        [330, 100],
      );
      expect(along).toHaveLength(1);
      expect(along[0]).toBeCloseTo(50, 2);
      // Up to the lower face, and on past it: the part stands above the corner.
      for (const end of [60 + into, 150]) {
        const upTo = runs(
          [
            [280, 0],
            [280, end],
          ],
          [300, 110],
        );
        expect(upTo).toHaveLength(1);
        expect(upTo[0]).toBeCloseTo(20 + 50, 2);
      }
    }
  });

  it("name what no way leads to, and still join the rest", () => {
    const ring: Barrier = {
      id: "closed wall",
      shape: "thin",
      points: [
        [400, 100],
        [500, 100],
        [500, 200],
        [400, 200],
        [400, 100],
      ],
    };
    const tree = branchTree({
      network: [line],
      targets: named([
        [450, 150],
        [50, 50],
        [80, 60],
      ]),
      blocked: [ring],
      junctionAllowance: 12,
    });
    expect(tree.unreachable).toEqual(["part 0"]);
    expect(tree.branches.map(({ to }) => to).sort()).toEqual(["part 1", "part 2"]);
    const none = branchTree({ network: [], targets: named([[1, 1]]), blocked: [], junctionAllowance: 12 });
    expect(none).toEqual({ branches: [], unreachable: ["part 0"], joints: 0, length: 0 });
  });

  it("refuse an allowance below zero", () => {
    expect(() => branchTree({ network: [line], targets: [], blocked: [], junctionAllowance: -1 })).toThrow("-1");
  });
});
