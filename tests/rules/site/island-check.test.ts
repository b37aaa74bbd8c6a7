// Islands of a pool: inside its outline, clear of its wall and of each other. Source: the site format (islands are ground
// inside the water); figures: arithmetic.
import { describe, expect, it } from "vitest";
import { setField } from "../../../app/edits/set-field.ts";
import { recompute } from "../../../rules/recompute.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { onlyProblem } from "./refused.ts";

type Vertices = readonly (readonly number[])[];

const closed = (vertices: Vertices) => ({ vertices, closed: true });
const box = (x0: number, y0: number, x1: number, y1: number) =>
  closed([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
/** A round island, as two half circles. */
const disc = (x: number, y: number, radius: number) =>
  closed([
    [x - radius, y, 1],
    [x + radius, y, 1],
  ]);

function siteWith(islands: readonly object[], outline: object = box(0, 0, 384, 192)) {
  const pool = { id: "pool-1", kind: "pool", outline, islands, body: "pool", shell: "vinyl-liner" };
  return { format: "copperband-site", version: 1, edition: "nec-2020", elements: [pool] };
}

const IN_WATER = "an island inside the pool's outline that does not touch it";
const APART = "an island that lies apart from the others";

describe("an island that is no ground inside the water is refused", () => {
  it.each([
    ["outside", [box(400, 50, 420, 70)], "islands[0]", IN_WATER, "one outside it, at [400, 50]"],
    ["around the pool", [box(-10, -10, 500, 500)], "islands[0]", IN_WATER, "one outside it, at [-10, -10]"],
    ["partly outside", [box(370, 50, 420, 70)], "islands[0]", IN_WATER, /^one that meets it at \[384, (50|70)\]$/],
    [
      "at a corner of the wall",
      [
        closed([
          [0, 0],
          [40, 20],
          [20, 40],
        ]),
      ],
      "islands[0]",
      IN_WATER,
      "one that meets it at [0, 0]",
    ],
    ["along the wall", [box(100, 0, 140, 40)], "islands[0]", IN_WATER, /^one that meets it at /],
    ["of an arc that just reaches the wall", [disc(100, 50, 50)], "islands[0]", IN_WATER, /^one that meets it at /],
    [
      "over another",
      [box(20, 20, 60, 60), box(40, 40, 80, 80)],
      "islands[1]",
      APART,
      /^one that meets islands\[0\] at /,
    ],
    [
      "touching another",
      [disc(100, 100, 20), disc(140, 100, 20)],
      "islands[1]",
      APART,
      /^one that meets islands\[0\] at /,
    ],
    ["inside another", [box(20, 20, 90, 90), box(40, 40, 60, 60)], "islands[1]", APART, "one inside islands[0]"],
    ["around another", [box(40, 40, 60, 60), box(20, 20, 90, 90)], "islands[1]", APART, "one around islands[0]"],
  ] as const)("%s", (_, islands, field, expected, got) => {
    const problem = onlyProblem(checkSite(siteWith(islands)));
    expect(problem).toMatchObject({ element: "pool-1", field, expected });
    expect(problem.got).toMatch(got);
  });

  it("in the inlet of an outline, where only the water's box holds it", () => {
    const bent = closed([
      [0, 0],
      [300, 0],
      [300, 100],
      [100, 100],
      [100, 300],
      [0, 300],
    ]);
    expect(onlyProblem(checkSite(siteWith([box(150, 150, 200, 200)], bent)))).toMatchObject({ field: "islands[0]" });
  });

  it("and each is told by itself", () => {
    const result = checkSite(siteWith([box(400, 50, 420, 70), box(20, 20, 60, 60), box(10, 10, 30, 30)]));
    if (result.ok) throw new Error("The site was taken.");
    expect(result.refusal.problems.map(({ field }) => field)).toEqual(["islands[0]", "islands[2]"]);
  });

  it("an outline that crosses itself is told first", () => {
    const bow = closed([
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ]);
    expect(onlyProblem(checkSite(siteWith([box(400, 50, 420, 70)], bow)))).toMatchObject({ field: "outline" });
  });

  it("in an edit as well, in plain words", () => {
    const site = siteWith([disc(100, 100, 20)]) as unknown as Site;
    const reasons = [[box(400, 50, 420, 70)], [disc(100, 100, 20), disc(110, 100, 20)]].map((islands) => {
      const result = setField("pool-1", "islands", islands).apply(site);
      return result.ok ? "taken" : result.reason;
    });
    expect(reasons).toEqual([
      "Island 1 has to lie inside the pool, clear of its wall.",
      "Island 2 has to lie apart from the other islands.",
    ]);
  });
});

describe("taken", () => {
  it("islands a hair from the wall and from each other, an arc inside its chords' box included", () => {
    expect(
      checkSite(siteWith([disc(100, 50, 49.99), disc(149.99 + 50, 50, 49.99), box(300, 0.01, 383.99, 100)])).ok,
    ).toBe(true);
  });
});

describe("openings of a surface that reach past its edge, or over each other, only take away", () => {
  // Arithmetic: the deck is the 36 in. strip right of the pool, 36 x 192 = 6,912 sq in.; what its openings leave of it.
  it.each([
    ["past its edge", [box(410, 50, 500, 70)], 6912 - 10 * 20],
    ["over each other", [box(390, 50, 400, 90), box(395, 70, 410, 110)], 6912 - (10 * 40 + 15 * 40 - 5 * 20)],
    ["beside it", [box(430, 50, 500, 70)], 6912],
  ])("%s", (_, holes, area) => {
    const site = siteWith([]);
    const deck = { id: "deck-1", kind: "surface", outline: box(384, 0, 420, 192), holes, material: "concrete" };
    const result = checkSite({ ...site, elements: [...site.elements, deck] });
    if (!result.ok) throw new Error(result.refusal.message);
    const [band] = recompute(result.site, { withoutRoutes: true }).band;
    expect(band?.bySurface.find(({ surface }) => surface === "deck-1")?.area).toBeCloseTo(area, 1);
  });
});
