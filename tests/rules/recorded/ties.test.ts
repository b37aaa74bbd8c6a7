// Ties of perimeter bonding and shell. Source: NEC 680.26(B)(2), restated: four or more, evenly round the pool, not for
// shells that do not conduct (one published restatement). The gap's limit is a judgement of ours. Numbers: arithmetic.
import { describe, expect, it } from "vitest";
import { rule } from "../../../rules/catalogue/tie-spacing/rule.ts";
import { plannedTies } from "../../../rules/recorded/ties.ts";
import { branch, clampTie, concretePool, fourTies, line, linerPool, ringCopper, yardOf } from "./yards.ts";

const network = [
  [
    [-21, -21],
    [405, -21],
    [405, 213],
    [-21, 213],
    [-21, -21],
  ],
] as const;

function tiesOf(elements: readonly object[], head: object = {}) {
  const yard = yardOf(elements, head);
  return yard.bodies.flatMap((body) => plannedTies(yard, body, network));
}

const judge = (elements: readonly object[], head: object = {}) => {
  const verdicts = rule.judge(yardOf(elements, head));
  expect(verdicts.length).toBe(1);
  return verdicts[0];
};

describe("the ties of a pool", () => {
  it("are four proposals, a quarter of 1152 in. apart, on the inside wall, led to the perimeter", () => {
    const ties = tiesOf([concretePool()]);
    expect(ties.map(({ present, recorded }) => [present, recorded])).toEqual(Array(4).fill([false, null]));
    const along = ties.map(({ distanceAlong }) => distanceAlong);
    expect(along.map((s) => (s - (along[0] as number)) / 288)).toEqual([0, 1, 2, 3]);
    expect(ties.every(({ between }) => between[0] === "perimeter" && between[1] === "pool")).toBe(true);
    for (const { at, to } of ties) {
      const onWall = at[0] === 0 || at[0] === 384 || at[1] === 0 || at[1] === 192;
      expect([onWall, Math.hypot(to[0] - at[0], to[1] - at[1])]).toEqual([true, 21]);
    }
  });

  it("count recorded ones first, and propose only what is still needed", () => {
    const ties = tiesOf([concretePool(), ringCopper(), ...fourTies().slice(0, 2)]);
    expect(ties.map(({ recorded, distanceAlong }) => [recorded, distanceAlong])).toEqual([
      ["tie-1", 96],
      ["tie-2", 384],
      // The 864 in. left between them are cut into thirds.
      [null, 672],
      [null, 960],
    ]);
    expect(tiesOf([concretePool(), ringCopper(), ...fourTies()]).every(({ present }) => present)).toBe(true);
  });

  it("count a tie by whatever name it has for the perimeter, and a jumper from the ring to the shell", () => {
    const named = (joins: readonly string[], more: readonly object[] = []) =>
      tiesOf([concretePool(), ringCopper(), ...more, clampTie("t", [96, 0], joins)]).filter(({ present }) => present)
        .length;
    expect(named(["perimeter", "pool"])).toBe(1);
    expect(named(["ring", "pool"])).toBe(1);
    expect(named(["pool"])).toBe(0);
    expect(named(["perimeter"])).toBe(0);
    const jumper = branch("j", line(96, 0, 96, -21));
    expect(named(["j", "pool"], [jumper])).toBe(0);
    expect(named(["j", "pool"], [jumper, clampTie("u", [96, -21], ["ring", "j"])])).toBe(1);
    expect(named(["j", "pool"], [jumper, clampTie("u", [96, -21], ["ring", "j"], { hardware: "screw" })])).toBe(0);
  });

  it("do not count one by a screw", () => {
    const ties = tiesOf([
      concretePool(),
      ringCopper(),
      clampTie("t", [96, 0], ["perimeter", "pool"], { hardware: "screw" }),
    ]);
    expect(ties.filter(({ present }) => present)).toEqual([]);
    expect(ties.length).toBe(4);
  });

  it("count as one where they are made at one point, the surest of them", () => {
    const present = (...ties: object[]) =>
      tiesOf([concretePool(), ringCopper(), ...ties]).flatMap(({ recorded }) => recorded ?? []);
    const [a, unsure] = [clampTie("a", [96, 0], ["ring", "pool"]), { hardware: undefined }];
    // Both ends of one wire, recorded as two: at the wall and at the ring.
    expect(present(a, clampTie("b", [96, -21], ["ring", "pool"]))).toEqual(["a"]);
    expect(present(a, clampTie("b", [97, 0], ["ring", "pool"]))).toEqual(["a"]);
    expect(present(a, clampTie("b", [97.01, 0], ["ring", "pool"]))).toEqual(["a", "b"]);
    expect(present(clampTie("b", [96, 0], ["ring", "pool"], unsure), a)).toEqual(["a"]);
    const round = [clampTie("c", [0.4, 0], ["ring", "pool"]), clampTie("d", [0, 0.4], ["ring", "pool"])];
    expect(present(...round)).toEqual(["c"]);
    const four = fourTies().map((tie) => ({ ...tie, at: [96, 0] }));
    expect(judge([concretePool(), ringCopper(), ...four])).toMatchObject({ outcome: "missing", margin: -3 });
  });

  it("stand in order along the wall, so that each keeps its number when it is recorded", () => {
    const recorded = clampTie("t", [96, 0], ["perimeter", "pool"]);
    for (const elements of [[concretePool()], [concretePool(), ringCopper(), recorded]]) {
      const along = tiesOf(elements).map(({ distanceAlong }) => distanceAlong);
      expect(along).toEqual([...along].sort((a, b) => a - b));
    }
  });

  it("are as many as the site wants, never fewer than the edition", () => {
    expect(tiesOf([concretePool()], { settings: { ties: 6 } }).length).toBe(6);
    expect(tiesOf([concretePool()], { settings: { ties: 2 } }).length).toBe(4);
  });

  it("start at the outline's first vertex in the file's order, either way round", () => {
    const { vertices } = concretePool().outline;
    const backwards = { closed: true, vertices: [vertices[0], vertices[3], vertices[2], vertices[1]] };
    const at = (outline: object) =>
      tiesOf([concretePool({ outline }), ringCopper(), clampTie("t", [96, 0], ["perimeter", "pool"])]).find(
        ({ present }) => present,
      )?.distanceAlong;
    expect(at({ closed: true, vertices })).toBe(96);
    expect(at(backwards)).toBe(1152 - 96);
  });

  it("of a pool and a spa that share a wall are four together, none on the wall between", () => {
    const outline = {
      closed: true,
      vertices: [
        [396, 40],
        [480, 40],
        [480, 124],
        [396, 124],
      ],
    };
    const ties = tiesOf([concretePool(), concretePool({ id: "spa", body: "spa", outline })]);
    expect(ties.length).toBe(4);
    expect(ties.some(({ at }) => at[1] > 41 && at[1] < 123 && at[0] > 383 && at[0] < 397)).toBe(false);
    expect(ties.map(({ between }) => between[1]).includes("pool")).toBe(true);
  });

  it("are none where the shell does not conduct", () => {
    expect(tiesOf([linerPool()])).toEqual([]);
    expect(tiesOf([concretePool({ shell: "fiberglass", steel: "none", storable: false })])).toEqual([]);
  });
});

describe("the finding on ties", () => {
  it("has the count and the widest gap, held against 1.25 quarters of 1152 in.", () => {
    expect(judge([concretePool(), ringCopper(), ...fourTies()])).toMatchObject({
      outcome: "meets",
      measured: { ties: 4, largestGap: 288 },
      required: { ties: 4, largestGap: 360 },
      margin: 72,
    });
  });

  it("asks about ties that are exactly at the limit only beyond it", () => {
    const at = (s: number) => (s <= 384 ? ([s, 0] as const) : ([384, s - 384] as const));
    const gaps = (second: number) => [
      clampTie("a", at(0), ["perimeter", "pool"]),
      clampTie("b", at(second), ["perimeter", "pool"]),
      clampTie("c", [288, 192], ["perimeter", "pool"]),
      clampTie("d", [0, 192], ["perimeter", "pool"]),
    ];
    // Ties at 0, 360, 672 and 960 in.: the widest gap is 360 exactly; at 361 it is beyond.
    expect(judge([concretePool(), ringCopper(), ...gaps(360)])?.outcome).toBe("meets");
    expect(judge([concretePool(), ringCopper(), ...gaps(361)])?.outcome).toBe("review");
  });

  it("asks about uneven ties whatever their number, and follows the answer", () => {
    const bunched = [0, 20, 40, 60, 80, 100].map((x, i) => clampTie(`t${i}`, [x, 0], ["perimeter", "pool"]));
    const uneven = [concretePool(), ringCopper(), ...bunched];
    const asked = judge(uneven);
    expect(asked).toMatchObject({ outcome: "review", basis: "judgement", question: { id: "ties-even" } });
    const answer = (word: string) =>
      judge(uneven, { answers: [{ question: "ties-even", element: "pool", answer: word }] })?.outcome;
    expect([answer("yes"), answer("no")]).toEqual(["meets", "conflict"]);
  });

  it("is missing with too few, bond while nothing is recorded", () => {
    expect(judge([concretePool()])).toMatchObject({ outcome: "bond", margin: -4 });
    expect(judge([concretePool(), ringCopper(), ...fourTies().slice(0, 3)])).toMatchObject({
      outcome: "missing",
      margin: -1,
    });
  });

  it("is a question for a shell of unknown kind and for a liner before a metal wall", () => {
    expect(judge([concretePool({ shell: "unknown" })])?.outcome).toBe("review");
    expect(judge([linerPool({ wallFrame: "metal" })])?.outcome).toBe("review");
    expect(judge([linerPool({ wallFrame: undefined })])?.outcome).toBe("review");
    expect(judge([linerPool()])?.outcome).toBe("exempt");
  });
});
