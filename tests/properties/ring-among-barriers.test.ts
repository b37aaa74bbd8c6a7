/**
 * Even rings among walls, houses and courtyards that may touch, cross or cover the pool's edge: the same however the yard is
 * turned and started, never through a barrier, never farther out than asked, and whatever is too near to the water is said.
 */
import { describe, expect, it } from "vitest";
import { pointToArea } from "../../geometry/distance.ts";
import { areaFrom, flattenPath } from "../../geometry/outline.ts";
import { type EvenRing, evenRing } from "../../geometry/ring.ts";
import type { Barrier, Point } from "../../geometry/types.ts";
import { latticeYard, randomYard, type Yard } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";
import { placed, startedAt, turnedBy } from "../oracles/variants.ts";

const yards = Number(process.env.COPPERBAND_YARDS ?? 40);

/** Source of the limits: NEC 680.26(B)(2)(b), published restatements. */
const [min, offset] = [18, 21];

/** How deep a position lies inside a ring; 0 outside. */
function depthIn(p: Point, ring: readonly Point[]): number {
  let inside = false;
  let depth = Number.POSITIVE_INFINITY;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1])) inside = !inside;
    const squared = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
    const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / squared));
    depth = Math.min(depth, Math.hypot(a[0] + (b[0] - a[0]) * t - p[0], a[1] + (b[1] - a[1]) * t - p[1]));
  });
  return inside ? depth : 0;
}

const total = (ring: EvenRing): number => ring.loops.reduce((sum, { length }) => sum + length, 0);
const close = (ring: EvenRing): number => ring.tooClose.reduce((sum, { length }) => sum + length, 0);

function ringOf({ outline, islands, barriers }: Yard, place: (p: Point) => Point, start: number): EvenRing {
  const body = areaFrom(
    startedAt(placed(outline, place), start % outline.vertices.length),
    islands.map((island) => placed(island, place)),
  );
  const moved = barriers.map((barrier): Barrier => ({ ...barrier, points: barrier.points.map(place) }));
  return evenRing({ bodies: [body], offset, barriers: moved, min });
}

describe(`even rings among barriers from seed ${seed}`, () => {
  it("are the same turned, moved and from another vertex; on the pool side; nearer only where that is said", () => {
    const wrong: string[] = [];
    for (let i = 0; i < yards; i++) {
      const yard = (seed + i) % 3 === 0 ? latticeYard(seed + i) : randomYard(seed + i);
      const ring = ringOf(yard, (p) => p, 0);
      const turn = turnedBy(17.2 + i);
      const other = ringOf(yard, ([x, y]) => turn([x + 1 / 7, y + 1 / 3]), 1 + i);
      const say = (what: string) => wrong.push(`yard ${seed + i}: ${what}`);
      if (Math.abs(total(ring) - total(other)) > 0.1) say(`${total(ring)} and ${total(other)} in. long`);
      if (Math.abs(close(ring) - close(other)) > 0.3) say(`${close(ring)} and ${close(other)} in. too close`);
      const water = areaFrom(yard.outline, yard.islands);
      const solids = yard.barriers.flatMap(({ shape, points }) => (shape === "solid" ? [points] : []));
      let near = 0;
      for (const { path } of ring.loops) {
        const points = flattenPath(path, 1 / 64);
        points.forEach((a, k) => {
          const b = points[(k + 1) % points.length] as Point;
          const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) * 4));
          for (let s = 0; s < steps; s++) {
            const t = (s + 0.5) / steps;
            const p: Point = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
            const away = pointToArea(p, water).length;
            // Over the water a barrier takes nothing of the ring: it runs along the water's edge there.
            if (away > 1 / 32 && solids.some((solid) => depthIn(p, solid) > 1 / 32)) say(`inside a barrier at ${p}`);
            if (away > offset + 0.02) say(`${away} in. away at ${p}`);
            if (away < min - 1e-3) near += Math.hypot(b[0] - a[0], b[1] - a[1]) / steps;
          }
        });
      }
      if (Math.abs(near - close(ring)) > 1 + 0.02 * near) say(`${near} in. nearer than ${min}, ${close(ring)} said`);
    }
    expect(wrong).toEqual([]);
  }, 120_000);

  // Yards in which ground was lost to the clipping engine, a corner of the ring to the putting together of its stretches,
  // or a slit between grounds stayed open, each in one of the four drawings: by up to 300 in.
  // Some have needles of ground between a wall and the water as well, whose tips were lost together with hairlines (0.13 in.).
  it.each([
    [2014, 0.01],
    [2183, 0.01],
    [2359, 0.01],
    [2680, 0.01],
    [2845, 0.01],
    [3175, 0.01],
    [3320, 0.01],
    [4115, 0.01],
    [5147, 0.01],
    [10097, 0.01],
    [10615, 0.01],
    [90325, 0.02],
  ])("yard %i is the same in four drawings, within %f in.", (n, within) => {
    const yard = n % 3 === 0 ? latticeYard(n) : randomYard(n);
    const turn = turnedBy(17.2 + n);
    const rings = [
      ringOf(yard, (p) => p, 0),
      ringOf(yard, ([x, y]) => turn([x + 1 / 7, y + 1 / 3]), 1 + n),
      ringOf(yard, turnedBy(90), 2),
      ringOf(yard, turnedBy(211.7), 3),
    ];
    const lengths = rings.map(total);
    const near = rings.map(close);
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThan(within);
    expect(Math.max(...near) - Math.min(...near)).toBeLessThan(within);
  });

  it("is one round two bodies whose rings touch along a line, however turned", () => {
    for (const angle of [0, 17.2, 45, 90, 120.3]) {
      const place = turnedBy(angle);
      const box = (x: number, y: number, wide: number, high: number): Point[] =>
        [[x, y] as Point, [x + wide, y] as Point, [x + wide, y + high] as Point, [x, y + high] as Point].map(place);
      const bodies = [box(0, 0, 384, 192), box(420, 40, 70, 70)].map((vertices) =>
        areaFrom({ vertices, closed: true }),
      );
      const wall: Barrier = { id: "w", shape: "solid", points: box(100, -60, 6, 120) };
      const ring = evenRing({ bodies, offset: 18, barriers: [wall], min: 18 });
      // Arithmetic: each by itself has its sides and a circle; where they touch, 70 in. of both fall away; the wall adds
      // both ways to the water less its width, the ring its way along the water there.
      const free = 2 * (384 + 192) + 4 * 70 + 4 * 18 * Math.PI - 2 * 70;
      expect(ring.loops).toHaveLength(1);
      expect(total(ring)).toBeCloseTo(free + 2 * 18, 1);
    }
  });

  it("is one round two bodies where a wall stands along the line in which their rings touch", () => {
    const lengths: number[] = [];
    for (const angle of [0, 17.2, 90, (2.1 * 180) / Math.PI]) {
      for (const mirror of [1, -1]) {
        const turn = turnedBy(angle);
        const place = ([x, y]: Point): Point => {
          const [tx, ty] = turn([x * mirror, y]);
          return [tx + 1000.123, ty + 55.01];
        };
        const box = (x: number, y: number, wide: number, high: number): Point[] =>
          [[x, y] as Point, [x + wide, y] as Point, [x + wide, y + high] as Point, [x, y + high] as Point].map(place);
        const bodies = [box(0, 0, 384, 192), box(420, 40, 70, 70)].map((vertices) =>
          areaFrom({ vertices, closed: true }),
        );
        const [ax, ay, bx, by] = [411.1, 60.37, 408.37, 216.37];
        const half = 0.5 / Math.hypot(bx - ax, by - ay);
        const [nx, ny] = [(ay - by) * half, (bx - ax) * half];
        const points: Point[] = (
          [
            [ax + nx, ay + ny],
            [bx + nx, by + ny],
            [bx - nx, by - ny],
            [ax - nx, ay - ny],
          ] as Point[]
        ).map(place);
        const ring = evenRing({ bodies, offset: 18, barriers: [{ id: "w", shape: "solid", points }], min: 18 });
        expect(ring.loops, `turned ${angle}, mirrored ${mirror}`).toHaveLength(1);
        lengths.push(total(ring));
      }
    }
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThan(0.1);
  });
});
