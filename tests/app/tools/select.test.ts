import { describe, expect, it } from "vitest";
import type { Pointer } from "../../../app/tools/tool.ts";
import type { Report, TieReport } from "../../../rules/report.ts";
import { corners, DECK, handAt, siteWith } from "./hand.ts";

const deck = { ...DECK, name: "Deck" };
const fence = {
  id: "fence-1",
  kind: "fence",
  path: {
    vertices: [
      [0, -100],
      [240, -100],
    ],
    closed: false,
  },
};
const pump = { id: "pump-1", kind: "equipment", unit: "pump", at: [120, 60] };

const yard = () => handAt(siteWith([deck, fence, pump]));

describe("clicking", () => {
  it("selects the nearest thing, the smallest first, and the empty ground selects nothing", () => {
    const hand = yard();
    hand.click(123, 58);
    expect(hand.view.getState().selection).toEqual(["pump-1"]);
    hand.click(60, 60);
    expect(hand.view.getState().selection).toEqual(["deck-1"]);
    hand.click(120, -95);
    expect(hand.view.getState().selection).toEqual(["fence-1"]);
    hand.click(500, 500);
    expect(hand.view.getState().selection).toEqual([]);
    expect(hand.document.getState().history.past).toEqual([]);
  });

  it("with Shift adds to the selection and takes out of it", () => {
    const hand = yard();
    hand.click(120, 60);
    hand.click(60, 30, { shift: true });
    expect(hand.view.getState().selection).toEqual(["pump-1", "deck-1"]);
    hand.click(120, 60, { shift: true });
    expect(hand.view.getState().selection).toEqual(["deck-1"]);
  });

  it("adds elements, not the number of a finding or the proposed tie that lies on them", () => {
    const hand = yard();
    hand.report = { ties: [{ id: "T1", to: [120, 60], present: false }] } as unknown as Report;
    hand.marks.push({ at: [60, 30], finding: "deck rule" });
    hand.view.getState().select(["fence-1"]);
    hand.click(120, 60, { shift: true });
    hand.click(60, 30, { mod: true });
    expect(hand.view.getState().selection).toEqual(["fence-1", "pump-1", "deck-1"]);
    expect(hand.view.getState().finding).toBeNull();
    expect(hand.host.state.getState().offeredTie).toBeNull();
  });

  it("adds by finger too, once that is asked for, until it is let go of or something is drawn", () => {
    const hand = yard();
    hand.click(120, 60, { isTouch: true });
    hand.view.getState().setAdding(true);
    hand.click(60, 30, { isTouch: true });
    expect(hand.view.getState().selection).toEqual(["pump-1", "deck-1"]);
    hand.click(500, 500, { isTouch: true });
    expect(hand.view.getState().selection).toEqual(["pump-1", "deck-1"]);
    hand.click(120, 60, { isTouch: true });
    expect(hand.view.getState().selection).toEqual(["deck-1"]);
    hand.take("fence");
    hand.take("select");
    hand.click(120, 60, { isTouch: true });
    expect(hand.view.getState().selection).toEqual(["pump-1"]);
  });

  it("on one of several selected leaves that one", () => {
    const hand = yard();
    hand.view.getState().select(["deck-1", "pump-1"]);
    hand.click(120, 60);
    expect(hand.view.getState().selection).toEqual(["pump-1"]);
  });

  it("on the number of a finding chooses it; on the ground lets go of it", () => {
    const hand = yard();
    hand.marks.push({ at: [300, 300], finding: "fence rule" });
    hand.click(304, 302);
    expect(hand.view.getState().finding).toBe("fence rule");
    hand.click(500, 500);
    expect(hand.view.getState().finding).toBeNull();
  });

  it("on a proposed tie offers to record it, on a recorded one does not", () => {
    const hand = yard();
    const tie: TieReport = {
      at: [300, 0],
      to: [321, 0],
      between: ["perimeter", "pool-1"],
      present: false,
      recorded: null,
      distanceAlong: 0,
    };
    hand.report = { ties: [tie, { ...tie, to: [400, 0], present: true }] } as unknown as Report;
    hand.click(320, 2);
    expect(hand.host.state.getState().offeredTie).toBe(tie);
    hand.click(400, 0);
    expect(hand.host.state.getState().offeredTie).toBeNull();
  });

  it("is taken back when a second finger comes to move the sheet", () => {
    const hand = yard();
    hand.view.getState().select(["pump-1"]);
    hand.down(120, -100, { isTouch: true });
    hand.host.abandonPress();
    expect(hand.view.getState().selection).toEqual(["pump-1"]);
    hand.down(120, -100, { isTouch: true });
    hand.move(150, -160, { isTouch: true });
    hand.host.abandonPress();
    expect(hand.element("fence-1")).toEqual(fence);
    expect(hand.view.getState().selection).toEqual(["pump-1"]);
  });

  it("is as broad as a finger by touch", () => {
    const hand = yard();
    hand.click(120, -120);
    expect(hand.view.getState().selection).toEqual([]);
    hand.click(120, -120, { isTouch: true });
    expect(hand.view.getState().selection).toEqual(["fence-1"]);
  });
});

describe("dragging", () => {
  it("moves the selection as one step with its name, and undo brings it back", () => {
    const hand = yard();
    hand.drag([120, -98], [130, -104], [121, -147]);
    expect(corners(hand.element("fence-1"))).toEqual([
      [0, -148],
      [240, -148],
    ]);
    expect(hand.document.getState().history.past.map(({ label }) => label)).toEqual(["Move fence 1"]);
    hand.document.getState().undo();
    expect(hand.element("fence-1")).toEqual(fence);
  });

  it("says how far, and Escape returns exactly", () => {
    const hand = yard();
    const before = hand.document.getState().shown;
    hand.down(120, 60);
    hand.move(144, 60);
    expect(hand.labels()).toContain(`2' 0" right`);
    expect(hand.element("pump-1")).toMatchObject({ at: [144, 60] });
    hand.host.cancel();
    expect(hand.document.getState().shown).toBe(before);
    hand.move(300, 60);
    hand.up(300, 60);
    expect(hand.document.getState().shown).toBe(before);
    expect(hand.document.getState().history.past).toEqual([]);
  });

  it("goes straight with Shift and off every snap with Alt", () => {
    const hand = yard();
    hand.down(120, 60);
    hand.move(157.3, 71.9, { shift: true });
    expect(hand.element("pump-1")).toMatchObject({ at: [156, 60] });
    hand.move(157.3, 71.9, { alt: true });
    expect(hand.element("pump-1")).toMatchObject({ at: [157.3, 71.9] });
    hand.up(157.3, 71.9, { alt: true });
  });

  it("stops when the gesture was ended from elsewhere, as by undo", () => {
    const hand = yard();
    hand.drag([120, 60], [144, 60]);
    hand.down(144, 60);
    hand.move(180, 60);
    hand.document.getState().undo();
    hand.move(200, 60);
    hand.up(200, 60);
    // The drag before it stays: one press takes back one thing.
    expect(hand.element("pump-1")).toMatchObject({ at: [144, 60] });
    expect(hand.document.getState().history.past).toHaveLength(1);
    expect(hand.document.getState().history.future).toEqual([]);
  });

  it("a little is a click, not a move", () => {
    const hand = yard();
    hand.drag([120, 60], [122, 61]);
    expect(hand.document.getState().history.past).toEqual([]);
  });

  it("snaps the corner that was nearest to the press to others", () => {
    const hand = yard();
    hand.drag([230, -98], [235, -20], [236, -3]);
    // The fence's right end comes within reach of the deck's lower right corner.
    expect(corners(hand.element("fence-1"))[1]).toEqual([240, 0]);
  });
});

describe("corners and sides of the selected element", () => {
  it("a corner is pulled, in line with its neighbors, with the lengths of its sides", () => {
    const hand = yard();
    hand.click(60, 30);
    hand.down(240, 120);
    hand.move(303, 124);
    expect(hand.labels()).toContain("level with the corner after");
    expect(hand.labels()).toContain(`25' 0"`);
    hand.up(303, 124);
    expect(corners(hand.element("deck-1"))[2]).toEqual([300, 120]);
    expect(hand.document.getState().history.past.map(({ label }) => label)).toEqual([
      "Move a corner of concrete surface, Deck",
    ]);
  });

  it("a move that would make the outline cross itself shows why, springs back and leaves no step", () => {
    const hand = yard();
    hand.click(60, 30);
    hand.down(240, 120);
    hand.move(120, 60);
    hand.move(120, -60);
    expect(hand.labels().join()).toMatch(/cross itself/);
    hand.up(120, -60);
    expect(hand.said()).toMatch(/cross itself/);
    expect(hand.element("deck-1")).toEqual(deck);
    expect(hand.document.getState().history.past).toEqual([]);
    expect(hand.document.getState().refusal).toBeNull();
  });

  it("the middle of a side bends it, settles on a half circle, and straightens it again", () => {
    const hand = yard();
    hand.click(60, 30);
    hand.drag([120, 0], [120, -20], [120, -60]);
    expect(corners(hand.element("deck-1"))[0]).toEqual([0, 0, 0.5]);
    hand.down(120, -60);
    hand.move(120, -118);
    expect(hand.labels().join()).toMatch(/half circle, radius 10' 0"/);
    hand.up(120, -118);
    expect(corners(hand.element("deck-1"))[0]).toEqual([0, 0, 1]);
    hand.drag([120, -120], [120, -50], [120, 2]);
    expect(corners(hand.element("deck-1"))[0]).toEqual([0, 0]);
  });

  it("a double click on a side puts a corner there, which can be pulled at once", () => {
    const hand = yard();
    hand.click(60, 1);
    hand.down(60, 1, { isDouble: true });
    expect(corners(hand.element("deck-1"))).toHaveLength(5);
    hand.move(60, -35);
    hand.up(60, -35);
    expect(corners(hand.element("deck-1"))[1]).toEqual([60, -36]);
  });

  it("a double click inside opens its facts", () => {
    const hand = yard();
    hand.click(120, 90);
    hand.click(120, 90, { isDouble: true });
    expect(hand.view.getState().panel).toBe("element");
    expect(hand.document.getState().history.past).toEqual([]);
  });

  it("Delete takes out the corner in hand; without one the key is left to others", () => {
    const hand = yard();
    hand.click(60, 30);
    expect(hand.key("Delete")).toBe(false);
    hand.click(240, 120);
    expect(hand.key("Delete")).toBe(true);
    expect(corners(hand.element("deck-1"))).toHaveLength(3);
    expect(hand.key("Delete")).toBe(false);
  });

  it("arrow keys move the corner in hand by an inch, by a foot with Shift", () => {
    const hand = yard();
    hand.click(60, 30);
    hand.click(240, 120);
    hand.key("ArrowRight");
    hand.key("ArrowUp", true);
    expect(corners(hand.element("deck-1"))[2]).toEqual([241, 132]);
  });

  it("corners of several selected elements are not offered", () => {
    const hand = yard();
    hand.view.getState().select(["deck-1", "fence-1"]);
    expect(hand.host.overlay()).toEqual([]);
  });
});

describe("a box on the ground", () => {
  it("to the right selects what lies inside it, to the left what it touches", () => {
    const hand = yard();
    hand.drag([-20, -120], [100, 0], [250, 50]);
    expect(hand.view.getState().selection).toEqual(["fence-1"]);
    hand.drag([260, 100], [200, 40], [220, -120]);
    expect(hand.view.getState().selection).toEqual(["deck-1", "fence-1"]);
  });

  it("with Ctrl begins on whatever lies there, moves nothing and adds; so it does once adding was asked for", () => {
    const hand = yard();
    const place = hand.element("deck-1");
    const adds = (held: Partial<Pointer>) => {
      hand.view.getState().select(["fence-1"]);
      // From the deck round the pump that stands on it.
      hand.down(110, 70, held);
      hand.move(120, 60, held);
      hand.up(130, 50, { isTouch: held.isTouch ?? false });
      expect(hand.view.getState().selection).toEqual(["fence-1", "pump-1"]);
    };
    adds({ mod: true });
    hand.view.getState().setAdding(true);
    adds({ isTouch: true });
    hand.view.getState().setAdding(false);
    expect(hand.element("deck-1")).toBe(place);
    hand.click(60, 30, { mod: true });
    expect(hand.view.getState().selection).toEqual(["fence-1", "pump-1", "deck-1"]);
    hand.click(60, 30, { mod: true });
    expect(hand.view.getState().selection).toEqual(["fence-1", "pump-1"]);
  });

  it("what is selected and pressed with Shift is dragged straight; only a click lets go of it", () => {
    const hand = yard();
    hand.view.getState().select(["pump-1", "fence-1"]);
    hand.down(120, 60, { shift: true });
    hand.move(150, 62, { shift: true });
    hand.move(168, 63, { shift: true });
    hand.up(168, 63, { shift: true });
    expect(hand.view.getState().selection).toEqual(["pump-1", "fence-1"]);
    expect(hand.element("pump-1")).toMatchObject({ at: [168, 60] });
    hand.click(168, 60, { shift: true });
    expect(hand.view.getState().selection).toEqual(["fence-1"]);
  });

  it("with Shift adds", () => {
    const hand = yard();
    hand.view.getState().select(["pump-1"]);
    hand.down(-20, -120, { shift: true });
    hand.move(250, -50, { shift: true });
    hand.up(250, -50, { shift: true });
    expect(hand.view.getState().selection).toEqual(["pump-1", "fence-1"]);
  });
});
