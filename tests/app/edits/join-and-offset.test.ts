/** Lines joined, outlines and lines offset. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import type { Edit } from "../../../app/edits/edit.ts";
import { joinPaths } from "../../../app/edits/join-paths.ts";
import { offsetElement } from "../../../app/edits/offset-element.ts";
import { splitLine } from "../../../app/edits/split-element.ts";
import { areaFrom, areaOf, pathFrom, pathLength } from "../../../geometry/outline.ts";
import type { PathData, Vertex } from "../../../geometry/types.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { siteWith } from "../tools/hand.ts";

const _OUTLINE = { field: "outline" } as const;
const _PATH = { field: "path" } as const;

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

describe("joining", () => {
  it("what was cut comes together again, whichever way the parts run", () => {
    const whole = siteWith([fence]);
    const cut = done(whole, splitLine("fence-1", { index: 1, share: 0.25 }));
    const joined = done(cut, joinPaths("fence-2", "fence-1"));
    expect(joined.elements.map(({ id }) => id)).toEqual(["fence-2"]);
    expect(length(joined, "fence-2")).toBeCloseTo(length(whole, "fence-1"), 9);
    const bulges = path(joined, "fence-2").vertices.filter((vertex: Vertex) => (vertex[2] ?? 0) !== 0);
    expect(bulges).toHaveLength(2);
  });

  it("lets go of facts on which they differ, and ties name the line that is left", () => {
    const other = {
      id: "fence-2",
      kind: "fence",
      top: 48,
      metal: true,
      path: {
        vertices: [
          [480, 0],
          [480, 90],
        ],
        closed: false,
      },
    };
    const tie = { id: "tie-1", kind: "tie", at: [480, 50], joins: ["fence-2", "pool-1"] };
    const site = done(siteWith([fence, other, tie, pool]), joinPaths("fence-1", "fence-2"));
    const [joined] = site.elements as unknown as Record<string, unknown>[];
    expect(joined).toMatchObject({ id: "fence-1", metal: true });
    expect(joined).not.toHaveProperty("top");
    expect(site.elements[1]).toMatchObject({ joins: ["fence-1", "pool-1"] });
  });

  it("refuses lines whose ends are apart, of two kinds, or that differ in what has to be given", () => {
    const far = {
      id: "fence-2",
      kind: "fence",
      path: {
        vertices: [
          [480, 3],
          [480, 90],
        ],
        closed: false,
      },
    };
    expect(reason(siteWith([fence, far]), joinPaths("fence-1", "fence-2"))).toBe(
      'Their nearest ends lie 3" apart: put one end onto the other first.',
    );
    const wall = {
      id: "wall-1",
      kind: "wall",
      thickness: 8,
      path: {
        vertices: [
          [480, 0],
          [480, 90],
        ],
        closed: false,
      },
    };
    expect(reason(siteWith([fence, wall]), joinPaths("fence-1", "wall-1"))).toMatch(/different kinds/);
    const ring = (id: string, role: string, vertices: number[][]) => ({
      id,
      kind: "conductor",
      role,
      path: { vertices, closed: false },
    });
    const two = siteWith([
      ring("conductor-1", "ring", [
        [0, 0],
        [9, 0],
      ]),
      ring("conductor-2", "branch", [
        [9, 0],
        [9, 9],
      ]),
    ]);
    expect(reason(two, joinPaths("conductor-1", "conductor-2"))).toMatch(/differ in /);
  });

  it("closes a line whose ends meet", () => {
    const ends = {
      id: "fence-1",
      kind: "fence",
      path: {
        vertices: [
          [0, 0],
          [90, 0],
          [90, 90],
          [0, 0],
        ],
        closed: false,
      },
    };
    expect(path(done(siteWith([ends]), joinPaths("fence-1", "fence-1")), "fence-1")).toMatchObject({ closed: true });
    expect(reason(siteWith([fence]), joinPaths("fence-1", "fence-1"))).toMatch(/do not meet/);
  });
});

describe("offsetting", () => {
  const round = { side: "outside", corners: "round" } as const;

  it("a pool gives a deck outside and a ledge inside", () => {
    const deck = done(siteWith([pool]), offsetElement("pool-1", { ...round, distance: 48 }));
    expect(deck.elements[1]).toMatchObject({ id: "surface-1", kind: "surface" });
    // Steiner's formula for parallel curves.
    expect(area(deck, "surface-1")).toBeCloseTo(384 * 192 + 48 * 1152 + Math.PI * 48 * 48, 6);
    const ledge = done(siteWith([pool]), offsetElement("pool-1", { side: "inside", corners: "round", distance: 18 }));
    expect(ledge.elements[1]).toMatchObject({ id: "inset-1", kind: "inset", pool: "pool-1" });
    expect(area(ledge, "inset-1")).toBeCloseTo((384 - 36) * (192 - 36), 6);
    expect(
      reason(siteWith([pool]), offsetElement("pool-1", { side: "inside", corners: "round", distance: 96 })),
    ).toMatch(/Nothing is left/);
  });

  it("with square corners a rectangle stays one", () => {
    const site = done(siteWith([pool]), offsetElement("pool-1", { side: "outside", corners: "square", distance: 48 }));
    expect(area(site, "surface-1")).toBeCloseTo((384 + 96) * (192 + 96), 6);
    expect(path(site, "surface-1").vertices).toHaveLength(4);
  });

  it("a surface gives a surface under it, a fence a fence with its facts on the side asked for", () => {
    const coping = { id: "surface-1", kind: "surface", material: "pavers", outline: pool.outline };
    const site = done(siteWith([coping]), offsetElement("surface-1", { ...round, distance: 12 }));
    expect(site.elements.map(({ id }) => id)).toEqual(["surface-2", "surface-1"]);
    expect(site.elements[0]).toMatchObject({ material: "pavers" });
    const straight = {
      ...fence,
      path: {
        vertices: [
          [0, 0],
          [240, 0],
        ],
        closed: false,
      },
    };
    const fences = done(
      siteWith([straight]),
      offsetElement("fence-1", { side: "left", corners: "round", distance: 36 }),
    );
    expect(path(fences, "fence-2").vertices).toEqual([
      [0, 36],
      [240, 36],
    ]);
    expect(fences.elements[1]).toMatchObject({ top: 60, metal: true });
    expect(fences.elements[1]).not.toHaveProperty("name");
  });
});
