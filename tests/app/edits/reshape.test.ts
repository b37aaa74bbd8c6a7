/** Corners rounded, sides bent by radius, lines and outlines cut, joined and offset. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import type { Edit } from "../../../app/edits/edit.ts";
import { roundCorner } from "../../../app/edits/round-corner.ts";
import { setRadius } from "../../../app/edits/set-radius.ts";
import { splitLine, splitOutline } from "../../../app/edits/split-element.ts";
import { areaFrom, areaOf, pathFrom, pathLength } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { siteWith } from "../tools/hand.ts";

const OUTLINE = { field: "outline" } as const;
const PATH = { field: "path" } as const;

const pool = {
  id: "pool-1",
  kind: "pool",
  body: "pool",
  shell: "unknown",
  outline: {
    vertices: [
      [0, 0],
      [384, 0],
      [384, 192],
      [0, 192],
    ],
    closed: true,
  },
};
const fence = {
  id: "fence-1",
  kind: "fence",
  name: "South run",
  top: 60,
  metal: true,
  gates: 2,
  path: {
    vertices: [
      [0, -100],
      [240, -100, 0.5],
      [480, -100],
      [480, 0],
    ],
    closed: false,
  },
};

function done(site: Site, edit: Edit): Site {
  const result = edit.apply(site);
  if (!result.ok) throw new Error(result.reason);
  const read = readSite(JSON.stringify(result.site));
  if (!read.ok) throw new Error(read.refusal.message);
  return result.site;
}

function reason(site: Site, edit: Edit): string {
  const result = edit.apply(site);
  return result.ok ? "it was done" : result.reason;
}

function path(site: Site, id: string): PathData {
  const element = site.elements.find((one) => one.id === id) as unknown as Record<string, PathData>;
  return (element?.outline ?? element?.path) as PathData;
}

const area = (site: Site, id: string) => areaOf(areaFrom(path(site, id)));
const length = (site: Site, id: string) => pathLength(pathFrom(path(site, id)));

describe("rounding a corner", () => {
  it("takes a quarter circle's corner off the area", () => {
    const site = done(siteWith([pool]), roundCorner("pool-1", OUTLINE, 1, 48));
    expect(path(site, "pool-1").vertices).toHaveLength(5);
    expect(area(site, "pool-1")).toBeCloseTo(384 * 192 - (1 - Math.PI / 4) * 48 * 48, 6);
  });

  it("works for the first corner, and for an outline that runs clockwise", () => {
    const clockwise = { ...pool, outline: { vertices: [...pool.outline.vertices].reverse(), closed: true } };
    for (const one of [pool, clockwise]) {
      const site = done(siteWith([one]), roundCorner("pool-1", OUTLINE, 0, 24));
      expect(area(site, "pool-1")).toBeCloseTo(384 * 192 - (1 - Math.PI / 4) * 24 * 24, 6);
    }
  });

  it("uses a side up to its end: both corners at an end by half its length make a half circle", () => {
    let site = done(siteWith([pool]), roundCorner("pool-1", OUTLINE, 1, 96));
    site = done(site, roundCorner("pool-1", OUTLINE, 3, 96));
    expect(area(site, "pool-1")).toBeCloseTo(384 * 192 - ((4 - Math.PI) * (96 * 96)) / 2, 4);
    // Nothing is left of the side between them.
    expect(path(site, "pool-1").vertices).toHaveLength(5);
  });

  it("refuses a radius that is too large, with the largest that fits, and one where nothing turns", () => {
    expect(reason(siteWith([pool]), roundCorner("pool-1", OUTLINE, 1, 240))).toBe(
      `A radius of 20' 0" is too large for this corner: at most 16' 0" fits.`,
    );
    expect(reason(siteWith([fence]), roundCorner("fence-1", PATH, 0, 12))).toBe(
      "The end of a line is no corner to round.",
    );
    expect(reason(siteWith([pool]), roundCorner("pool-1", OUTLINE, 1, 0))).toMatch(/above zero/);
  });
});

describe("a side's radius", () => {
  it("makes a straight side an arc that bulges outward, and changes an arc's", () => {
    let site = done(siteWith([pool]), setRadius("pool-1", OUTLINE, 1, 120));
    // Half the chord is 96 and the radius 120: the center lies 72 in. inside.
    expect(area(site, "pool-1")).toBeCloseTo(384 * 192 + 120 * 120 * Math.asin(0.8) - 96 * 72, 6);
    site = done(site, setRadius("pool-1", OUTLINE, 1, 96));
    expect(path(site, "pool-1").vertices[1]?.[2]).toBeCloseTo(1, 9);
    expect(reason(site, setRadius("pool-1", OUTLINE, 1, 90))).toMatch(
      /reaches at most 15' 0" from end to end; these ends lie 16' 0" apart/,
    );
  });

  it("bulges outward whichever way the outline runs", () => {
    const turned = { ...pool, outline: { ...pool.outline, vertices: pool.outline.vertices.toReversed() } };
    const site = done(siteWith([turned]), setRadius("pool-1", OUTLINE, 0, 1000));
    expect(area(site, "pool-1")).toBeGreaterThan(384 * 192);
  });

  it("with a minus bends inward", () => {
    const site = done(siteWith([pool]), setRadius("pool-1", OUTLINE, 1, -120));
    expect(area(site, "pool-1")).toBeLessThan(384 * 192);
  });
});

describe("cutting", () => {
  it("a line in a side: two lines with its facts, together as long as before", () => {
    const before = siteWith([fence, pool]);
    const site = done(before, splitLine("fence-1", { index: 1, share: 0.25 }));
    expect(site.elements.map(({ id }) => id)).toEqual(["fence-1", "fence-2", "pool-1"]);
    expect(length(site, "fence-1") + length(site, "fence-2")).toBeCloseTo(length(before, "fence-1"), 9);
    expect(site.elements[1]).toMatchObject({ kind: "fence", top: 60, metal: true });
    // How many gates each part has is not known.
    expect(site.elements.slice(0, 2).map((element) => "gates" in element)).toEqual([false, false]);
  });

  it("gives the second part a name that tells it from the first", () => {
    const site = done(siteWith([{ ...fence, name: "Run" }]), splitLine("fence-1", { index: 1, share: 0.25 }));
    expect(site.elements.map(({ name }) => name)).toEqual(["Run", "Run 2"]);
  });

  it("a line at a corner, and not at its end", () => {
    const site = done(siteWith([fence]), splitLine("fence-1", { index: 2, share: 0 }));
    expect(path(site, "fence-1").vertices).toEqual([
      [0, -100],
      [240, -100, 0.5],
      [480, -100],
    ]);
    expect(path(site, "fence-2").vertices).toEqual([
      [480, -100],
      [480, 0],
    ]);
    expect(reason(site, splitLine("fence-2", { index: 0, share: 0 }))).toMatch(/at its end/);
    expect(reason(site, splitLine("fence-2", { index: 0, share: 1 }))).toMatch(/at its end/);
  });

  it("a closed line opens it where it is cut", () => {
    const ring = {
      id: "fence-1",
      kind: "fence",
      path: {
        vertices: [
          [0, 0],
          [100, 0],
          [100, 80],
          [0, 80],
        ],
        closed: true,
      },
    };
    const site = done(siteWith([ring]), splitLine("fence-1", { index: 1, share: 0.5 }));
    expect(path(site, "fence-1")).toEqual({
      vertices: [
        [100, 40],
        [100, 80],
        [0, 80],
        [0, 0],
        [100, 0],
        [100, 40],
      ],
      closed: false,
    });
  });

  it("an outline between two places, in either order, arcs kept", () => {
    const bent = {
      ...pool,
      outline: {
        vertices: [
          [0, 0],
          [384, 0, 1],
          [384, 192],
          [0, 192],
        ],
        closed: true,
      },
    };
    const whole = 384 * 192 + (Math.PI * 96 * 96) / 2;
    for (const places of [
      [
        { index: 0, share: 0.5 },
        { index: 2, share: 0.5 },
      ],
      [
        { index: 2, share: 0.5 },
        { index: 0, share: 0.5 },
      ],
    ] as const) {
      const site = done(siteWith([bent]), splitOutline("pool-1", places[0], places[1]));
      const areas = ["pool-1", "pool-2"].map((id) => area(site, id)).sort((a, b) => a - b);
      expect(areas[0]).toBeCloseTo(192 * 192, 6);
      expect((areas[0] ?? 0) + (areas[1] ?? 0)).toBeCloseTo(whole, 6);
    }
    const arc = done(siteWith([bent]), splitOutline("pool-1", { index: 1, share: 0 }, { index: 2, share: 0 }));
    expect(["pool-1", "pool-2"].map((id) => area(arc, id)).sort((a, b) => a - b)[0]).toBeCloseTo(
      (Math.PI * 96 * 96) / 2,
      6,
    );
  });

  it("an outline refuses a cut along its own side, and shares its openings", () => {
    expect(
      reason(siteWith([pool]), splitOutline("pool-1", { index: 0, share: 0.2 }, { index: 0, share: 0.7 })),
    ).not.toBe("it was done");
    const deck = {
      id: "surface-1",
      kind: "surface",
      material: "concrete",
      outline: {
        vertices: [
          [0, 0],
          [400, 0],
          [400, 100],
          [0, 100],
        ],
        closed: true,
      },
      holes: [
        {
          vertices: [
            [20, 20],
            [60, 20],
            [60, 60],
          ],
          closed: true,
        },
        {
          vertices: [
            [320, 20],
            [360, 20],
            [360, 60],
          ],
          closed: true,
        },
      ],
    };
    const site = done(siteWith([deck]), splitOutline("surface-1", { index: 0, share: 0.5 }, { index: 2, share: 0.5 }));
    expect(site.elements.map((element) => (element as unknown as { holes: unknown[] }).holes.length)).toEqual([1, 1]);
  });
});
