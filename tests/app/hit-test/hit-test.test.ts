import { describe, expect, it } from "vitest";
import { elementsAt, elementsInside, elementsTouching } from "../../../app/hit-test/hit-test.ts";
import type { KnownElement } from "../../../rules/site/elements.ts";

const box = (x: number, y: number, width: number, height: number) => ({
  vertices: [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
  closed: true,
});

const elements = [
  { id: "lawn", kind: "surface", material: "lawn", outline: box(-200, -200, 800, 800) },
  { id: "deck", kind: "surface", material: "concrete", outline: box(-60, -60, 500, 300), holes: [box(0, 0, 380, 190)] },
  { id: "pool", kind: "pool", body: "pool", shell: "unknown", outline: box(0, 0, 380, 190) },
  { id: "twin", kind: "surface", material: "stone", outline: box(-60, 300, 100, 100) },
  { id: "twin-above", kind: "surface", material: "wood", outline: box(-60, 300, 100, 100) },
  {
    id: "wall",
    kind: "wall",
    thickness: 24,
    path: {
      vertices: [
        [500, 0],
        [500, 300],
      ],
      closed: false,
    },
  },
  {
    id: "round",
    kind: "fence",
    path: {
      vertices: [
        [-100, -150, 1],
        [100, -150],
      ],
      closed: false,
    },
  },
  { id: "light", kind: "underwater-light", formingShell: "metal", at: [190, 0] },
  { id: "cup", kind: "metal", shape: { point: [196, 2] } },
  { id: "shed", kind: "carport", at: [700, 700] },
] as unknown as KnownElement[];

describe("what lies under a place", () => {
  it("points before lines before areas; of areas the smallest, so that a pool is found on its deck and lawn", () => {
    expect(elementsAt(elements, [100, 100], 8)).toEqual(["pool", "lawn"]);
    expect(elementsAt(elements, [-30, 100], 8)).toEqual(["deck", "lawn"]);
    expect(elementsAt(elements, [193, 3], 8)[0]).toBe("cup");
    expect(elementsAt(elements, [189, -1], 8)[0]).toBe("light");
  });

  it("the later of two alike, which lies on top", () => {
    expect(elementsAt(elements, [0, 350], 8).slice(0, 2)).toEqual(["twin-above", "twin"]);
  });

  it("an opening of a surface is not the surface", () => {
    expect(elementsAt(elements.slice(0, 2), [100, 100], 8)).toEqual(["lawn"]);
  });

  it("a wall by its thickness", () => {
    expect(elementsAt(elements, [519, 100], 8)[0]).toBe("wall");
    expect(elementsAt(elements, [521, 100], 8)[0]).toBe("lawn");
  });

  it("an arc by its true curve: a half circle of radius 100 below its chord", () => {
    expect(elementsAt(elements, [0, -255], 8)[0]).toBe("round");
    expect(elementsAt(elements, [0, -150], 8)[0]).toBe("lawn");
    expect(elementsAt(elements, [0, -259], 8)).toEqual([]);
  });

  it("an element of an unknown kind where it says that it lies", () => {
    expect(elementsAt(elements, [703, 700], 8)).toEqual(["shed"]);
  });

  it("more with a finger", () => {
    expect(elementsAt(elements, [190, -20], 8)[0]).toBe("deck");
    expect(elementsAt(elements, [190, -20], 22)[0]).toBe("light");
  });
});

describe("what lies in a box", () => {
  const around = { minX: -10, minY: -10, maxX: 390, maxY: 200 };

  it("wholly inside it", () => {
    expect(elementsInside(elements, around)).toEqual(["pool", "light", "cup"]);
  });

  it("with any part of it; an area that holds the whole box is not meant", () => {
    expect(elementsTouching(elements, around)).toEqual(["deck", "pool", "light", "cup"]);
    expect(elementsTouching(elements, { minX: -5, minY: -252, maxX: 5, maxY: -245 })).toEqual(["round"]);
    expect(elementsTouching(elements, { minX: -5, minY: -240, maxX: 5, maxY: -220 })).toEqual([]);
  });
});
