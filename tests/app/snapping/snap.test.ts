import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { candidatesNear } from "../../../app/snapping/candidates.ts";
import { gridLines, gridStep, toStep } from "../../../app/snapping/grid.ts";
import { type SnapCandidates, snap } from "../../../app/snapping/snap.ts";
import { edgeFromVertices, lineEdge, nearestOnEdge } from "../../../geometry/edge.ts";
import { distanceBetween } from "../../../geometry/points.ts";
import type { Point } from "../../../geometry/types.ts";
import type { KnownElement } from "../../../rules/site/elements.ts";
import { runs } from "../../oracles/seed.ts";

const NOTHING: SnapCandidates = { points: [], edges: [] };
const side = { edge: lineEdge([0, 0], [200, 0]), words: "side of Deck" };

describe("the order of what draws a pointer", () => {
  const near: SnapCandidates = {
    points: [
      { at: [0, 0], words: "corner of Deck" },
      { at: [6, 0], words: "middle of a side of Deck", isMiddle: true },
    ],
    edges: [side],
  };

  it("a corner goes before a middle that is nearer, a middle before the side", () => {
    expect(snap([5, 1], near, { tolerance: 8, grid: 12 })).toMatchObject({ point: [0, 0], reason: "corner of Deck" });
    expect(snap([10, 1], near, { tolerance: 8, grid: 12 })).toMatchObject({ point: [6, 0] });
    expect(snap([100, 3], near, { tolerance: 8, grid: null })).toMatchObject({
      point: [100, 0],
      reason: "side of Deck",
    });
  });

  it("the nearest of several corners", () => {
    const points = [
      { at: [0, 0], words: "far" },
      { at: [4, 0], words: "near" },
    ] as const;
    expect(snap([3, 0], { points, edges: [] }, { tolerance: 8, grid: null }).reason).toBe("near");
  });

  it("nothing beyond the tolerance: the place stays as it is pointed, or goes to the grid", () => {
    expect(snap([100, 9], { points: [], edges: [side] }, { tolerance: 8, grid: null })).toEqual({
      point: [100, 9],
      reason: null,
      guides: [],
    });
    expect(snap([100, 9], { points: [], edges: [side] }, { tolerance: 8, grid: 12 })).toMatchObject({
      point: [96, 12],
      reason: "grid",
    });
  });

  it("along a side, at a round distance from the corner that it leaves, and never beyond its end", () => {
    const slanted = { edge: lineEdge([1, 1], [1, 101]), words: "side of fence 1" };
    const at = (y: number) => snap([2, y], { points: [], edges: [slanted] }, { tolerance: 8, grid: 12 }).point;
    expect(at(51)).toEqual([1, 49]);
    expect(at(100)).toEqual([1, 97]);
    expect(at(104)).toEqual([1, 97]);
  });

  it("on an arc by its true curve", () => {
    // A half circle of radius 100 round (100, 0).
    const arc = { edge: edgeFromVertices([0, 0, -1], [200, 0]), words: "side of Pool" };
    const { point } = snap([100, 104], { points: [], edges: [arc] }, { tolerance: 8, grid: null });
    expect(distanceBetween(point, [100, 0])).toBeCloseTo(100, 9);
  });
});

describe("being in line with an earlier corner", () => {
  const lines = [
    { with: [10, 10] as Point, name: "the last corner" },
    { with: [300, 200] as Point, name: "the first corner" },
  ];

  it("level or straight up, at a round distance from it, with a guide", () => {
    expect(snap([131, 14], NOTHING, { tolerance: 8, grid: 12, lines })).toEqual({
      point: [130, 10],
      reason: "level with the last corner",
      guides: [
        [
          [10, 10],
          [130, 10],
        ],
      ],
    });
    expect(snap([6, 130], NOTHING, { tolerance: 8, grid: 12, lines }).point).toEqual([10, 130]);
  });

  it("with both at once: where the two lines meet", () => {
    expect(snap([304, 13], NOTHING, { tolerance: 8, grid: 12, lines })).toMatchObject({
      point: [300, 10],
      reason: "straight up or down from the first corner, level with the last corner",
    });
  });

  it("on a side that runs along the line: where the other line meets it, else at a round distance", () => {
    const wall = { edge: lineEdge([-192, 96], [-192, -96]), words: "side of Pool" };
    const from = [
      { with: [-150, 36], name: "the last corner" },
      { with: [-192, -36], name: "the first corner" },
    ] as const;
    const at = (y: number) => snap([-190, y], { points: [], edges: [wall] }, { tolerance: 9, grid: 12, lines: from });
    expect(at(40)).toMatchObject({ point: [-192, 36], reason: "side of Pool, level with the last corner" });
    expect(at(14)).toMatchObject({ point: [-192, 12], reason: "side of Pool" });
  });

  it("on a side: where the line meets the side", () => {
    const wall = { edge: lineEdge([100, 0], [140, 100]), words: "side of House" };
    const found = snap([106, 12], { points: [], edges: [wall] }, { tolerance: 8, grid: 12, lines });
    expect(found.point).toEqual([104, 10]);
    expect(found.reason).toBe("side of House, level with the last corner");
  });

  it("is not said of the corner itself", () => {
    expect(snap([12, 12], NOTHING, { tolerance: 8, grid: 12, lines }).reason).toBe("grid");
  });
});

describe("snapping, whatever is near", () => {
  it("never moves a place farther than the tolerance without the grid, nor than half a step's diagonal with it", () => {
    const place = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
    fc.assert(
      fc.property(place, place, place, fc.constantFrom(null, 12), (at, corner, end, grid) => {
        const edges =
          corner[0] === end[0] && corner[1] === end[1] ? [] : [{ edge: lineEdge(corner, end), words: "side" }];
        const found = snap(at, { points: [{ at: corner, words: "corner" }], edges }, { tolerance: 8, grid });
        const far = grid === null ? 8 : Math.max(8 + grid / 2, (grid * Math.SQRT2) / 2);
        expect(distanceBetween(at, found.point)).toBeLessThanOrEqual(far + 1e-9);
        if (found.reason === "side" && edges[0]) {
          expect(nearestOnEdge(edges[0].edge, found.point).distance).toBeLessThan(1e-9);
        }
      }),
      runs(100),
    );
  });
});

describe("what a pointer can snap to on a site", () => {
  const elements = [
    {
      id: "fence-1",
      kind: "fence",
      name: "South fence",
      path: {
        vertices: [
          [0, 0],
          [100, 0],
          [100, 80],
        ],
        closed: false,
      },
    },
    { id: "pump-1", kind: "equipment", unit: "pump", at: [0, 4] },
    {
      id: "line-1",
      kind: "overhead-line",
      class: "to-50kv",
      path: {
        vertices: [
          [0, 300, 400],
          [100, 300, 400],
        ],
        closed: false,
      },
    },
  ] as unknown as KnownElement[];
  const words = (at: Point, without?: ReadonlySet<string>) => {
    const found = candidatesNear(elements, at, 5, without);
    return [...found.points, ...found.edges].map((one) => one.words).sort();
  };

  it("ends, corners, middles, sides and points, each with its name", () => {
    expect(words([0, 0])).toEqual(["Pump 1", "end of South fence", "side of South fence"]);
    expect(words([100, 0])).toEqual(["corner of South fence", "side of South fence", "side of South fence"]);
    expect(words([50, 0])).toEqual(["middle of a side of South fence", "side of South fence"]);
    expect(words([500, 500])).toEqual([]);
  });

  it("nothing of what is moved itself", () => {
    expect(words([0, 0], new Set(["fence-1"]))).toEqual(["Pump 1"]);
  });

  it("an overhead line runs straight: its third numbers are heights, not bends", () => {
    const [edge] = candidatesNear(elements, [50, 300], 5).edges;
    expect(edge?.edge.kind).toBe("line");
  });
});

describe("the grid", () => {
  it("has steps that a hand can tell apart, finer as the sheet is shown larger", () => {
    expect(gridStep(1)).toBe(12);
    expect(gridStep(1.5)).toBe(6);
    expect(gridStep(10)).toBe(1);
    expect(gridStep(0.1)).toBe(120);
    expect(gridStep(1, "m") * 0.0254).toBeCloseTo(0.5, 12);
  });

  it("has lines 1, 5 or 10 ft apart by scale", () => {
    expect([2, 0.5, 0.15].map((scale) => gridLines(scale).spacing)).toEqual([12, 60, 120]);
  });

  it("rounds to the nearest step and never to minus zero", () => {
    expect(toStep(-5, 12)).toBe(0);
    expect(Object.is(toStep(-5, 12), -0)).toBe(false);
  });
});
