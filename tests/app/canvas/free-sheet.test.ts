/** Where a finding is shown on a sheet that a column lies over. All numbers are arithmetic. */
import { describe, expect, it } from "vitest";
import { freeOf, shiftInto } from "../../../app/canvas/free-sheet.ts";

const view = { camera: { x: 0, y: 0, scale: 1 }, width: 800, height: 600 };

describe("the free part of the sheet", () => {
  it("is the whole of it while nothing lies over it", () => {
    expect(freeOf(800, 600, [])).toEqual({ minX: 0, minY: 0, maxX: 800, maxY: 600 });
    expect(freeOf(800, 600, [{ minX: 900, minY: 0, maxX: 1200, maxY: 600 }])).toEqual({
      minX: 0,
      minY: 0,
      maxX: 800,
      maxY: 600,
    });
  });

  it("lies beside a column at the right and above one that slid up", () => {
    expect(freeOf(800, 600, [{ minX: 500, minY: 0, maxX: 800, maxY: 600 }])).toMatchObject({ minX: 0, maxX: 500 });
    expect(freeOf(800, 600, [{ minX: 0, minY: 260, maxX: 800, maxY: 600 }])).toMatchObject({ minY: 0, maxY: 260 });
  });

  it("lies above a bar that stands above a column, though more room lies below the bar; an empty bar takes none", () => {
    const column = { minX: 0, minY: 260, maxX: 800, maxY: 600 };
    const bar = { minX: 0, minY: 200, maxX: 800, maxY: 252 };
    expect(freeOf(800, 600, [bar, column])).toMatchObject({ minY: 0, maxY: 200 });
    expect(freeOf(800, 600, [{ ...bar, maxY: 200 }, column])).toMatchObject({ minY: 0, maxY: 260 });
  });
});

describe("the view moves", () => {
  const free = { minX: 0, minY: 0, maxX: 500, maxY: 600 };

  it("not at all while what is looked at is in sight", () => {
    expect(shiftInto(view, { minX: -200, minY: -20, maxX: 0, maxY: 20 }, free)).toEqual([0, 0]);
  });

  it("until what lay under the column stands 40 px clear of it", () => {
    // Site x of 300 lies at 700 px; its right end at 720 px comes to 500 - 40 = 460 px.
    expect(shiftInto(view, { minX: 300, minY: -20, maxX: 320, maxY: 20 }, free)).toEqual([260, 0]);
    expect(shiftInto(view, { minX: -600, minY: -20, maxX: -580, maxY: 20 }, free)).toEqual([-240, 0]);
  });

  it("to the middle of what is too long, and only when nothing of it is in sight", () => {
    expect(shiftInto(view, { minX: -900, minY: 0, maxX: 900, maxY: 0 }, free)).toEqual([0, 0]);
    expect(shiftInto(view, { minX: 500, minY: 0, maxX: 1500, maxY: 0 }, free)).toEqual([1150, 0]);
  });
});
