import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestOnEdge } from "../../geometry/edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import { findSelfCrossing } from "../../geometry/self-crossing.ts";
import type { Edge, PathData, Vertex } from "../../geometry/types.ts";
import { chordsOf, tangentsOf } from "../oracles/bulge-chords.ts";
import { isSimpleRing } from "../oracles/jsts.ts";
import { arcOutline, stairOutline } from "../oracles/random-outlines.ts";
import { runs } from "../oracles/seed.ts";
import { variantsOf } from "../oracles/variants.ts";
import { samples } from "./sample-outlines.ts";

const closed = (...vertices: Vertex[]): PathData => ({ vertices, closed: true });
const open = (...vertices: Vertex[]): PathData => ({ vertices, closed: false });

function expectCrossing(data: PathData, name: string): void {
  const found = findSelfCrossing(data);
  if (!found) throw new Error(`${name}: no crossing found`);
  const { edges } = pathFrom(data);
  expect(found.edgeA, name).toBeLessThan(found.edgeB);
  for (const index of [found.edgeA, found.edgeB]) {
    expect(nearestOnEdge(edges[index] as Edge, found.at).distance, name).toBeLessThan(1e-8);
  }
}

describe("outlines that do not cross themselves", () => {
  it.each([
    ...samples,
    ["two half circles", closed([-10, 0, 1], [10, 0, 1])] as const,
    ["a lens", closed([-10, 0, 0.5], [10, 0, 0.5])] as const,
    ["a crescent", closed([-10, 0, 1], [10, 0, -0.5])] as const,
    ["almost a full circle", closed([0, 0, 50], [1, 0])] as const,
    ["an arc split in tangent parts", closed([-10, 0, 0.2], [10, 0, 0.2], [20, 40], [-20, 40])] as const,
    ["a thin sliver", closed([0, 0], [100, 0.001], [200, 0], [100, 0.002])] as const,
    ["straight-run vertices", closed([0, 0], [50, 0], [100, 0], [100, 50], [0, 50])] as const,
  ])("%s, in every variant", (_, data) => {
    for (const variant of variantsOf(data)) expect(findSelfCrossing(variant.data), variant.name).toBeNull();
  });

  it("joins circles' parts and tangent lines of every size and turn", () => {
    // a circle in 2 to 12 arcs, and a rounded rectangle: every joint is tangent
    for (const radius of [0.5, 7, 120, 4000]) {
      for (let parts = 2; parts <= 12; parts++) {
        const vertices = Array.from({ length: parts }, (_, i): Vertex => {
          const angle = (2 * Math.PI * i) / parts;
          return [radius * Math.cos(angle), radius * Math.sin(angle), Math.tan(Math.PI / (2 * parts))];
        });
        for (const { data, name } of variantsOf(closed(...vertices))) {
          expect(findSelfCrossing(data), `${radius} ${parts} ${name}`).toBeNull();
        }
      }
      const [w, h, bulge] = [3 * radius, 2 * radius, Math.tan(Math.PI / 8)];
      const rounded = closed(
        [radius, 0],
        [w, 0, bulge],
        [w + radius, radius],
        [w + radius, h, bulge],
        [w, h + radius],
        [radius, h + radius, bulge],
        [0, h],
        [0, radius, bulge],
      );
      for (const { data, name } of variantsOf(rounded)) expect(findSelfCrossing(data), name).toBeNull();
    }
  });

  it("open paths, also one that ends where it starts", () => {
    expect(findSelfCrossing(open([0, 0], [10, 0], [10, 10]))).toBeNull();
    expect(findSelfCrossing(open([0, 0], [10, 0], [10, 10], [0, 0]))).toBeNull();
    expect(findSelfCrossing(open([0, 0], [10, 0]))).toBeNull();
  });
});

describe("outlines that do", () => {
  it.each([
    ["a bow tie", closed([0, 0], [10, 10], [10, 0], [0, 10])],
    ["a spike", closed([0, 0], [10, 0], [20, 0], [10, 0], [10, 10], [0, 10])],
    ["a spike that goes on beyond", closed([0, 0], [20, 0], [-5, 0], [10, 10])],
    ["a vertex on an edge", closed([0, 0], [10, 0], [10, 10], [5, 0], [0, 10])],
    ["a vertex twice", closed([0, 0], [10, 0], [5, 5], [10, 10], [0, 10], [5, 5])],
    ["an overlap of edges that are no neighbors", closed([0, 0], [20, 0], [20, 5], [15, 0], [5, 0], [0, 5])],
    ["two vertices", closed([0, 0], [10, 0])],
    ["the same arc there and back", closed([-10, 0, 0.5], [10, 0, -0.5])],
    ["an arc through a far edge", closed([0, 0, 1], [40, 0], [40, -10], [0, -10])],
    ["an arc that touches a far edge", closed([-10, 0, 1], [10, 0], [30, 0], [30, -10], [-30, -10], [-30, 0])],
    ["a line and an arc that meet again", closed([0, 0], [30, 0, -2], [20, 0.5], [0, 20])],
    ["neighbor arcs that cross elsewhere", closed([0, 0, -2], [10, 0, -2], [12, 4], [5, 30])],
    ["neighbor arcs that lie on each other", closed([-10, 0, 1], [10, 0, -0.5], [0, -10 + 1e-12], [0, 40])],
  ])("%s, in every variant", (_, data) => {
    for (const variant of variantsOf(data)) expectCrossing(variant.data, variant.name);
  });

  it("open paths that cross, touch or turn straight back", () => {
    expectCrossing(open([0, 0], [10, 0], [10, 10], [5, -5]), "cross");
    expectCrossing(open([0, 0], [10, 0], [10, 10], [5, 0]), "touch");
    expectCrossing(open([0, 0], [10, 0], [3, 0]), "back");
  });

  it("names the first place", () => {
    expect(findSelfCrossing(closed([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual({ edgeA: 0, edgeB: 2, at: [5, 5] });
  });
});

describe("random outlines", () => {
  const shuffled = fc.tuple(arcOutline, fc.nat(), fc.nat()).map(([data, i, j]): PathData => {
    const vertices = [...data.vertices];
    const [a, b] = [i % vertices.length, j % vertices.length];
    [vertices[a], vertices[b]] = [vertices[b] as Vertex, vertices[a] as Vertex];
    return { vertices, closed: true };
  });

  it("agree with jsts, crossing or not", () => {
    let simple = 0;
    let crossing = 0;
    fc.assert(
      fc.property(fc.oneof(arcOutline, shuffled, stairOutline), (data) => {
        const fine = isSimpleRing(chordsOf(data, 1e-4));
        // Nearly touching outlines are judged differently by coarse and fine chords and tangents; the cases above hold those.
        const others = [chordsOf(data, 1e-2), tangentsOf(data, 1e-4), tangentsOf(data, 1e-2)];
        if (others.some((outline) => isSimpleRing(outline) !== fine)) return;
        if (fine) simple++;
        else crossing++;
        expect(findSelfCrossing(data) === null).toBe(fine);
      }),
      runs(200),
    );
    expect(Math.min(simple, crossing)).toBeGreaterThan(20);
  });
});
