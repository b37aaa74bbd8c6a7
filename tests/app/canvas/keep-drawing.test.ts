/** Drawings kept while they are under way, and taken up again by a page that comes after. Our own design, no source. */
import { describe, expect, it } from "vitest";
import { goOnWith, keepDrawings } from "../../../app/canvas/keep-drawing.ts";
import type { KeptDrawing } from "../../../app/files/kept-drawing.ts";
import { corners, handAt } from "../tools/hand.ts";

function drawnFence() {
  const hand = handAt();
  const kept: (KeptDrawing | null)[] = [];
  const stop = keepDrawings(hand.host, (drawing) => kept.push(drawing));
  hand.take("fence");
  hand.click(0, 0, { alt: true });
  expect(kept.at(-1)).toBeNull();
  hand.click(240, 0, { alt: true });
  hand.click(240, 120, { alt: true });
  return { hand, kept, stop };
}

describe("a drawing", () => {
  it("is handed over after each corner, and no longer once it is ended or given up", () => {
    const { hand, kept, stop } = drawnFence();
    expect(kept.at(-1)).toMatchObject({ tool: "fence" });
    hand.key("Enter");
    expect(kept.at(-1)).toBeNull();
    hand.take("fence");
    hand.click(0, 0, { alt: true });
    hand.click(0, 300, { alt: true });
    expect(kept.at(-1)).not.toBeNull();
    hand.host.cancel();
    expect(kept.at(-1)).toBeNull();
    stop();
    const { length } = kept;
    hand.click(9, 9);
    expect(kept).toHaveLength(length);
  });

  it("goes on in another page where it was", () => {
    const { kept } = drawnFence();
    const drawing = JSON.parse(JSON.stringify(kept.at(-1)));
    const next = handAt();
    const shown: unknown[] = [];
    next.host.connect({ changed() {}, findingAt: () => null, reveal: (at) => shown.push(at) });
    expect(goOnWith(drawing, next.host, next.view)).toBe(true);
    // Where it goes on is brought into view: it may lie far from what the sheet holds.
    expect(shown).toEqual([[240, 120]]);
    expect(next.view.getState().tool).toBe("fence");
    expect(next.host.state.getState().takesBack).toBe("Take back the last point");
    next.click(0, 120, { alt: true });
    next.key("Enter");
    expect(corners(next.element("fence-1"))).toEqual([
      [0, 0],
      [240, 0],
      [240, 120],
      [0, 120],
    ]);
  });

  it("that is damaged or of a tool that is not there is left alone", () => {
    const { kept } = drawnFence();
    const { begun } = kept.at(-1) as { begun: object };
    const places = (...list: unknown[]) => ({ ...begun, corners: list });
    const deep = Array.from({ length: 20 }).reduce<object>((inner) => ({ inner }), {});
    for (const drawing of [
      { tool: "toString", begun },
      { tool: "select", begun },
      { tool: "fence", begun: {} },
      { tool: "fence", begun: places([0, 0], [1]) },
      { tool: "fence", begun: places([0, 0], [1, Number.NaN]) },
      { tool: "fence", begun: places([0, 0], ["1", 2]) },
      { tool: "fence", begun: { ...begun, deep } },
      { tool: "pool-curves", begun: { drawn: { points: 3 }, earlier: [] } },
    ]) {
      const hand = handAt();
      expect(goOnWith(drawing, hand.host, hand.view)).toBe(false);
      expect(hand.view.getState().tool).toBe("select");
    }
  });
});
