// NEC 680.26(B)(7), restated: fences, frames, cladding and steel in walls. Figures of the cases: GEOS, within 0.1 %.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { pathFrom } from "../../../geometry/outline.ts";
import { box, concretePool, line } from "../../../rules/catalogue/common/example-yard.ts";
import { sectionsWithin } from "../../../rules/catalogue/fixed-metal/fence-sections.ts";
import { rule } from "../../../rules/catalogue/fixed-metal/rule.ts";
import { rule as receptacles } from "../../../rules/catalogue/receptacle-distance/rule.ts";
import type { Verdict } from "../../../rules/catalogue/rule.ts";
import { verdictOf, yardOf } from "./yards.ts";

const fence = (changes: object = {}) => ({
  id: "fence",
  kind: "fence",
  path: line(-80, -55, 464, -55),
  metal: true,
  ...changes,
});

const judged = (element: object & { id: string }, ...others: object[]): Verdict =>
  verdictOf(rule, yardOf([concretePool(), element, ...others]), element.id);

describe("the published cases", () => {
  interface Expected {
    metal: Record<string, { horizontal: number; path: number }>;
    fences: Record<string, { horizontal: number; within60: number }>;
    cord: Record<string, number>;
  }
  it.each(["open-rectangle", "open-roman", "open-wall"])("%s", (name) => {
    const file = (kind: string) =>
      readFileSync(new URL(`../../fixtures/cases/${name}.${kind}.json`, import.meta.url), "utf8");
    const site = JSON.parse(file("site")) as { elements: object[] };
    const expected = JSON.parse(file("expected")) as Expected;
    const yard = yardOf(site.elements);
    for (const [id, { horizontal, path }] of Object.entries(expected.metal)) {
      const { measured } = verdictOf(rule, yard, id);
      expect(Math.abs((measured.horizontal as number) / horizontal - 1)).toBeLessThan(0.001);
      expect(Math.abs((measured.path as number) / path - 1)).toBeLessThan(0.001);
    }
    for (const [id, { horizontal, within60 }] of Object.entries(expected.fences)) {
      const verdict = verdictOf(rule, yard, id);
      expect(verdict.measured.horizontal).toBe(horizontal);
      expect(Math.abs((verdict.extent ?? 0) / within60 - 1)).toBeLessThan(0.001);
    }
    for (const [id, length] of Object.entries(expected.cord)) {
      const { measured } = verdictOf(receptacles, yard, id);
      expect(Math.abs((measured.path as number) / length - 1)).toBeLessThan(0.001);
    }
  });
});

describe("a fence", () => {
  it("is bonded by one connection while nothing says that its pieces are apart", () => {
    expect(judged(fence())).toMatchObject({
      outcome: "bond",
      need: { kind: "part", elements: ["fence"], connections: 1 },
    });
    expect(judged(fence({ isolatedSections: 0 })).need?.connections).toBe(1);
  });

  it("needs one for each isolated piece within reach, and one for each gate", () => {
    // Arithmetic: within reach from x = -23.98 to 407.98 of -80 to 464: all of 8 pieces of 68, all but the ends of 16 of 34.
    expect(judged(fence({ isolatedSections: 8 })).need?.connections).toBe(8);
    expect(judged(fence({ isolatedSections: 16 })).need?.connections).toBe(14);
    expect(judged(fence({ isolatedSections: 16, gates: 2 })).need?.connections).toBe(16);
  });

  it("beyond reach is exempt whatever it is made of, and within reach a question while that is not given", () => {
    expect(judged(fence({ path: line(-80, -60.01, 464, -60.01), metal: undefined })).outcome).toBe("exempt");
    expect(judged(fence({ path: line(-80, -60, 464, -60), metal: undefined })).question?.id).toBe("fence-metal");
    expect(judged(fence({ path: line(-80, -60, 464, -60) })).outcome).toBe("bond");
  });

  it("that is not metal has no finding", () => {
    const yard = yardOf([concretePool(), fence({ metal: false })]);
    expect(rule.judge(yard)).toEqual([]);
  });

  it("stands on the ground: its top frees it never", () => {
    expect(judged(fence({ top: 400 })).outcome).toBe("bond");
  });

  it("offers positions within reach to be joined at", () => {
    for (const [x, y] of judged(fence({ isolatedSections: 4 })).need?.at ?? []) {
      const dx = Math.max(0, -x, x - 384);
      expect(Math.hypot(dx, -y)).toBeLessThanOrEqual(60 + 1e-6);
    }
  });
});

describe("the sections of a fence (arithmetic)", () => {
  const path = (vertices: [number, number][], closed = false) => pathFrom({ vertices, closed });
  it("counts those that the stretches within reach touch", () => {
    const whole = path([
      [0, 0],
      [100, 0],
    ]);
    expect(
      sectionsWithin(
        whole,
        [
          path([
            [20, 0],
            [60, 0],
          ]),
        ],
        10,
      ),
    ).toMatchObject({ reached: 4 });
    expect(
      sectionsWithin(
        whole,
        [
          path([
            [25, 0],
            [31, 0],
          ]),
        ],
        10,
      ),
    ).toMatchObject({ reached: 2 });
    expect(
      sectionsWithin(
        whole,
        [
          path([
            [0, 0],
            [5, 0],
          ]),
          path([
            [95, 0],
            [100, 0],
          ]),
        ],
        2,
      ),
    ).toMatchObject({ reached: 2 });
    expect(
      sectionsWithin(
        whole,
        [
          path([
            [0, 0],
            [5, 0],
          ]),
          path([
            [95, 0],
            [100, 0],
          ]),
        ],
        1,
      ),
    ).toMatchObject({ reached: 1 });
    expect(sectionsWithin(whole, [], 5)).toMatchObject({ reached: 0 });
  });

  it("goes round the start of a closed fence", () => {
    const closed = path(
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
      true,
    );
    // From 350 over the start to 450 of 400: the last section and the first.
    const piece = path([
      [0, 50],
      [0, 0],
      [50, 0],
    ]);
    expect(sectionsWithin(closed, [piece], 4)).toMatchObject({ reached: 2 });
  });
});

describe("frames, cladding and walls", () => {
  const house = (changes: object = {}) => ({
    id: "house",
    kind: "building",
    outline: box(0, 240, 384, 500),
    top: 120,
    metalCladding: false,
    ...changes,
  });
  const door = (changes: object = {}) => ({
    id: "door",
    kind: "opening",
    path: line(100, 240, 136, 240),
    opening: "sliding-door",
    metalFrame: true,
    ...changes,
  });

  it("bonds metal frames of doors and windows within reach", () => {
    expect(judged(door(), house())).toMatchObject({ outcome: "bond", measured: { horizontal: 48, path: 48 } });
    expect(judged(door({ opening: "window" }), house()).outcome).toBe("bond");
    expect(judged(door({ metalFrame: undefined }), house()).question?.id).toBe("frame-metal");
    expect(judged(door({ path: line(100, 252.01, 136, 252.01) })).outcome).toBe("exempt");
  });

  it("says nothing of frames that are not metal, nor of open passages", () => {
    const yard = yardOf([
      concretePool(),
      house(),
      door({ metalFrame: false }),
      { ...door({ opening: "passage", metalFrame: undefined }), id: "way" },
    ]);
    expect(rule.judge(yard)).toEqual([]);
  });

  it("bonds metal cladding", () => {
    expect(judged(house({ metalCladding: true }))).toMatchObject({
      outcome: "bond",
      measured: { horizontal: 48, path: 48 },
    });
    expect(judged(house({ metalCladding: undefined })).question?.id).toBe("cladding-metal");
    expect(judged(house({ metalCladding: true, outline: box(0, 252.01, 384, 500) })).outcome).toBe("exempt");
  });

  it("asks about steel in walls, measured to their faces (argued: common practice, no source)", () => {
    const wall = (y: number, reinforced: boolean | undefined) => ({
      id: "wall",
      kind: "wall",
      path: line(0, y, 384, y),
      thickness: 12,
      top: 72,
      permanent: true,
      reinforced,
    });
    expect(judged(wall(258, true))).toMatchObject({
      outcome: "review",
      measured: { horizontal: 60 },
      question: { id: "wall-reinforcing" },
    });
    expect(judged(wall(258, undefined)).outcome).toBe("review");
    expect(judged(wall(258.01, true)).outcome).toBe("exempt");
    expect(rule.judge(yardOf([concretePool(), wall(230, false)]))).toEqual([]);
  });
});

// Metal raceways and metal-sheathed cable are among what 680.26(B)(7) names; buried metal: argued, common practice.
describe("metal conduit in the ground", () => {
  const run = (method: string, distance: number) => ({
    id: "run",
    kind: "underground-run",
    path: line(-80, -distance, 464, -distance),
    method,
    cover: 24,
    servesPool: true,
  });
  const judge = (method: string, distance: number, head: object = {}) =>
    verdictOf(rule, yardOf([concretePool(), run(method, distance)], head), "run");

  it.each(["rmc", "imc", "mc", "other"])(
    "%s within 5 ft is a question, which its answer settles; beyond, exempt",
    (method) => {
      expect(judge(method, 60)).toMatchObject({ outcome: "review", question: { id: "buried-metal" } });
      expect(judge(method, 60.01).outcome).toBe("exempt");
      const answers = (answer: string) => ({ answers: [{ question: "buried-metal", element: "run", answer }] });
      expect(judge(method, 60, answers("no")).outcome).toBe("exempt");
      expect(judge(method, 60, answers("yes"))).toMatchObject({ outcome: "bond", need: { elements: ["run"] } });
    },
  );

  it.each(["pvc", "rtrc", "direct-burial"])("%s is no metal", (method) => {
    expect(rule.judge(yardOf([concretePool(), run(method, 10)]))).toEqual([]);
  });
});

// The site format: a building that contains the pool counts by its outline; a wall is its path with half its thickness on
// each side. Distances: arithmetic.
describe("what stands all round the pool", () => {
  const round = (d: number) => ({
    closed: true,
    vertices: [
      [-d, -d],
      [384 + d, -d],
      [384 + d, 192 + d],
      [-d, 192 + d],
    ],
  });

  it("a hall is clad as far off as its outline", () => {
    const hall = (d: number) => ({ id: "hall", kind: "building", outline: round(d), top: 120, metalCladding: true });
    expect(judged(hall(60))).toMatchObject({ outcome: "bond", measured: { horizontal: 60, path: 60 } });
    expect(judged(hall(60.01)).outcome).toBe("exempt");
    expect(judged(hall(60.01)).measured.horizontal).toBeCloseTo(60.01, 9);
  });

  it("a wall's steel is as near as its inner face", () => {
    const wall = (d: number) => ({ id: "wall", kind: "wall", path: round(d), thickness: 8, top: 72, reinforced: true });
    expect(judged(wall(64))).toMatchObject({
      outcome: "review",
      measured: { horizontal: 60 },
    });
    expect(judged(wall(64.01)).outcome).toBe("exempt");
  });
});
