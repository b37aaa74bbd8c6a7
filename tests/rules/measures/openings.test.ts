import { describe, expect, it } from "vitest";
import { pathFrom } from "../../../geometry/outline.ts";
import type { Point } from "../../../geometry/types.ts";
import { withoutOpenings } from "../../../rules/measures/openings.ts";
import type { OpeningElement } from "../../../rules/site/elements.ts";
import { turnedBy } from "../../oracles/variants.ts";

const passage = (from: Point, to: Point): OpeningElement => ({
  id: "passage",
  kind: "opening",
  opening: "passage",
  path: { vertices: [[...from], [...to]], closed: false },
});

/** Footprints of what two passages, one from the wall's end and one that follows it, leave of a wall 200 in. long. */
function leftOf(degrees: number, start: number): Point[][] {
  const place = turnedBy(degrees);
  const wall = pathFrom({ vertices: [place([0, 0]), place([200, 0])], closed: false });
  const openings = [
    passage(place([start, 0]), place([36, 0])),
    passage(place([36, 0]), place([72, 0])),
    passage(place([164, 0]), place([200, 0])),
  ];
  return withoutOpenings(wall, 3, openings)?.footprints(6) ?? [];
}

describe("a passage at the end of its wall", () => {
  it("leaves the rest of the wall in one piece, however the wall is turned", () => {
    for (const start of [0, 1e-12, 1e-9, 1e-4]) {
      for (let degrees = 0; degrees < 360; degrees += 7.3) {
        const pieces = leftOf(degrees, start);
        expect(pieces).toHaveLength(1);
        // Arithmetic: from 72 to 164 in. along the wall.
        const back = turnedBy(-degrees);
        const along = pieces.flat().map((p) => back(p)[0]);
        expect(Math.min(...along)).toBeCloseTo(72, 6);
        expect(Math.max(...along)).toBeCloseTo(164, 6);
      }
    }
  });
});
