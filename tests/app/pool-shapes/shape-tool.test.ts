import { beforeEach, describe, expect, it } from "vitest";
import { pathFrom } from "../../../geometry/outline.ts";
import type { PoolElement } from "../../../rules/site/elements.ts";
import { type Hand, handAt, siteWith } from "../tools/hand.ts";
import { areaInside, drawn, lengthOf } from "./measured.ts";

let hand: Hand;

/** Takes the tool and waits for its code. */
async function take(shape: Parameters<ReturnType<Hand["view"]["getState"]>["setShape"]>[0]): Promise<void> {
  hand.view.getState().setShape(shape);
  hand.take("pool-shape");
  await expect.poll(() => hand.host.state.getState().entry).not.toBeNull();
}

const outline = () => (hand.element("pool-1") as PoolElement).outline;
const fields = () => hand.host.state.getState().entry?.fields ?? [];

beforeEach(() => {
  hand = handAt();
});

describe("a pool by its dimensions", () => {
  it("shows what each dimension starts with, and the next one follows what is typed", async () => {
    await take("roman-end");
    expect(fields().map(({ label, shown }) => [label, shown])).toEqual([
      ["Length overall", "36' 0\""],
      ["Width", "16' 0\""],
      ["Arc width", "10' 0\""],
      ["Arc depth", "5' 0\""],
      ["Turned by", "0 deg"],
    ]);
    hand.host.type("arcWidth", "8'");
    expect(fields().map(({ shown }) => shown)[3]).toBe("4' 0\"");
  });

  it("is placed where the pointer is let go, about its middle, in one step of the history", async () => {
    await take("oval");
    hand.host.type("length", "30'");
    hand.host.type("width", "15'");
    hand.click(504, 300);
    expect(lengthOf(outline())).toBeCloseTo(360 + 180 * Math.PI, 6);
    const { minX, maxX, minY, maxY } = pathFrom(outline()).bounds;
    expect([(minX + maxX) / 2, (minY + maxY) / 2]).toEqual([504, 300]);
    expect(hand.document.getState().history.past.map(({ label }) => label)).toEqual(["Draw pool 1"]);
    expect(hand.view.getState()).toMatchObject({ tool: "select", selection: ["pool-1"] });
    hand.document.getState().undo();
    expect(hand.document.getState().shown.elements).toEqual([]);
  });

  it("is placed by keys alone: typed sizes and Enter, in the middle of the view", async () => {
    await take("true-l");
    expect(hand.type({ length: "40'", width: "16'", legLength: "30'", legWidth: "14'" })).toBe(true);
    expect(areaInside(outline())).toBeCloseTo(480 * 192 + 168 * 168, 6);
  });

  it("Enter alone places it as it starts; arrow keys move it first", async () => {
    await take("round");
    hand.key("ArrowRight");
    hand.key("ArrowRight", true);
    hand.key("Enter");
    const { minX, maxX } = pathFrom(outline()).bounds;
    expect((minX + maxX) / 2).toBeCloseTo(12, 9);
    expect(areaInside(outline())).toBeCloseTo(Math.PI * 48 * 48, 6);
  });

  it("turns by a quarter, by what is typed, and is mirrored", async () => {
    await take("true-l");
    hand.key("q");
    hand.click(0, 0, { alt: true });
    const upright = pathFrom(outline()).bounds;
    expect([upright.maxX - upright.minX, upright.maxY - upright.minY]).toEqual([312, 384]);
    hand.document.getState().undo();
    await take("true-l");
    hand.key("v");
    expect(hand.type({ turn: "30" })).toBe(true);
    expect(areaInside(outline())).toBeCloseTo(areaInside(drawn("true-l")), 5);
    // Unmirrored, the leg of an L points to the upper right: mirrored, its two outer sides meet at the lower right's mirror.
    const sharp = outline().vertices.map(([x, y]) => [
      x * Math.cos(Math.PI / 6) + y * Math.sin(Math.PI / 6),
      y * Math.cos(Math.PI / 6) - x * Math.sin(Math.PI / 6),
    ]);
    const right = sharp.filter(([x = 0]) => Math.abs(x - 192) < 1e-6).map(([, y = 0]) => y);
    expect(Math.max(...right) - Math.min(...right)).toBeCloseTo(312, 6);
    const top = sharp.filter(([, y = 0]) => Math.abs(y - 156) < 1e-6).map(([x = 0]) => x);
    expect(Math.max(...top) - Math.min(...top)).toBeCloseTo(384, 6);
  });

  it("holds a corner at the pointer, which then lands where a corner already is", async () => {
    hand = handAt(
      siteWith([
        {
          id: "b",
          kind: "building",
          outline: {
            vertices: [
              [0, 0],
              [-200, 0],
              [-200, -200],
              [0, -200],
            ],
            closed: true,
          },
        },
      ]),
    );
    await take("rectangle");
    hand.key("n");
    expect(hand.host.state.getState().entry?.buttons?.at(-1)?.label).toBe("Held at: corner 1");
    hand.click(3, 2);
    const { minX, minY, maxX } = pathFrom(outline()).bounds;
    expect([minX, minY, maxX]).toEqual([0, 0, 384]);
  });

  it("says in words what cannot be, shows it on the sheet and draws nothing", async () => {
    await take("rectangle");
    expect(hand.type({ length: "20'", width: "10'", radius: "6'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toContain("Corner radius has to be between zero and 5' 0\"");
    expect(hand.host.overlay()).toMatchObject([{ kind: "words", isProblem: true }]);
    expect(hand.document.getState().shown.elements).toEqual([]);
  });

  it("keeps what was typed when another shape has that dimension too; Escape gives up turn and mirror", async () => {
    await take("rectangle");
    hand.host.type("length", "50'");
    hand.host.type("radius", "2'");
    hand.view.getState().setShape("oval");
    expect(hand.host.state.getState().texts).toEqual({ length: "50'" });
    hand.key("v");
    expect(hand.host.cancel()).toBe(true);
    expect(hand.host.cancel()).toBe(false);
  });
});
