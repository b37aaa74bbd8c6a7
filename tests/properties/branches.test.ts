import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BranchTree, branchTree } from "../../geometry/branches.ts";
import type { Point } from "../../geometry/types.ts";
import { expectSound, named, solid } from "../oracles/branch-checks.ts";
import { numbersFrom } from "../oracles/random-yards.ts";
import { runs, seed } from "../oracles/seed.ts";
import { type Box, convexGround, searchedTree, searchedTreeOn } from "../oracles/steiner-search.ts";
import { turnedBy } from "../oracles/variants.ts";

const line: readonly Point[] = [
  [0, 0],
  [300, 0],
];

const yard = fc
  .record({
    boxes: fc.array(
      fc.record({
        x: fc.double({ min: -20, max: 280, noNaN: true }),
        y: fc.double({ min: 30, max: 240, noNaN: true }),
        w: fc.double({ min: 20, max: 130, noNaN: true }),
        h: fc.double({ min: 15, max: 80, noNaN: true }),
      }),
      { maxLength: 3 },
    ),
    places: fc.array(
      fc.tuple(fc.double({ min: -30, max: 330, noNaN: true }), fc.double({ min: 15, max: 340, noNaN: true })),
      { minLength: 1, maxLength: 8 },
    ),
    allowance: fc.constantFrom(0, 12),
  })
  .map(({ boxes, places, allowance }) => {
    const solids = boxes.map(({ x, y, w, h }): Box => ({ x0: x, y0: y, x1: x + w, y1: y + h }));
    const near = ([x, y]: Point): boolean =>
      solids.some(({ x0, y0, x1, y1 }) => x > x0 - 1 && x < x1 + 1 && y > y0 - 1 && y < y1 + 1);
    return { solids, parts: places.filter((p) => !near(p)), allowance };
  });

/** From 13 to 18 positions on a lattice of 20 in. */
function latticeParts(from: number): Point[] {
  const next = numbersFrom(from);
  const count = 13 + Math.floor(next() * 6);
  const found = new Map<string, Point>();
  while (found.size < count) {
    const p: Point = [Math.floor(next() * 16) * 20, 20 + Math.floor(next() * 16) * 20];
    found.set(p.join(), p);
  }
  return [...found.values()];
}

/** How many yards of seven and eight parts are tried; the long run: 150. */
const FULL_YARDS = Number(process.env.COPPERBAND_YARDS ?? 12);

interface PoolYard {
  readonly ring: readonly Point[];
  readonly solids: readonly (readonly Point[])[];
  readonly parts: readonly Point[];
  readonly allowance: number;
}

/** A pool in its ring of 21 in., up to four walls or houses that stand apart, and seven or eight parts; null: they overlap. */
function poolYard(from: number): PoolYard | null {
  const next = numbersFrom(from);
  const between = (low: number, high: number) => low + (high - low) * next();
  const block = (x: number, y: number, wide: number, high: number, degrees: number): Point[] => {
    const turn = turnedBy(degrees);
    const corners: Point[] = [
      [-wide, -high],
      [wide, -high],
      [wide, high],
      [-wide, high],
    ];
    return corners.map(turn).map(([dx, dy]): Point => [x + dx / 2, y + dy / 2]);
  };
  const [wide, high] = [between(200, 350), between(90, 170)];
  const ring = block(0, 0, wide + 42, high + 42, 0);
  const solids = [block(0, 0, wide, high, 0)];
  const count = 1 + Math.floor(next() * 4);
  for (let k = 0; k < count; k++) {
    const [x, y] = [between(-350, 350), between(-300, 300)];
    const isWall = next() < 0.5;
    solids.push(block(x, y, between(70, 220), isWall ? between(4, 12) : between(50, 150), between(0, 180)));
  }
  const ground = solids.map((solid) => convexGround([solid]));
  const sides = (loop: readonly Point[]) => loop.map((p, k) => [p, loop[(k + 1) % loop.length] as Point] as const);
  const apart = solids.every((solid, a) =>
    sides(solid).every(([p, q]) => ground.every(({ isClear }, b) => a === b || isClear(p, q))),
  );
  const open = ground.slice(1).every(({ isClear }) => sides(ring).every(([p, q]) => isClear(p, q)));
  if (!apart || !open) return null;
  const parts: Point[] = [];
  const wanted = 7 + Math.floor(next() * 2);
  for (let tries = 0; parts.length < wanted && tries < 200; tries++) {
    const [x, y] = [between(-450, 450), between(-380, 380)];
    const isOverRing = Math.abs(x) < wide / 2 + 25 && Math.abs(y) < high / 2 + 25;
    // A small cross round it is free of all solids.
    const isFree = ground.every(({ isClear }) => isClear([x - 2, y], [x + 2, y]) && isClear([x, y - 2], [x, y + 2]));
    if (!isOverRing && isFree) parts.push([x, y]);
  }
  if (parts.length < wanted) return null;
  return {
    ring: [...ring, ring[0] as Point],
    solids,
    parts,
    allowance: [0, 6, 12, 24][Math.floor(next() * 4)] as number,
  };
}

describe(`branches of random yards, lattices from seed ${seed}`, () => {
  const plan = (parts: readonly Point[], solids: readonly Box[], junctionAllowance: number): BranchTree =>
    branchTree({ network: [line], targets: named(parts), blocked: solids.map(solid), junctionAllowance });

  it("are sound, never longer than the spanning tree, and the same each time", () => {
    fc.assert(
      fc.property(yard, ({ solids, parts, allowance }) => {
        const tree = plan(parts, solids, allowance);
        expectSound(tree, parts, line, solids);
        const spanning = plan(parts, solids, 1e9);
        expect(tree.length).toBeLessThanOrEqual(spanning.length + 1e-6);
        expect(plan(parts, solids, allowance)).toEqual(tree);
      }),
      { ...runs(150), interruptAfterTimeLimit: 20_000 },
    );
  });

  it("cost the same however they are turned, mirrored and started", () => {
    const drawn = (
      { solids, parts, allowance }: { solids: readonly Box[]; parts: readonly Point[]; allowance: number },
      place: (p: Point) => Point,
      start: number,
    ): number => {
      const blocked = solids.map(solid).map((one) => {
        const points = one.points.map(place);
        return { ...one, points: [...points.slice(start), ...points.slice(0, start)] };
      });
      const tree = branchTree({
        network: [line.map(place)],
        targets: named(parts.map(place)),
        blocked,
        junctionAllowance: allowance,
      });
      return tree.length + allowance * tree.joints;
    };
    const turn = turnedBy(17.2);
    fc.assert(
      fc.property(yard, (one) => {
        const cost = drawn(one, (p) => p, 0);
        expect(drawn(one, turn, 1)).toBeCloseTo(cost, 5);
        expect(drawn(one, ([x, y]) => turn([y + 1 / 3, x + 1 / 7]), 2)).toBeCloseTo(cost, 5);
        expect(drawn(one, turnedBy(90), 3)).toBeCloseTo(cost, 5);
      }),
      { ...runs(60), interruptAfterTimeLimit: 20_000 },
    );
  });

  it("of positions on a lattice, many of them as good as each other, cost the same however they are turned", () => {
    // Without one order for equal lengths a third of such yards differed, by up to 3 %.
    for (let i = 0; i < 30; i++) {
      const parts = latticeParts(seed + i);
      const cost = (place: (p: Point) => Point): number =>
        branchTree({
          network: [line.map(place)],
          targets: named(parts.map(place)),
          blocked: [],
          junctionAllowance: 0,
        }).length;
      const length = cost((p) => p);
      for (const degrees of [17.2, 90, 211.7, 300.1])
        expect(cost(turnedBy(degrees)), `lattice ${seed + i}`).toBeCloseTo(length, 5);
    }
  });

  it("of up to eight parts cost at most 1 % more than Dreyfus and Wagner's tree on a lattice of 40 in.", () => {
    fc.assert(
      fc.property(yard, ({ solids, parts, allowance }) => {
        const tree = plan(parts, solids, allowance);
        const cost = tree.length + allowance * tree.joints;
        // The project lets no copper through a gap of less than 1/64 in.; the search knows gaps of any width.
        const sealed = solids.map(({ x0, y0, x1, y1 }) => ({
          x0: x0 - 0.01,
          y0: y0 - 0.01,
          x1: x1 + 0.01,
          y1: y1 + 0.01,
        }));
        expect(cost).toBeLessThanOrEqual(searchedTree(line, parts, sealed, allowance, 40) * 1.01 + 1e-6);
      }),
      { ...runs(40), interruptAfterTimeLimit: 30_000 },
    );
  });

  it("of seven and eight parts round a pool, among walls and houses that stand askew, cost at most 1 % more as well", () => {
    let tried = 0;
    for (let i = 0; tried < FULL_YARDS; i++) {
      const found = poolYard(seed + i);
      if (!found) continue;
      tried++;
      const { ring, solids, parts, allowance } = found;
      const tree = branchTree({
        network: [ring],
        targets: named(parts),
        blocked: solids.map((points, k) => ({ id: `solid ${k}`, shape: "solid" as const, points })),
        junctionAllowance: allowance,
      });
      expect(tree.unreachable).toEqual([]);
      const least = searchedTreeOn(convexGround(solids), ring, parts, allowance, 40);
      expect(tree.length + allowance * tree.joints, `yard ${seed + i}`).toBeLessThanOrEqual(least * 1.01 + 1e-6);
    }
  }, 120_000);

  it("of sixty parts are sound", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -300, max: 600 }), fc.integer({ min: 1, max: 600 })), {
          minLength: 60,
          maxLength: 60,
        }),
        (places) => {
          const parts = places.filter(([x, y]) => !(x > 99 && x < 301 && y > 59 && y < 201));
          const distinct = parts.filter((p, i) => parts.findIndex((q) => q[0] === p[0] && q[1] === p[1]) === i);
          const box: Box = { x0: 100, y0: 60, x1: 300, y1: 200 };
          const tree = plan(distinct, [box], 12);
          expectSound(tree, distinct, line, [box]);
          expect(tree.length).toBeLessThanOrEqual(plan(distinct, [box], 1e9).length + 1e-6);
        },
      ),
      { ...runs(10), interruptAfterTimeLimit: 20_000 },
    );
  });
});
