import { describe, expect, it } from "vitest";
import { RingTree } from "../../geometry/ring-tree.ts";
import { ringContains, ringWinding } from "../../geometry/rings.ts";
import { loopLength, tautLoop } from "../../geometry/taut-loop.ts";
import { tautMesh } from "../../geometry/taut-mesh.ts";
import { zippedString } from "../../geometry/taut-zip.ts";
import type { Point } from "../../geometry/types.ts";
import { numbers } from "../benchmarks/crowd.ts";

/** A star of `count` corners about the origin; `turns` times round, so that it may run over itself. */
function star(next: () => number, count: number, turns = 1): Point[] {
  return Array.from({ length: count }, (_, i): Point => {
    const angle = (i / count) * 2 * Math.PI * turns;
    const r = 60 + 60 * next();
    return [r * Math.cos(angle), r * Math.sin(angle)];
  });
}

describe("a ring's tree", () => {
  it("counts as a plain run round the ring does", () => {
    const next = numbers(11);
    for (let round = 0; round < 60; round++) {
      const ring = star(next, 3 + Math.floor(next() * 90), 1 + (round % 3));
      const tree = new RingTree(round % 2 === 0 ? ring : [...ring, ring[0] as Point]);
      for (let i = 0; i < 50; i++) {
        const p: Point = [(next() - 0.5) * 260, (next() - 0.5) * 260];
        expect(tree.windingRound(...p), `round ${round}`).toBe(ringWinding(ring, p));
        expect(tree.isCrossedOddly(...p), `round ${round}`).toBe(ringContains(ring, p));
      }
    }
  });

  it("counts the same where corners lie level with positions, and sides run level", () => {
    const next = numbers(13);
    for (let round = 0; round < 120; round++) {
      const across = 2 + Math.floor(next() * 9);
      const whole = (): number => Math.floor(next() * across);
      const ring = Array.from({ length: 3 + Math.floor(next() * 60) }, (): Point => [whole(), whole()]);
      const tree = new RingTree(ring);
      for (let i = 0; i < 40; i++) {
        // Off every side that is not level: such a side is at shares of whole numbers wherever it is level with a corner.
        const p: Point = [whole() - 1 + Math.SQRT1_2, whole()];
        expect(tree.windingRound(...p), `round ${round}`).toBe(ringWinding(ring, p));
        expect(tree.isCrossedOddly(...p), `round ${round}`).toBe(ringContains(ring, p));
      }
    }
  });
});

describe("a string pulled tight between two rings", () => {
  it("is the same through a zip as through a mesh", () => {
    const next = numbers(12);
    let closed = 0;
    for (let round = 0; round < 60; round++) {
      const inner = star(next, 8 + Math.floor(next() * 60));
      const outer = inner.map(([x, y]): Point => [x * (1.05 + 0.2 * next()), y * (1.05 + 0.2 * next())]);
      const zipped = zippedString(outer, round % 2 === 0 ? inner : [...inner].reverse());
      const mesh = tautMesh(outer, [round % 2 === 0 ? inner : [...inner].reverse()]);
      const loop = mesh && tautLoop(mesh, [1]);
      if (!zipped || !mesh || !loop) continue;
      closed++;
      expect(zipped.length, `round ${round}`).toBeCloseTo(loopLength(mesh, loop), 6);
    }
    expect(closed).toBeGreaterThan(20);
  });
});
