/** Arcs while drawing: by radius, through three points, and smooth ones by radius. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { bulgeThrough } from "../../../app/tools/sketch.ts";
import { edgeFromVertices, tangentAt } from "../../../geometry/edge.ts";
import { distanceBetween } from "../../../geometry/points.ts";
import type { ArcEdge, Vertex } from "../../../geometry/types.ts";
import { corners, type Hand, handAt } from "./hand.ts";

/** The side that leaves a corner of what was drawn. */
function side(hand: Hand, id: string, index: number): ArcEdge {
  const all = corners(hand.element(id)) as unknown as Vertex[];
  const edge = edgeFromVertices(all[index] as Vertex, all[(index + 1) % all.length] as Vertex);
  if (edge.kind !== "arc") throw new Error(`side ${index} is straight`);
  return edge;
}

function fenceFrom(x: number, y: number): Hand {
  const hand = handAt();
  hand.take("fence");
  hand.type({ right: `${x}in`, up: `${y}in` });
  return hand;
}

describe("an arc by radius", () => {
  it("has exactly the typed radius and ends at the typed length and direction, bending left", () => {
    const hand = fenceFrom(0, 0);
    hand.key("r");
    expect(hand.type({ length: "10'", bearing: "0", radius: "100in" })).toBe(true);
    hand.host.finish();
    expect(corners(hand.element("fence-1"))[1]).toEqual([120, 0]);
    const arc = side(hand, "fence-1", 0);
    expect(arc.radius).toBeCloseTo(100, 9);
    // Half the chord is 60 and the radius 100: the center lies 80 in. to the left.
    expect(distanceBetween(arc.center, [60, 80])).toBeLessThan(1e-9);
  });

  it("takes figures typed on the sheet as its radius, those of any other side as its length", () => {
    const hand = fenceFrom(0, 0);
    const firstField = () => hand.host.state.getState().entry?.fields[0]?.name;
    expect(firstField()).toBe("length");
    hand.key("r");
    expect(firstField()).toBe("radius");
    hand.key("1");
    expect(hand.host.state.getState().texts).toEqual({ radius: "1" });
  });

  it("bends the other way when turned over, or with a minus", () => {
    for (const [key, radius] of [
      ["v", "100in"],
      ["r", "-100in"],
    ] as const) {
      const hand = fenceFrom(0, 0);
      hand.key("r");
      if (key === "v") hand.key("v");
      hand.type({ length: "10'", bearing: "0", radius });
      hand.host.finish();
      expect(distanceBetween(side(hand, "fence-1", 0).center, [60, -80])).toBeLessThan(1e-9);
    }
  });

  it("keeps the radius for the next side", () => {
    const hand = fenceFrom(0, 0);
    hand.key("r");
    hand.type({ length: "10'", bearing: "0", radius: "100in" });
    hand.type({ length: "100in", bearing: "90" });
    hand.host.finish();
    expect(side(hand, "fence-1", 1).radius).toBeCloseTo(100, 9);
  });

  it("is refused where the circle is too small for its ends, and nothing is placed", () => {
    const hand = fenceFrom(0, 0);
    hand.key("r");
    expect(hand.type({ length: "10'", bearing: "0", radius: "4'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toBe(
      `An arc of radius 4' 0" reaches at most 8' 0" from end to end; these ends lie 10' 0" apart.`,
    );
    hand.type({ length: "10'", bearing: "0", radius: "5'" });
    hand.host.finish();
    expect(corners(hand.element("fence-1"))).toHaveLength(2);
    expect(Math.abs(side(hand, "fence-1", 0).sweep)).toBeCloseTo(Math.PI, 9);
  });

  it("shows why it cannot be while it is pointed out", () => {
    const hand = fenceFrom(0, 0);
    hand.key("r");
    hand.move(240, 0);
    hand.host.type("radius", "5'");
    expect(hand.labels().join(" ")).toMatch(/reaches at most 10' 0"/);
  });
});

describe("an arc by three points", () => {
  it("passes the point placed between its ends", () => {
    const hand = fenceFrom(0, 0);
    hand.key("t");
    hand.click(60, 60);
    hand.click(120, 0);
    hand.host.finish();
    const arc = side(hand, "fence-1", 0);
    expect(arc.radius).toBeCloseTo(60, 9);
    expect(distanceBetween(arc.center, [60, 0])).toBeLessThan(1e-9);
    expect(corners(hand.element("fence-1"))).toHaveLength(2);
  });

  it("takes both points typed; Backspace takes the point between back before the corner", () => {
    const hand = fenceFrom(0, 0);
    hand.key("t");
    expect(hand.host.state.getState().entry?.action).toBe("Pass through here");
    hand.type({ length: "5'", bearing: "90" });
    expect(hand.host.state.getState().entry?.action).toBe("Place the point");
    hand.key("Backspace");
    expect(hand.host.state.getState().entry?.action).toBe("Pass through here");
    hand.type({ length: "50in", bearing: "90" });
    hand.type({ length: "100in", bearing: "45" });
    hand.host.finish();
    // Seen from [0, 50] the ends are 45 degrees and more apart; the circle through the three by its three distances.
    const { center, radius } = side(hand, "fence-1", 0);
    for (const p of [
      [0, 0],
      [0, 50],
      [100 * Math.SQRT1_2, 100 * Math.SQRT1_2],
    ] as const) {
      expect(distanceBetween(center, p)).toBeCloseTo(radius, 9);
    }
  });
});

describe("a smooth arc", () => {
  it("by radius and length leaves in the direction of the side before, toward the pointer", () => {
    const hand = fenceFrom(0, 0);
    hand.type({ length: "10'", bearing: "0" });
    hand.key("a");
    hand.move(200, 80);
    hand.type({ length: "60in", radius: "60in" });
    hand.host.finish();
    const arc = side(hand, "fence-1", 1);
    expect(arc.radius).toBeCloseTo(60, 9);
    expect(distanceBetween(arc.center, [120, 60])).toBeLessThan(1e-9);
    expect(tangentAt(arc, 0)[0]).toBeCloseTo(1, 12);
    // A chord as long as the radius: a sixth of the circle.
    expect(arc.sweep).toBeCloseTo(Math.PI / 3, 9);
  });

  it("by radius and direction of its chord turns twice as far as the chord leaves the side before", () => {
    const hand = fenceFrom(0, 0);
    hand.type({ length: "10'", bearing: "0" });
    hand.key("a");
    hand.type({ bearing: "315", radius: "4'" });
    hand.host.finish();
    const arc = side(hand, "fence-1", 1);
    expect(arc.sweep).toBeCloseTo(-Math.PI / 2, 9);
    expect(
      distanceBetween(corners(hand.element("fence-1"))[2] as unknown as [number, number], [168, -48]),
    ).toBeLessThan(1e-9);
  });

  it("by radius alone goes as far round as the pointer lies", () => {
    const hand = fenceFrom(0, 0);
    hand.type({ length: "10'", bearing: "0" });
    hand.key("a");
    hand.move(500, 60, { alt: true });
    hand.type({ radius: "60in" });
    hand.host.finish();
    // Level with the center, to its right: a quarter of the circle.
    expect(side(hand, "fence-1", 1).sweep).toBeCloseTo(Math.PI / 2, 9);
  });

  it("is over-determined by three values, and says so", () => {
    const hand = fenceFrom(0, 0);
    hand.type({ length: "10'", bearing: "0" });
    hand.key("a");
    expect(hand.type({ length: "5'", bearing: "45", radius: "5'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/leave one of them empty/);
  });
});

describe("typed values", () => {
  it("are used up by a corner that is clicked", () => {
    const hand = fenceFrom(0, 0);
    hand.move(120, 0);
    hand.host.type("length", "7'");
    hand.click(120, 0);
    expect(hand.host.state.getState().texts).toEqual({});
    hand.click(84, 60);
    hand.host.finish();
    expect(corners(hand.element("fence-1")).slice(1)).toEqual([
      [84, 0],
      [84, 60],
    ]);
  });
});

describe("a point to pass that is an end of the arc", () => {
  it("is none: a side through it is not bent by where it happens to lie", () => {
    for (const [from, to] of [
      [
        [0, 0],
        [100, 100],
      ],
      [
        [10, 50],
        [-70, 20],
      ],
    ] as const) {
      expect(bulgeThrough(from, to, from)).toBe(0);
      expect(bulgeThrough(from, to, to)).toBe(0);
    }
  });

  it("is not placed on the last corner, by typing either", () => {
    const hand = fenceFrom(0, 0);
    hand.key("t");
    expect(hand.type({ length: "0", bearing: "30" })).toBe(false);
    expect(hand.host.state.getState().refusal).toBe("There already is a corner at that place.");
  });
});
