import { describe, expect, it } from "vitest";
import { corners, handAt } from "./hand.ts";

describe("typed runs", () => {
  it("place corners at a length and direction, right angles exactly", () => {
    const hand = handAt();
    hand.take("surface");
    hand.type({ right: "0", up: "-4'" });
    hand.type({ length: "16' 6 1/2\"", bearing: "0" });
    hand.type({ length: "10'", bearing: "90" });
    hand.type({ length: "16' 6 1/2\"", bearing: "W" });
    expect(hand.type({})).toBe(true);
    expect(corners(hand.element("surface-1"))).toEqual([
      [0, -48],
      [198.5, -48],
      [198.5, 72],
      [0, 72],
    ]);
  });

  it("take the direction from the pointer when only a length is typed", () => {
    const hand = handAt();
    hand.take("fence");
    hand.click(0, 0);
    hand.move(37, 3);
    hand.host.type("length", "20'");
    expect(hand.labels()).toContain(`20' 0"`);
    hand.host.enter();
    hand.host.finish();
    expect(corners(hand.element("fence-1"))[1]).toEqual([240, 0]);
  });

  it("change a rectangle's preview as they are typed, and give it back to the pointer when emptied", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    hand.click(0, 0);
    hand.move(288, 180);
    hand.host.type("width", "10");
    expect(corners(hand.element("pool-1"))[2]).toEqual([120, 180]);
    expect(hand.labels()).toContain(`10' 0" by 15' 0"`);
    hand.host.type("width", "");
    expect(corners(hand.element("pool-1"))[2]).toEqual([288, 180]);
  });

  it("say what cannot be read, and ask for a direction where none is pointed out", () => {
    const hand = handAt();
    hand.take("fence");
    hand.type({ right: "0", up: "0" });
    expect(hand.type({ length: "12 parsecs" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/no unit of length/);
    expect(hand.type({ length: "12" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/direction/);
  });

  it("begin with the first digit on the sheet, which belongs into the first field", () => {
    const hand = handAt();
    hand.take("fence");
    hand.click(0, 0);
    expect(hand.key("2")).toBe(true);
    expect(hand.host.state.getState()).toMatchObject({ texts: { length: "2" }, focusRequests: 1 });
    expect(hand.host.cancel()).toBe(true);
    expect(hand.host.state.getState().texts).toEqual({});
  });
});

describe("keys alone", () => {
  it("draw an outline with the crosshair: arrows, Enter for each corner, Enter again at the last", () => {
    const hand = handAt();
    hand.take("surface");
    hand.key("Enter");
    hand.key("ArrowRight", true);
    hand.key("ArrowRight");
    hand.key("Enter");
    for (let i = 0; i < 10; i++) hand.key("ArrowUp", true);
    hand.key("Enter");
    hand.key("Enter");
    expect(corners(hand.element("surface-1"))).toEqual([
      [0, 0],
      [13, 0],
      [13, 120],
    ]);
  });

  it("place a point", () => {
    const hand = handAt();
    hand.take("device");
    hand.key("ArrowUp");
    hand.key("ArrowUp", true);
    hand.key("Enter");
    expect(hand.element("device-1")).toMatchObject({ at: [0, 12] });
  });

  it("are left to others while nothing is drawn", () => {
    const hand = handAt();
    expect(hand.key("ArrowUp")).toBe(false);
    expect(hand.key("Enter")).toBe(false);
    expect(hand.key("5")).toBe(false);
  });
});
