/** Rounded corners and parallels. Figures are arithmetic unless said otherwise. */
import { describe, expect, it } from "vitest";
import { edgeFromVertices, lineEdge, pointAt, tangentAt } from "../../geometry/edge.ts";
import { fillet } from "../../geometry/fillet.ts";
import { pathFrom, pathLength, signedArea } from "../../geometry/outline.ts";
import { parallelLine, parallelOutlines } from "../../geometry/parallel.ts";
import { pointToPath } from "../../geometry/point-distance.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { Edge, PathData, Point } from "../../geometry/types.ts";

const turned = ([x, y]: Point, angle: number, mirror: boolean): Point => {
  const my = mirror ? -y : y;
  return [x * Math.cos(angle) - my * Math.sin(angle) + 40, x * Math.sin(angle) + my * Math.cos(angle) - 17];
};

describe("rounding a corner", () => {
  it("between straight edges touches both, whichever way it lies", () => {
    for (const angle of [0, 0.7, 2.9]) {
      for (const mirror of [false, true]) {
        const at = (x: number, y: number) => turned([x, y], angle, mirror);
        const found = fillet(lineEdge(at(-100, 0), at(0, 0)), lineEdge(at(0, 0), at(0, 80)), 30);
        if (!found.ok) throw new Error("no arc");
        expect(distanceBetween(found.arc.from, at(-30, 0))).toBeLessThan(1e-9);
        expect(distanceBetween(found.arc.to, at(0, 30))).toBeLessThan(1e-9);
        expect(distanceBetween(found.arc.center, at(-30, 30))).toBeLessThan(1e-9);
        expect(Math.abs(found.arc.sweep)).toBeCloseTo(Math.PI / 2, 9);
      }
    }
  });

  it("may use an edge up to its end, and says the largest radius that fits otherwise", () => {
    const before = lineEdge([-100, 0], [0, 0]);
    const after = lineEdge([0, 0], [0, 80]);
    expect(fillet(before, after, 80).ok).toBe(true);
    const found = fillet(before, after, 96);
    expect(found.ok).toBe(false);
    expect(found.ok ? 0 : found.largest).toBeCloseTo(80, 5);
    // 60 degrees between the edges: the arc touches at r / tan(30 degrees) from the corner.
    const slanted = lineEdge([0, 0], [-40, 40 * Math.sqrt(3)]);
    const sharp = fillet(before, slanted, 99);
    expect(sharp.ok ? 0 : sharp.largest).toBeCloseTo(80 * Math.tan(Math.PI / 6), 5);
  });

  it("between a straight edge and an arc touches both", () => {
    // A half circle of radius 100 that ends at [0, 0], coming down onto a level edge at a right angle.
    const arc = edgeFromVertices([0, 200, 1], [0, 0]);
    const after = lineEdge([0, 0], [0, -150]);
    const found = fillet(arc, after, 20);
    if (!found.ok) throw new Error("no arc");
    expect(Math.abs(distanceBetween(found.arc.from, [0, 100]) - 100)).toBeLessThan(1e-9);
    expect(found.arc.to[0]).toBeCloseTo(0, 9);
    const [ax, ay] = tangentAt(found.arc, 0);
    const radial: Point = [found.arc.from[0], found.arc.from[1] - 100];
    expect(Math.abs(ax * radial[0] + ay * radial[1])).toBeLessThan(1e-6);
  });

  it("finds nothing to round where edges go straight on", () => {
    expect(fillet(lineEdge([0, 0], [50, 0]), lineEdge([50, 0], [90, 0]), 10)).toEqual({ ok: false, largest: 0 });
  });
});

const box: PathData = {
  vertices: [
    [0, 0],
    [384, 0],
    [384, 192],
    [0, 192],
  ],
  closed: true,
};

describe("an outline at a distance", () => {
  it("goes round corners or is square at them", () => {
    for (const data of [box, { ...box, vertices: [...box.vertices].reverse() }]) {
      const [round] = parallelOutlines(pathFrom(data), 36, "round");
      const [square] = parallelOutlines(pathFrom(data), 36, "square");
      // Steiner's formula for parallel curves.
      expect(signedArea(round as never)).toBeCloseTo(384 * 192 + 36 * 1152 + Math.PI * 36 * 36, 6);
      expect(signedArea(square as never)).toBeCloseTo((384 + 72) * (192 + 72), 6);
      expect(square?.edges).toHaveLength(4);
    }
  });

  it("inside is smaller, may fall in two, and may be nothing", () => {
    const [inner] = parallelOutlines(pathFrom(box), -24, "round");
    expect(signedArea(inner as never)).toBeCloseTo((384 - 48) * (192 - 48), 6);
    const waist: PathData = {
      vertices: [
        [0, 0],
        [100, 0],
        [100, 40],
        [140, 40],
        [140, 0],
        [240, 0],
        [240, 100],
        [140, 100],
        [140, 60],
        [100, 60],
        [100, 100],
        [0, 100],
      ],
      closed: true,
    };
    expect(parallelOutlines(pathFrom(waist), -12, "round")).toHaveLength(2);
    expect(parallelOutlines(pathFrom(box), -100, "round")).toEqual([]);
  });

  it("keeps true arcs", () => {
    const roman: PathData = {
      vertices: [
        [0, 0],
        [360, 0, 1],
        [360, 192],
        [0, 192],
      ],
      closed: true,
    };
    const [found] = parallelOutlines(pathFrom(roman), 12, "square");
    const arcs = (found?.edges ?? []).filter((edge): edge is Edge & { kind: "arc" } => edge.kind === "arc");
    expect(arcs.map(({ radius }) => radius)).toEqual([expect.closeTo(108, 9)]);
  });
});

describe("a line at a distance", () => {
  const line = pathFrom({
    vertices: [
      [0, 0],
      [200, 0],
      [200, 150],
    ],
    closed: false,
  });

  it("is shorter inside its turns and goes round outside them", () => {
    const inside = parallelLine(line, 24, "round");
    expect(pathLength(inside as never)).toBeCloseTo(176 + 126, 9);
    const outside = parallelLine(line, -24, "round");
    expect(pathLength(outside as never)).toBeCloseTo(350 + (Math.PI * 24) / 2, 9);
    const square = parallelLine(line, -24, "square");
    expect(square?.edges.map(({ to }) => to)).toEqual([
      [224, -24],
      [224, 150],
    ]);
  });

  it("lies at the distance everywhere, arcs too", () => {
    const bent = pathFrom({
      vertices: [
        [0, 0],
        [120, 0, 0.4],
        [260, 60],
        [300, 200],
      ],
      closed: false,
    });
    for (const d of [18, -18]) {
      const found = parallelLine(bent, d, "round");
      for (const edge of found?.edges ?? []) {
        for (const t of [0, 0.3, 0.6, 1]) expect(pointToPath(pointAt(edge, t), bent).length).toBeCloseTo(18, 6);
      }
      expect(found?.edges.length).toBeGreaterThan(2);
    }
  });

  it("is none where its bends leave no room", () => {
    const narrow = pathFrom({
      vertices: [
        [0, 0],
        [100, 0],
        [100, 30],
        [0, 30],
      ],
      closed: false,
    });
    expect(parallelLine(narrow, 20, "round")).toBeNull();
    expect(parallelLine(narrow, -20, "round")).not.toBeNull();
  });
});
