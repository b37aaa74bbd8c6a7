import { describe, expect, it } from "vitest";
import { DRAWN_AS, type DrawingTool, kindOf } from "../../../app/edits/templates.ts";
import { rectanglePath } from "../../../app/tools/rectangle-path.ts";
import { areaFrom, areaOf } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";
import { corners, handAt, siteWith } from "./hand.ts";

describe("a rectangle", () => {
  it("is drawn by dragging from corner to corner, on the grid, and is then selected", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    hand.drag([1, 2], [100, 50], [193, 385]);
    // One pixel to the inch: the step that a hand can tell apart is 12 in.
    expect(corners(hand.element("pool-1"))).toEqual([
      [0, 0],
      [192, 0],
      [192, 384],
      [0, 384],
    ]);
    expect(hand.view.getState()).toMatchObject({ selection: ["pool-1"], tool: "select", panel: "element" });
    expect(hand.document.getState().history.past.map((step) => step.label)).toEqual(["Draw pool 1"]);
  });

  it("follows in the document while it is dragged, and Escape leaves exactly what was there", () => {
    const hand = handAt(siteWith([], { name: "Ash Row 3" }));
    const before = hand.document.getState().shown;
    hand.take("pool-rectangle");
    hand.down(0, 0);
    hand.move(120, 240);
    expect(corners(hand.element("pool-1"))).toHaveLength(4);
    expect(hand.labels()).toContain(`10' 0" by 20' 0"`);
    expect(hand.host.cancel()).toBe(true);
    expect(hand.document.getState().shown).toBe(before);
    expect(hand.document.getState().history.past).toEqual([]);
    hand.up(120, 240);
    expect(hand.document.getState().shown).toBe(before);
  });

  it("is drawn by two clicks", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    hand.click(0, 0);
    expect(hand.document.getState().shown.elements).toEqual([]);
    hand.click(240, 120);
    expect(corners(hand.element("pool-1"))[2]).toEqual([240, 120]);
  });

  it("takes its size as typed, toward where the pointer is", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    hand.click(0, 0);
    hand.move(-50, 70);
    expect(hand.type({ width: "16'", length: "32 ft" })).toBe(true);
    expect(corners(hand.element("pool-1"))).toEqual([
      [-192, 0],
      [0, 0],
      [0, 384],
      [-192, 384],
    ]);
  });

  it("is laid in the middle of the view when only its size is typed", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    expect(hand.type({ width: "16'", length: "32'" })).toBe(true);
    expect(corners(hand.element("pool-1"))[0]).toEqual([-96, -192]);
  });

  it("says what is wrong with a typed size and draws nothing", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    expect(hand.type({ width: "16'", length: "wide" })).toBe(false);
    expect(hand.host.state.getState().problems.length).toMatch(/cannot be read as a length/);
    expect(hand.type({ width: "16'", length: "0" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/above zero/);
    expect(hand.document.getState().shown.elements).toEqual([]);
  });
});

describe("an outline", () => {
  it("is closed by a click on its first corner", () => {
    const hand = handAt();
    hand.take("surface");
    hand.click(0, 0);
    hand.click(240, 0);
    hand.click(240, 120);
    hand.click(0, 120);
    hand.move(3, 4);
    expect(hand.labels()).toContain("closes the outline");
    hand.click(3, 4);
    expect(corners(hand.element("surface-1"))).toEqual([
      [0, 0],
      [240, 0],
      [240, 120],
      [0, 120],
    ]);
  });

  it("is closed by Enter and by a double click, which places no corner of its own", () => {
    for (const end of ["Enter", "double"] as const) {
      const hand = handAt();
      hand.take("pool-outline");
      hand.click(0, 0);
      hand.click(240, 0);
      hand.click(240, 120);
      if (end === "Enter") hand.key("Enter");
      else hand.click(240, 120, { isDouble: true });
      expect(corners(hand.element("pool-1"))).toEqual([
        [0, 0],
        [240, 0],
        [240, 120],
      ]);
    }
  });

  it("takes back its last corner, and Escape gives all of it up", () => {
    const hand = handAt();
    hand.take("surface");
    hand.click(0, 0);
    hand.click(240, 0);
    hand.click(240, 120);
    hand.key("Backspace");
    hand.click(240, 240);
    hand.key("Enter");
    expect(corners(hand.element("surface-1"))[2]).toEqual([240, 240]);
    hand.take("surface");
    hand.click(0, 0);
    expect(hand.host.cancel()).toBe(true);
    expect(hand.host.cancel()).toBe(false);
    expect(hand.document.getState().history.past).toHaveLength(1);
  });

  it("bends a side by pulling while its corner is placed: as high as it is pulled from the chord", () => {
    const hand = handAt();
    hand.take("pool-outline");
    hand.click(0, 0);
    // From (0, 0) to (240, 0); pulled 60 in. below: the bow's height is 60, its bulge 60 / 120 (arithmetic).
    hand.drag([240, 0], [240, -30], [120, -60]);
    hand.click(240, 240);
    hand.click(0, 240);
    hand.key("Enter");
    expect(corners(hand.element("pool-1"))[0]).toEqual([0, 0, 0.5]);
  });

  it("goes on in an arc that leaves smoothly from the side before", () => {
    const hand = handAt();
    hand.take("pool-outline");
    hand.click(0, 0);
    hand.click(240, 0);
    hand.key("a");
    hand.click(240, 120);
    hand.key("a");
    hand.click(0, 120);
    hand.key("Enter");
    // A half circle of 60 in. radius: 240 x 120 and half of pi 60 squared (arithmetic).
    const { outline } = hand.element("pool-1") as unknown as { outline: PathData };
    expect(outline.vertices[1]?.[2]).toBeCloseTo(1, 12);
    expect(areaOf(areaFrom(outline))).toBeCloseTo(240 * 120 + (Math.PI * 3600) / 2, 6);
  });

  it("that would cross itself is refused with the corners, and stays to be mended", () => {
    const hand = handAt();
    hand.take("surface");
    hand.click(0, 0);
    hand.click(240, 240);
    hand.click(240, 0);
    hand.click(0, 240);
    hand.key("Enter");
    expect(hand.said()).toMatch(/cross itself between corner 1 and corner 3/);
    expect(hand.document.getState().shown.elements).toEqual([]);
    hand.key("Backspace");
    hand.key("Enter");
    expect(corners(hand.element("surface-1"))).toHaveLength(3);
  });

  it("is a rectangle when it is dragged from its first corner", () => {
    const hand = handAt();
    hand.take("building");
    hand.down(0, 0);
    hand.move(240, 118);
    expect(hand.labels()).toContain(`20' 0" by 10' 0"`);
    hand.up(240, 118);
    expect(corners(hand.element("building-1"))).toEqual([
      [0, 0],
      [240, 0],
      [240, 120],
      [0, 120],
    ]);
    hand.take("building");
    hand.drag([0, 0], [240, 2]);
    hand.click(240, 120);
    hand.click(0, 120);
    hand.key("Enter");
    expect(corners(hand.element("building-2"))).toHaveLength(3);
  });

  it("needs three corners", () => {
    const hand = handAt();
    hand.take("surface");
    hand.click(0, 0);
    hand.click(240, 0);
    hand.host.finish();
    expect(hand.said()).toMatch(/at least three corners/);
    expect(hand.document.getState().shown.elements).toEqual([]);
  });

  it("gives up only the press that a second finger interrupts", () => {
    const hand = handAt();
    hand.take("surface");
    hand.click(0, 0);
    hand.down(240, 0, { isTouch: true });
    hand.host.abandonPress();
    hand.click(240, 120);
    hand.click(0, 120);
    hand.key("Enter");
    expect(corners(hand.element("surface-1"))).toEqual([
      [0, 0],
      [240, 120],
      [0, 120],
    ]);
  });
});

describe("a line", () => {
  it("is ended by Enter and stays open", () => {
    const hand = handAt();
    hand.take("fence");
    hand.click(0, 0);
    hand.click(240, 0);
    hand.key("Enter");
    expect(hand.element("fence-1")).toMatchObject({ path: { closed: false } });
  });

  it("closes on its first point, where its kind may be closed", () => {
    for (const [tool, closed] of [
      ["fence", true],
      ["conductor", true],
      ["overhead-line", false],
      ["underground-run", false],
    ] as const) {
      const hand = handAt();
      hand.take(tool);
      hand.click(0, 0);
      hand.click(240, 0);
      hand.click(240, 240);
      hand.click(1, 1);
      hand.key("Enter");
      expect((hand.element(`${tool}-1`) as unknown as { path: PathData }).path.closed, tool).toBe(closed);
    }
  });

  it("of a door or window ends at its second point", () => {
    const hand = handAt();
    hand.take("opening");
    hand.click(0, 0);
    hand.click(36, 0);
    expect(corners(hand.element("opening-1"))).toHaveLength(2);
  });

  it("overhead never takes a bend, which would be read as a height", () => {
    const hand = handAt();
    hand.take("overhead-line");
    hand.click(0, 0);
    hand.drag([240, 0], [120, -60]);
    expect(hand.key("a")).toBe(false);
    hand.key("Enter");
    expect(corners(hand.element("overhead-line-1"))).toEqual([
      [0, 0],
      [240, 0],
    ]);
  });
});

describe("every drawing tool", () => {
  it("draws an element of its kind that the document takes, by pointer", async () => {
    for (const tool of Object.keys(DRAWN_AS) as DrawingTool[]) {
      const pool = { id: "pool-1", kind: "pool", outline: rectanglePath([-60, -60], [240, 240]) };
      const hand = handAt(siteWith(tool === "inset" ? [pool] : []));
      hand.take(tool);
      // The code of some tools is fetched when they are taken.
      await expect.poll(() => hand.host.state.getState().entry, { message: tool }).not.toBeNull();
      if (DRAWN_AS[tool] === "point" || tool === "pool-shape") hand.click(24, 36);
      else if (tool === "pool-rectangle") hand.drag([0, 0], [120, 240]);
      else {
        hand.click(0, 0);
        hand.click(120, 0);
        if (tool !== "opening") {
          hand.click(120, 120);
          hand.key("Enter");
        }
      }
      const element = hand.document.getState().history.present.elements.at(-1);
      expect(element?.kind, tool).toBe(kindOf(tool));
      expect(hand.view.getState().tool).toBe("select");
    }
  });
});
