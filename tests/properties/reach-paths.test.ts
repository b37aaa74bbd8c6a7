/**
 * Shortest paths over random yards against brute force. Of the check itself: no position may be wrong by more than
 * 1/16 in. (the geometry's own requirement; the oracle's slack is stated in oracles/brute-paths.ts).
 *
 * The suite runs 40 yards of 200 positions; COPPERBAND_YARDS=200 COPPERBAND_POSITIONS=1000 runs the long check.
 */
import { describe, expect, it } from "vitest";
import { pointToArea } from "../../geometry/distance.ts";
import { pointAt } from "../../geometry/edge.ts";
import { areaFrom, contains, pathFrom } from "../../geometry/outline.ts";
import { shortestPathFromPath, shortestPathToArea, sightLine } from "../../geometry/paths-around-barriers.ts";
import type { Area, Barrier, Point, Route } from "../../geometry/types.ts";
import { BrutePaths } from "../oracles/brute-paths.ts";
import { chordsOf, polylineLength, toPolyline } from "../oracles/bulge-chords.ts";
import { drawObject, latticeYard, numbersFrom, randomYard, type Yard } from "../oracles/random-yards.ts";
import { seed } from "../oracles/seed.ts";

const yards = Number(process.env.COPPERBAND_YARDS ?? 40);
const positions = Number(process.env.COPPERBAND_POSITIONS ?? 200);

/** Whether the position is too near to a barrier's line to say by brute force on which side it lies. */
function isBesideBarrier(p: Point, barriers: readonly Barrier[]): boolean {
  return barriers.some(({ points, shape }) => toPolyline(p, points, shape === "solid") < 1 / 32);
}

function isInSolid(p: Point, barriers: readonly Barrier[]): boolean {
  return barriers.some(({ points, shape }) => {
    if (shape !== "solid") return false;
    let inside = false;
    points.forEach((a, i) => {
      const b = points[(i + 1) % points.length] as Point;
      if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1]))
        inside = !inside;
    });
    return inside;
  });
}

/** A path is what it says: as long as its legs, from the pool to the goal, over legs that see each other. */
function faultOf(route: Route, goal: Point, target: Area, barriers: readonly Barrier[]): string | null {
  const { points, length } = route;
  const first = points[0] as Point;
  const last = points[points.length - 1] as Point;
  if (Math.abs(polylineLength(points, false) - length) > 1e-6) return "length";
  if (pointToArea(first, target).length > 1e-6) return "start";
  if (last[0] !== goal[0] || last[1] !== goal[1]) return "end";
  for (let i = 1; i < points.length; i++) {
    if (!sightLine(points[i - 1] as Point, points[i] as Point, barriers)) return `leg ${i}`;
  }
  return null;
}

/** Every third yard has its barriers on a lattice, so that they share corners and sides. */
function yardOf(yardSeed: number): Yard {
  return yardSeed % 3 === 0 ? latticeYard(yardSeed) : randomYard(yardSeed);
}

function wrongPositions(yardSeed: number): { compared: number; wrong: string[] } {
  const { outline, islands, barriers } = yardOf(yardSeed);
  const target = areaFrom(outline, islands);
  const brute = new BrutePaths(
    [outline, ...islands].map((data) => chordsOf(data, 0.0005)),
    barriers,
  );
  const next = numbersFrom(~yardSeed);
  const wrong: string[] = [];
  let compared = 0;
  for (let i = 0; i < positions; i++) {
    const p: Point = [(next() - 0.5) * 700, (next() - 0.5) * 560];
    if (contains(target, p) || isBesideBarrier(p, barriers)) continue;
    compared++;
    const route = shortestPathToArea(p, target, barriers);
    const expected = isInSolid(p, barriers) ? Number.POSITIVE_INFINITY : brute.lengthTo(p);
    const length = route?.length ?? Number.POSITIVE_INFINITY;
    const isRight = length === expected || (length <= expected + 1e-3 && expected - length <= 1 / 16);
    const fault = route && faultOf(route, p, target, barriers);
    if (!isRight || fault) wrong.push(`yard ${yardSeed}, [${p}]: ${length} for ${expected} ${fault ?? ""}`);
  }
  return { compared, wrong };
}

describe(`random yards from seed ${seed}`, () => {
  it(
    "give every position the path that brute force finds",
    () => {
      const wrong: string[] = [];
      let compared = 0;
      for (let i = 0; i < yards; i++) {
        const found = wrongPositions(seed + i);
        compared += found.compared;
        wrong.push(...found.wrong);
      }
      console.info(`${yards} yards, ${compared} positions compared, ${wrong.length} wrong`);
      expect(wrong).toEqual([]);
      expect(compared).toBeGreaterThan(yards * positions * 0.5);
    },
    60_000 + yards * positions * 20,
  );

  it(
    "give every object the shortest of the paths to its positions",
    () => {
      const wrong: string[] = [];
      for (let i = 0; i < yards; i++) {
        const { outline, islands, barriers } = yardOf(seed + i);
        const target = areaFrom(outline, islands);
        const path = pathFrom(drawObject(numbersFrom(seed - i)));
        const length = shortestPathFromPath(path, target, barriers)?.length ?? Number.POSITIVE_INFINITY;
        let least = Number.POSITIVE_INFINITY;
        for (const edge of path.edges) {
          for (let step = 0; step <= 1000; step++) {
            // Positions on a face count as reached from outside; the object's own part inside the solid does not.
            const p = pointAt(edge, step / 1000);
            if (isInSolid(p, barriers) && !contains(target, p)) continue;
            least = Math.min(least, shortestPathToArea(p, target, barriers)?.length ?? Number.POSITIVE_INFINITY);
          }
        }
        const isRight = length === least || (length <= least + 1e-6 && least - length <= 1 / 4);
        if (!isRight) wrong.push(`yard ${seed + i}: ${length} for ${least}`);
      }
      expect(wrong).toEqual([]);
    },
    60_000 + yards * 500,
  );

  it("are the same turned, mirrored, and walked the other way", () => {
    for (let i = 0; i < Math.min(yards, 40); i++) {
      const { outline, islands, barriers } = yardOf(seed + i);
      const target = areaFrom(outline, islands);
      const turn = ([x, y]: Point): Point => [3000 - y, x - 2000];
      const mirror = ([x, y]: Point): Point => [-x, y];
      const next = numbersFrom(seed + 17 * i);
      for (const [place, flips] of [
        [turn, 1],
        [mirror, -1],
      ] as const) {
        const move = (data: typeof outline) => ({
          ...data,
          vertices: data.vertices.map(([x, y, bulge = 0]) => [...place([x, y]), bulge * flips] as const),
        });
        const moved = areaFrom(move(outline), islands.map(move));
        const others = barriers.map((barrier) => ({ ...barrier, points: [...barrier.points].reverse().map(place) }));
        for (let k = 0; k < 20; k++) {
          const p: Point = [(next() - 0.5) * 700, (next() - 0.5) * 560];
          if (isBesideBarrier(p, barriers)) continue;
          const length = shortestPathToArea(p, target, barriers)?.length ?? -1;
          const other = shortestPathToArea(place(p), moved, others)?.length ?? -1;
          expect(Math.abs(length - other), `yard ${seed + i}, [${p}]: ${length} and ${other}`).toBeLessThan(1e-6);
        }
      }
    }
  });
});
