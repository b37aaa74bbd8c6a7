/** Keys pressed while the entry bar has them and nothing is typed yet. Our own design, no source. */
import { expect, it } from "vitest";
import { toolKeyFor } from "../../../app/tools/entry-keys.ts";
import { handAt } from "./hand.ts";

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
  expect(["a", "R", "t", "Backspace"].map((key) => toolKeyFor(entry(), key))).toEqual(["a", "r", "t", "Backspace"]);
  expect(["n", "S", "e", "w", "1", "-", ".", "Enter", "Delete"].map((key) => toolKeyFor(entry(), key))).toEqual(
    Array(9).fill(null),
  );
  // The other side is only there for an arc by radius.
  expect(toolKeyFor(entry(), "v")).toBeNull();
  hand.host.press("r");
  expect(toolKeyFor(entry(), "v")).toBe("v");
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
  expect(["a", "v", "Backspace"].map((key) => toolKeyFor(entry, key))).toEqual(["a", null, null]);
});
