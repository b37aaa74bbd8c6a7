/** Mirroring over a line that is drawn by hand. Our own design, no source; places are arithmetic. */
import { describe, expect, it, vi } from "vitest";
import { corners, DECK, type Hand, handAt, siteWith } from "./hand.ts";

const deck = { ...DECK, name: "Deck" };
const pump = { id: "pump-1", kind: "equipment", unit: "pump", at: [20, 60] };

async function mirroring(...ids: string[]): Promise<Hand> {
  const hand = handAt(siteWith([deck, pump]));
  hand.view.getState().select(ids);
  hand.take("mirror");
  await vi.dynamicImportSettled();
  return hand;
}

const at = (hand: Hand, id: string) => (hand.element(id) as unknown as { at: number[] }).at;
const labels = (hand: Hand) => hand.document.getState().history.past.map(({ label }) => label);
const free = { alt: true };

describe("mirroring over a drawn line", () => {
  it("takes two presses or one pull, shows before what it makes, and is one step", async () => {
    const clicked = await mirroring("pump-1");
    clicked.click(100, 0, free);
    clicked.move(100, 90, free);
    expect(clicked.host.overlay()).toContainEqual({ kind: "handle", at: [180, 60], look: "placed" });
    clicked.click(100, 90, free);
    const pulled = await mirroring("pump-1");
    pulled.down(100, 0, free);
    pulled.move(100, 50, free);
    pulled.up(100, 90, free);
    for (const hand of [clicked, pulled]) {
      expect(at(hand, "pump-1")).toEqual([180, 60]);
      expect(labels(hand)).toEqual(["Mirror pump 1"]);
      expect(hand.view.getState().tool).toBe("select");
      hand.document.getState().undo();
      expect(at(hand, "pump-1")).toEqual([20, 60]);
    }
  });

  it("keeps the original where asked, and selects the copy", async () => {
    const hand = await mirroring("deck-1");
    hand.key("k");
    hand.click(0, -60, free);
    hand.click(90, -60, free);
    expect(hand.document.getState().shown.elements).toHaveLength(3);
    expect(hand.element("surface-1")).toMatchObject({ name: "Deck 2" });
    const heights = corners(hand.element("surface-1")).map(([, y = 0]) => y);
    expect([Math.min(...heights), Math.max(...heights)]).toEqual([-240, -120]);
    expect(hand.view.getState().selection).toEqual(["surface-1"]);
  });

  it("takes the direction of the line as typed, and the whole by keys", async () => {
    const hand = await mirroring("pump-1");
    hand.click(100, 0, free);
    hand.move(300, 40, free);
    expect(hand.type({ bearing: "90" })).toBe(true);
    expect(at(hand, "pump-1")).toEqual([180, 60]);
    const keyed = await mirroring("pump-1");
    keyed.key("ArrowUp");
    keyed.key("Enter");
    keyed.key("ArrowUp", true);
    keyed.key("Enter");
    expect([keyed.said(), ...labels(keyed)]).toEqual([null, "Mirror pump 1"]);
  });

  it("asks what is mirrored where nothing is selected; its beginning is taken back by undo's key and by Escape", async () => {
    const hand = await mirroring();
    hand.click(600, 600);
    expect(hand.said()).toBe("Press on what is mirrored first.");
    hand.click(20, 60);
    expect(hand.view.getState().selection).toEqual(["pump-1"]);
    hand.click(100, 0, free);
    hand.host.takeBack();
    hand.click(200, 0, free);
    expect(hand.host.cancel()).toBe(true);
    hand.click(100, 0, free);
    // One place twice is no line.
    hand.click(100, 0, free);
    expect([hand.said(), labels(hand)]).toEqual(["A line goes from one place to another.", []]);
    hand.click(100, 50, free);
    expect(at(hand, "pump-1")).toEqual([180, 60]);
  });

  it("has a bar once something is chosen elsewhere, as in the outline, and none when that is let go of", async () => {
    const hand = await mirroring();
    const action = () => hand.host.state.getState().entry?.action ?? null;
    hand.view.getState().select(["pump-1"]);
    expect(action()).toBe("Begin the line");
    hand.view.getState().select([]);
    expect(action()).toBeNull();
  });

  it("keeps the original from the start where the form asked for that", async () => {
    const hand = handAt(siteWith([deck, pump]));
    hand.view.getState().select(["pump-1"]);
    hand.take("mirror");
    hand.host.key({ key: "K", shift: false });
    await vi.dynamicImportSettled();
    expect(hand.host.state.getState().entry?.buttons?.[0]).toMatchObject({ isPressed: true });
    hand.click(100, 0, free);
    hand.click(100, 90, free);
    expect([at(hand, "pump-1"), at(hand, "equipment-1")]).toEqual([
      [20, 60],
      [180, 60],
    ]);
  });
});
