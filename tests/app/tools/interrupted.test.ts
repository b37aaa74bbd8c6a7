/** Drawings that something else interrupts: a key, a second finger, an edit from elsewhere. No source: arithmetic. */
import { describe, expect, it, vi } from "vitest";
import { insertVertex } from "../../../app/edits/insert-vertex.ts";
import { setField } from "../../../app/edits/set-field.ts";
import type { ToolId } from "../../../app/view/view-store.ts";
import { corners, type Hand, handAt, siteWith } from "./hand.ts";

const square = (id: string, x: number, y: number, size: number) => ({
  id,
  kind: "surface",
  material: "concrete",
  outline: {
    vertices: [
      [x, y],
      [x + size, y],
      [x + size, y + size],
      [x, y + size],
    ],
    closed: true,
  },
});

async function taking(tool: ToolId, hand: Hand): Promise<Hand> {
  hand.take(tool);
  await vi.dynamicImportSettled();
  return hand;
}

const kinds = (hand: Hand) => hand.document.getState().shown.elements.map(({ kind }) => kind);

describe("a rectangle", () => {
  const stretching = () => {
    const hand = handAt(siteWith([square("deck", 1000, 1000, 120)]));
    hand.take("pool-rectangle");
    hand.click(0, 0);
    hand.move(240, 120);
    expect(kinds(hand)).toEqual(["surface", "pool"]);
    // Another change ends the preview and keeps it as it was drawn then.
    hand.document.getState().edit(setField("deck", "name", "Deck"));
    expect(kinds(hand)).toEqual(["surface", "pool"]);
    return hand;
  };

  it("whose preview another change has kept is not drawn a second time by Enter or typing", () => {
    const byKey = stretching();
    byKey.key("Enter");
    expect(kinds(byKey)).toEqual(["surface", "pool"]);
    const typed = stretching();
    typed.host.type("width", "20'");
    typed.host.enter();
    expect(kinds(typed)).toEqual(["surface", "pool"]);
  });

  it("keeps its first corner when it would reach too far", () => {
    const hand = handAt();
    hand.take("pool-rectangle");
    hand.click(504, 0);
    hand.move(740, 120);
    expect(hand.type({ width: "999999in", length: "10'" })).toBe(false);
    hand.move(745, 125);
    hand.host.type("width", "");
    hand.host.type("length", "");
    hand.click(740, 120);
    expect(corners(hand.element("pool-1"))[0]).toEqual([504, 0]);
  });
});

describe("an outline", () => {
  it("keeps its arc when a corner is taken back while the pointer is still down", () => {
    const hand = handAt();
    hand.take("pool-outline");
    hand.click(0, 0, { alt: true });
    hand.drag([100, 0], [50, -20], [50, -40]);
    hand.move(200, 100, { alt: true });
    hand.down(200, 100, { alt: true });
    hand.key("Backspace");
    hand.move(150, 160, { alt: true });
    hand.up(150, 160, { alt: true });
    hand.click(100, 150, { alt: true });
    hand.click(0, 150, { alt: true });
    hand.key("Enter");
    const bulges = corners(hand.element("pool-1")).map(([, , bulge = 0]) => bulge);
    expect(Math.abs(bulges[0] ?? 0)).toBeGreaterThan(0.3);
  });

  it("a closing side that was refused leaves no bend behind", () => {
    const hand = handAt();
    hand.take("surface");
    hand.click(0, 0, { alt: true });
    hand.click(40, 0, { alt: true });
    hand.click(40, 100, { alt: true });
    hand.click(0, 100, { alt: true });
    // A half circle back to the first corner that bows over the whole outline crosses it.
    hand.key("r");
    hand.type({ length: "100in", bearing: "270", radius: "-50in" });
    const isRefused = hand.document.getState().shown.elements.length === 0;
    if (isRefused) {
      hand.key("r");
      hand.key("Enter");
    }
    expect(isRefused).toBe(true);
    expect(corners(hand.element("surface-1")).map(([, , bulge = 0]) => bulge)).toEqual([0, 0, 0, 0]);
  });
});

describe("a door", () => {
  it("that was refused has two ends all the same", () => {
    const hand = handAt();
    hand.take("opening");
    hand.click(0, 0, { alt: true });
    hand.click(2e6, 0, { alt: true });
    expect(kinds(hand)).toEqual([]);
    hand.click(36, 0, { alt: true });
    expect(kinds(hand)).toEqual(["opening"]);
    expect(corners(hand.element("opening-1"))).toHaveLength(2);
  });
});

describe("curves", () => {
  it("a second finger takes back only what its press has placed", async () => {
    const hand = await taking("pool-curves", handAt());
    hand.click(0, 0, { alt: true });
    hand.click(100, 0, { alt: true });
    const placed = () =>
      hand.host.overlay().filter((shape) => shape.kind === "handle" && shape.look === "placed").length;
    expect(placed()).toBe(2);
    // At the last point: nothing is placed, and two are not enough to close.
    hand.down(100, 0, { alt: true });
    hand.host.abandonPress();
    expect(placed()).toBe(2);
    hand.down(150, 200, { alt: true });
    hand.host.abandonPress();
    expect(placed()).toBe(2);
  });
});

describe("a pool of a shape", () => {
  it("is not placed by letting go after Escape", async () => {
    const hand = await taking("pool-shape", handAt());
    hand.key("q");
    hand.down(100, 100);
    expect(hand.host.cancel()).toBe(true);
    hand.up(100, 100);
    expect(kinds(hand)).toEqual([]);
  });
});

describe("a dimension", () => {
  it("has its line as far away as was typed, on the side where the sheet is pressed", async () => {
    const hand = await taking("dimension", handAt());
    hand.click(0, 0, { alt: true });
    hand.click(240, 0, { alt: true });
    hand.move(120, 90, { alt: true });
    hand.host.type("away", "24in");
    hand.click(120, 90, { alt: true });
    expect(hand.document.getState().shown.dimensions?.[0]?.offset).toBe(24);
  });
});

describe("a move along the sheet with Shift", () => {
  it("names no corner that it does not lead to", () => {
    const hand = handAt(siteWith([square("deck", 0, 0, 100), square("other", 300, 40, 50)]));
    hand.view.getState().select(["deck"]);
    hand.down(20, 100);
    // The upper left corner of the deck would come to the upper left one of the other.
    hand.move(318, 92, { shift: true });
    const lines = hand.labels();
    hand.up(318, 92, { shift: true });
    const [[x = 0, y = 0] = []] = corners(hand.element("deck"));
    expect(y).toBe(0);
    expect(lines.join()).not.toContain("corner of");
    expect(x).toBe(300);
  });
});

describe("what is typed and cannot be read", () => {
  it("is not passed over by a click: nothing is placed, and why is said", () => {
    const hand = handAt();
    hand.take("pool-outline");
    hand.click(0, 0, { alt: true });
    hand.move(200, 0, { alt: true });
    hand.host.type("length", "16 ft 6 q");
    hand.click(200, 0, { alt: true });
    expect(hand.host.state.getState().texts).toEqual({ length: "16 ft 6 q" });
    expect(hand.said()).toContain("q");
    hand.host.type("length", "16'");
    hand.click(200, 0, { alt: true });
    hand.click(200, 100, { alt: true });
    hand.key("Enter");
    expect(corners(hand.element("pool-1"))[1]).toEqual([192, 0]);
  });
});

describe("a cut that was begun", () => {
  it("begins anew when its outline is changed meanwhile: it would run from somewhere else", async () => {
    const hand = handAt(siteWith([square("deck", 0, 0, 120)]));
    hand.view.getState().select(["deck"]);
    hand.document.getState().edit(insertVertex("deck", { field: "outline" }, 0, [60, 0]));
    await taking("split", hand);
    // From the middle of what is now the third side.
    hand.click(120, 60);
    hand.document.getState().undo();
    hand.click(0, 60);
    expect(kinds(hand)).toEqual(["surface"]);
    hand.click(120, 60);
    expect(kinds(hand)).toEqual(["surface", "surface"]);
    const ends = hand.document.getState().shown.elements.map((one) => corners(one as never));
    expect(ends.flat()).toContainEqual([120, 60]);
    expect(ends.flat()).toContainEqual([0, 60]);
  });
});

describe("an offset along an overhead line", () => {
  it("is refused, and its heights are no bends while it is pointed at", async () => {
    const hand = handAt(
      siteWith([
        {
          id: "line",
          kind: "overhead-line",
          path: {
            vertices: [
              [0, 0, 240],
              [240, 0, 240],
            ],
            closed: false,
          },
        },
      ]),
    );
    hand.view.getState().select(["line"]);
    await taking("offset", hand);
    hand.move(120, 36);
    expect(hand.host.state.getState().entry?.fields[0]?.shown).toBe(`3' 0"`);
    expect(hand.labels().join()).toContain("overhead line");
  });
});

describe("a drag whose end never came", () => {
  it("is one step when the next press comes, and leaves nothing running", () => {
    const hand = handAt(siteWith([square("deck", 0, 0, 100), square("other", 300, 40, 50)]));
    hand.view.getState().select(["deck"]);
    hand.down(20, 100);
    hand.move(60, 130, { alt: true });
    // The pointer was let go outside of the window.
    hand.down(600, 600);
    hand.up(600, 600);
    expect(hand.document.getState().gesture).toBeNull();
    expect(corners(hand.element("deck"))[0]).toEqual([40, 30]);
    expect(hand.document.getState().history.past).toHaveLength(1);
  });
});
