/** What the reader refuses in an element, and that each refusal names element, field and expectation. Source: the site format's own description. */
import { describe, expect, it } from "vitest";
import { checkSite, readSite } from "../../../rules/site/reader.ts";
import { onlyProblem, refusalOf } from "./refused.ts";
import { SAMPLE_TEXT, sampleWith } from "./sample-site.ts";

const area = "at least 3 vertices, or an arc, so that a closed path encloses an area";
const apart = "an outline that does not cross or touch itself";
const meet = (a: number, b: number, at: string) =>
  `the edges that leave vertices[${a}] and vertices[${b}] meet at ${at}`;
const closedPath = (vertices: unknown) => ({ vertices, closed: true });
const openPath = (vertices: unknown) => ({ vertices, closed: false });
const coordinates = (third: string) => `[x, y] or [x, y, ${third}], numbers from -1,000,000 to 1,000,000`;
const noRepeat = "a last vertex that differs from the first (a closed path does not repeat its first vertex)";
const needsLength = "a vertex that differs from the one before it (an edge needs a length)";
const SQUARE = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const BOW_TIE = [
  [0, 0],
  [10, 10],
  [10, 0],
  [0, 10],
];

describe("single faults of an element", () => {
  const faults: [string, Record<string, unknown>, string, string, string][] = [
    ["pool-1", { body: "lake" }, "body", '"pool", "spa" or "basin"', '"lake"'],
    ["pool-1", { body: undefined }, "body", '"pool", "spa" or "basin"', "nothing"],
    ["pool-1", { steel: "some" }, "steel", '"bare", "encapsulated" or "none"', '"some"'],
    ["pool-1", { waterLevel: Number.NaN }, "waterLevel", "a number from -1,000,000 to 1,000,000", "NaN"],
    ["pool-1", { depth: -1 }, "depth", "a number from 0 to 1,000,000", "-1"],
    ["pool-1", { storable: "yes" }, "storable", "true or false", '"yes"'],
    ["pool-1", { storable: null }, "storable", "true or false", "null"],
    ["pool-1", { outline: undefined }, "outline", 'a closed outline with "vertices" and "closed"', "nothing"],
    ["pool-1", { outline: SQUARE }, "outline", 'a closed outline with "vertices" and "closed"', "a list of 4"],
    ["pool-1", { outline: { closed: true } }, "outline.vertices", "a list of vertices", "nothing"],
    ["pool-1", { outline: { vertices: SQUARE } }, "outline.closed", "true or false", "nothing"],
    ["pool-1", { outline: openPath(SQUARE) }, "outline.closed", "true (an outline is closed)", "false"],
    ["pool-1", { outline: closedPath([]) }, "outline.vertices", "at least 2 vertices", "0"],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [1, "2"],
          [1, 1],
        ]),
      },
      "outline.vertices[1]",
      coordinates("bulge"),
      '[1, "2"]',
    ],
    ["pool-1", { outline: closedPath([[0, 0], [1], [1, 1]]) }, "outline.vertices[1]", coordinates("bulge"), "[1]"],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [1, 0],
          [1, 1, 0, 0],
        ]),
      },
      "outline.vertices[2]",
      coordinates("bulge"),
      "[1, 1, 0, 0]",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [1000001, 0],
          [1, 1],
        ]),
      },
      "outline.vertices[1]",
      coordinates("bulge"),
      "[1000001, 0]",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [9, 0, Number.POSITIVE_INFINITY],
          [1, 1],
        ]),
      },
      "outline.vertices[1]",
      coordinates("bulge"),
      "[9, 0, Infinity]",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [9, 0],
          [Number.NaN, 1],
        ]),
      },
      "outline.vertices[2]",
      coordinates("bulge"),
      "[NaN, 1]",
    ],
    [
      "pool-1",
      { outline: closedPath([...SQUARE, [0, 0]]) },
      "outline.vertices[4]",
      noRepeat,
      "the first vertex again, [0, 0]",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [10, 0],
          [10, 0],
          [0, 10],
        ]),
      },
      "outline.vertices[2]",
      needsLength,
      "the same position again, [10, 0]",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [10, 0, 0.5],
          [10, 0],
          [0, 10],
        ]),
      },
      "outline.vertices[2]",
      needsLength,
      "the same position again, [10, 0]",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [10, 0],
        ]),
      },
      "outline.vertices",
      area,
      "2 vertices and the same edge there and back",
    ],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0, 0.5],
          [10, 0, -0.5],
        ]),
      },
      "outline.vertices",
      area,
      "2 vertices and the same edge there and back",
    ],
    ["pool-1", { outline: closedPath(BOW_TIE) }, "outline", apart, meet(0, 2, "[5, 5]")],
    [
      "pool-1",
      {
        outline: closedPath([
          [0, 0],
          [20, 0],
          [10, 0],
        ]),
      },
      "outline",
      apart,
      meet(0, 1, "[10, 0]"),
    ],
    ["pool-1", { islands: [closedPath(SQUARE), closedPath(BOW_TIE)] }, "islands[1]", apart, meet(0, 2, "[5, 5]")],
    ["pool-1", { islands: {} }, "islands", "a list of closed outlines", "an object"],
    ["deck-1", { holes: [closedPath(BOW_TIE)] }, "holes[0]", apart, meet(0, 2, "[5, 5]")],
    ["rail-1", { shape: closedPath(BOW_TIE) }, "shape", apart, meet(0, 2, "[5, 5]")],
    [
      "rail-1",
      { shape: { point: [1] } },
      "shape",
      'a path {"vertices": [...], "closed": true or false} or {"point": [x, y]}',
      "an object",
    ],
    [
      "deck-1",
      { material: "cheese" },
      "material",
      '"concrete", "pavers", "stone", "tile", "wood", "composite", "plastic", "gravel", "soil", "lawn" or "artificial-turf"',
      '"cheese"',
    ],
    [
      "fence-1",
      {
        path: openPath([
          [0, 0],
          [0, 0],
        ]),
      },
      "path.vertices[1]",
      needsLength,
      "the same position again, [0, 0]",
    ],
    [
      "fence-1",
      { path: closedPath([...SQUARE, [0, 0]]) },
      "path.vertices[4]",
      noRepeat,
      "the first vertex again, [0, 0]",
    ],
    ["door-1", { path: closedPath(SQUARE) }, "path.closed", "false (this path is open)", "true"],
    [
      "wires-1",
      {
        path: openPath([
          [0, 0, 99],
          [0, 0, 99],
        ]),
      },
      "path.vertices[1]",
      needsLength,
      "the same position again, [0, 0]",
    ],
    [
      "wires-1",
      {
        path: openPath([
          [0, 0, 99],
          [5, 0, "high"],
        ]),
      },
      "path.vertices[1]",
      coordinates("z"),
      '[5, 0, "high"]',
    ],
    [
      "wires-1",
      { class: "to-15" },
      "class",
      '"insulated-750", "to-15kv", "to-50kv", "communications" or "broadband"',
      '"to-15"',
    ],
    ["pump-1", { at: [1, 2, 3] }, "at", "[x, y]", "[1, 2, 3]"],
    ["pump-1", { at: [1, -2e6] }, "at[1]", "a number from -1,000,000 to 1,000,000", "-2000000"],
    ["pump-1", { z: "low" }, "z", "a number from -1,000,000 to 1,000,000 or [bottom, top]", '"low"'],
    ["tie-1", { joins: undefined }, "joins", "a list, each a text", "nothing"],
    ["tie-1", { joins: ["pool-1", 7] }, "joins[1]", "a text", "7"],
    ["statue-1", { pose: Number.NEGATIVE_INFINITY }, "pose", "a finite number", "-Infinity"],
    ["statue-1", { pose: () => 1 }, "pose", "a value that JSON can hold", "a function"],
    ["statue-1", { pose: new Map() }, "pose", "a value that JSON can hold", "an object"],
    ["statue-1", { pose: [undefined] }, "pose[0]", "a value that JSON can hold", "nothing"],
    ["statue-1", { pose: Symbol("s") }, "pose", "a value that JSON can hold", "a symbol"],
  ];

  it.each(faults)("%s %j", (id, change, field, expected, got) => {
    const result = checkSite(sampleWith(id, change));
    expect(onlyProblem(result)).toEqual({ element: id, field, expected, got });
    expect(refusalOf(result).code).toBe("invalid");
    expect(refusalOf(result).message).toBe(`Element "${id}", field ${field}: expected ${expected}, got ${got}.`);
  });

  it("an arc that bulges out of reach although its ends are within", () => {
    // Arithmetic: a chord of 1,000 in. with bulge 4,000 is nearly a whole circle of radius 500 x 4,000 / 2 = 1,000,000 in.
    const vertices = [
      [0, 0, 4000],
      [1000, 0],
      [500, 10],
    ];
    const problem = onlyProblem(checkSite(sampleWith("tree-1", { outline: closedPath(vertices) })));
    expect(problem).toMatchObject({ element: "tree-1", field: "outline.vertices[0]" });
    expect(problem.expected).toBe("an arc that stays within 1,000,000 in. of the origin");
  });

  it("a number too large for a number, in a file", () => {
    const text = SAMPLE_TEXT.replace('"at": [520, 220]', '"at": [1e999, 220]');
    const expected = "a number from -1,000,000 to 1,000,000";
    expect(onlyProblem(readSite(text))).toEqual({ element: "pump-1", field: "at[0]", expected, got: "Infinity" });
  });
});

describe("outlines that cross themselves on their arcs only", () => {
  // Arithmetic: a half circle of radius 50 over the top edge reaches 50 down or up from it; the box is 40 deep.
  const box = (bulge: number) =>
    closedPath([
      [0, 0],
      [100, 0],
      [100, 40, bulge],
      [0, 40],
    ]);

  it("an arc dipping through the far edge is refused, its chords would not cross", () => {
    expect(onlyProblem(checkSite(sampleWith("tree-1", { outline: box(-1) })))).toMatchObject({
      element: "tree-1",
      field: "outline",
      expected: apart,
    });
  });

  it("the same arc bulging out, or dipping 39 in., is taken", () => {
    expect(checkSite(sampleWith("tree-1", { outline: box(1) })).ok).toBe(true);
    expect(checkSite(sampleWith("tree-1", { outline: box(-39 / 50) })).ok).toBe(true);
  });
});
