// What is shown when the whole site is fitted into the view. Arithmetic.
import { expect, it } from "vitest";
import { siteBounds } from "../../../app/canvas/site-bounds.ts";
import type { KnownElement } from "../../../rules/site/elements.ts";

const house: KnownElement = {
  id: "house",
  kind: "building",
  outline: {
    vertices: [
      [0, 0],
      [400, 0],
      [400, 200],
      [0, 200],
    ],
    closed: true,
  },
};
const line = (y: number, x0: number, x1: number) =>
  ({
    id: `line ${y}`,
    kind: "overhead-line",
    class: "to-50kv",
    path: {
      vertices: [
        [x0, y],
        [x1, y],
      ],
      closed: false,
    },
  }) as KnownElement;

it("an empty sheet shows a yard of 60 by 45 ft", () => {
  expect(siteBounds({ elements: [] })).toEqual({ minX: -360, minY: -270, maxX: 360, maxY: 270 });
});

it("a line beyond the yard is shown as far as it runs within 10 ft of it", () => {
  expect(siteBounds({ elements: [house, line(-60, -9000, 9000)] })).toEqual({
    minX: -120,
    minY: -60,
    maxX: 520,
    maxY: 200,
  });
});

it("a line far off does not shrink the yard; alone it is shown whole", () => {
  expect(siteBounds({ elements: [house, line(-5000, 0, 400)] })).toMatchObject({ minY: 0, maxX: 400 });
  expect(siteBounds({ elements: [line(-5000, 0, 400)] })).toMatchObject({ minY: -5000, maxX: 400 });
});
