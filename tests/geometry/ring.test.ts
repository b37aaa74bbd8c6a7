import { describe, expect, it } from "vitest";
import { pointAt } from "../../geometry/edge.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom, flattenPath, pathLength } from "../../geometry/outline.ts";
import { pointToPath } from "../../geometry/point-distance.ts";
import { type EvenRing, type EvenRingRequest, evenRing as ringWithin } from "../../geometry/ring.ts";
import type { Barrier, PathData, Point } from "../../geometry/types.ts";
import { rectangle, romanEnd } from "../oracles/outline-shapes.ts";
import { turnedBy, variantsOf } from "../oracles/variants.ts";

const pool = areaFrom(rectangle);

/** Nearest a ring may lie, 18 in. Source: NEC 680.26(B)(2)(b), published restatements. */
const evenRing = (request: Omit<EvenRingRequest, "min">): EvenRing => ringWithin({ ...request, min: 18 });

const block = (x0: number, y0: number, x1: number, y1: number, place = (p: Point): Point => p): Barrier => ({
  id: `block ${x0} ${y0}`,
  shape: "solid",
  points: [place([x0, y0]), place([x1, y0]), place([x1, y1]), place([x0, y1])],
});

const total = (ring: EvenRing): number => ring.loops.reduce((sum, loop) => sum + loop.length, 0);
const close = (ring: EvenRing): number => ring.tooClose.reduce((sum, stretch) => sum + stretch.length, 0);

function expectWhole(ring: EvenRing): void {
  for (const { path, length } of ring.loops) {
    expect(pathLength(path)).toBeCloseTo(length, 9);
    path.edges.forEach((edge, i) => {
      expect(path.edges[(i + 1) % path.edges.length]?.from).toEqual(edge.to);
    });
  }
}

describe("even ring without barriers", () => {
  it("has the published lengths", () => {
    // Steiner's formula for the rectangle; the Roman end from GEOS on chords, within 0.05 %.
    for (const [data, offset, length] of [
      [rectangle, 18, 1152 + 36 * Math.PI],
      [rectangle, 21, 1152 + 42 * Math.PI],
      [rectangle, 24, 1152 + 48 * Math.PI],
      [romanEnd, 18, 1274.02505],
      [romanEnd, 21, 1291.47219],
      [romanEnd, 24, 1309.01577],
    ] as const) {
      const ring = evenRing({ bodies: [areaFrom(data)], offset, barriers: [] });
      expect(Math.abs(total(ring) / length - 1)).toBeLessThan(0.0005);
      expect(ring.tooClose).toEqual([]);
      expectWhole(ring);
    }
  });

  it("names the bodies each loop goes round", () => {
    const square = (x: number): PathData => ({
      vertices: [
        [x, 0],
        [x + 100, 0],
        [x + 100, 100],
        [x, 100],
      ],
      closed: true,
    });
    const loopsAt = (x: number) =>
      evenRing({ bodies: [areaFrom(square(0)), areaFrom(square(x))], offset: 21, barriers: [] }).loops.map(
        (loop) => loop.bodies,
      );
    expect(loopsAt(130)).toEqual([[0, 1]]);
    expect(loopsAt(150)).toEqual([[0], [1]]);
    // A spa on an island has its own loop, and the island's ground another.
    const island = areaFrom(
      {
        vertices: [
          [0, 0],
          [500, 0],
          [500, 500],
          [0, 500],
        ],
        closed: true,
      },
      [
        {
          vertices: [
            [100, 100],
            [400, 100],
            [400, 400],
            [100, 400],
          ],
          closed: true,
        },
      ],
    );
    const spa = areaFrom({
      vertices: [
        [220, 220],
        [280, 220],
        [280, 280],
        [220, 280],
      ],
      closed: true,
    });
    const loops = evenRing({ bodies: [island, spa], offset: 21, barriers: [] }).loops;
    expect(loops.length).toBe(3);
    expect(loops.filter((loop) => loop.bodies.includes(1)).length).toBeGreaterThan(0);
  });
});

describe("even ring and barriers", () => {
  it("is the exact offset to the last digit when barriers are farther away", () => {
    const alone = evenRing({ bodies: [pool], offset: 21, barriers: [] });
    const ring = evenRing({
      bodies: [pool],
      offset: 21,
      barriers: [block(100, 213, 280, 219), block(-60, -60, -40, 300)],
    });
    expect(ring).toEqual(alone);
  });

  it("stays on the pool side of a wall 14 in. away, and measures what is too close", () => {
    // Arithmetic: in and out square to the side cost 2 x 7 in.; nearer than 18 in. are 180 in. of wall and 2 x 4 in. of legs.
    for (const degrees of [0, 33, 90, 200]) {
      const place = turnedBy(degrees);
      const body = areaFrom({ closed: true, vertices: rectangle.vertices.map(([x, y]) => place([x, y])) });
      const ring = evenRing({ bodies: [body], offset: 21, barriers: [block(100, 206, 280, 212, place)] });
      expect(total(ring)).toBeCloseTo(1152 + 42 * Math.PI + 14, 2);
      expect(close(ring)).toBeCloseTo(188, 2);
      expectWhole(ring);
      const farthest = Math.max(
        ...ring.loops.flatMap(({ path }) =>
          path.edges.map((edge) => pointToPath(pointAt(edge, 0.5), body.outer).length),
        ),
      );
      expect(farthest).toBeLessThan(21 + 1e-6);
    }
  });

  it("stays in front of a barrier that is longer than the pool's side", () => {
    // Arithmetic: the wall's face cuts both corner arcs where they are 14 in. out, beside each corner by the root of
    // 21 x 21 - 14 x 14; between them the ring runs straight along the face, nearer than 18 in. up to the root of
    // 18 x 18 - 14 x 14 beside each corner.
    const beside = Math.sqrt(21 ** 2 - 14 ** 2);
    const cut = Math.acos(14 / 21);
    for (const overhang of [16, 40, 300]) {
      const wall = block(-overhang, 206, 384 + overhang, 212);
      for (const asKeepOut of [false, true]) {
        const ring = evenRing({
          bodies: [pool],
          offset: 21,
          barriers: asKeepOut ? [] : [wall],
          keepOuts: asKeepOut ? [wall] : [],
        });
        expect(total(ring)).toBeCloseTo(1152 + 42 * Math.PI - 384 - 2 * 21 * cut + 384 + 2 * beside, 1);
        expect(close(ring)).toBeCloseTo(384 + 2 * Math.sqrt(18 ** 2 - 14 ** 2), 1);
        expectWhole(ring);
        for (const { path } of ring.loops)
          for (const p of flattenPath(path)) expect(p[1] <= 206 + 1e-3 || p[1] >= 212 - 1e-3).toBe(true);
      }
    }
  });

  it("measures as too close all of a ring inside walls that stand all round", () => {
    // Arithmetic: a rectangle 14 in. out, its corners nearer than 21 in. but not nearer than 18.
    const frame: Barrier = {
      id: "frame",
      shape: "thin",
      points: [
        [-14, -14],
        [398, -14],
        [398, 206],
        [-14, 206],
        [-14, -14],
      ],
    };
    const ring = evenRing({ bodies: [pool], offset: 21, barriers: [frame] });
    expect(total(ring)).toBeCloseTo(2 * (412 + 220), 2);
    const corner = 14 - Math.sqrt(18 ** 2 - 14 ** 2);
    expect(close(ring)).toBeCloseTo(2 * (412 + 220) - 8 * corner, 1);
  });

  it("goes round a pool with a barrier on any of its corners", () => {
    // A block over each corner in turn, off the clipping grid: arithmetic, the same ring by the rectangle's symmetry.
    for (const degrees of [0, 17, 33, 61]) {
      const turn = turnedBy(degrees);
      const place = ([x, y]: Point): Point => turn([x + 1 / 7, y + 1 / 3]);
      const corners = rectangle.vertices.map(([x, y]): Point => [x, y]);
      const lengths = corners.map(([x, y], first) => {
        const vertices = [...corners.slice(first), ...corners.slice(0, first)].map(place);
        const keepOuts = [block(x - 30, y - 6, x + 30, y + 6, place)];
        const ring = evenRing({ bodies: [areaFrom({ closed: true, vertices })], offset: 21, barriers: [], keepOuts });
        expect(ring.loops.map(({ bodies }) => bodies)).toEqual([[0]]);
        expectWhole(ring);
        return total(ring);
      });
      for (const length of lengths) expect(length).toBeCloseTo(lengths[0] ?? 0, 2);
    }
  });

  it("has no hairlines where a wall crosses the pool's edge, however the yard is turned", () => {
    // A wall 6 in. thick, its centerline from (-18, 60) to (100.37, 219.1): the same ring, whichever way it falls on the grid.
    const [dx, dy] = [118.37 / Math.hypot(118.37, 159.1), 159.1 / Math.hypot(118.37, 159.1)];
    const side = (x: number, y: number, way: number): Point => [x - 3 * dy * way, y + 3 * dx * way];
    const wall = [side(-18, 60, -1), side(100.37, 219.1, -1), side(100.37, 219.1, 1), side(-18, 60, 1)];
    const lengths = [0, 10, 17.2, 33, 47, 90, 120, 211, 301].map((degrees) => {
      const turn = turnedBy(degrees);
      const place = ([x, y]: Point): Point => turn([x + 1 / 7, y + 1 / 3]);
      const body = areaFrom({ closed: true, vertices: rectangle.vertices.map(([x, y]) => place([x, y])) });
      const points = wall.map(place);
      return total(evenRing({ bodies: [body], offset: 24, barriers: [{ id: "wall", shape: "solid", points }] }));
    });
    for (const length of lengths) expect(Math.abs(length - (lengths[0] ?? 0))).toBeLessThan(0.02);
  });

  it("is not too close along a wall exactly at the least distance, however it falls on the clipping grid", () => {
    for (const degrees of [0, 17.2, 33, 90, 120]) {
      const turn = turnedBy(degrees);
      const place = ([x, y]: Point): Point => turn([x + 1 / 7, y + 1 / 3]);
      const body = areaFrom({ closed: true, vertices: rectangle.vertices.map(([x, y]) => place([x, y])) });
      const ring = evenRing({ bodies: [body], offset: 21, barriers: [block(-40, 210, 424, 216, place)] });
      expect(close(ring)).toBe(0);
    }
  });

  it("is not too close behind nothing: a wall between 18 and the offset only bends it", () => {
    const ring = evenRing({ bodies: [pool], offset: 21, barriers: [block(100, 211, 280, 217)] });
    expect(total(ring)).toBeCloseTo(1152 + 42 * Math.PI + 4, 2);
    expect(ring.tooClose).toEqual([]);
  });

  it("keeps exact arcs away from the barrier", () => {
    const ring = evenRing({ bodies: [pool], offset: 21, barriers: [block(100, 206, 280, 212)] });
    const arcs = ring.loops.flatMap(({ path }) => path.edges.filter((edge) => edge.kind === "arc"));
    expect(arcs.length).toBe(4);
    for (const arc of arcs) if (arc.kind === "arc") expect(arc.radius).toBeCloseTo(21, 9);
  });

  it("passes behind a keep-out that it does not cross, and in front of one that it does", () => {
    const exact = offsetCurves([pool], 21).loops[0];
    const ring = (keepOut: Barrier) => evenRing({ bodies: [pool], offset: 21, barriers: [], keepOuts: [keepOut] });
    expect(total(ring(block(100, 196, 108, 204)))).toBe(pathLength(exact?.path ?? pool.outer));
    // Arithmetic: from 21 in. to 4 in. and back.
    const across = ring(block(100, 196, 108, 224));
    expect(total(across)).toBeCloseTo(1152 + 42 * Math.PI + 2 * 17, 2);
    expect(close(across)).toBeCloseTo(8 + 2 * 14, 2);
  });

  it("lies along the water, too close all round, where a keep-out takes all the ground that it would run over", () => {
    const all = block(-60, -60, 444, 252);
    const ring = evenRing({ bodies: [pool], offset: 21, barriers: [], keepOuts: [all] });
    // Arithmetic: the water's own edge.
    expect(total(ring)).toBeCloseTo(1152, 1);
    expect(close(ring)).toBeCloseTo(1152, 1);
  });

  it("stays on ground that a building leaves, whatever the outline's first vertex", () => {
    const house = block(-200, -200, 200, -10);
    const lengths = variantsOf(romanEnd).map(({ data, place }) => {
      const points = house.points.map(place);
      const body = areaFrom(data);
      const ring = evenRing({ bodies: [body], offset: 21, barriers: [{ ...house, points }] });
      expectWhole(ring);
      for (const { path } of ring.loops) {
        for (const p of flattenPath(path)) expect(pointToPath(p, body.outer).length).toBeLessThan(21 + 1e-6);
      }
      return { length: total(ring), close: close(ring) };
    });
    for (const { length, close: near } of lengths) {
      expect(Math.abs(length - (lengths[0]?.length ?? 0))).toBeLessThan(0.05);
      expect(Math.abs(near - (lengths[0]?.close ?? 0))).toBeLessThan(0.05);
    }
    expect(lengths[0]?.close).toBeGreaterThan(200);
  });
});
