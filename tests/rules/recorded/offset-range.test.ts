// Least and greatest distance of a path from the water. Hand cases: arithmetic. Random ones: against positions every
// twentieth of an inch, which can miss the greatest by no more than half of that.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pointToArea } from "../../../geometry/distance.ts";
import { areaFrom, pathFrom, pathLength, pointAlong } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";
import { offsetRange, stretchesBetween } from "../../../rules/recorded/offset-range.ts";
import { runs } from "../../oracles/seed.ts";
import { pathRoundPool } from "./yards.ts";

const closed = (...vertices: readonly (readonly [number, number] | readonly [number, number, number])[]): PathData => ({
  vertices,
  closed: true,
});
const open = (...vertices: readonly (readonly [number, number] | readonly [number, number, number])[]): PathData => ({
  vertices,
  closed: false,
});
const pool = areaFrom(closed([0, 0], [384, 0], [384, 192], [0, 192]));
const circle = areaFrom(closed([-100, 0, 1], [100, 0, 1]));

function rangeOf(path: PathData, waters = [pool]) {
  const range = offsetRange(pathFrom(path), waters);
  if (!range) throw new Error("no range");
  return [range.min.length, range.max.length] as const;
}

describe("the offset of a path", () => {
  it("is the same all along round the corners", () => {
    for (const offset of [18, 21, 24]) {
      const [min, max] = rangeOf(pathRoundPool(offset));
      expect(Math.abs(min - offset)).toBeLessThan(1e-9);
      expect(Math.abs(max - offset)).toBeLessThan(1e-9);
    }
  });

  it("is greatest at square corners", () => {
    const [min, max] = rangeOf(closed([-21, -21], [405, -21], [405, 213], [-21, 213]));
    expect(min).toBe(21);
    expect(Math.abs(max - 21 * Math.SQRT2)).toBeLessThan(1e-9);
  });

  it("is greatest inside an arc, between vertices and samples", () => {
    // An arc from (0, -21) to (384, -21) that sags by 37 in. at x = 192.
    const [, max] = rangeOf(open([0, -21, 37 / 192], [384, -21]));
    expect(Math.abs(max - 58)).toBeLessThan(1e-6);
  });

  it("is greatest midway between two waters", () => {
    // Pools 100 in. apart; a line between them at 30 in. from the first, turning to the middle at one place.
    const other = areaFrom(closed([484, 0], [868, 0], [868, 192], [484, 192]));
    const [min, max] = rangeOf(open([414, 10], [470, 110]), [pool, other]);
    expect(Math.abs(min - 14)).toBeLessThan(1e-9);
    expect(Math.abs(max - 50)).toBeLessThan(1e-6);
  });

  it("runs along a round pool: distance to a circle", () => {
    const [min, max] = rangeOf(open([-150, 121], [150, 121]), [circle]);
    expect(Math.abs(min - 21)).toBeLessThan(1e-9);
    expect(Math.abs(max - (Math.hypot(150, 121) - 100))).toBeLessThan(1e-9);
  });

  it("is 0 where the path crosses the water, and there is none without water", () => {
    expect(rangeOf(open([-10, 50], [10, 50]))[0]).toBe(0);
    expect(offsetRange(pathFrom(open([0, 0], [1, 1])), [])).toBe(null);
  });

  it("starts its witnesses at the inside wall", () => {
    const range = offsetRange(pathFrom(open([100, -21], [200, -30])), [pool]);
    expect(range?.min).toMatchObject({ from: [100, 0], to: [100, -21] });
    expect(range?.max).toMatchObject({ from: [200, 0], to: [200, -30] });
  });

  it("is never less than what close positions show, nor more by half their spacing", () => {
    const coordinate = fc.double({ min: -200, max: 600, noNaN: true });
    const bulge = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate, bulge), { minLength: 2, maxLength: 5 }), (vertices) => {
        const path = pathFrom(open(...vertices));
        fc.pre(path.edges.every((edge) => Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]) > 1));
        const waters = [pool, circle];
        const range = offsetRange(path, waters);
        const length = pathLength(path);
        const step = 0.05;
        let least = Number.POSITIVE_INFINITY;
        let greatest = 0;
        for (let s = 0; s <= length; s += step) {
          const p = pointAlong(path, s);
          const away = Math.min(...waters.map((water) => pointToArea(p, water).length));
          least = Math.min(least, away);
          greatest = Math.max(greatest, away);
        }
        const [min, max] = [range?.min.length ?? Number.NaN, range?.max.length ?? Number.NaN];
        expect(min).toBeLessThanOrEqual(least + 1e-7);
        expect(min).toBeGreaterThan(least - step);
        expect(max).toBeGreaterThan(greatest - 1e-6);
        expect(max).toBeLessThan(greatest + step);
      }),
      runs(8),
    );
  });
});

describe("stretches between two offsets", () => {
  const lengthBetween = (path: PathData, min: number, max: number) =>
    stretchesBetween(pathFrom(path), [pool], min, max).reduce((sum, { length }) => sum + length, 0);

  it("are cut where the offset passes a limit", () => {
    // A slanting line from 12 to 30 in. off over 180 in. of wall: a tenth of an inch each inch.
    expect(Math.abs(lengthBetween(open([100, -12], [280, -30]), 18, 24) - Math.hypot(60, 6))).toBeLessThan(1e-6);
  });

  it("take in what lies exactly at a limit", () => {
    expect(lengthBetween(open([100, -18], [200, -18]), 18, 24)).toBe(100);
    expect(lengthBetween(open([100, -24], [200, -24]), 18, 24)).toBe(100);
    expect(lengthBetween(open([100, -17.999], [200, -17.999]), 18, 24)).toBe(0);
  });
});
