/** What a pointer picks where things are grouped, locked or hidden. Our own decision; places are arithmetic. */
import { describe, expect, it } from "vitest";
import type { Report } from "../../../rules/report.ts";
import { finding } from "../commands/headless-editor.ts";
import { handAt, siteWith } from "./hand.ts";

const post = (id: string, x: number, y: number) => ({ id, kind: "metal", shape: { point: [x, y] }, part: "post" });
const posts = [post("metal-1", 0, 0), post("metal-2", 100, 0), post("metal-3", 200, 0)];
const placesOf = (hand: ReturnType<typeof handAt>) =>
  hand.document.getState().shown.elements.map((one) => (one as unknown as { shape: { point: number[] } }).shape.point);

describe("a group", () => {
  const grouped = () => handAt(siteWith(posts, { arrangement: { groups: [{ elements: ["metal-1", "metal-2"] }] } }));

  it("is picked whole by one of it, dragged whole in one step, and gone into by two presses", () => {
    const hand = grouped();
    hand.view.getState().setSnapping(false);
    const selection = () => hand.view.getState().selection;
    hand.click(100, 0);
    expect(selection()).toEqual(["metal-1", "metal-2"]);
    hand.drag([0, 0], [10, 30], [20, 50]);
    expect(placesOf(hand)).toEqual([
      [20, 50],
      [120, 50],
      [200, 0],
    ]);
    expect(hand.document.getState().history.past).toHaveLength(1);
    hand.click(120, 50);
    hand.click(120, 50, { isDouble: true });
    expect(selection()).toEqual(["metal-2"]);
    hand.drag([120, 50], [130, 80], [140, 100]);
    expect(placesOf(hand)).toEqual([
      [20, 50],
      [140, 100],
      [200, 0],
    ]);
    expect(selection()).toEqual(["metal-2"]);
  });

  it("goes in and out of a selection whole, by Shift and by a box", () => {
    const hand = grouped();
    const selection = () => hand.view.getState().selection;
    hand.click(200, 0);
    hand.click(0, 0, { shift: true });
    expect(selection()).toEqual(["metal-3", "metal-1", "metal-2"]);
    hand.click(100, 0, { shift: true });
    expect(selection()).toEqual(["metal-3"]);
    hand.drag([-20, 20], [-10, 0], [20, -20]);
    expect(selection()).toEqual(["metal-1", "metal-2"]);
  });
});

describe("a locked element", () => {
  it("is passed over by presses and boxes, and says so; it has no handles", () => {
    const line = {
      id: "fence-1",
      kind: "fence",
      path: {
        closed: false,
        vertices: [
          [0, 50],
          [200, 50],
        ],
      },
    };
    const hand = handAt(siteWith([...posts, line], { arrangement: { locked: ["metal-1", "fence-1"] } }));
    hand.click(0, 0);
    expect(hand.view.getState().selection).toEqual([]);
    expect(hand.said()).toBe("Post 1 is locked: find it in the outline to unlock it.");
    hand.drag([-20, 70], [0, 0], [220, -20]);
    expect(hand.view.getState().selection).toEqual(["metal-2", "metal-3"]);
    hand.view.getState().select(["fence-1"]);
    expect(hand.host.overlay()).toEqual([]);
    hand.drag([0, 50], [0, 60], [0, 90]);
    expect(hand.element("fence-1")).toEqual(line);
  });
});

describe("what is not drawn", () => {
  it("cannot be picked, draws no pointer to itself, and what lies beneath it can", () => {
    const over = post("metal-4", 0, 0);
    const hand = handAt(siteWith([...posts, over], { arrangement: { hidden: ["metal-4", "metal-3"] } }));
    hand.click(0, 0);
    expect(hand.view.getState().selection).toEqual(["metal-1"]);
    hand.click(200, 0);
    expect(hand.view.getState().selection).toEqual([]);
    hand.drag([-20, 20], [0, 0], [220, -20]);
    expect(hand.view.getState().selection).toEqual(["metal-1", "metal-2"]);
  });

  it("as a part, neither", () => {
    const hand = handAt(siteWith(posts));
    const about = (element: string) => ({ ...finding(element, "680.26(B)(7)"), element });
    hand.report = { findings: posts.map(({ id }) => about(id)), ties: [] } as unknown as Report;
    hand.click(0, 0);
    expect(hand.view.getState().selection).toEqual(["metal-1"]);
    hand.view.getState().select([]);
    hand.view.getState().setHiddenParts(["fixed-metal"]);
    hand.click(0, 0);
    expect(hand.view.getState().selection).toEqual([]);
  });
});
