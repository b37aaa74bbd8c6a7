// Whether perimeter bonding is complete as recorded. Source of the rules: NEC 680.26(B)(2), restated; lengths: arithmetic
// (the loop lies midway between 18 and 24 in., at 21 in.: sides as long as the pool's, quarter circles of radius 21).
import { describe, expect, it } from "vitest";
import type { PathData, Vertex } from "../../../geometry/types.ts";
import { checkLoops, perimeterComplete } from "../../../rules/recorded/perimeter-complete.ts";
import { variantsOf } from "../../oracles/variants.ts";
import {
  box,
  clampTie,
  concretePool,
  deck,
  fourTies,
  line,
  pathRoundPool,
  recordedIn,
  ringCopper,
  soundYard,
} from "./yards.ts";

function loopsOf(elements: readonly object[], edition = "nec-2020", head: object = {}) {
  const { yard, recorded } = recordedIn(elements, { edition, ...head });
  return checkLoops(yard, recorded);
}

function oneLoop(elements: readonly object[], edition = "nec-2020", head: object = {}) {
  const loops = loopsOf(elements, edition, head);
  expect(loops.length).toBe(1);
  const loop = loops[0] as (typeof loops)[number];
  return { complete: loop.complete, gap: loop.gaps.reduce((sum, { length }) => sum + length, 0), gaps: loop.gaps };
}

const withRing = (changes: object) => oneLoop([concretePool(), ringCopper(changes), ...fourTies()]);
const openRing = (drop: number) => ({
  ...pathRoundPool(21),
  closed: false,
  vertices: pathRoundPool(21).vertices.slice(0, 8 - drop),
});

describe("a ring in soil", () => {
  it("is complete when it is closed and right in everything", () => {
    expect(oneLoop(soundYard())).toEqual({ complete: "sure", gap: 0, gaps: [] });
    for (const offset of [18, 24]) expect(withRing({ path: pathRoundPool(offset) }).complete).toBe("sure");
  });

  it("leaves the whole loop open where none is recorded: 1152 + 2 pi 21 in.", () => {
    const { complete, gap } = oneLoop([concretePool()]);
    expect(complete).toBe("no");
    expect(Math.abs(gap - (1152 + 42 * Math.PI))).toBeLessThan(1e-6);
  });

  it("has a gap of a quarter circle where one corner is left out, and says where", () => {
    const { complete, gap, gaps } = withRing({ path: openRing(0) });
    expect(complete).toBe("no");
    expect(Math.abs(gap - (21 * Math.PI) / 2)).toBeLessThan(1e-6);
    const half = 21 / Math.SQRT2;
    expect(gaps[0]?.at[0]).toBeCloseTo(-half, 6);
    expect(gaps[0]?.at[1]).toBeCloseTo(-half, 6);
  });

  it("has gaps only where square corners leave the 24 in.", () => {
    // The side reaches 24 in. at sqrt(24^2 - 21^2) beyond the corner: a turn of atan(that / 21) of each quarter circle.
    const open = 21 * (Math.PI / 2 - 2 * Math.atan(Math.sqrt(24 ** 2 - 21 ** 2) / 21));
    const { gap, gaps } = withRing({ path: box(-21, -21, 405, 213) });
    expect(gaps.length).toBe(4);
    expect(Math.abs(gap - 4 * open)).toBeLessThan(1e-5);
  });

  it("is not complete 17.9 or 24.1 in. off, too deep, insulated, stranded, thin, or joined by twisting", () => {
    for (const changes of [
      { path: pathRoundPool(17.9) },
      { path: pathRoundPool(24.1) },
      { cover: 7 },
      { covering: "insulated" },
      { solid: false },
      { awg: 10 },
      { joint: "twisted" },
    ]) {
      expect([changes, withRing(changes).complete]).toEqual([changes, "no"]);
    }
  });

  it("is doubtful where a fact is not given, or the offset is within the drawing's accuracy of a limit", () => {
    for (const changes of [
      { cover: undefined },
      { coverFrom: "grade" },
      { covering: undefined },
      { solid: undefined },
      { joint: undefined },
    ]) {
      expect([changes, withRing(changes).complete]).toEqual([changes, "doubtful"]);
    }
    const taped = (offset: number) =>
      oneLoop([concretePool(), ringCopper({ path: pathRoundPool(offset) })], "nec-2020", { accuracy: 1 }).complete;
    expect([taped(21), taped(18.5), taped(17.5), taped(16)]).toEqual(["sure", "doubtful", "doubtful", "no"]);
    // A margin of exactly the accuracy is within it, as for the place of the ring.
    expect([taped(19), taped(23), taped(19.001), taped(22.999)]).toEqual(["doubtful", "doubtful", "sure", "sure"]);
  });

  it("is the same turned, mirrored, drawn backwards, and started at every vertex", () => {
    for (const { name, data } of variantsOf(openRing(0))) {
      if (name === "backwards")
        expect([name, withRing({ path: data }).gap.toFixed(4)]).toEqual([name, ((21 * Math.PI) / 2).toFixed(4)]);
    }
    const pools = variantsOf(concretePool().outline as unknown as PathData);
    const rings = variantsOf(box(-21, -21, 405, 213) as unknown as PathData);
    const expected = withRing({ path: box(-21, -21, 405, 213) }).gap;
    for (const [i, pool] of pools.entries()) {
      const ring = rings[i];
      const { gap } = oneLoop([concretePool({ outline: pool.data }), ringCopper({ path: ring?.data })]);
      expect([pool.name, Math.abs(gap - expected) < 1e-4]).toEqual([pool.name, true]);
    }
  });
});

describe("joints of the ring", () => {
  const { vertices } = pathRoundPool(21);
  const first = vertices[0] as Vertex;
  const ends = { closed: false, vertices: [...vertices, first.slice(0, 2)] };
  const half = (from: number, to: number) => {
    const part = [...vertices, first].slice(from, to + 1);
    return { closed: false, vertices: [...part.slice(0, -1), (part[part.length - 1] as Vertex).slice(0, 2)] };
  };
  const halves = (one: string, two: string, ...more: object[]) =>
    oneLoop([
      concretePool(),
      ringCopper({ id: "r1", path: half(0, 4), joint: one }),
      ringCopper({ id: "r2", path: half(4, 8), joint: two }),
      ...more,
    ]);

  it("close a ring whose ends meet only where a splice or weld is recorded", () => {
    expect(withRing({ path: ends, joint: "listed-splice" }).complete).toBe("sure");
    const apart = withRing({ path: ends, joint: "none" });
    expect(apart).toMatchObject({ complete: "no", gap: 0 });
    expect(apart.gaps[0]?.at.map((x) => Math.round(x))).toEqual([0, -21]);
  });

  it("make two halves one ring", () => {
    expect(halves("exothermic", "exothermic").complete).toBe("sure");
    expect(halves("listed-splice", "none").complete).toBe("sure");
    const apart = halves("none", "none");
    expect(apart).toMatchObject({ complete: "no", gap: 0 });
    expect(apart.gaps.length).toBeGreaterThanOrEqual(2);
  });

  it("may be ties that name both halves", () => {
    const ties = [clampTie("a", [384, 213], ["r1", "r2"]), clampTie("b", [0, -21], ["r1", "r2"])];
    expect(halves("none", "none", ...ties).complete).toBe("sure");
    expect(halves("none", "none", ...ties.slice(0, 1))).toMatchObject({ complete: "no" });
  });
});

describe("steel in the paving", () => {
  const steel = deck({ steel: "rebar" });

  it("serves once a tie joins it", () => {
    expect(oneLoop([steel, concretePool(), ...fourTies()]).complete).toBe("sure");
    expect(oneLoop([steel, concretePool(), clampTie("t", [96, 0], ["deck", "pool"])]).complete).toBe("sure");
  });

  it("does not serve untied, by a screw, or encapsulated", () => {
    expect(oneLoop([steel, concretePool()]).complete).toBe("no");
    expect(
      oneLoop([steel, concretePool(), clampTie("t", [96, 0], ["deck", "pool"], { hardware: "screw" })]).complete,
    ).toBe("no");
    expect(
      oneLoop([deck({ steel: "encapsulated" }), concretePool(), clampTie("t", [96, 0], ["deck", "pool"])]).complete,
    ).toBe("no");
  });

  it("in one half and a ring in the other have to be joined", () => {
    const south = deck({ steel: "rebar", outline: box(-120, -120, 504, 96) });
    const { vertices } = pathRoundPool(21);
    const north = { closed: false, vertices: [[405, 90], ...vertices.slice(3, 7), [-21, 90]] };
    const ring = ringCopper({ path: north, joint: "none" });
    const tied = clampTie("deck-tie", [96, 0], ["deck", "pool"]);
    const end = clampTie("end-tie", [405, 90], ["deck", "ring"]);
    expect(oneLoop([south, concretePool(), ring, tied, end]).complete).toBe("sure");
    const apart = oneLoop([south, concretePool(), ring, tied]);
    expect(apart).toMatchObject({ complete: "no", gap: 0 });
  });
});

describe("a copper grid", () => {
  const grid = (path: object, changes: object = {}) =>
    ringCopper({ id: "grid", role: "grid", path, coverFrom: "grade", ...changes });
  const roll = {
    closed: false,
    vertices: [
      [-18, -18],
      [402, -18],
      [402, 210],
      [-18, 210],
      [-18, -18],
    ],
  };

  it("serves where it covers the band: as an area, or as a roll along its middle", () => {
    for (const path of [box(-40, -40, 424, 232), roll]) {
      expect(oneLoop([deck(), concretePool(), grid(path)], "nec-2023").complete).toBe("sure");
    }
  });

  it("leaves open what it does not cover", () => {
    // Cut off at x = 184: its mesh reaches 6 in. farther, to 190; the rest of the loop is open.
    const { complete, gap } = oneLoop([deck(), concretePool(), grid(box(-40, -40, 184, 232))], "nec-2023");
    expect(complete).toBe("no");
    expect(Math.abs(gap - (2 * (384 - 190) + 192 + 21 * Math.PI))).toBeLessThan(0.1);
  });

  it("is no method in 2017, and too deep it does not serve", () => {
    expect(
      oneLoop([deck(), concretePool(), grid(box(-40, -40, 424, 232), { coverFrom: "subgrade" })], "nec-2017").complete,
    ).toBe("no");
    expect(oneLoop([deck(), concretePool(), grid(box(-40, -40, 424, 232), { cover: 7 })], "nec-2023").complete).toBe(
      "no",
    );
  });

  it("in the shell does not serve the perimeter", () => {
    expect(oneLoop([deck(), concretePool(), grid(box(6, 6, 378, 186))], "nec-2023").complete).toBe("no");
  });
});

describe("editions and bodies", () => {
  it("a lone ring under concrete serves in 2020 and not in 2023", () => {
    expect(oneLoop([deck(), concretePool(), ringCopper()]).complete).toBe("sure");
    expect(oneLoop([deck(), concretePool(), ringCopper({ coverFrom: "grade" })], "nec-2023").complete).toBe("no");
  });

  it("a ring in soil serves in 2023, at a depth below grade", () => {
    expect(oneLoop([concretePool(), ringCopper({ coverFrom: "grade" })], "nec-2023").complete).toBe("sure");
  });

  it("two pools far apart have two loops, each judged by itself", () => {
    const other = concretePool({ id: "other", outline: box(1000, 0, 1384, 192) });
    const loops = loopsOf([concretePool(), other, ringCopper()]);
    expect(loops.map(({ bodies, complete }) => [bodies, complete])).toEqual([
      [["pool"], "sure"],
      [["other"], "no"],
    ]);
    const { yard, recorded } = recordedIn([concretePool(), other, ringCopper()]);
    expect(perimeterComplete(yard, "pool", recorded).complete).toBe("sure");
    expect(perimeterComplete(yard, "other", recorded).complete).toBe("no");
  });

  it("a pool and a spa 12 in. apart share one loop", () => {
    const spa = concretePool({ id: "spa", body: "spa", outline: box(396, 40, 480, 124) });
    expect(loopsOf([concretePool(), spa]).map(({ bodies }) => bodies)).toEqual([["pool", "spa"]]);
  });

  it("a wall 14 in. off lets the ring lie nearer, on the pool's side of it", () => {
    const wall = { id: "wall", kind: "wall", path: line(-100, 209, 484, 209), thickness: 6, top: 72, permanent: true };
    const ground = { id: "ground", kind: "surface", outline: box(-300, -300, 700, 500), material: "lawn", level: 0 };
    // Along the north side 8 in. off, in the 14 in. between water and wall; elsewhere 21 in.
    const near = {
      closed: true,
      vertices: [
        [-21, -21],
        [405, -21],
        [405, 200],
        [-21, 200],
      ],
    };
    const inNorth = (path: object) =>
      oneLoop([ground, concretePool(), wall, ringCopper({ path })]).gaps.filter(
        ({ at }) => at[1] > 180 && at[0] > 0 && at[0] < 384,
      );
    expect(inNorth(near)).toEqual([]);
    const without = inNorth({ closed: false, vertices: [[-21, 180], ...near.vertices.slice(0, 2), [405, 180]] });
    expect(without.length).toBe(1);
    expect(without[0]?.length).toBeGreaterThan(384);
  });

  it("a storable pool has no loop, and copper without a pool is no crash", () => {
    expect(
      loopsOf([concretePool({ shell: "vinyl-liner", storable: true, installation: "on-ground" }), ringCopper()]),
    ).toEqual([]);
    expect(loopsOf([ringCopper(), ...fourTies()])).toEqual([]);
  });
});

// Metamorphic, common practice, no source: copper that is added beside what is complete takes nothing away from it.
describe("copper beside a ring that is complete", () => {
  it.each<[string, object]>([
    ["a second ring on top of it, joined to nothing", { path: pathRoundPool(21) }],
    ["a second ring a little farther out", { path: pathRoundPool(23) }],
    ["a second ring whose ends are not joined", { path: pathRoundPool(22), joint: "none" }],
    ["a piece of ring", { path: openRing(5), joint: "none" }],
  ])("may be %s", (_name, changes) => {
    const spare = ringCopper({ id: "spare", ...changes });
    expect(oneLoop([...soundYard(), spare])).toEqual({ complete: "sure", gap: 0, gaps: [] });
    expect(oneLoop([spare, ...soundYard()])).toEqual({ complete: "sure", gap: 0, gaps: [] });
  });

  it("makes nothing complete that is not", () => {
    const pieces = [openRing(3), openRing(4)].map((path, i) => ringCopper({ id: `piece-${i}`, path, joint: "none" }));
    expect(oneLoop([concretePool(), ...pieces, ...fourTies()]).complete).toBe("no");
    const broken = ringCopper({
      joint: "none",
      path: { ...openRing(0), vertices: [...openRing(0).vertices, [0, -21]] },
    });
    const spare = ringCopper({ id: "spare", path: pathRoundPool(23) });
    expect(oneLoop([concretePool(), broken, spare, ...fourTies()]).complete).toBe("no");
    const apart = ringCopper({ id: "half", joint: "none", path: openRing(4) });
    const rest = ringCopper({
      id: "rest",
      joint: "none",
      path: {
        closed: false,
        vertices: [...pathRoundPool(21).vertices.slice(3), ...pathRoundPool(21).vertices.slice(0, 1)],
      },
    });
    const halves = oneLoop([concretePool(), apart, rest, ...fourTies()]);
    expect([halves.complete, halves.gap]).toEqual(["no", 0]);
  });
});
