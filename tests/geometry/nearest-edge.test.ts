/** Source of every value: arithmetic, each edge measured in turn. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distanceToEdge } from "../../geometry/edge.ts";
import { edgeToEdge } from "../../geometry/edge-distance.ts";
import { edgeTree } from "../../geometry/edge-tree.ts";
import { nearestEdge, nearestEdgeToLine } from "../../geometry/nearest-edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import type { Edge, LineEdge } from "../../geometry/types.ts";
import { arcOutline, position } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";

const ANY = Number.POSITIVE_INFINITY;
const least = (edges: readonly Edge[], measure: (edge: Edge) => number) => Math.min(...edges.map(measure));

describe("the edge of a path nearest to something", () => {
  it("is the one that measuring every edge finds", () => {
    fc.assert(
      fc.property(arcOutline, position(400), position(400), (data, from, to) => {
        const path = pathFrom(data);
        const tree = edgeTree(path);
        const near = path.edges[nearestEdge(tree, from, ANY)] as Edge;
        const toEach = least(path.edges, (edge) => distanceToEdge(edge, from));
        expect(distanceToEdge(near, from)).toBeCloseTo(toEach, 9);
        const line: LineEdge = { kind: "line", from, to };
        const facing = path.edges[nearestEdgeToLine(tree, line, ANY)] as Edge;
        const between = least(path.edges, (edge) => edgeToEdge(edge, line).length);
        expect(edgeToEdge(facing, line).length).toBeCloseTo(between, 9);
      }),
      runs(1000),
    );
  });

  it("is none where nothing is nearer than asked", () => {
    const tree = edgeTree(
      pathFrom({
        vertices: [
          [0, 0],
          [10, 0],
        ],
        closed: false,
      }),
    );
    expect(nearestEdge(tree, [5, 3], 3)).toBe(-1);
    expect(nearestEdge(tree, [5, 3], 3.01)).toBe(0);
    const line: LineEdge = { kind: "line", from: [4, 3], to: [6, 5] };
    expect(nearestEdgeToLine(tree, line, 3)).toBe(-1);
    expect(nearestEdgeToLine(tree, line, 3.01)).toBe(0);
    expect(nearestEdge(tree, [Number.NaN, 0], ANY)).toBe(-1);
    for (const within of [0, -3]) {
      expect(nearestEdge(tree, [5, 0], within)).toBe(-1);
      expect(nearestEdgeToLine(tree, { kind: "line", from: [4, 1], to: [6, 2] }, within)).toBe(-1);
    }
  });

  it("is the first of two that meet at the nearest corner", () => {
    const tree = edgeTree(
      pathFrom({
        vertices: [
          [0, 0],
          [10, 0],
          [10, 10],
        ],
        closed: false,
      }),
    );
    expect(nearestEdge(tree, [12, -2], ANY)).toBe(0);
  });
});
