// Type and marks never lie on each other. Common practice, no source. Boxes are measured here from the items themselves,
// not taken from the placer.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { markDrawing } from "../../../app/drawing/mark-shapes.ts";
import { boxAround, Placer } from "../../../app/drawing/placement.ts";
import { planScene } from "../../../app/drawing/plan-scene.ts";
import { type Item, type Scene, TEXT_POINTS } from "../../../app/drawing/scene.ts";
import { itemPoints } from "../../../app/drawing/text-width.ts";
import type { Bounds, Point } from "../../../geometry/types.ts";
import { runs } from "../../oracles/seed.ts";
import { DRAWN } from "./drawn-sites.ts";

/** The inked part of an upright line of type or of a mark, points of paper. Turned type is left to its own test. */
function boxOf(item: Item, k: number): Bounds | null {
  if (item.kind === "mark") {
    const { width, height } = markDrawing(item.outcome, String(item.number));
    return boxAround([item.at[0] * k, item.at[1] * k], width - 1, height - 1);
  }
  if (item.kind !== "text" || item.turn !== 0) return null;
  const width = itemPoints(item);
  const size = TEXT_POINTS[item.size];
  const shift = item.anchor === "start" ? width / 2 : item.anchor === "end" ? -width / 2 : 0;
  return boxAround([item.at[0] * k + shift, item.at[1] * k + size * 0.35], width, size * 0.7);
}

function overlaps(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

function collisions(scene: Scene): string[] {
  const boxes = scene.layers
    .filter(({ name }) => name !== "focus")
    .flatMap(({ items }) => items)
    .flatMap((item) => {
      const box = boxOf(item, scene.pointsPerInch);
      const name = item.kind === "text" ? item.text : item.kind === "mark" ? String(item.number) : "";
      return box ? [{ box, name }] : [];
    });
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => (overlaps(a.box, b.box) ? `${a.name} / ${b.name}` : [])),
  );
}

describe("type and marks on the plan", () => {
  for (const { name, site, report } of DRAWN) {
    it(`of ${name} are clear of each other at every usual scale`, () => {
      for (const pointsPerInch of [0.375, 0.75, 1.5]) {
        expect(collisions(planScene(site, report, { pointsPerInch, marks: "all" }))).toEqual([]);
      }
    });
  }
});

describe("the placer", () => {
  const frame = { minX: 0, minY: 0, maxX: 200, maxY: 150 };
  const wishes = fc.array(
    fc.record({
      x: fc.integer({ min: -20, max: 220 }),
      y: fc.integer({ min: -20, max: 170 }),
      width: fc.integer({ min: 1, max: 60 }),
      height: fc.integer({ min: 1, max: 20 }),
    }),
    { maxLength: 40 },
  );

  it("gives places inside the frame that overlap nothing given before", () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const placer = new Placer(frame);
        const given: Bounds[] = [];
        for (const { x, y, width, height } of list) {
          const center = placer.place({ anchor: [x, y], width, height, least: 4, most: 120 });
          if (center === null) continue;
          const box = boxAround(center, width, height);
          expect(box.minX >= 0 && box.minY >= 0 && box.maxX <= 200 && box.maxY <= 150).toBe(true);
          for (const other of given) expect(overlaps(box, other)).toBe(false);
          given.push(box);
        }
      }),
      runs(100),
    );
  });

  it("says so when there is no room", () => {
    const placer = new Placer(frame);
    placer.block(frame);
    expect(placer.place({ anchor: [100, 75], width: 5, height: 5, least: 0, most: 500 })).toBeNull();
  });

  it("would rather hide nothing", () => {
    // Arithmetic: both places are as far from the anchor; a line runs through the one above.
    const placer = new Placer(frame);
    placer.addInk([
      [0, 95],
      [200, 95],
    ]);
    const above: Point = [100, 95];
    const below: Point = [100, 55];
    expect(placer.placeAmong([above, below], 10, 6)).toEqual(below);
  });
});
