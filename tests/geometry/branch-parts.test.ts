/** Where branches meet their parts: along lines, on faces, inside solids. */
import { describe, expect, it } from "vitest";
import { branchTree } from "../../geometry/branches.ts";
import { pathFrom } from "../../geometry/outline.ts";
import type { Point, Vertex } from "../../geometry/types.ts";
import { named, solid } from "../oracles/branch-checks.ts";
import type { Box } from "../oracles/steiner-search.ts";
import { turnedBy } from "../oracles/variants.ts";

const line: readonly Point[] = [
  [0, 0],
  [300, 0],
];
const house: Box = { x0: 100, y0: 60, x1: 300, y1: 200 };

describe("branches to their parts", () => {
  it("meet a line between its positions, where it comes nearest to the network or crosses it", () => {
    // The network's corner at [140, 0] points at a rail of 24 in. steps; the next position, at [144, 40], is farther off.
    const corner: readonly Point[] = [
      [100, -80],
      [140, 0],
      [180, -80],
    ];
    const meet = (rail: readonly Point[], at: readonly Point[], place: (p: Point) => Point = (p) => p) =>
      branchTree({
        network: [corner.map(place)],
        targets: [
          {
            id: "rail",
            at: at.map(place),
            along: [pathFrom({ vertices: rail.map(place).map(([x, y]): Vertex => [x, y]), closed: false })],
          },
        ],
        blocked: [],
        junctionAllowance: 12,
      }).branches.map(({ run }) => run);
    const level: Point[] = [
      [96, 40],
      [192, 40],
    ];
    const steps: Point[] = [96, 120, 144, 168, 192].map((x) => [x, 40]);
    const across: Point[] = [
      [96, -20],
      [192, -20],
    ];
    for (const place of [turnedBy(0), turnedBy(17.3), turnedBy(90), ([x, y]: Point): Point => [-x, y]]) {
      const [square] = meet(level, steps, place);
      expect(square).toBeCloseTo(40, 9);
      const [crossing] = meet([...across].reverse(), across, place);
      expect(crossing).toBeCloseTo(0, 9);
    }
    // From its positions alone it would be as far as the nearest of them is.
    expect(Math.hypot(4, 40)).toBeGreaterThan(40.1);
  });

  it("enter a solid that the part stands in at the nearest face, and mark it", () => {
    const inside: Point[] = [
      [200, 190],
      [210, 190],
    ];
    const tree = branchTree({
      network: [line],
      targets: named(inside),
      blocked: [solid(house, 0)],
      junctionAllowance: 0,
    });
    expect(tree.unreachable).toEqual([]);
    for (const branch of tree.branches) {
      expect(branch.penetration?.[1]).toBeCloseTo(200, 9);
      const last = branch.path[branch.path.length - 1] as Point;
      expect(last[1]).toBe(190);
    }
    const length = tree.branches.reduce((sum, { run }) => sum + run, 0);
    expect(tree.length).toBeCloseTo(length, 9);
  });

  it("enter by whichever of faces that are as near makes the branch shortest, however the yard is drawn", () => {
    // A pump in the middle of the house: 70 in. to its lower and to its upper face, 60 in. on to the line below; and in the
    // middle of a round one of 60 in. (arithmetic).
    const square = solid(house, 0).points;
    const round = Array.from({ length: 48 }, (_, i): Point => {
      const angle = (i / 48) * 2 * Math.PI;
      return [200 + 60 * Math.cos(angle), 130 + 60 * Math.sin(angle)];
    });
    for (const angle of [0, 17.3, 33.7, 90, 180, 211.3, 301]) {
      const place = turnedBy(angle);
      for (const points of [square, round]) {
        const tree = branchTree({
          network: [line.map(place)],
          targets: named([place([200, 130])]),
          blocked: [{ id: "house", shape: "solid", points: points.map(place) }],
          junctionAllowance: 12,
        });
        expect(Math.abs(tree.length - 130)).toBeLessThan(0.2);
      }
    }
  });

  it("enter at the position of a part that is nearest to a face, whatever its others are", () => {
    // Arithmetic: 60 in. up to the house's lower face, 10 in. on to the rail's lower bar; its upper bar is 30 in. in.
    const rail: Point[] = [
      [200, 90],
      [240, 90],
      [200, 70],
      [240, 70],
    ];
    for (const at of [rail, [...rail].reverse()]) {
      const tree = branchTree({
        network: [line],
        targets: [{ id: "rail", at }],
        blocked: [solid(house, 0)],
        junctionAllowance: 12,
      });
      expect(tree.branches).toHaveLength(1);
      expect(tree.length).toBeCloseTo(60 + 10, 9);
    }
  });

  it("meet a part that stands on a solid's face as one on open ground, whichever side rounding puts it on", () => {
    // Arithmetic: 60 in. up to the lower face.
    for (const into of [0, 1e-9, -1e-9, 1e-4]) {
      const tree = branchTree({
        network: [line],
        targets: named([[200, 60 + into]]),
        blocked: [solid(house, 0)],
        junctionAllowance: 12,
      });
      expect(tree.branches[0]?.penetration).toBeUndefined();
      expect(tree.length).toBeCloseTo(60, 3);
    }
  });

  it("meet a part that reaches out of a solid on open ground, and nowhere inside", () => {
    // A rail that leaves the house toward the line: 100 in. of copper to its end (arithmetic).
    const rail: Point[] = [
      [200, 190],
      [200, 195],
      [90, 100],
    ];
    const tree = branchTree({
      network: [line],
      targets: [{ id: "rail", at: rail }],
      blocked: [solid(house, 0)],
      junctionAllowance: 12,
    });
    expect(tree.branches.map(({ run, penetration }) => [run, penetration])).toEqual([[100, undefined]]);
    // The same where the face inside is nearer to the network than the end outside.
    const near = branchTree({
      network: [
        [
          [200, 210],
          [210, 210],
        ],
      ],
      targets: [
        {
          id: "rail",
          at: [
            [200, 190],
            [200, 240],
          ],
        },
      ],
      blocked: [solid(house, 0)],
      junctionAllowance: 12,
    });
    expect(near.branches.map(({ run, penetration }) => [run, penetration])).toEqual([[30, undefined]]);
  });

  it("are chained where their lines come nearest to each other, wherever their positions lie", () => {
    const rail = (x0: number, y0: number, x1: number, y1: number, place: (p: Point) => Point) => {
      const ends = (
        [
          [x0, y0],
          [x1, y1],
        ] as Point[]
      ).map(place);
      return { at: ends, along: [pathFrom({ vertices: ends.map(([x, y]): Vertex => [x, y]), closed: false })] };
    };
    for (const place of [turnedBy(0), turnedBy(17.3), ([x, y]: Point): Point => [-x, y]]) {
      const tree = branchTree({
        network: [line.map(place)],
        targets: [
          { id: "near", ...rail(50, 60, 250, 60, place) },
          { id: "crossing", ...rail(120, 40, 120, 300, place) },
          { id: "post", at: place([171, 71]) },
        ],
        blocked: [],
        junctionAllowance: 12,
      });
      // Arithmetic: 40 in. up to the rail that crosses the other, 11 in. from that one to the post.
      expect(tree.length).toBeCloseTo(40 + 0 + 11, 6);
    }
  });
});
