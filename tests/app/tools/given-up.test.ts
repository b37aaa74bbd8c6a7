/** Drawings that were given up before they were ended. Our own design, no source. */
import { describe, expect, it, vi } from "vitest";
import { deferredTool } from "../../../app/tools/deferred-tool.ts";
import type { Desk, Key, Pointer, Tool } from "../../../app/tools/tool.ts";
import { createViewStore } from "../../../app/view/view-store.ts";
import { corners, handAt, siteWith } from "./hand.ts";

const FILE = { name: "", saved: null };

describe("a drawing that is given up", () => {
  it("by Escape is taken up again, with its corners, bends and what comes next", () => {
    const hand = handAt();
    hand.take("pool-outline");
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.key("a");
    hand.click(240, 120, { alt: true });
    hand.host.cancel();
    expect(hand.view.getState().notice).toMatchObject({ ways: ["take-up-drawing"] });
    expect(hand.host.canTakeUp).toBe(true);
    hand.host.takeUp();
    hand.click(0, 120, { alt: true });
    hand.key("Enter");
    const [, second, ...others] = corners(hand.element("pool-1"));
    // Smooth from the side along x to a place straight above: half a circle.
    expect(second?.[2]).toBeCloseTo(1, 9);
    expect(others).toHaveLength(2);
    expect(hand.host.canTakeUp).toBe(false);
  });

  it("for another tool comes back with its own", () => {
    const hand = handAt();
    hand.take("fence");
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.take("building");
    hand.host.takeUp();
    expect(hand.view.getState().tool).toBe("fence");
    hand.click(240, 120, { alt: true });
    hand.key("Enter");
    expect(corners(hand.element("fence-1"))).toHaveLength(3);
  });

  it("for the one that was given up before changes places with it", () => {
    const hand = handAt();
    hand.take("fence");
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.take("wall");
    hand.click(0, 300, { alt: true });
    hand.click(240, 300, { alt: true });
    hand.host.takeUp();
    hand.key("Enter");
    hand.host.takeUp();
    hand.key("Enter");
    expect(hand.document.getState().shown.elements.map(({ kind }) => kind)).toEqual(["fence", "wall"]);
  });

  it("so is one of flowing curves, although its tool has to be fetched", async () => {
    const outlines = [];
    for (const isInterrupted of [false, true]) {
      const hand = handAt();
      hand.take("pool-curves");
      await vi.dynamicImportSettled();
      hand.click(0, 0, { alt: true });
      hand.click(100, 0, { alt: true });
      if (isInterrupted) {
        hand.take("select");
        hand.host.takeUp();
        await vi.dynamicImportSettled();
      }
      hand.click(150, 150, { alt: true });
      hand.click(0, 150, { alt: true });
      hand.key("Enter");
      outlines.push(corners(hand.element("pool-1")));
    }
    expect(outlines[1]).toEqual(outlines[0]);
  });
});

describe("a drawing whose tool is still being fetched", () => {
  const begun = {
    drawn: {
      points: [
        [0, 0],
        [100, 0],
      ],
      start: null,
    },
    earlier: [],
  };
  const coming = () => new Promise<never>(() => undefined);

  it("stays what is under way, so that it is kept and can be given up and taken up again", () => {
    const tool = deferredTool("pool-curves", {} as Desk, coming);
    tool.takeUp?.(begun);
    expect(tool.begun?.()).toBe(begun);
    expect(tool.cancel()).toBe(true);
    expect(tool.begun?.()).toBeNull();
    expect(tool.cancel()).toBe(false);
  });
});

describe("a drawing whose tool could not be fetched", () => {
  const begun = { corners: [[0, 0]] };

  function deskOf(said: string[]): Desk {
    const view = createViewStore();
    view.getState().setTool("pool-curves");
    return { view, complain: (reason: string) => said.push(reason), renew: () => undefined } as unknown as Desk;
  }

  it("stays, is asked for again by a press on the sheet, and goes on once the tool is there", async () => {
    const said: string[] = [];
    const taken: unknown[] = [];
    let asked = 0;
    const tool = deferredTool("pool-curves", deskOf(said), async () => {
      asked++;
      if (asked < 3) throw new Error("no network");
      return () => ({ begun: () => null, takeUp: (drawing: unknown) => taken.push(drawing) }) as unknown as Tool;
    });
    tool.takeUp?.(begun);
    await expect.poll(() => said.length).toBe(1);
    expect(said[0]).toMatch(/drawing is kept.*press on the sheet/);
    expect([tool.isReady?.(), tool.begun?.()]).toEqual([true, begun]);
    const press = { at: [0, 0] } as unknown as Pointer;
    tool.pointerDown(press);
    expect(tool.isReady?.()).toBe(false);
    await expect.poll(() => said.length).toBe(2);
    expect(tool.begun?.()).toBe(begun);
    expect(tool.key({ key: "Enter" } as Key)).toBe(true);
    await expect.poll(() => taken).toEqual([begun]);
    expect(asked).toBe(3);
  });
});

describe("nothing is offered", () => {
  it("after one corner, after an end, or where nothing was drawn", () => {
    const hand = handAt();
    hand.take("fence");
    hand.host.cancel();
    hand.click(0, 0, { alt: true });
    hand.host.cancel();
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.key("Enter");
    expect(hand.document.getState().shown.elements).toHaveLength(1);
    expect(hand.host.canTakeUp).toBe(false);
    expect(hand.view.getState().notice).toBeNull();
  });

  it("on another site", () => {
    const hand = handAt();
    hand.take("fence");
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.document.getState().open(siteWith(), FILE);
    hand.take("select");
    expect(hand.host.canTakeUp).toBe(false);
    hand.take("fence");
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.host.cancel();
    hand.document.getState().open(siteWith(), FILE);
    expect(hand.host.canTakeUp).toBe(false);
  });
});
