/** Keys pressed while the entry bar has them and nothing is typed yet. Our own design, no source. */
import { expect, it, vi } from "vitest";
import { toolKeyFor } from "../../../app/tools/entry-keys.ts";
import type { ToolId } from "../../../app/view/view-store.ts";
import { handAt, siteWith } from "./hand.ts";

const deck = {
  id: "surface-1",
  kind: "surface",
  material: "concrete",
  outline: {
    vertices: [
      [0, 0],
      [120, 0],
      [120, 120],
      [0, 120],
    ],
    closed: true,
  },
};

function drawing() {
  const hand = handAt();
  hand.take("pool-outline");
  hand.click(0, 0);
  hand.click(240, 0);
  const entry = () => {
    const { entry } = hand.host.state.getState();
    if (!entry) throw new Error("nothing can be typed");
    return entry;
  };
  return { hand, entry };
}

it("the letters of arcs and Backspace go to the tool, those of a direction and all figures into the field", () => {
  const { hand, entry } = drawing();
  expect(["a", "R", "t", "Backspace"].map((key) => toolKeyFor(entry(), key, true))).toEqual([
    "a",
    "r",
    "t",
    "Backspace",
  ]);
  expect(["n", "S", "e", "w", "1", "-", ".", "Enter", "Delete"].map((key) => toolKeyFor(entry(), key, true))).toEqual(
    Array(9).fill(null),
  );
  // The other side is only there for an arc by radius.
  expect(toolKeyFor(entry(), "v", true)).toBeNull();
  hand.host.press("r");
  expect(toolKeyFor(entry(), "v", true)).toBe("v");
});

it("what such a key does is said", () => {
  const { hand } = drawing();
  const said = () => hand.host.state.getState().announcement;
  hand.host.press("r");
  expect(said()).toMatch(/arc of the radius/);
  hand.host.press("r");
  expect(said()).toBe("The next side is straight.");
  hand.host.press("Backspace");
  expect(said()).toBe("A corner is taken back: 1 left.");
});

it("what Enter places is a corner of an outline and a point of a line", () => {
  const action = (tool: ToolId) => {
    const hand = handAt(siteWith([deck]));
    hand.take(tool);
    hand.click(0, 500, { alt: true });
    return hand.host.state.getState().entry?.action;
  };
  expect(action("pool-outline")).toBe("Place the corner");
  expect(action("fence")).toBe("Place the point");
  expect(action("conductor")).toBe("Place the point");
});

it("what taking back is called says what it takes, and nothing is taken where nothing was placed", async () => {
  const called = async (tool: ToolId, ...places: readonly [number, number][]) => {
    const hand = handAt(siteWith([deck]));
    hand.take(tool);
    await vi.dynamicImportSettled();
    for (const [x, y] of places) hand.click(x, y, { alt: true });
    const before = hand.host.state.getState().takesBack;
    hand.host.takeBack();
    return [before, hand.host.state.getState().takesBack];
  };
  expect(await called("pool-outline", [0, 500], [240, 500])).toEqual(Array(2).fill("Take back the last corner"));
  expect(await called("fence", [0, 500], [240, 500])).toEqual(Array(2).fill("Take back the last point"));
  expect(await called("pool-curves", [0, 500], [240, 500])).toEqual(Array(2).fill("Take back the last point"));
  expect(await called("pool-rectangle", [0, 500])).toEqual(["Take back the first corner", null]);
  expect(await called("measure", [0, 500])).toEqual(["Take back where it begins", null]);
  expect(await called("measure", [0, 500], [240, 500])).toEqual([null, null]);
  expect(await called("dimension", [0, 500])).toEqual(["Take back where it begins", null]);
  expect(await called("dimension", [0, 500], [240, 500])).toEqual([
    "Take back the last end",
    "Take back where it begins",
  ]);
  expect(await called("split", [60, 0])).toEqual(["Take back where it begins", null]);
  expect(await called("select", [0, 500])).toEqual([null, null]);
});

it("so do the letters of the bar's buttons, where it has them", () => {
  const hand = handAt();
  hand.take("fence");
  hand.click(0, 0);
  hand.click(240, 0);
  hand.key("Enter");
  hand.key(".");
  hand.key(".");
  const { entry } = hand.host.state.getState();
  if (!entry) throw new Error("no side is chosen");
  expect(["a", "v", "Backspace"].map((key) => toolKeyFor(entry, key, false))).toEqual(["a", null, null]);
});
