/** The dimensions read back from an outline: drawn by random ones, then moved, turned, turned over and walked either way. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Placing, placed, walkedBack } from "../../../app/pool-shapes/placing.ts";
import { type Recognized, recognized } from "../../../app/pool-shapes/recognize.ts";
import { fullDimensions } from "../../../app/pool-shapes/shape.ts";
import { POOL_SHAPES } from "../../../app/pool-shapes/shape-names.ts";
import { SHAPES } from "../../../app/pool-shapes/shapes.ts";
import type { PathData, Vertex } from "../../../geometry/types.ts";
import { runs } from "../../oracles/seed.ts";
import { drawn } from "./measured.ts";

/** None, whole feet or quarter inches; nothing of a pool is smaller than a foot. */
const size = fc.oneof(
  fc.integer({ min: 0, max: 40 }).map((feet) => feet * 12),
  fc.integer({ min: 48, max: 1600 }).map((quarters) => quarters / 4),
);
const placing: fc.Arbitrary<Placing> = fc.record({
  at: fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
  turn: fc.integer({ min: 0, max: 359 }),
  isMirrored: fc.boolean(),
  hold: fc.constant([0, 0] as const),
});

/** The farthest that a vertex lies from where the dimensions that were found put it; bulges count as inches. */
function misfit(given: PathData, { shape, sizes, placing, first, isClockwise }: Recognized): number {
  const again = SHAPES[shape].outline(sizes, "ft-in");
  if (!again.ok) throw new Error(again.reason);
  const put = placed(again.outline, placing);
  const { vertices } = isClockwise ? walkedBack(put) : put;
  if (vertices.length !== given.vertices.length) throw new Error("another number of corners");
  return Math.max(
    ...vertices.map(([x, y, bulge = 0], i) => {
      const [gx, gy, other = 0] = given.vertices[(i + first) % vertices.length] as Vertex;
      return Math.max(Math.hypot(x - gx, y - gy), Math.abs(bulge - other));
    }),
  );
}

/** Radii so large that nothing is left of a side make corners fall together: such an outline may pass for a free one. */
function hasAllCorners(id: string, sizes: Readonly<Record<string, number>>, outline: PathData): boolean {
  const rounded = (...names: readonly string[]) => names.filter((name) => (sizes[name] ?? 0) > 0).length;
  const whole: Readonly<Record<string, number>> = {
    rectangle: 4 + 4 * rounded("radius"),
    "rectangle-corners": 4 + rounded("lowerLeft", "lowerRight", "upperRight", "upperLeft"),
    "true-l": 6 + 5 * rounded("radius") + rounded("insideRadius"),
    "lazy-l": 6 + 5 * rounded("radius") + rounded("insideRadius"),
  };
  return outline.vertices.length === (whole[id] ?? outline.vertices.length);
}

describe.each(POOL_SHAPES.map(({ id }) => SHAPES[id]))("$label", (shape) => {
  it("is known again with dimensions that draw the same, wherever it lies", () => {
    const typed = fc.record(
      Object.fromEntries(
        shape.fields.map(({ name, type }) => [name, type === "angle" ? fc.integer({ min: 10, max: 95 }) : size]),
      ),
      { requiredKeys: [] },
    );
    let count = 0;
    fc.assert(
      fc.property(typed, placing, fc.boolean(), (some, where, isBack) => {
        const sizes = fullDimensions(shape, some as Record<string, number>);
        const shaped = shape.outline(sizes, "ft-in");
        if (!shaped.ok || !hasAllCorners(shape.id, sizes, shaped.outline)) return;
        count++;
        const put = placed(shaped.outline, where);
        const given = isBack ? walkedBack(put) : put;
        const found = recognized(given);
        expect(found).not.toBeNull();
        if (found) expect(misfit(given, found)).toBeLessThan(2e-3);
      }),
      runs(200),
    );
    expect(count).toBeGreaterThan(1);
  });

  it("with its usual dimensions gives just those back", () => {
    const usual = fullDimensions(shape, {});
    const found = recognized(placed(drawn(shape.id), { at: [120, 60], turn: 30, isMirrored: false, hold: [0, 0] }));
    expect(found).toMatchObject({ shape: shape.id, placing: { at: [120, 60], turn: 30, isMirrored: false } });
    for (const [name, value] of Object.entries(usual)) expect(found?.sizes[name]).toBeCloseTo(value, 9);
  });
});

describe("an outline", () => {
  const box = (...vertices: readonly Vertex[]): PathData => ({ vertices, closed: true });

  it("drawn by hand as a rectangle is one, its length the long way", () => {
    expect(recognized(box([10, 20], [202, 20], [202, 404], [10, 404]))).toMatchObject({
      shape: "rectangle",
      sizes: { length: 384, width: 192, radius: 0 },
      placing: { at: [106, 212], turn: 90 },
    });
  });

  it("that no shape gives is none", () => {
    expect(recognized(box([0, 0], [300, 0], [340, 100], [0, 200]))).toBeNull();
    expect(recognized(box([0, 0], [384, 0], [384, 192], [0, 192.01]))).toBeNull();
    expect(recognized(box([0, 0, 1], [100, 0, 0.9]))).toBeNull();
    expect(
      recognized({
        vertices: [
          [0, 0],
          [10, 0],
          [10, 10],
        ],
        closed: false,
      }),
    ).toBeNull();
  });
});
