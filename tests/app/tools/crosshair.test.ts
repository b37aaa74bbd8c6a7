/** The crosshair that keys move: what it snaps to, its jumps, and what typing brings into view. Common practice, no source. */
import { describe, expect, it } from "vitest";
import type { Point } from "../../../geometry/types.ts";
import { corners, handAt, siteWith } from "./hand.ts";

const closed = (...vertices: readonly Point[]) => ({ vertices, closed: true });

/** A pool whose corners lie off whole inches. */
const POOL = { id: "pool-1", kind: "pool", outline: closed([0.3, 0.4], [240.3, 0.4], [240.3, 120.4], [0.3, 120.4]) };

describe("the crosshair", () => {
  it("stands on a corner that lies within the step that keys take, and says so", () => {
    const hand = handAt(siteWith([POOL]));
    hand.take("fence");
    hand.key("ArrowLeft");
    hand.key("Enter");
    expect(hand.labels()).toContain("corner of Pool 1");
    hand.key("ArrowLeft", true);
    hand.key("Enter");
    hand.key("Enter");
    expect(corners(hand.element("fence-1"))).toEqual([
      [0.3, 0.4],
      [-12, 0.4],
    ]);
  });

  it("says where it stands, what is measured to there, and what it snapped to", () => {
    const hand = handAt(siteWith([POOL]));
    const said = () => hand.host.state.getState().announcement;
    hand.take("fence");
    hand.key("ArrowLeft");
    expect(said()).toMatch(/corner of Pool 1\.$/);
    hand.key("ArrowLeft", true);
    hand.key("ArrowDown", true);
    expect(said()).toMatch(/^1' 0" left, 1' 0" down/);
    hand.key("Enter");
    hand.key("ArrowLeft", true);
    expect(said()).toMatch(/^2' 0" left, 1' 0" down; 1' 0"/);
  });

  it("stays on whole inches while snapping is off", () => {
    const hand = handAt(siteWith([POOL]));
    hand.view.getState().setSnapping(false);
    hand.take("device");
    hand.key("ArrowLeft");
    hand.key("Enter");
    expect(hand.element("device-1")).toMatchObject({ at: [0, 0] });
  });

  it("goes from corner to corner and to middles of sides by one key each, saying where it is", () => {
    const hand = handAt(siteWith([POOL]));
    hand.take("fence");
    expect(hand.host.jump([1, 0])).toBe(true);
    expect(hand.host.state.getState().announcement).toMatch(/^Middle of a side of Pool 1; .+ right, .+ up\.$/);
    hand.host.jump([1, 0]);
    expect(hand.host.state.getState().announcement).toBe(`Corner of Pool 1; 20' 5/16" right, 3/8" up.`);
    hand.key("Enter");
    hand.host.jump([0, 1]);
    hand.host.jump([0, 1]);
    hand.key("Enter");
    hand.key("Enter");
    expect(corners(hand.element("fence-1"))).toEqual([
      [240.3, 0.4],
      [240.3, 120.4],
    ]);
    hand.take("fence");
    hand.host.jump([0, 1]);
    hand.host.jump([0, 1]);
    expect(hand.host.jump([0, -1])).toBe(true);
    hand.take("select");
    expect(hand.host.jump([1, 0])).toBe(false);
  });

  it("passes over what is hidden, and has nowhere to go on an empty sheet", () => {
    const hand = handAt(siteWith([POOL], { arrangement: { hidden: ["pool-1"] } }));
    hand.take("fence");
    expect(hand.host.jump([1, 0])).toBe(false);
  });
});

describe("a corner that is typed", () => {
  it("comes into view, wherever the pointer rests", () => {
    const shown: Point[] = [];
    const hand = handAt();
    hand.host.connect({ changed() {}, findingAt: () => null, reveal: (at) => void shown.push(at) });
    hand.take("building");
    hand.click(0, 0);
    hand.move(12, 12);
    expect(hand.type({ length: "100'", bearing: "90" })).toBe(true);
    expect(shown.at(-1)?.map((one) => Math.round(one))).toEqual([0, 1200]);
  });
});
