import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundsDistance, boundsOverlap } from "../../geometry/points.ts";
import { boxIndex } from "../../geometry/spatial-index.ts";
import type { Bounds } from "../../geometry/types.ts";
import { runs } from "../oracles/seed.ts";

const box = fc
  .tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 }), fc.nat(30), fc.nat(30))
  .map(([x, y, w, h]): Bounds => ({ minX: x, minY: y, maxX: x + w, maxY: y + h }));

describe("boxIndex", () => {
  it("finds what a look at every box finds", () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 60 }), box, (items, place) => {
        const index = boxIndex(items);
        const touching = items.flatMap((item, i) => (boundsOverlap(item, place) ? [i] : []));
        expect(index.search(place)).toEqual(touching);
        const p = [place.minX, place.minY] as const;
        const at = { minX: p[0], minY: p[1], maxX: p[0], maxY: p[1] };
        const near = index.neighbors(p, 5, 40).map((i) => boundsDistance(items[i] as Bounds, at));
        const wanted = items.map((item) => boundsDistance(item, at)).filter((d) => d <= 40);
        expect(near).toEqual(wanted.sort((a, b) => a - b).slice(0, 5));
      }),
      runs(200),
    );
  });

  it("of nothing finds nothing", () => {
    expect(boxIndex([]).search({ minX: 0, minY: 0, maxX: 9, maxY: 9 })).toEqual([]);
    expect(boxIndex([]).neighbors([0, 0])).toEqual([]);
  });
});
