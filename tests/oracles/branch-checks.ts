/** What every tree of branches has to satisfy, by means of its own. */
import { expect } from "vitest";
import type { BranchTree } from "../../geometry/branches.ts";
import type { Barrier, Point } from "../../geometry/types.ts";
import { type Box, clearOfBoxes } from "./steiner-search.ts";

export const solid = ({ x0, y0, x1, y1 }: Box, i: number): Barrier => ({
  id: `solid ${i}`,
  shape: "solid",
  points: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
});

export const named = (places: readonly Point[]) => places.map((at, i) => ({ id: `part ${i}`, at }));

function toLine(p: Point, line: readonly Point[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Point, line[i] as Point];
    const squared = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
    const t = squared === 0 ? 0 : ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / squared;
    const share = Math.max(0, Math.min(1, t));
    best = Math.min(best, Math.hypot(a[0] + (b[0] - a[0]) * share - p[0], a[1] + (b[1] - a[1]) * share - p[1]));
  }
  return best;
}

/** Length that two segments share by running along each other. */
function shared(a: Point, b: Point, c: Point, d: Point): number {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length < 1e-9) return 0;
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const off = (p: Point): number => Math.abs((p[0] - a[0]) * uy - (p[1] - a[1]) * ux);
  if (off(c) > 1e-6 || off(d) > 1e-6) return 0;
  const along = (p: Point): number => (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
  const [low, high] = [Math.min(along(c), along(d)), Math.max(along(c), along(d))];
  return Math.max(0, Math.min(length, high) - Math.max(0, low));
}

/** What holds of every tree: one run to each part, from what is bonded already, clear of solids, sharing no length. */
export function expectSound(
  tree: BranchTree,
  parts: readonly Point[],
  network: readonly Point[],
  boxes: readonly Box[],
): void {
  expect(tree.unreachable).toEqual([]);
  expect(tree.branches.map(({ to }) => to).sort()).toEqual(parts.map((_, i) => `part ${i}`).sort());
  const segments: [Point, Point][] = [];
  const bonded: Point[][] = [[...network]];
  let sum = 0;
  for (const { to, path, run, penetration } of tree.branches) {
    const first = path[0] as Point;
    const last = path[path.length - 1] as Point;
    const part = parts[Number(to.slice(5))] as Point;
    expect(Math.hypot(last[0] - part[0], last[1] - part[1])).toBeLessThan(1e-9);
    expect(Math.min(...bonded.map((line) => toLine(first, line)))).toBeLessThan(1e-6);
    let length = 0;
    for (let i = 1; i < path.length; i++) {
      const [a, b] = [path[i - 1] as Point, path[i] as Point];
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (!penetration) {
        const inner = boxes.map(({ x0, y0, x1, y1 }) => ({
          x0: x0 + 1e-6,
          y0: y0 + 1e-6,
          x1: x1 - 1e-6,
          y1: y1 - 1e-6,
        }));
        expect(clearOfBoxes(a, b, inner)).toBe(true);
      }
      for (const [c, d] of segments) expect(shared(a, b, c, d)).toBeLessThan(1e-5);
      segments.push([a, b]);
    }
    expect(run).toBeCloseTo(length, 9);
    sum += run;
    bonded.push([...path]);
  }
  expect(tree.length).toBeCloseTo(sum, 6);
}
