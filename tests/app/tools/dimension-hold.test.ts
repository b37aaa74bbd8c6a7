/** Dimensions picked on the sheet by pointer and finger. Our own design, no source; figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import type { Dimension } from "../../../rules/site/site.ts";
import { DECK, handAt, siteWith } from "./hand.ts";

const fence = {
  id: "fence-1",
  kind: "fence",
  path: {
    vertices: [
      [0, 160],
      [240, 160],
    ],
    closed: false,
  },
};
const on = (element: string, ref: string, corner: number, at: readonly number[]) => ({ element, ref, corner, at });
/** Along the upper edge of the deck, 24 in. above it; one over the deck itself; one on the fence. */
const dimensions = [
  {
    id: "dimension-1",
    from: on("deck-1", "outline", 3, [0, 120]),
    to: on("deck-1", "outline", 2, [240, 120]),
    offset: 24,
  },
  {
    id: "dimension-2",
    from: on("deck-1", "outline", 0, [0, 0]),
    to: on("deck-1", "outline", 1, [240, 0]),
    offset: 60,
    direction: "across",
  },
  {
    id: "dimension-3",
    from: on("fence-1", "path", 0, [0, 160]),
    to: on("fence-1", "path", 1, [240, 160]),
    offset: 0,
  },
] as unknown as Dimension[];

const yard = () => handAt(siteWith([DECK, fence], { dimensions }));
const picked = (hand: ReturnType<typeof yard>) => hand.view.getState().dimension;

describe("a dimension on the sheet", () => {
  it("is picked at its line or its figure; nothing else is selected then, and it is let go of as anything else", () => {
    const hand = yard();
    hand.click(40, 148);
    expect([picked(hand), hand.view.getState().selection]).toEqual(["dimension-1", []]);
    hand.click(40, -300);
    expect(picked(hand)).toBeNull();
    // The figure stands above the middle of its line, farther than the slack.
    hand.click(130, 74);
    expect(picked(hand)).toBe("dimension-2");
    hand.click(40, 20);
    expect([picked(hand), hand.view.getState().selection]).toEqual([null, ["deck-1"]]);
    hand.click(40, 60, { isTouch: true });
    expect([picked(hand), hand.view.getState().selection]).toEqual(["dimension-2", []]);
    hand.take("fence");
    expect(picked(hand)).toBeNull();
  });

  it("leaves to an element what is as near to it: its edge, its line, its point, and whoever adds", () => {
    const hand = yard();
    hand.click(40, 160);
    expect([picked(hand), hand.view.getState().selection]).toEqual([null, ["fence-1"]]);
    hand.click(40, 60, { shift: true });
    expect([picked(hand), hand.view.getState().selection]).toEqual([null, ["fence-1", "deck-1"]]);
  });

  it("is taken away by Delete or its button, as one step that undo brings back", () => {
    for (const key of ["Delete", "Backspace"]) {
      const hand = yard();
      hand.click(40, 60);
      expect(hand.host.state.getState().entry?.buttons?.map((button) => button.key)).toEqual(["Delete"]);
      if (key === "Delete") hand.host.press(key);
      else expect(hand.key(key)).toBe(true);
      const left = () => (hand.document.getState().shown.dimensions ?? []).map(({ id }) => id);
      expect(left()).toEqual(["dimension-1", "dimension-3"]);
      expect(hand.host.overlay()).toEqual([]);
      expect(hand.document.getState().history.past.map(({ label }) => label)).toEqual(["Take a dimension away"]);
      hand.document.getState().undo();
      expect(left()).toHaveLength(3);
    }
  });

  it("has its line pulled, or laid as far away as is typed, on its own side", () => {
    const hand = yard();
    hand.drag([40, 144], [50, 160], [60, 180]);
    const offset = (at: number) => hand.document.getState().shown.dimensions?.[at]?.offset;
    expect(offset(0)).toBe(60);
    expect(hand.document.getState().history.past.map(({ label }) => label)).toEqual(["Move a dimension"]);
    expect(hand.type({ away: "3'" })).toBe(true);
    expect(offset(0)).toBe(36);
    // Below what it measures it stays across.
    hand.drag([40, 60], [40, 0], [40, -36]);
    expect(hand.document.getState().shown.dimensions?.[1]).toMatchObject({ offset: -36, direction: "across" });
    hand.type({ away: "24in" });
    expect(offset(1)).toBe(-24);
  });

  it("springs back where the pull is given up, and is picked no more once it is gone", () => {
    const hand = yard();
    hand.down(40, 60);
    hand.move(40, 0);
    expect(hand.document.getState().shown.dimensions?.[1]?.offset).not.toBe(60);
    hand.host.cancel();
    expect(hand.document.getState().shown.dimensions?.[1]?.offset).toBe(60);
    hand.up(40, 0);
    hand.document.getState().edit(deleteElements(["deck-1"]));
    expect(hand.key("Delete")).toBe(false);
    expect(hand.host.overlay()).toEqual([]);
  });

  it("has its bar only while it is picked, however it is let go of, and shows what undo has changed", () => {
    const hand = yard();
    const shown = () => hand.host.state.getState().entry?.fields[0]?.shown ?? null;
    hand.click(40, 60);
    expect(shown()).toBe(`5' 0"`);
    hand.view.getState().pickDimension(null);
    expect(shown()).toBeNull();
    hand.click(40, 60);
    hand.view.getState().select(["deck-1"]);
    expect(shown()).toBeNull();
    hand.click(40, 60);
    hand.type({ away: "3'" });
    hand.document.getState().undo();
    expect(shown()).toBe(`5' 0"`);
    hand.key("Delete");
    // Undo brings it back as it was, and leaves to whoever works what is picked next.
    hand.document.getState().undo();
    expect([picked(hand), shown()]).toEqual([null, null]);
  });

  it("stays picked when two fingers move the sheet", () => {
    const hand = yard();
    hand.click(40, 60);
    hand.down(40, 20, { isTouch: true });
    hand.host.abandonPress();
    expect(picked(hand)).toBe("dimension-2");
  });
});
