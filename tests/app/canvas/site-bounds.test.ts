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

it("an empty sheet over a picture shows the picture, turned as it lies; one that is hidden shows none", () => {
  const underlay = { picture: "data:image/png;base64,AA==", width: 200, height: 100, at: [10, 20] as [number, number] };
  const laid = { ...underlay, inchesPerPixel: 2, turn: 90 };
  const box = siteBounds({ elements: [], underlay: laid });
  // Its width of 400 in. runs up from (10, 20), its height of 200 in. to the left.
  expect([box.minX, box.minY, box.maxX, box.maxY].map((side) => Math.round(side * 1e6) / 1e6)).toEqual([
    -190, 20, 10, 420,
  ]);
  expect(siteBounds({ elements: [], underlay: { ...laid, hidden: true } })).toEqual(siteBounds({ elements: [] }));
  expect(siteBounds({ elements: [house], underlay: laid })).toEqual(siteBounds({ elements: [house] }));
});
