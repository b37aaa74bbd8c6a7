/** Corners and sides chosen by pointer and keys, rounded, bent, cut; lines joined. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { areaFrom, areaOf } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";
import { corners, DECK, type Hand, handAt, siteWith } from "./hand.ts";

const fence = {
  id: "fence-1",
  kind: "fence",
  path: {
    vertices: [
      [0, -100],
      [240, -100],
      [240, -300],
    ],
    closed: false,
  },
};

function selected(...ids: string[]): Hand {
  const hand = handAt(siteWith([DECK, fence]));
  hand.view.getState().select(ids);
  return hand;
}

const area = (hand: Hand) => areaOf(areaFrom((hand.element("deck-1") as unknown as { outline: PathData }).outline));
const action = (hand: Hand) => hand.host.state.getState().entry?.action ?? null;

describe("a corner that is clicked", () => {
  it("is rounded by the radius typed, as one step", () => {
    const hand = selected("deck-1");
    hand.click(240, 120);
    expect(action(hand)).toBe("Round the corner");
    expect(hand.type({ radius: "2'" })).toBe(true);
    expect(area(hand)).toBeCloseTo(240 * 120 - (1 - Math.PI / 4) * 24 * 24, 6);
    expect(hand.document.getState().history.past.map(({ label }) => label)).toEqual([
      "Round a corner of concrete surface 1",
    ]);
  });

  it("says the largest radius that fits when it is too large, and changes nothing", () => {
    const hand = selected("deck-1");
    hand.click(240, 120);
    expect(hand.type({ radius: "11'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/at most 10' 0" fits/);
    expect(hand.document.getState().history.past).toEqual([]);
  });

  it("of a line cuts it there", () => {
    const hand = selected("fence-1");
    hand.click(240, -100);
    expect(hand.key("C", true)).toBe(true);
    expect(corners(hand.element("fence-2"))).toEqual([
      [240, -100],
      [240, -300],
    ]);
  });
});

describe("a side that is clicked in its middle", () => {
  it("is bent by a radius, made straight, and given a corner", () => {
    const hand = selected("deck-1");
    hand.click(240, 60);
    expect(action(hand)).toBe("Bend the side");
    expect(hand.type({ radius: "100in" })).toBe(true);
    // Half the chord is 60 and the radius 100: the center lies 80 in. inside.
    const segment = 100 * 100 * Math.asin(0.6) - 60 * 80;
    expect(area(hand)).toBeCloseTo(240 * 120 + segment, 6);
    expect(hand.host.state.getState().entry?.buttons?.[0]?.label).toBe("Straight");
    hand.host.press("a");
    expect(area(hand)).toBeCloseTo(240 * 120, 6);
    hand.host.press("a");
    expect(hand.host.state.getState().entry?.buttons?.[0]?.label).toBe("Straight");
    hand.host.press("Insert");
    expect(corners(hand.element("deck-1"))).toHaveLength(5);
  });
});

it("a side that is made an arc bows out of its outline, whichever way that runs", () => {
  const vertices = DECK.outline.vertices.toReversed();
  const hand = handAt(siteWith([{ ...DECK, outline: { ...DECK.outline, vertices } }]));
  hand.view.getState().select(["deck-1"]);
  hand.key(".");
  hand.key(".");
  hand.key("a");
  expect(area(hand)).toBeGreaterThan(240 * 120);
});

describe("by keys alone", () => {
  it("the period goes from corner to side to corner, the comma back, and says where it is", () => {
    const hand = selected("deck-1");
    expect(hand.key(".")).toBe(true);
    expect(hand.host.state.getState().announcement).toBe(`Corner 1 at 0" right, 0" up.`);
    hand.key(".");
    expect(hand.host.state.getState().announcement).toBe(`The side from corner 1, 20' 0" long.`);
    hand.key(",");
    hand.key(",");
    expect(hand.host.state.getState().announcement).toBe(`The side from corner 4, 10' 0" long.`);
    hand.key(".");
    expect(hand.key("2")).toBe(true);
    expect(hand.host.state.getState()).toMatchObject({ texts: { radius: "2" }, focusRequests: 1 });
    expect(hand.host.enter()).toBe(true);
    expect(area(hand)).toBeCloseTo(240 * 120 - (1 - Math.PI / 4) * 24 * 24, 6);
  });

  it("what a key makes of a corner or side is said, with where it then lies", () => {
    const hand = selected("deck-1");
    const said = () => hand.host.state.getState().announcement;
    hand.key(".");
    hand.key("ArrowLeft", true);
    expect(said()).toBe(`Corner 1 at 1' 0" left, 0" up.`);
    hand.key("ArrowDown");
    expect(said()).toBe(`Corner 1 at 1' 0" left, 1" down.`);
    hand.key(".");
    hand.key(".");
    hand.key(".");
    hand.key("a");
    // A quarter circle over a chord of 120: radius 120 / sqrt 2, length pi / 2 of it.
    expect(said()).toBe(`The side from corner 2, 11' 1 5/16" long, an arc of radius 7' 7/8".`);
  });

  it("nothing is chosen where nothing, or two things, are selected", () => {
    expect(selected().key(".")).toBe(false);
    expect(selected("deck-1", "fence-1").key(".")).toBe(false);
  });
});
