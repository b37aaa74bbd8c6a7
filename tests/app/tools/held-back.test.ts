/** What is pressed and typed while a tool's code is still being fetched. Our own design, no source; figures are arithmetic. */
import { describe, expect, it, vi } from "vitest";
import type { ToolId } from "../../../app/view/view-store.ts";
import { corners, type Hand, handAt, siteWith } from "./hand.ts";

vi.mock("../../../app/tools/split-tool.ts", () => {
  throw new Error("no network");
});

const FILE = { name: "", saved: null };

/** A hand that has just taken a tool, whose code cannot be there before the test waits for it. */
function justTook(tool: ToolId): Hand {
  const hand = handAt(siteWith());
  hand.take(tool);
  return hand;
}

describe("a tool whose code is still being fetched", () => {
  it("has the presses that came meanwhile, in their order", async () => {
    const hand = justTook("pool-curves");
    for (const [x, y] of [
      [0, 0],
      [200, 0],
      [200, 150],
      [0, 150],
    ] as const) {
      hand.click(x, y, { alt: true });
    }
    hand.key("Enter");
    await vi.dynamicImportSettled();
    expect(corners(hand.element("pool-1")).length).toBeGreaterThan(3);
  });

  it("has a pull, and figures typed after it", async () => {
    const hand = justTook("measure");
    hand.click(0, 0, { alt: true });
    hand.key("1");
    hand.key("2");
    await vi.dynamicImportSettled();
    expect(hand.host.state.getState().texts).toEqual({ length: "12" });
    const other = justTook("measure");
    other.drag([0, 0], [100, 0], [240, 0]);
    await vi.dynamicImportSettled();
    expect(other.labels()).toEqual([`20' 0" at 0 deg`]);
  });

  it("has the crosshair moved by keys", async () => {
    const hand = justTook("measure");
    for (const key of ["ArrowRight", "Enter"]) hand.key(key);
    hand.key("ArrowRight", true);
    hand.key("Enter");
    await vi.dynamicImportSettled();
    expect(hand.host.state.getState().announcement).toBe(`1' 0" at 0 deg.`);
  });

  it("shows meanwhile where it was pressed, and says that it is getting ready", async () => {
    const hand = justTook("dimension");
    hand.move(10, 10);
    expect(hand.host.overlay()).toEqual([]);
    hand.click(10, 10);
    expect(hand.host.overlay()).toContainEqual({ kind: "handle", at: [10, 10], look: "placed" });
    expect(hand.labels()).toEqual(["The tool is getting ready"]);
    expect(hand.host.state.getState().announcement).toBe("The tool is getting ready.");
    await vi.dynamicImportSettled();
    expect(hand.labels()).not.toContain("The tool is getting ready");
  });

  it("gives a key that it has no use for to whoever waits for it, and what comes after that to the next tool", async () => {
    const hand = justTook("measure");
    const again = () => {
      expect(hand.host.key({ key: "y", shift: false })).toBe(false);
      hand.take("fence");
    };
    expect(hand.host.key({ key: "y", shift: false }, again)).toBe(true);
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.key("Enter");
    await vi.dynamicImportSettled();
    expect(corners(hand.element("fence-1"))).toHaveLength(2);
  });

  it("takes back the last of it where undo is asked for, and nothing of the site", async () => {
    const hand = justTook("measure");
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    expect(hand.host.state.getState().takesBack).toBe("Take back the last press");
    hand.host.takeBack();
    hand.move(60, 0, { alt: true });
    await vi.dynamicImportSettled();
    expect(hand.labels()).toEqual([`5' 0" at 0 deg`]);
    expect(hand.host.state.getState().takesBack).toBe("Take back where it begins");
  });

  it("keeps no key that leads through the page or is only held down, and no press that becomes two fingers", async () => {
    const hand = justTook("measure");
    for (const key of ["Tab", "F5", "F6", "Shift", "Control"]) expect(hand.key(key)).toBe(false);
    expect(hand.host.state.getState().takesBack).toBeNull();
    hand.down(10, 10, { isTouch: true });
    hand.host.abandonPress();
    expect(hand.host.overlay()).toEqual([]);
    hand.click(0, 0, { alt: true });
    // No press is under way: what was pressed and let go stays.
    hand.host.abandonPress();
    await vi.dynamicImportSettled();
    hand.move(120, 0, { alt: true });
    expect(hand.labels()).toEqual([`10' 0" at 0 deg`]);
  });

  it("is let go with all that by Escape; for another tool or site, that is said", async () => {
    const hand = justTook("measure");
    hand.click(0, 0);
    expect(hand.host.key({ key: "Escape", shift: false })).toBe(false);
    expect(hand.host.cancel()).toBe(true);
    expect(hand.host.cancel()).toBe(false);
    await vi.dynamicImportSettled();
    expect(hand.labels()).toEqual([]);

    const other = justTook("measure");
    other.move(3, 3);
    other.take("select");
    expect(other.said()).toBeNull();
    other.take("dimension");
    other.click(0, 0);
    other.document.getState().open(siteWith(), FILE);
    expect(other.said()).toContain("given up");
    expect(other.host.state.getState().announcement).toBe("");
    await vi.dynamicImportSettled();
    expect(other.labels()).toEqual([]);
  });

  it("is laid down where it cannot be fetched, so that it can be taken again; no key of its own deletes anything then", async () => {
    const hand = handAt(siteWith([{ id: "pump-1", kind: "equipment", unit: "pump", at: [20, 60] }]));
    hand.view.getState().select(["pump-1"]);
    const again = vi.fn();
    hand.take("split");
    hand.host.key({ key: "Delete", shift: false }, again);
    await expect.poll(() => hand.view.getState().tool).toBe("select");
    expect(hand.said()).toContain("take it again");
    expect(again).not.toHaveBeenCalled();
    hand.take("measure");
    await vi.dynamicImportSettled();
    expect(hand.said()).toBeNull();

    // Nobody waits any more for one that was laid down meanwhile.
    const other = justTook("split");
    other.take("fence");
    await vi.dynamicImportSettled();
    expect([other.said(), other.view.getState().tool]).toEqual([null, "fence"]);
  });
});
