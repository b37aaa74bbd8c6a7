/** Points from two stakes. Source: plane geometry (law of cosines); the tolerances are common practice, no source. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjust, type Taped } from "../../../app/taping/adjust.ts";
import { pointsFromStakes, type StakeRow } from "../../../app/taping/two-stakes.ts";
import type { Point } from "../../../geometry/types.ts";
import { runs } from "../../oracles/seed.ts";

const options = { apart: 240, closed: true, tape: 0.5 };
const row = (x: number, y: number, apart = 240, check: number | null = null): StakeRow => ({
  a: Math.hypot(x, y),
  b: Math.hypot(x - apart, y),
  side: y >= 0 ? "left" : "right",
  check,
});

describe("two distances fix a point", () => {
  it("a 3-4-5 triangle on each leg", () => {
    // 180 in. square off A with 240 in. between the stakes: 300 in. from B.
    const [point] = pointsFromStakes([{ a: 180, b: 300, side: "left", check: null }], options);
    expect(point?.at[0]).toBeCloseTo(0, 9);
    expect(point?.at[1]).toBeCloseTo(180, 9);
    expect(point?.doubts).toEqual([]);
  });

  it("wherever it lies, on either side", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -600, max: 600, noNaN: true }),
        fc.double({ min: 120, max: 600, noNaN: true }),
        fc.boolean(),
        (x, height, isLeft) => {
          const y = isLeft ? height : -height;
          const [point] = pointsFromStakes([row(x, y)], options);
          expect(point?.at[0]).toBeCloseTo(x, 6);
          expect(point?.at[1]).toBeCloseTo(y, 6);
        },
      ),
      runs(200),
    );
  });
});

describe("doubts", () => {
  it("tapes that do not meet, and by how much", () => {
    const [short, long] = pointsFromStakes(
      [
        { a: 100, b: 128, side: "left", check: null },
        { a: 400, b: 136, side: "left", check: null },
      ],
      { ...options, closed: false },
    );
    expect(short?.doubts[0]).toEqual({ kind: "short", by: 12 });
    expect(long?.doubts[0]).toEqual({ kind: "long", by: 24 });
    // Both tapes miss the place by half.
    expect(short?.at).toEqual([106, 0]);
    expect(long?.at).toEqual([388, 0]);
  });

  it("tapes that cross at a flat angle", () => {
    const [flat, good] = pointsFromStakes([row(120, 12), row(120, 120)], { ...options, closed: false });
    // Seen from the middle at 12 in., the stakes are 2 atan(10) = 168.6 degrees apart.
    expect(flat?.doubts).toEqual([{ kind: "flat", by: expect.any(Number), angle: expect.closeTo(168.579, 3) }]);
    // Square tapes, half an inch off the worst way, and the stakes as well: law of cosines for the eight ways.
    expect(good?.spread).toBeCloseTo(0.992, 3);
    expect(good?.doubts).toEqual([]);
  });

  it("a point on the stakes' own line may be off by what two bent arcs leave open", () => {
    const [middle] = pointsFromStakes([row(120, 0)], { ...options, closed: false });
    // Both tapes half an inch longer, the stakes half an inch nearer: they meet at sqrt(120.5^2 - 119.75^2) from the line.
    expect(middle?.spread).toBeCloseTo(Math.hypot(Math.sqrt(120.5 ** 2 - 119.75 ** 2), 0.25), 9);
    expect(middle?.doubts).toEqual([{ kind: "flat", by: middle?.spread, angle: 180 }]);
  });
});

describe("checks", () => {
  const corners: [number, number][] = [
    [0, 120],
    [192, 120],
    [192, 504],
    [0, 504],
  ];
  const rows = (slip: (i: number, row: StakeRow) => StakeRow = (_, one) => one): StakeRow[] =>
    corners.map(([x, y], i) => {
      const [px, py] = corners[(i + 3) % 4] as [number, number];
      return slip(i, row(x, y, 240, Math.hypot(x - px, y - py)));
    });

  it("that agree leave every point where it is", () => {
    for (const [i, point] of pointsFromStakes(rows(), options).entries()) {
      expect(point.at[0]).toBeCloseTo(corners[i]?.[0] as number, 6);
      expect(point.at[1]).toBeCloseTo(corners[i]?.[1] as number, 6);
      expect(point.doubts).toEqual([]);
      expect(point.residuals.check).toBeCloseTo(0, 6);
    }
  });

  it.each([
    [0, "a"],
    [1, "b"],
    [2, "a"],
    [3, "b"],
  ] as const)("name row %i where the tape from %s was misread by a foot", (at, tape) => {
    const worst = worstDoubt((i, one) => (i === at ? { ...one, [tape]: one[tape] + 12 } : one));
    expect(worst).toMatchObject({ row: at, doubt: { kind: "off", tape } });
  });

  it.each([1, 3])("name one of the two rows that the check of row %i joins when that was misread", (at) => {
    // One check too many for two points cannot tell its own slip from that of a tape along it.
    const worst = worstDoubt((i, one) => (i === at ? { ...one, check: (one.check ?? 0) + 12 } : one));
    expect(worst.doubt.kind).toBe("off");
    expect([at - 1, at]).toContain(worst.row);
  });

  function worstDoubt(slip: (i: number, row: StakeRow) => StakeRow) {
    const doubted = pointsFromStakes(rows(slip), options).flatMap(({ doubts }, row) =>
      doubts.map((doubt) => ({ row, doubt })),
    );
    return doubted.reduce((most, one) => (one.doubt.by > most.doubt.by ? one : most));
  }

  it("halve what a careless tape does, on the whole", () => {
    // Distances a quarter inch off, alternately: places stay within half an inch.
    const noisy = pointsFromStakes(
      rows((i, one) => ({ ...one, a: one.a + (i % 2 ? 0.25 : -0.25), b: one.b + (i % 2 ? -0.25 : 0.25) })),
      options,
    );
    for (const [i, { at, doubts }] of noisy.entries()) {
      const [x, y] = corners[i] as [number, number];
      expect(Math.hypot(at[0] - x, at[1] - y)).toBeLessThan(0.5);
      expect(doubts).toEqual([]);
    }
  });
});

describe("how far off a point may be", () => {
  type Yard = { apart: number; corners: [number, number][]; ways: number[] };
  const yards = (way: fc.Arbitrary<number>) =>
    fc.record({
      apart: fc.double({ min: 120, max: 420, noNaN: true }),
      corners: fc.array(
        fc.tuple(fc.double({ min: -100, max: 500, noNaN: true }), fc.double({ min: 90, max: 500, noNaN: true })),
        { minLength: 3, maxLength: 5 },
      ),
      ways: fc.array(way, { minLength: 16, maxLength: 16 }),
    });
  const taped = ({ apart, corners, ways }: Yard, isChecked: boolean) => {
    let next = 0;
    const off = () => 0.5 * (ways[next++ % ways.length] as number);
    const rows = corners.map(([x, y], i): StakeRow => {
      const [px, py] = corners[(i + corners.length - 1) % corners.length] as [number, number];
      const check = Math.hypot(x - px, y - py);
      return {
        a: Math.hypot(x, y) + off(),
        b: Math.hypot(x - apart, y) + off(),
        side: "left",
        check: isChecked && check > 12 ? check + off() : null,
      };
    });
    return pointsFromStakes(rows, { apart: apart + off(), closed: true, tape: 0.5 });
  };

  const holds = (yard: Yard, isChecked: boolean, share: number) => {
    for (const [i, { at, spread, doubts }] of taped(yard, isChecked).entries()) {
      const [x, y] = yard.corners[i] as [number, number];
      if (doubts.length === 0) expect(Math.hypot(at[0] - x, at[1] - y)).toBeLessThan(spread * share + 1e-9);
    }
  };

  it("holds for every tape as far off as a tape may be, that between the stakes too", () => {
    fc.assert(
      fc.property(yards(fc.constantFrom(-1, 1)), (yard) => holds(yard, false, 1.02)),
      runs(300),
    );
  });

  it("holds with checks too, where all points are adjusted together, for tapes that are off by chance", () => {
    fc.assert(
      fc.property(yards(fc.double({ min: -1, max: 1, noNaN: true })), (yard) => holds(yard, true, 1.25)),
      runs(300),
    );
  });

  it("is never less than its own distances miss it by", () => {
    const square: StakeRow[] = [row(0, 120), { ...row(192, 120, 240, 192), check: 192 + 12 }];
    for (const { spread, residuals } of pointsFromStakes(square, { ...options, closed: false })) {
      for (const one of [residuals.a, residuals.b, residuals.check ?? 0]) {
        expect(spread).toBeGreaterThanOrEqual(Math.abs(one));
      }
    }
  });

  it("is less where a check holds what two flat tapes do not", () => {
    // On the stakes' own line, and seen square from a point beside it.
    const [, alone] = pointsFromStakes([row(120, 120), row(120, 0)], { ...options, closed: false });
    const [, checked] = pointsFromStakes([row(120, 120), row(120, 0, 240, 120)], { ...options, closed: false });
    expect(alone?.doubts).toHaveLength(1);
    expect(checked?.doubts).toEqual([]);
    expect(checked?.spread).toBeLessThan(3);
    // A check along the line holds nothing.
    const [, along] = pointsFromStakes([row(200, 0), row(120, 0, 240, 80)], { ...options, closed: false });
    expect(along?.doubts).toHaveLength(1);
  });
});

describe("points that are adjusted together", () => {
  it("fit what was taped no worse than before, where tapes are so flat that a plain step goes astray", () => {
    const tape = 0.5;
    const stakes: readonly [Point, Point] = [
      [0, 0],
      [200, 0],
    ];
    // Near the stakes' line, every tape up to half an inch off. Huber's sum is 0.28 before.
    const starts: Point[] = [
      [53.97, 0.32],
      [174.85, 3.84],
    ];
    const taped: Taped[] = [
      { of: 0, to: stakes[0], length: 53.65 },
      { of: 0, to: stakes[1], length: 146.51 },
      { of: 1, to: stakes[0], length: 175.15 },
      { of: 1, to: stakes[1], length: 25.34 },
      { of: 1, to: 0, length: 120.55 },
    ];
    const misfit = (places: readonly Point[]) =>
      taped.reduce((sum, { of, to, length }) => {
        const [p, q] = [places[of] as Point, typeof to === "number" ? (places[to] as Point) : to];
        const size = Math.abs(length - Math.hypot(p[0] - q[0], p[1] - q[1]));
        return sum + (size <= tape ? (size * size) / 2 : tape * (size - tape / 2));
      }, 0);
    expect(misfit(starts)).toBeCloseTo(0.28, 2);
    expect(misfit(adjust(starts, taped, tape))).toBeLessThan(misfit(starts));
  });
});
