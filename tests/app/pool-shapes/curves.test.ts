import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { pathFrom } from "../../../geometry/outline.ts";
import { alongCircle, arcsThrough, closedArcs, startWay, type Way } from "../../../geometry/tangent-arcs.ts";
import type { Point } from "../../../geometry/types.ts";
import type { PoolElement } from "../../../rules/site/elements.ts";
import { runs } from "../../oracles/seed.ts";
import { type Hand, handAt } from "../tools/hand.ts";
import { areaInside, lengthOf, sharpestCorner } from "./measured.ts";

// Source of the figures: arithmetic.
describe("arcs that go on smoothly", () => {
  it("points of a circle give back the circle, whichever way round", () => {
    const circle = [0, 50, 130, 200, 260].map((degrees): Point => {
      const angle = (degrees * Math.PI) / 180;
      return [100 * Math.cos(angle) + 7, 100 * Math.sin(angle) - 3];
    });
    for (const points of [circle, circle.toReversed()]) {
      const outline = closedArcs(points, startWay(points) as Way);
      if (!outline) throw new Error("not drawn");
      expect(Math.abs(areaInside(outline))).toBeCloseTo(Math.PI * 1e4, 6);
      expect(lengthOf(outline)).toBeCloseTo(200 * Math.PI, 8);
      expect(sharpestCorner(outline)).toBeLessThan(1e-9);
    }
  });

  it("a place along a circle lies on it: a quarter to the left, half a circle to the right", () => {
    const [a, b] = [alongCircle([0, 0], [1, 0], 60, Math.PI / 2), alongCircle([0, 0], [1, 0], 60, -Math.PI)];
    expect(a[0]).toBeCloseTo(60, 12);
    expect(a[1]).toBeCloseTo(60, 12);
    expect(b[0]).toBeCloseTo(0, 12);
    expect(b[1]).toBeCloseTo(-120, 12);
  });

  it("whatever the points, no arc meets the next at a corner and each point is on the outline", () => {
    const place = fc.tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 }));
    let count = 0;
    fc.assert(
      fc.property(fc.uniqueArray(place, { minLength: 3, maxLength: 9, selector: String }), (points) => {
        const start = startWay(points);
        const open = start && arcsThrough(points, start);
        const outline = start && closedArcs(points, start);
        if (!outline || !open) return;
        count++;
        for (const [i, [x, y]] of points.entries()) expect(outline.vertices[i]?.slice(0, 2)).toEqual([x, y]);
        expect(outline.vertices).toHaveLength(points.length + 1);
        for (const edge of pathFrom(outline).edges)
          expect(edge.kind === "line" || Math.abs(edge.sweep) <= 1.97 * Math.PI).toBe(true);
        expect(sharpestCorner(outline)).toBeLessThan(1e-5);
      }),
      runs(300),
    );
    expect(count).toBeGreaterThan(200);
  });
});

describe("the tool for flowing curves", () => {
  let hand: Hand;
  beforeEach(async () => {
    hand = handAt();
    hand.take("pool-curves");
    await expect.poll(() => hand.host.state.getState().entry).not.toBeNull();
  });
  const outline = () => (hand.element("pool-1") as PoolElement).outline;

  it("clicks along the wall and a click on the first point close a pool without a corner", () => {
    for (const [x, y] of [
      [0, 0],
      [200, -40],
      [400, 30],
      [330, 210],
      [120, 180],
    ] as const) {
      hand.click(x, y, { alt: true });
    }
    hand.click(2, 1);
    expect(outline().vertices).toHaveLength(6);
    expect(sharpestCorner(outline())).toBeLessThan(1e-9);
    expect(hand.document.getState().history.past).toHaveLength(1);
    expect(hand.view.getState()).toMatchObject({ tool: "select", selection: ["pool-1"] });
  });

  it("typed sides, radii and turns: two half circles and two straight sides", () => {
    expect(hand.type({ right: "0", up: "0" })).toBe(true);
    expect(hand.type({ length: "15'", bearing: "0" })).toBe(true);
    expect(hand.type({ radius: "8'", turn: "180" })).toBe(true);
    expect(hand.type({ length: "15'", bearing: "180" })).toBe(true);
    hand.host.finish();
    expect(areaInside(outline())).toBeCloseTo(180 * 192 + Math.PI * 96 * 96, 5);
    expect(lengthOf(outline())).toBeCloseTo(360 + 192 * Math.PI, 7);
    expect(sharpestCorner(outline())).toBeLessThan(1e-9);
  });

  it("Backspace takes points back to the first, with the direction that they settled", () => {
    for (const [x, y] of [
      [0, 0],
      [200, 0],
      [300, 100],
      [200, 200],
    ] as const) {
      hand.click(x, y, { alt: true });
    }
    for (let i = 0; i < 4; i++) expect(hand.key("Backspace")).toBe(true);
    expect(hand.key("Backspace")).toBe(false);
    expect(hand.document.getState().shown.elements).toEqual([]);
  });

  it("near the line of the last arc it goes on straight, unless snapping is held off", () => {
    for (const [x, y] of [
      [0, 0],
      [100, 100],
      [0, 200],
    ] as const) {
      hand.click(x, y, { alt: true });
    }
    // A half circle about 0, 100: at its end it heads left.
    hand.move(-120, 202);
    const words = hand.host.overlay().find(({ kind }) => kind === "words");
    expect(words).toMatchObject({ lines: ["goes on straight"] });
    hand.move(-120, 202, { alt: true });
    expect(hand.host.overlay().some(({ kind }) => kind === "words")).toBe(false);
  });

  it("says what is missing, and that too few points close nothing", () => {
    expect(hand.type({ right: "0", up: "0" })).toBe(true);
    expect(hand.type({ length: "10'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toContain("both the length and the direction");
    hand.click(100, 0, { alt: true });
    hand.click(2, 0);
    expect(hand.document.getState().shown.elements).toEqual([]);
  });
});
