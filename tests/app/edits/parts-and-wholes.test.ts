/** What stays true of the parts when a thing is cut, and of the whole when two are joined. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { finder } from "../../../app/dimensions/anchors.ts";
import { dimensionLine } from "../../../app/dimensions/dimension-line.ts";
import { setLocked } from "../../../app/edits/arrangement.ts";
import { addDimension } from "../../../app/edits/dimension-edits.ts";
import { removeInnerOutline } from "../../../app/edits/inner-outlines.ts";
import { joinPaths } from "../../../app/edits/join-paths.ts";
import { offsetElement } from "../../../app/edits/offset-element.ts";
import { splitOutline } from "../../../app/edits/split-element.ts";
import { siteWith } from "../tools/hand.ts";
import { applied, field, refusalOf } from "./yard.ts";

type Numbers = readonly (readonly number[])[];

const line = (id: string, kind: string, vertices: Numbers, facts: object = {}) => ({
  id,
  kind,
  ...facts,
  [kind === "metal" ? "shape" : "path"]: { vertices, closed: false },
});
const closed = (...vertices: Numbers) => ({ vertices, closed: true });
const box = (x0: number, y0: number, x1: number, y1: number) => closed([x0, y0], [x1, y0], [x1, y1], [x0, y1]);
const half = (index: number) => ({ index, share: 0.5 });

describe("joining", () => {
  const pieces = (first: object, second: object) =>
    siteWith([
      line(
        "metal-1",
        "metal",
        [
          [0, 0],
          [3, 0],
        ],
        first,
      ),
      line(
        "metal-2",
        "metal",
        [
          [3, 0],
          [6, 0],
        ],
        second,
      ),
    ]);

  it("keeps no size that was measured of one part: two of 3 in. are one of 6 in.", () => {
    const site = applied(pieces({ largestDimension: 3 }, { largestDimension: 3 }), joinPaths("metal-1", "metal-2"));
    expect(field(site, "metal-1", "largestDimension")).toBeUndefined();
  });

  it("adds up what is counted", () => {
    const fences = (gates: object) =>
      siteWith([
        line(
          "fence-1",
          "fence",
          [
            [0, 0],
            [90, 0],
          ],
          { gates: 1 },
        ),
        line(
          "fence-2",
          "fence",
          [
            [90, 0],
            [180, 0],
          ],
          gates,
        ),
      ]);
    expect(field(applied(fences({ gates: 2 }), joinPaths("fence-1", "fence-2")), "fence-1", "gates")).toBe(3);
    expect(field(applied(fences({}), joinPaths("fence-1", "fence-2")), "fence-1", "gates")).toBeUndefined();
  });

  it("adds up the pieces of two fences: drawing them as one joins no metal, and none that are separate is one piece", () => {
    const sectionsOf = (first: object, second: object) => {
      const site = siteWith([
        line(
          "fence-1",
          "fence",
          [
            [0, 0],
            [90, 0],
          ],
          first,
        ),
        line(
          "fence-2",
          "fence",
          [
            [90, 0],
            [180, 0],
          ],
          second,
        ),
      ]);
      return field(applied(site, joinPaths("fence-1", "fence-2")), "fence-1", "isolatedSections");
    };
    // Arithmetic.
    expect(sectionsOf({ isolatedSections: 3 }, { isolatedSections: 2 })).toBe(5);
    expect(sectionsOf({ isolatedSections: 1 }, { isolatedSections: 1 })).toBe(2);
    // A fence with no piece that stands apart is one piece: two of them are two, never one through which bonding passes.
    expect(sectionsOf({ isolatedSections: 0 }, { isolatedSections: 0 })).toBe(2);
    // Not known of one: not known of the whole.
    expect(sectionsOf({ isolatedSections: 3 }, {})).toBeUndefined();
  });

  it("does not let a fact go where its absence says the opposite", () => {
    // ABSENT_MEANS: metal without a word on it stands outside of the pool's structure.
    const { reason } = refusalOf(pieces({ inPoolStructure: true }, {}), joinPaths("metal-1", "metal-2"));
    expect(reason).toMatch(/differ in .*: make that the same first/);
    // Said and not said are the same there.
    const same = applied(pieces({ inPoolStructure: false }, {}), joinPaths("metal-1", "metal-2"));
    expect(field(same, "metal-1", "inPoolStructure") ?? false).toBe(false);
  });

  it("names of the second in what a device serves become those of the whole", () => {
    const device = { id: "device-1", kind: "device", device: "switch", at: [50, 50], serves: ["metal-2", "metal-1"] };
    const site = applied(
      { ...pieces({}, {}), elements: [...pieces({}, {}).elements, device] } as never,
      joinPaths("metal-1", "metal-2"),
    );
    expect(field(site, "device-1", "serves")).toEqual(["metal-1"]);
  });

  it("keeps the height of overhead lines where they meet, and refuses two", () => {
    const lines = (end: readonly number[], start: readonly number[]) =>
      siteWith([
        line("overhead-line-1", "overhead-line", [[0, 0, 240], end], { class: "to-15kv" }),
        line("overhead-line-2", "overhead-line", [start, [960, 0, 300]], { class: "to-15kv" }),
      ]);
    const join = joinPaths("overhead-line-1", "overhead-line-2");
    for (const site of [
      lines([480, 0, 260], [480, 0]),
      lines([480, 0], [480, 0, 260]),
      lines([480, 0, 260], [480, 0, 260]),
    ]) {
      expect(field(applied(site, join), "overhead-line-1", "path")).toMatchObject({
        vertices: [
          [0, 0, 240],
          [480, 0, 260],
          [960, 0, 300],
        ],
      });
    }
    expect(refusalOf(lines([480, 0, 260], [480, 0, 216]), join).reason).toMatch(/height/);
  });
});

describe("cutting", () => {
  it("refuses a cut that runs outside of the outline", () => {
    // A U, open to the top: its arms' inner corners face each other over the gap.
    const u = closed([0, 0], [300, 0], [300, 200], [200, 200], [200, 80], [100, 80], [100, 200], [0, 200]);
    const site = siteWith([{ id: "surface-1", kind: "surface", material: "concrete", outline: u }]);
    const cut = splitOutline("surface-1", { index: 3, share: 0 }, { index: 6, share: 0 });
    expect(refusalOf(site, cut).reason).toMatch(/inside/);
    // Over the bottom of the gap it runs along a side.
    expect(refusalOf(site, splitOutline("surface-1", { index: 4, share: 0 }, { index: 5, share: 0 })).ok).toBe(false);
    // Across one arm it is a cut.
    expect(applied(site, splitOutline("surface-1", half(1), half(3))).elements).toHaveLength(2);
  });

  it("refuses a cut through an opening or an island", () => {
    const deck = {
      id: "surface-1",
      kind: "surface",
      material: "concrete",
      outline: box(0, 0, 400, 100),
      holes: [box(150, 20, 250, 80)],
    };
    expect(refusalOf(siteWith([deck]), splitOutline("surface-1", half(0), half(2))).reason).toMatch(/opening/i);
    const pool = {
      id: "pool-1",
      kind: "pool",
      body: "pool",
      shell: "unknown",
      outline: box(0, 0, 400, 100),
      islands: [box(150, 20, 250, 80)],
    };
    expect(refusalOf(siteWith([pool]), splitOutline("pool-1", half(0), half(2))).reason).toMatch(/island/i);
  });

  it("gives lights, contacts and steps to the part of the pool that they lie in", () => {
    const site = siteWith([
      { id: "pool-1", kind: "pool", body: "pool", shell: "unknown", outline: box(0, 0, 400, 200) },
      { id: "underwater-light-1", kind: "underwater-light", at: [0, 100], pool: "pool-1", formingShell: "metal" },
      { id: "underwater-light-2", kind: "underwater-light", at: [400, 100], pool: "pool-1", formingShell: "metal" },
      { id: "water-bond-1", kind: "water-bond", at: [0, 30], pool: "pool-1" },
      { id: "inset-1", kind: "inset", outline: box(0, 0, 90, 90), pool: "pool-1" },
      { id: "inset-2", kind: "inset", outline: box(310, 0, 400, 90), pool: "pool-1" },
    ]);
    const cut = applied(site, splitOutline("pool-1", half(0), half(2)));
    const right = (field(cut, "pool-1", "outline") as { vertices: Numbers }).vertices.some(([x]) => x === 400);
    const [ofRight, ofLeft] = right ? ["pool-1", "pool-2"] : ["pool-2", "pool-1"];
    const pools = ["underwater-light-1", "underwater-light-2", "water-bond-1", "inset-1", "inset-2"].map((id) =>
      field(cut, id, "pool"),
    );
    expect(pools).toEqual([ofLeft, ofRight, ofLeft, ofLeft, ofRight]);
  });
});

it("an offset copy keeps no size that was measured of the original", () => {
  const rail = line(
    "metal-1",
    "metal",
    [
      [0, 0],
      [3, 0],
    ],
    { largestDimension: 3, fixed: true },
  );
  const site = applied(siteWith([rail]), offsetElement("metal-1", { distance: 6, side: "left", corners: "square" }));
  expect(field(site, "metal-2", "fixed")).toBe(true);
  expect(field(site, "metal-2", "largestDimension")).toBeUndefined();
});

describe("openings taken away", () => {
  const deck = {
    id: "surface-1",
    kind: "surface",
    material: "concrete",
    outline: box(0, 0, 400, 100),
    holes: [box(20, 20, 40, 40), box(300, 20, 350, 40)],
  };
  const on = (index: number, corner: number, at: readonly number[]) =>
    ({ element: "surface-1", ref: "holes", index, corner, at }) as never;

  it("leave the dimensions of the others where they are", () => {
    let site = applied(
      siteWith([deck]),
      addDimension({ from: on(1, 0, [300, 20]), to: on(1, 1, [350, 20]), offset: 10 }),
    );
    site = applied(site, addDimension({ from: on(0, 0, [20, 20]), to: on(0, 1, [40, 20]), offset: 10 }));
    const left = applied(site, removeInnerOutline("surface-1", "holes", 0));
    expect(left.dimensions?.map((one) => dimensionLine(one, finder(left))?.length)).toEqual([50]);
  });

  it("not of what is locked", () => {
    const locked = applied(siteWith([deck]), setLocked(["surface-1"], true));
    expect(refusalOf(locked, removeInnerOutline("surface-1", "holes", 0)).reason).toMatch(/locked/);
  });
});
