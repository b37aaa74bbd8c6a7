/**
 * Reach over random yards against its definition: a position is in the region exactly when its shortest path is within the
 * distance. The paths themselves are checked by brute force in reach-paths.test.ts.
 */
import { describe, expect, it } from "vitest";
import { regionArea, regionContains, unionRegions } from "../../geometry/clipping.ts";
import { pointToArea } from "../../geometry/distance.ts";
import { areaFrom, contains } from "../../geometry/outline.ts";
import { shortestPathToArea, sightLine } from "../../geometry/paths-around-barriers.ts";
import { directReach, reach } from "../../geometry/reach.ts";
import type { Area, Point, Region } from "../../geometry/types.ts";
import { toPolyline } from "../oracles/bulge-chords.ts";
import { latticeYard, numbersFrom, randomYard, type Yard } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";
import { placed, startedAt, turnedBy } from "../oracles/variants.ts";

const yards = Number(process.env.COPPERBAND_YARDS ?? 40);
const positions = Math.min(300, Number(process.env.COPPERBAND_POSITIONS ?? 60));

/** Positions nearer than this to a border may fall on either side of its chords. */
const BORDER = 1 / 32;

function positionsNear({ outline, barriers }: Yard, distance: number, next: () => number): Point[] {
  const xs = outline.vertices.map(([x]) => x);
  const ys = outline.vertices.map(([, y]) => y);
  const within = (values: number[]): number => {
    const low = Math.min(...values) - distance;
    return low + next() * (Math.max(...values) + distance - low);
  };
  const found: Point[] = [];
  for (let i = 0; i < positions; i++) {
    const p: Point = [within(xs), within(ys)];
    if (!barriers.some(({ points, shape }) => toPolyline(p, points, shape === "solid") < BORDER)) found.push(p);
  }
  return found;
}

/** Every third yard has its barriers on a lattice, so that they share corners and sides. */
function yardOf(yardSeed: number): Yard {
  return yardSeed % 3 === 0 ? latticeYard(yardSeed) : randomYard(yardSeed);
}

describe(`random yards from seed ${seed}`, () => {
  it(
    "hold in reach what a path of that length gets to, and nothing else",
    () => {
      const wrong: string[] = [];
      let reached = 0;
      let bent = 0;
      for (let i = 0; i < yards; i++) {
        const yard = yardOf(seed + i);
        const target = areaFrom(yard.outline, yard.islands);
        const next = numbersFrom(seed - i);
        for (const distance of [12, 36, 120]) {
          const region = reach(target, distance, yard.barriers, []);
          for (const p of positionsNear(yard, distance, next)) {
            const route = shortestPathToArea(p, target, yard.barriers);
            const length = route?.length ?? Number.POSITIVE_INFINITY;
            if (contains(target, p) || length < BORDER || Math.abs(length - distance) < BORDER) continue;
            const isWithin = length < distance;
            if (isWithin) reached++;
            if (isWithin && route && route.points.length > 2) bent++;
            if (regionContains(region, p) !== isWithin)
              wrong.push(`yard ${seed + i}, ${distance} in., [${p}]: path ${length}`);
          }
        }
      }
      console.info(`${reached} positions in reach, ${bent} of them round a corner, ${wrong.length} wrong`);
      expect(wrong).toEqual([]);
      expect(bent).toBeGreaterThan(yards / 4);
    },
    60_000 + yards * 1000,
  );

  it("hold in direct reach what is seen square to an edge or from a corner", () => {
    const wrong: string[] = [];
    for (let i = 0; i < Math.min(yards, 40); i++) {
      const yard = yardOf(seed + i);
      const target = areaFrom(yard.outline, yard.islands);
      const next = numbersFrom(seed + 31 * i);
      const distance = 40;
      const direct = directReach(target, distance, yard.barriers);
      for (const p of positionsNear(yard, distance, next)) {
        const nearest = pointToArea(p, target);
        if (nearest.length < BORDER || Math.abs(nearest.length - distance) < BORDER) continue;
        // Where the nearest of all is seen, the position is in it; where it is beyond the distance, it is not.
        const isSure = nearest.length > distance || seesClearly(p, nearest.from, target, yard);
        if (isSure && regionContains(direct, p) !== nearest.length < distance)
          wrong.push(`yard ${seed + i}, [${p}]: ${nearest.length}`);
      }
      expect(added(direct, reach(target, distance, yard.barriers, [])), `yard ${seed + i}`).toBeLessThan(0.1);
    }
    expect(wrong).toEqual([]);
  });
});

/** Reached straight from the nearest point with room to spare on all sides, so that the border of a shadow is left out. */
function seesClearly(p: Point, from: Point, target: Area, { barriers }: Yard): boolean {
  const route = shortestPathToArea(p, target, barriers);
  if (!route || route.length > pointToArea(p, target).length + 1e-9) return false;
  return [
    [BORDER, 0],
    [-BORDER, 0],
    [0, BORDER],
    [0, -BORDER],
  ].every(([x = 0, y = 0]) => sightLine([p[0] + x, p[1] + y], from, barriers));
}

/** Square inches that `part` adds to `whole`: grid rounding along common borders only. */
function added(part: Region, whole: Region): number {
  return regionArea(unionRegions([part, whole])) - regionArea(whole);
}

describe("reach where barriers cross the water's edge", () => {
  // Yards in which the clipping engine lost up to 2,800 sq in. of the ground in one of these drawings.
  it.each([2088, 2183, 2359, 2668, 2680, 2797, 2845, 3030, 3572])(
    "has the same area in yard %i however it is turned and started",
    (n) => {
      const { outline, islands, barriers } = yardOf(n);
      const areas = [0, 10, 17.2 + n, 61.7, 90].map((degrees, k) => {
        const turn = turnedBy(degrees);
        const place = ([x, y]: Point): Point => turn([x + k / 7, y + k / 3]);
        const target = areaFrom(
          startedAt(placed(outline, place), k % outline.vertices.length),
          islands.map((island) => placed(island, place)),
        );
        const moved = barriers.map((barrier) => ({ ...barrier, points: barrier.points.map(place) }));
        return [regionArea(directReach(target, 21, moved)), regionArea(reach(target, 21, moved, []))] as const;
      });
      // A step of the clipping grid along some hundreds of inches of edge.
      for (const [direct, all] of areas) {
        expect(Math.abs(direct - (areas[0]?.[0] ?? 0))).toBeLessThan(0.5);
        expect(Math.abs(all - (areas[0]?.[1] ?? 0))).toBeLessThan(0.5);
      }
    },
  );
});
