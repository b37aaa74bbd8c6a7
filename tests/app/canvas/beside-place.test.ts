/** Where the words beside the pointer stand. Our own design, no source. */
import { expect, it } from "vitest";
import { type Box, besidePlace } from "../../../app/canvas/overlay-painter.ts";

const SIZE = { width: 100, height: 18 };
const VIEW = { width: 800 };
const over = (at: readonly [number, number], box: Box) =>
  at[0] < box.left + box.width &&
  box.left < at[0] + SIZE.width &&
  at[1] < box.top + box.height &&
  box.top < at[1] + SIZE.height;

it("words stand above the place on its right, and turn over where the view ends", () => {
  expect(besidePlace([400, 300], SIZE, VIEW, [])).toEqual([416, 266]);
  expect(besidePlace([780, 300], SIZE, VIEW, [])).toEqual([664, 266]);
  expect(besidePlace([400, 20], SIZE, VIEW, [])).toEqual([416, 36]);
});

it("they never cover the length of the side that is drawn, from wherever it comes", () => {
  for (let degrees = 0; degrees < 360; degrees += 5) {
    for (const away of [20, 30, 45, 60]) {
      const angle = (degrees * Math.PI) / 180;
      const [x, y] = [400 + away * Math.cos(angle), 300 + away * Math.sin(angle)];
      const length = { left: x - 40, top: y - 9, width: 80, height: 18 };
      expect(over(besidePlace([400, 300], SIZE, VIEW, [length]), length)).toBe(false);
    }
  }
});
