// NEC 680.22(A)(1) and (4), (C), (D), (E), 680.13, 680.21(C), 680.23(A)(5), 680.24(A)(2), 680.11 and Table 300.5, restated;
// what is argued, and what stands between: common practice, no source. Distances: arithmetic.
import { describe, expect, it } from "vitest";
import { box, concretePool, deck, line, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as disconnectDistance } from "../../../rules/catalogue/disconnect-distance/rule.ts";
import { rule as sight } from "../../../rules/catalogue/disconnect-sight/rule.ts";
import { rule as room } from "../../../rules/catalogue/equipment-room-receptacle/rule.ts";
import { rule as junctionBox } from "../../../rules/catalogue/junction-box/rule.ts";
import { rule as lens } from "../../../rules/catalogue/lens-depth/rule.ts";
import { rule as equipment } from "../../../rules/catalogue/other-equipment-distance/rule.ts";
import { rule as outlets } from "../../../rules/catalogue/outlet-distance/rule.ts";
import { rule as pumps } from "../../../rules/catalogue/pump-gfci/rule.ts";
import { rule as gfci } from "../../../rules/catalogue/receptacle-gfci/rule.ts";
import { rule as required } from "../../../rules/catalogue/required-receptacle/rule.ts";
import type { Rule } from "../../../rules/catalogue/rule.ts";
import { rule as switches } from "../../../rules/catalogue/switch-distance/rule.ts";
import { rule as runs } from "../../../rules/catalogue/underground-run/rule.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { verdictOf, yardOf } from "./yards.ts";

/** A device off the middle of the pool's long side. */
const device = (kind: string, distance: number, changes: object = {}) => ({
  id: "it",
  kind: "device",
  device: kind,
  at: [200, 192 + distance],
  indoor: false,
  ...changes,
});
const wall = (changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: line(0, 212, 400, 212),
  thickness: 6,
  top: 72,
  permanent: true,
  ...changes,
});
const fence = (changes: object = {}) => ({
  id: "fence",
  kind: "fence",
  path: line(0, 212, 400, 212),
  top: 72,
  solid: true,
  permanent: true,
  ...changes,
});

function judge(rule: Rule, elements: readonly object[], head: object = {}) {
  return verdictOf(rule, yardOf([concretePool(), ...elements], head), "it");
}

describe.each([
  ["switches", switches, "switch", 60],
  ["other outlets", outlets, "outlet", 120],
  ["disconnects", disconnectDistance, "disconnect", 60],
] as const)("%s", (_, rule, kind, limit) => {
  it.each(EDITION_IDS)("keep their distance, to a hundredth, under %s", (edition) => {
    const at = (distance: number) => judge(rule, [device(kind, distance)], { edition });
    expect(at(limit)).toMatchObject({ outcome: "meets", margin: 0, measured: { horizontal: limit } });
    expect(at(limit - 1e-7).outcome).toBe("meets");
    expect(at(limit - 0.01)).toMatchObject({ outcome: "conflict" });
    expect(at(-50)).toMatchObject({ outcome: "conflict", measured: { horizontal: 0 } });
  });

  it("are a question within the drawing's accuracy, and the answer settles it", () => {
    const near = device(kind, limit + 0.5);
    const open = judge(rule, [near], { accuracy: 1 });
    expect(open).toMatchObject({ outcome: "review", question: { options: ["yes", "no"] } });
    const answer = (word: string) => ({
      accuracy: 1,
      answers: [{ question: open.question?.id, element: "it", answer: word, by: "ab", on: "2026-05-01" }],
    });
    expect(judge(rule, [near], answer("yes"))).toMatchObject({ outcome: "meets", answered: { by: "ab" } });
    expect(judge(rule, [near], answer("no")).outcome).toBe("conflict");
    expect(judge(rule, [near], answer("perhaps")).outcome).toBe("review");
    const lapsed = { accuracy: 1, answers: [{ ...answer("yes").answers[0], about: "00000000" }] };
    expect(judge(rule, [near], lapsed)).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("behind something solid are a question, behind anything else too near", () => {
    const near = device(kind, 40);
    expect(judge(rule, [near, wall()]).outcome).toBe("review");
    expect(judge(rule, [near, wall({ top: 59.99 })]).outcome).toBe("conflict");
    expect(judge(rule, [near, wall({ permanent: false })]).outcome).toBe("conflict");
    expect(judge(rule, [near, wall({ permanent: undefined })]).outcome).toBe("review");
    expect(judge(rule, [near, wall({ path: line(300, 212, 400, 212) })]).outcome).toBe("conflict");
    const house = { id: "house", kind: "building", outline: box(100, 222, 300, 400), top: 120 };
    expect(judge(rule, [near, house]).outcome).toBe("review");
    const gap = { id: "gap", kind: "opening", opening: "passage", path: line(180, 222, 220, 222) };
    if (kind !== "disconnect") {
      expect(judge(rule, [near, house, gap]).outcome).toBe("conflict");
      expect(judge(rule, [near, fence()]).outcome).toBe("review");
      for (const changes of [{ solid: undefined }, { permanent: undefined }])
        expect(judge(rule, [near, fence(changes)]).outcome).toBe("review");
      for (const changes of [{ solid: false }, { permanent: false }])
        expect(judge(rule, [near, fence(changes)]).outcome).toBe("conflict");
    }
  });

  it("are judged by the worst of several pools", () => {
    const far = concretePool({ id: "pool-2", outline: box(0, 192 + 2 * limit, 400, 1000) });
    expect(judge(rule, [far, device(kind, limit + 1)])).toMatchObject({ outcome: "conflict", body: "pool-2" });
  });
});

it("permanent rules free what only storable pools are near to", () => {
  const storable = linerPool({ installation: "on-ground", storable: true });
  expect(verdictOf(switches, yardOf([storable, device("switch", 20)]), "it").outcome).toBe("exempt");
});

describe("other equipment (one source)", () => {
  const unit = (distance: number, changes: object = {}) => ({
    id: "it",
    kind: "equipment",
    unit: "heater",
    at: [200, 192 + distance],
    ...changes,
  });

  it("is looked at from 2020 on", () => {
    expect(equipment.judge(yardOf([concretePool(), unit(20)], { edition: "nec-2017" }))).toEqual([]);
    for (const edition of ["nec-2020", "nec-2023"]) {
      expect(judge(equipment, [unit(60)], { edition }).outcome).toBe("meets");
      expect(judge(equipment, [unit(59.99)], { edition }).outcome).toBe("conflict");
    }
  });

  it("is free at or below the contact limit (15 V, from memory), or without electricity", () => {
    expect(judge(equipment, [unit(20, { volts: 15 })]).outcome).toBe("exempt");
    expect(judge(equipment, [unit(20, { volts: 15.01 })]).outcome).toBe("conflict");
    expect(judge(equipment, [unit(20, { unit: "filter", electric: false })]).outcome).toBe("exempt");
    expect(judge(equipment, [unit(20, { unit: "filter" })])).toMatchObject({ outcome: "review" });
    expect(judge(equipment, [unit(60, { unit: "filter" })])).toMatchObject({ outcome: "meets" });
  });
});

describe("the receptacle that every pool has", () => {
  const outlet = (distance: number, changes: object = {}) =>
    device("receptacle", distance, { z: 30, volts: 125, amps: 15, generalPurpose: true, gfci: true, ...changes });
  const of = (elements: readonly object[], head: object = {}) => {
    const [only, ...more] = required.judge(yardOf([concretePool(), ...elements], head));
    expect(more).toEqual([]);
    return only;
  };

  it.each(EDITION_IDS)("lies from 6 to 20 ft off and up to 6 ft 6 in. up, under %s", (edition) => {
    for (const [distance, outcome] of [
      [71.99, "conflict"],
      [72, "meets"],
      [240, "meets"],
      [240.01, "conflict"],
    ] as const)
      expect(of([outlet(distance)], { edition })).toMatchObject({ outcome });
    expect(of([outlet(100, { z: 78 })], { edition })).toMatchObject({ outcome: "meets", element: "it" });
    expect(of([outlet(100, { z: 78.01 })], { edition })).toMatchObject({ outcome: "conflict", element: null });
    expect(of([deck({ level: 6 }), outlet(100, { z: 84 })], { edition })).toMatchObject({ outcome: "meets" });
    expect(of([deck({ level: undefined }), outlet(100, { z: 60 })], { edition })).toMatchObject({ outcome: "review" });
  });

  it("is for general use, of the right rating", () => {
    for (const changes of [{ volts: 240 }, { volts: 12 }, { amps: 30 }, { generalPurpose: false }])
      expect(of([outlet(100, changes)])).toMatchObject({ outcome: "conflict" });
    for (const field of ["volts", "amps", "generalPurpose", "z"]) {
      const found = of([outlet(100, { [field]: undefined })]);
      expect(found).toMatchObject({ outcome: "review" });
      expect(found?.question?.text).toContain(`\`${field}\``);
    }
  });

  it("may be any of several, the nearest that fits", () => {
    const second = { ...outlet(90), id: "second" };
    expect(of([outlet(20), second])).toMatchObject({ outcome: "meets", element: "second", measured: { path: 90 } });
    expect(of([outlet(100, { z: undefined }), second])).toMatchObject({ outcome: "meets", element: "second" });
  });

  it("is reached round a wall, and never through a house", () => {
    // Round the end of a thin wall at (-8, 212) from the pool's corner, and up to the outlet at (200, 262).
    const screen = wall({ path: line(-8, 212, 2000, 212), thickness: 0.5 });
    const around = of([outlet(70), screen]);
    expect(around?.outcome).toBe("meets");
    const house = { id: "house", kind: "building", outline: box(0, 240, 384, 500), top: 120 };
    expect(of([outlet(100, { indoor: true }), house])).toMatchObject({ outcome: "conflict" });
    // Drawn 5 in. inside the wall 77 in. off: on the outer face it would serve, indoors it would not.
    const near = { ...house, outline: box(0, 272, 384, 500) };
    expect(of([outlet(85, { indoor: undefined }), near])).toMatchObject({ outcome: "review" });
  });

  it("is asked about where none is drawn", () => {
    expect(of([])).toMatchObject({ outcome: "review", question: { id: "required-receptacle-there" } });
    const answers = (answer: string) => ({
      answers: [{ question: "required-receptacle-there", element: "pool", answer }],
    });
    expect(of([], answers("yes"))).toMatchObject({ outcome: "meets" });
    expect(of([], answers("no"))).toMatchObject({ outcome: "conflict" });
    const fits = { answers: [{ question: "required-receptacle-fits-it", element: "pool", answer: "no" }] };
    expect(of([outlet(100, { z: undefined })], fits)).toMatchObject({ outcome: "conflict" });
  });
});

describe("GFCI of receptacles", () => {
  const outlet = (distance: number, changes: object = {}) =>
    device("receptacle", distance, { volts: 125, amps: 20, gfci: false, ...changes });

  it.each(EDITION_IDS)("within 20 ft, included, under %s", (edition) => {
    expect(judge(gfci, [outlet(240)], { edition }).outcome).toBe("conflict");
    expect(judge(gfci, [outlet(240.01)], { edition }).outcome).toBe("exempt");
    expect(judge(gfci, [outlet(100, { gfci: true })], { edition }).outcome).toBe("meets");
    expect(judge(gfci, [outlet(100, { gfci: undefined })], { edition })).toMatchObject({
      outcome: "review",
      question: { id: "receptacle-gfci" },
    });
  });

  it("for 125 V and 15 or 20 A; wider from 2023 (from memory)", () => {
    const at = (changes: object, edition: string) => judge(gfci, [outlet(100, changes)], { edition }).outcome;
    for (const changes of [{ volts: 125.01 }, { volts: 240 }, { amps: 30 }]) {
      expect(at(changes, "nec-2017")).toBe("exempt");
      expect(at(changes, "nec-2020")).toBe("exempt");
      expect(at(changes, "nec-2023")).toBe("conflict");
    }
    expect(at({ volts: 250.01 }, "nec-2023")).toBe("exempt");
    for (const amps of [15, 20]) expect(at({ amps }, "nec-2020")).toBe("conflict");
  });

  it("also near a storable pool, under its own section (from memory)", () => {
    const storable = linerPool({ installation: "on-ground", storable: true });
    expect(verdictOf(gfci, yardOf([storable, outlet(100)]), "it")).toMatchObject({
      outcome: "conflict",
      section: "680.32",
    });
  });
});

describe("an equipment room", () => {
  const shed = { id: "it", kind: "building", outline: box(560, 60, 640, 140), top: 96 };
  const pump = { id: "pump", kind: "equipment", unit: "pump", at: [600, 100] };

  it("is looked at from 2020 on, where equipment of the water stands in it", () => {
    expect(room.judge(yardOf([concretePool(), shed, pump], { edition: "nec-2017" }))).toEqual([]);
    expect(room.judge(yardOf([concretePool(), shed]))).toEqual([]);
    expect(room.judge(yardOf([concretePool(), shed, { ...pump, servesWater: false }]))).toEqual([]);
    expect(judge(room, [shed, pump]).outcome).toBe("review");
    const hall = { ...shed, outline: box(-100, -100, 700, 400) };
    expect(room.judge(yardOf([concretePool(), hall, pump]))).toEqual([]);
  });
});

it("pump motors have GFCI in every edition (from memory)", () => {
  for (const edition of EDITION_IDS) {
    const pump = (changes: object) => ({ id: "it", kind: "equipment", unit: "pump", at: [600, 100], ...changes });
    expect(judge(pumps, [pump({ gfci: true })], { edition }).outcome).toBe("meets");
    expect(judge(pumps, [pump({ gfci: false })], { edition }).outcome).toBe("conflict");
    expect(judge(pumps, [pump({})], { edition })).toMatchObject({ outcome: "review", question: { id: "pump-gfci" } });
  }
  expect(
    pumps.judge(yardOf([concretePool(), { id: "it", kind: "equipment", unit: "heater", at: [600, 100] }])),
  ).toEqual([]);
});

describe("lenses", () => {
  const of = (lensTopDepth: number | undefined, listedMinDepth?: number) =>
    judge(lens, [
      {
        id: "it",
        kind: "underwater-light",
        at: [200, 0],
        pool: "pool",
        formingShell: "metal",
        lensTopDepth,
        listedMinDepth,
      },
    ]).outcome;

  it.each([
    [18, undefined, "meets"],
    [17.99, undefined, "conflict"],
    [6, 6, "meets"],
    [5.99, 6, "conflict"],
    [4, 2, "meets"],
    [3.99, 2, "conflict"],
    [18, 24, "meets"],
    [undefined, 6, "review"],
  ] as const)("%s in. deep, listed for %s: %s", (depth, listed, outcome) => {
    expect(of(depth, listed)).toBe(outcome);
  });
});

describe("junction boxes", () => {
  const light = { id: "light", kind: "underwater-light", at: [200, 192], pool: "pool", formingShell: "metal" };
  const of = (changes: object, more: readonly object[] = [], head: object = {}) =>
    judge(junctionBox, [...more, light, device("junction-box", 60, { z: 12, serves: ["light"], ...changes })], head);

  it("lie 4 in. above the deck and 8 in. above the water, whichever is higher", () => {
    expect(of({ z: 8 })).toMatchObject({ outcome: "meets", margin: 0 });
    expect(of({ z: 7.99 }).outcome).toBe("conflict");
    expect(of({ z: 10 }, [deck({ level: 6 })]).outcome).toBe("meets");
    expect(of({ z: 9.99 }, [deck({ level: 6 })]).outcome).toBe("conflict");
    expect(of({ z: 20 }, [deck({ level: undefined })]).outcome).toBe("review");
    expect(of({ z: [8, 14] }).outcome).toBe("meets");
    expect(of({ z: undefined }).question?.text).toContain("`z`");
  });

  it("4 ft off, unless something solid stands between", () => {
    expect(of({ at: [200, 240] }).outcome).toBe("meets");
    expect(of({ at: [200, 239.99] }).outcome).toBe("conflict");
    expect(of({ at: [200, 236] }, [wall()]).outcome).toBe("review");
  });

  it("flush in the deck are a question where the light is low-voltage", () => {
    expect(of({ z: 0, lowVoltage: true }).outcome).toBe("review");
    expect(of({ z: 0 }).outcome).toBe("conflict");
  });

  it("go by the water of the pool whose light they serve", () => {
    const spa = concretePool({ id: "spa", body: "spa", outline: box(0, 300, 384, 400), waterLevel: 24 });
    expect(of({ at: [200, 250], z: 12 }, [spa]).outcome).toBe("meets");
    expect(of({ at: [200, 250], z: 12, serves: ["other"] }, [spa])).toMatchObject({ outcome: "conflict", body: "spa" });
    expect(of({ z: 2, serves: ["pool"] }).outcome).toBe("exempt");
  });
});

describe("underground runs", () => {
  const run = (changes: object) => ({
    id: "it",
    kind: "underground-run",
    path: line(-100, 300, 500, 300),
    method: "pvc",
    cover: 24,
    servesPool: false,
    ...changes,
  });

  it.each([
    ["rmc", 6, "meets", "conflict"],
    ["imc", 6, "meets", "conflict"],
    ["pvc", 18, "meets", "conflict"],
    ["rtrc", 18, "meets", "conflict"],
    ["mc", 24, "meets", "review"],
    ["direct-burial", 24, "review", "review"],
    ["other", 24, "review", "review"],
  ])("%s at %s in. (24: from memory)", (method, cover, enough, less) => {
    for (const edition of EDITION_IDS) {
      expect(judge(runs, [run({ method, cover })], { edition }).outcome).toBe(enough);
      expect(judge(runs, [run({ method, cover: cover - 0.01 })], { edition }).outcome).toBe(less);
      expect(judge(runs, [run({ method, cover: undefined })], { edition }).outcome).toBe("review");
    }
  });

  it("pass under no pool that they do not serve", () => {
    const path = line(-100, 100, 500, 100);
    expect(judge(runs, [run({ path })])).toMatchObject({ outcome: "conflict", extent: 384 });
    expect(judge(runs, [run({ path, servesPool: true })]).outcome).toBe("meets");
    expect(judge(runs, [run({ path, servesPool: undefined })]).question?.text).toContain("`servesPool`");
    expect(judge(runs, [run({ path: line(200, 192, 200, 300) })]).outcome).toBe("meets");
    expect(judge(runs, [run({ path: line(-100, 192.5, 500, 192.5) })], { accuracy: 1 }).outcome).toBe("review");
  });
});

describe("a disconnect within sight", () => {
  const off = (y: number, changes: object = {}) => ({
    id: "off",
    kind: "device",
    device: "disconnect",
    at: [600, y],
    serves: ["it"],
    ...changes,
  });
  const unit = (changes: object = {}) => ({ id: "it", kind: "equipment", unit: "pump", at: [600, 0], ...changes });
  const of = (more: readonly object[], changes: object = {}, head: object = {}) =>
    judge(sight, [unit(changes), ...more], head).outcome;

  it("is at most 50 ft away (number from memory)", () => {
    expect(of([off(600)])).toBe("meets");
    expect(of([off(600.01)])).toBe("conflict");
    expect(of([off(600.5)], {}, { accuracy: 1 })).toBe("review");
    expect(of([off(700), { ...off(100), id: "nearer" }])).toBe("meets");
  });

  it("is hidden by what is as high as a person", () => {
    const screen = (changes: object) => wall({ path: line(500, 50, 700, 50), permanent: false, ...changes });
    // 66 in. above the ground: a judgement.
    expect(of([off(100), screen({ top: 66 })])).toBe("conflict");
    expect(of([off(100), screen({ top: 65.99 })])).toBe("meets");
    expect(of([off(100), screen({ top: undefined })])).toBe("review");
    expect(of([off(100), fence({ path: line(500, 50, 700, 50) })])).toBe("review");
    expect(of([off(100), fence({ path: line(500, 50, 700, 50), solid: false })])).toBe("meets");
    const gap = { id: "gap", kind: "opening", opening: "passage", path: line(580, 50, 620, 50) };
    expect(of([off(100), screen({ top: 96 }), gap])).toBe("meets");
  });

  it("on a house: outside it, inside it, or just inside its face", () => {
    const house = { id: "house", kind: "building", outline: box(500, 50, 700, 300), top: 120 };
    expect(of([off(49), house])).toBe("meets");
    expect(of([off(54), house])).toBe("review");
    expect(of([off(100), house])).toBe("conflict");
    expect(of([off(200), house], { at: [600, 150] })).toBe("meets");
  });

  it("is asked about where none says that it serves the unit", () => {
    expect(of([])).toBe("review");
    expect(of([off(100, { serves: ["other"] })])).toBe("review");
    expect(of([off(100, { serves: undefined })])).toBe("review");
    expect(of([], { unit: "filter", electric: false })).toBe("exempt");
    expect(of([], { servesWater: false })).toBe("exempt");
    expect(sight.judge(yardOf([concretePool(), unit({ unit: "controller" })]))).toEqual([]);
  });
});
