import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placed } from "../../../app/pool-shapes/placing.ts";
import { fullDimensions } from "../../../app/pool-shapes/shape.ts";
import { POOL_SHAPES } from "../../../app/pool-shapes/shape-names.ts";
import { SHAPES } from "../../../app/pool-shapes/shapes.ts";
import { contains } from "../../../geometry/contains.ts";
import { areaFrom, pathFrom } from "../../../geometry/outline.ts";
import { findSelfCrossing } from "../../../geometry/self-crossing.ts";
import { readSite } from "../../../rules/site/reader.ts";
import { runs } from "../../oracles/seed.ts";
import { areaInside, lengthOf, sharpestCorner } from "./measured.ts";

/** Shapes without a corner, whatever their dimensions. */
const SMOOTH = ["oval", "round", "kidney", "figure-8"];

/** Tenths of an inch or whole feet: limits are hit often enough. */
const size = fc.oneof(
  fc.integer({ min: 0, max: 60 }).map((feet) => feet * 12),
  fc.integer({ min: 0, max: 6000 }).map((tenths) => tenths / 10),
);

describe.each(POOL_SHAPES.map(({ id }) => SHAPES[id]))("$label", (shape) => {
  const names = shape.fields.map(({ name }) => name);
  const typed = fc.record(
    Object.fromEntries(
      shape.fields.map(({ name, type }) => [name, type === "angle" ? fc.integer({ min: 1, max: 100 }) : size]),
    ),
    { requiredKeys: [] },
  );

  it("starts as a pool", () => {
    expect(shape.outline(fullDimensions(shape, {}), "ft-in").ok).toBe(true);
  });

  it("is a simple outline about its middle, or refused by a field of its own", () => {
    let count = 0;
    fc.assert(
      fc.property(typed, (some) => {
        const shaped = shape.outline(fullDimensions(shape, some as Record<string, number>), "ft-in");
        if (!shaped.ok) {
          expect(names).toContain(shaped.field);
          const label = shape.fields.find(({ name }) => name === shaped.field)?.label ?? "none";
          expect(shaped.reason.startsWith(label)).toBe(true);
          expect(shaped.reason).toMatch(/^[A-Z].*\.$/);
          expect(shaped.reason).not.toMatch(/NaN|Infinity|undefined/);
          return;
        }
        count++;
        const { outline } = shaped;
        expect(findSelfCrossing(outline)).toBeNull();
        expect(areaInside(outline)).toBeGreaterThan(0);
        const { minX, minY, maxX, maxY } = pathFrom(outline).bounds;
        expect(minX + maxX).toBeCloseTo(0, 6);
        expect(minY + maxY).toBeCloseTo(0, 6);
        if (SMOOTH.includes(shape.id)) expect(sharpestCorner(outline)).toBeLessThan(1e-4);
        const site = {
          format: "copperband-site",
          version: 1,
          elements: [{ id: "pool-1", kind: "pool", body: "pool", shell: "unknown", outline }],
        };
        expect(readSite(JSON.stringify(site)).ok).toBe(true);
      }),
      runs(300),
    );
    expect(count).toBeGreaterThan(3);
  });

  it("keeps its area and length wherever it is put, and holds the held point", () => {
    const shaped = shape.outline(fullDimensions(shape, {}), "ft-in");
    if (!shaped.ok) throw new Error(shaped.reason);
    const { outline } = shaped;
    fc.assert(
      fc.property(
        fc.integer({ min: -720, max: 720 }),
        fc.boolean(),
        fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
        fc.nat(),
        (turn, isMirrored, at, pick) => {
          const vertex = outline.vertices[pick % outline.vertices.length];
          if (!vertex) throw new Error("no vertex");
          const put = placed(outline, { at, turn, isMirrored, hold: [vertex[0], vertex[1]] });
          expect(areaInside(put)).toBeCloseTo(areaInside(outline), 5);
          expect(lengthOf(put)).toBeCloseTo(lengthOf(outline), 6);
          expect(Math.min(...put.vertices.map(([x, y]) => Math.hypot(x - at[0], y - at[1])))).toBeLessThan(1e-9);
          // Mirrored twice is as it was.
          const back = placed(placed(outline, { at: [0, 0], turn: 0, isMirrored: true, hold: [0, 0] }), {
            at: [0, 0],
            turn: 0,
            isMirrored: true,
            hold: [0, 0],
          });
          expect(back.vertices.map((v) => v.map((n) => n + 0))).toEqual(
            outline.vertices.map((v) => v.map((n) => n + 0)),
          );
        },
      ),
      runs(40),
    );
  });

  it("a mirrored shape holds the mirrored points", () => {
    const shaped = shape.outline(fullDimensions(shape, {}), "ft-in");
    if (!shaped.ok) throw new Error(shaped.reason);
    const [area, mirrored] = [
      shaped.outline,
      placed(shaped.outline, { at: [0, 0], turn: 0, isMirrored: true, hold: [0, 0] }),
    ].map((outline) => areaFrom(outline));
    if (!area || !mirrored) throw new Error("no area");
    for (let x = -210.5; x < 216; x += 30) {
      for (let y = -150.5; y < 150; y += 20) expect(contains(mirrored, [x, -y])).toBe(contains(area, [x, y]));
    }
  });
});
