/** Dimensions at their limits, to the last digit: the same length typed in meters and in centimeters differs in that. Arithmetic. */
import { describe, expect, it } from "vitest";
import { addElement } from "../../../app/edits/add-element.ts";
import { draft } from "../../../app/edits/templates.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { type Dimensions, fullDimensions } from "../../../app/pool-shapes/shape.ts";
import type { PoolShapeId } from "../../../app/pool-shapes/shape-names.ts";
import { SHAPES } from "../../../app/pool-shapes/shapes.ts";

const M = 1 / 0.0254;

/** The shape drawn with one dimension off by so many of the last digit, as it would be put on the sheet; or why not. */
function drawn(id: PoolShapeId, sizes: Dimensions, field: string, digits: number): string | null {
  const off = (sizes[field] ?? 0) * (1 + digits * Number.EPSILON);
  const shaped = SHAPES[id].outline(fullDimensions(SHAPES[id], { ...sizes, [field]: off }), "m");
  if (!shaped.ok) return shaped.reason;
  const site = emptySite();
  const result = addElement(draft(site, "pool-shape", { path: shaped.outline })).apply(site);
  return result.ok ? null : result.reason;
}

describe("a dimension at its limit but for its last digit is at its limit", () => {
  it.each<[PoolShapeId, Dimensions, string]>([
    ["oval", { length: 5 * M, width: 5 * M }, "length"],
    ["rectangle", { length: 10 * M, width: 5 * M, radius: 2.5 * M }, "radius"],
    ["roman-end", { length: 10 * M, width: 5 * M, arcWidth: 5 * M, arcDepth: M }, "arcWidth"],
    ["roman-end", { length: 10 * M, width: 5 * M, arcWidth: 3 * M, arcDepth: 1.5 * M }, "arcDepth"],
    ["double-roman-end", { length: 10 * M, width: 5 * M, arcWidth: 5 * M, arcDepth: 2.5 * M }, "arcWidth"],
    ["grecian", { length: 9.77 * M, width: 5 * M, cut: 9.77 * (M / 2), cutAcross: M }, "cut"],
    ["grecian", { length: 9.77 * M, width: 5 * M, cut: M, cutAcross: 2.5 * M }, "cutAcross"],
    [
      "rectangle-corners",
      { length: 10 * M, width: 5 * M, lowerLeft: 2.5 * M, lowerRight: 0, upperRight: 0, upperLeft: 2.5 * M },
      "upperLeft",
    ],
    ["figure-8", { length: 10 * M, large: 5 * M, small: 5 * M, neck: 3 * M }, "small"],
    ["kidney", { length: 10 * M, large: 5 * M, small: 5 * M }, "small"],
  ])("%s with %o by its %s", (id, sizes, field) => {
    for (const digits of [-3, -1, 0, 1, 3]) expect(drawn(id, sizes, field, digits)).toBeNull();
  });

  it("nothing is as good as zero, and zero is said", () => {
    for (const [id, sizes, field] of [
      ["rectangle", { length: 1e-9, width: 5 * M }, "Length"],
      ["round", { diameter: 1e-9 }, "Diameter"],
      ["double-roman-end", { length: 5 * M, width: 5 * M, arcWidth: 5 * M, arcDepth: 2.5 * M }, "Length overall"],
    ] as const) {
      expect(drawn(id, sizes, "none", 0)).toMatch(new RegExp(`^${field} has to be above`));
    }
  });
});
