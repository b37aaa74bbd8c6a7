/** Measuring, dimensions, offsets and cuts by hand, without a screen. Figures are arithmetic. */
import { describe, expect, it, vi } from "vitest";
import type { ToolId } from "../../../app/view/view-store.ts";
import { corners, DECK, type Hand, handAt, siteWith } from "./hand.ts";

const deck = { ...DECK, name: "Deck" };
const fence = {
  id: "fence-1",
  kind: "fence",
  name: "Run",
  path: {
    vertices: [
      [0, -100],
      [240, -100],
    ],
    closed: false,
  },
};

async function with_(tool: ToolId, ...ids: string[]): Promise<Hand> {
  const hand = handAt(siteWith([deck, fence]));
  hand.view.getState().select(ids);
  hand.take(tool);
  await vi.dynamicImportSettled();
  return hand;
}

const labels = (hand: Hand) => hand.document.getState().history.past.map(({ label }) => label);

describe("measuring", () => {
  it("says length and direction between two places, snapped, and keeps nothing", async () => {
    const hand = await with_("measure");
    hand.click(2, 118);
    hand.move(238, -97);
    expect(hand.labels()).toEqual([`27' 1 9/16" at 317.5 deg`, `20' 0" across, 18' 4" up`, "end of Run"]);
    hand.click(238, -97);
    hand.move(500, 500);
    expect(hand.labels()).toEqual([`27' 1 9/16" at 317.5 deg`, `20' 0" across, 18' 4" up`]);
    expect(labels(hand)).toEqual([]);
  });

  it("works in one pull, and by the crosshair with the words spoken", async () => {
    const hand = await with_("measure");
    hand.drag([0, 0], [100, 0], [240, 0]);
    expect(hand.labels()).toEqual([`20' 0" at 0 deg`]);
    hand.key("ArrowRight");
    hand.key("Enter");
    hand.key("ArrowRight", true);
    hand.key("Enter");
    expect(hand.host.state.getState().announcement).toBe(`1' 0" at 0 deg.`);
  });

  it("goes square to a side", async () => {
    const hand = await with_("measure");
    hand.click(120, 60);
    hand.move(124, -98);
    expect(hand.labels()).toContain("middle of a side of Run");
    hand.click(100, 40, { alt: true });
    hand.click(60, 40, { alt: true });
    hand.move(63, -98);
    expect(hand.labels().at(-1)).toMatch(/square to side of Run/);
  });
});

describe("measuring by what is typed alone", () => {
  it("takes a length and a direction: one of them measures nothing", async () => {
    const hand = await with_("measure");
    hand.key("ArrowRight");
    hand.key("Enter");
    expect(hand.type({ length: "10'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/a length and a direction/);
    expect(hand.type({ length: "10'", bearing: "90" })).toBe(true);
    expect(hand.labels()).toEqual([`10' 0" at 90 deg`]);
  });
});

describe("a dimension", () => {
  it("is drawn by three clicks, stays on its corners, and is one step", async () => {
    const hand = await with_("dimension");
    hand.click(239, 1);
    hand.click(241, 119);
    hand.click(280, 60);
    const [dimension] = hand.document.getState().shown.dimensions ?? [];
    expect(dimension).toMatchObject({
      from: { element: "deck-1", corner: 1 },
      to: { element: "deck-1", corner: 2 },
    });
    expect(labels(hand)).toEqual([`Draw dimension 10' 0"`]);
    expect(hand.view.getState().tool).toBe("dimension");
  });

  it("takes how far its line lies away, and Backspace takes an end back", async () => {
    const hand = await with_("dimension");
    hand.click(0, 0);
    hand.click(240, 0);
    hand.key("Backspace");
    expect(hand.host.state.getState().entry).toBeNull();
    hand.click(240, 0);
    hand.move(120, -30);
    hand.type({ away: "3'" });
    expect(hand.document.getState().shown.dimensions?.[0]?.offset).toBe(-36);
    expect(hand.host.cancel()).toBe(false);
  });
});

describe("offsetting", () => {
  it("draws at the typed distance on the side that is pointed to", async () => {
    const hand = await with_("offset", "deck-1");
    hand.move(300, 60);
    expect(hand.labels()).toEqual([`5' 0" outside`]);
    hand.host.press("a");
    expect(hand.type({ distance: "4'" })).toBe(true);
    expect(corners(hand.element("surface-1")).map(([x, y]) => [x, y])).toEqual(
      expect.arrayContaining([
        [-48, -48],
        [288, -48],
        [288, 168],
        [-48, 168],
      ]),
    );
    expect(hand.view.getState()).toMatchObject({ selection: ["surface-1"], tool: "select" });
  });

  it("without a selection picks first; says why nothing fits inside", async () => {
    const hand = await with_("offset");
    hand.click(120, 2);
    expect(hand.view.getState().selection).toEqual(["deck-1"]);
    hand.move(120, 60);
    expect(hand.labels().join()).toMatch(/Nothing is left 5' 0" inside/);
    hand.click(120, 24);
    expect(labels(hand)).toEqual(["Offset concrete surface, Deck"]);
  });
});

describe("cutting", () => {
  it("a line where it is clicked", async () => {
    const hand = await with_("split");
    hand.move(121, -98);
    expect(hand.labels()).toEqual(["cut Run here"]);
    hand.click(121, -98);
    expect(corners(hand.element("fence-1"))).toEqual([
      [0, -100],
      [120, -100],
    ]);
    expect(hand.view.getState()).toMatchObject({ selection: ["fence-1", "fence-2"], tool: "select" });
  });

  it("an outline at both ends of the cut; elsewhere it says what to do", async () => {
    const hand = await with_("split");
    hand.click(120, 1);
    hand.click(500, 500);
    expect(hand.said()).toBe("End the cut on the edge of Deck.");
    hand.click(121, 119);
    expect(corners(hand.element("deck-1"))).toHaveLength(4);
    expect(hand.document.getState().shown.elements).toHaveLength(3);
    expect(labels(hand)).toHaveLength(1);
  });
});
