// NEC 680.22(C), (D), (E), 680.13, 680.21(C), 680.23(A)(5), 680.24(A)(2), 680.11 and Table 300.5, restated;
// what is argued, and what stands between: common practice, no source. Distances: arithmetic.
import { describe, expect, it } from "vitest";
import { box, concretePool, deck, line, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as disconnectDistance } from "../../../rules/catalogue/disconnect-distance/rule.ts";
import { rule as sight } from "../../../rules/catalogue/disconnect-sight/rule.ts";
import { rule as junctionBox } from "../../../rules/catalogue/junction-box/rule.ts";
import { rule as lens } from "../../../rules/catalogue/lens-depth/rule.ts";
import { rule as equipment } from "../../../rules/catalogue/other-equipment-distance/rule.ts";
import { rule as outlets } from "../../../rules/catalogue/outlet-distance/rule.ts";
import { rule as pumps } from "../../../rules/catalogue/pump-gfci/rule.ts";
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
  const of = (lensTopDepth: number | undefined, listedMinDepth?: number, head: object = {}) => {
    const place = { at: [200, 0], pool: "pool", formingShell: "metal" };
    const light = { id: "it", kind: "underwater-light", ...place, lensTopDepth, listedMinDepth };
    return judge(lens, [light], head).outcome;
  };

  it.each([
    [18, undefined, "meets"],
    [17.99, undefined, "conflict"],
    [6, 6, "meets"],
    [5.99, 6, "conflict"],
    [4, 2, "meets"],
    [3.99, 2, "conflict"],
    [18, 24, "review"],
    [17.99, 24, "conflict"],
    [24, 24, "meets"],
    [undefined, 6, "review"],
  ] as const)("%s in. deep, listed for %s: %s", (depth, listed, outcome) => {
    expect(of(depth, listed)).toBe(outcome);
  });

  it("as near to the limit as the drawing may be off are a question (the site format)", () => {
    const taped = (depth: number, listed?: number) => of(depth, listed, { accuracy: 1 });
    for (const depth of [17.5, 18, 18.5, 19]) expect(taped(depth)).toBe("review");
    expect([taped(16.99), taped(19.01), taped(4.5, 4), taped(5.01, 4)]).toEqual([
      "conflict",
      "meets",
      "review",
      "meets",
    ]);
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

  const lowVoltage = { ...light, id: "low", formingShell: "nonmetal", listedLowVoltage: true };

  it("flush in the deck are a question where the light is low-voltage", () => {
    expect(of({ z: 0, lowVoltage: true }).outcome).toBe("review");
    expect(of({ z: 0 }).outcome).toBe("conflict");
    // The light that it serves says so as well as the box.
    expect(of({ z: 0, serves: ["low"] }, [lowVoltage]).outcome).toBe("review");
    expect(of({ z: 0, serves: ["low", "light"] }, [lowVoltage]).outcome).toBe("conflict");
  });

  it("go by the water of the pool whose light they serve", () => {
    const spa = concretePool({ id: "spa", body: "spa", outline: box(0, 300, 384, 400), waterLevel: 24 });
    expect(of({ at: [200, 250], z: 12 }, [spa]).outcome).toBe("meets");
    expect(of({ at: [200, 250], z: 12, serves: ["other"] }, [spa])).toMatchObject({ outcome: "conflict", body: "spa" });
    expect(of({ z: 2, serves: ["pool"] }).outcome).toBe("exempt");
    // Which pool's light is not given: the nearest counts, another that stands higher is a question.
    const far = concretePool({ id: "spa", body: "spa", outline: box(0, 400, 384, 500), waterLevel: 24 });
    expect(of({ serves: undefined }, [far])).toMatchObject({ outcome: "review", body: "spa" });
    // So is a light that names a pool which is not drawn: it may be that of either.
    const lost = { ...light, id: "lost", pool: "pond" };
    expect(of({ serves: ["lost"] }, [far, lost])).toMatchObject({ outcome: "review", body: "spa" });
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
      // A margin within the drawing's accuracy is a question (the site format).
      expect(judge(runs, [run({ method, cover: cover + 0.5 })], { edition, accuracy: 1 }).outcome).toBe("review");
      expect(judge(runs, [run({ method, cover: cover + 1.01 })], { edition, accuracy: 1 }).outcome).toBe(enough);
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
    for (const top of [65, 66, 67]) expect(of([off(100), screen({ top })], {}, { accuracy: 1 })).toBe("review");
    expect(of([off(100), screen({ top: 67.01 })], {}, { accuracy: 1 })).toBe("conflict");
    expect(of([off(100), screen({ top: 64.99 })], {}, { accuracy: 1 })).toBe("meets");
    const boards = (solid?: boolean) => fence({ path: line(500, 50, 700, 50), solid });
    expect(judge(sight, [unit(), off(100), boards(true)])).toMatchObject({ outcome: "review" });
    expect(judge(sight, [unit(), off(100), boards(true)]).why).not.toContain("not given");
    expect(judge(sight, [unit(), off(100), boards()]).why).toContain("`solid` is not given");
    // 60 in. above the datum, on a deck of which nobody says how low it lies.
    const sunk = (level?: number) => deck({ outline: box(400, 40, 800, 60), level });
    expect(of([off(100), screen({ top: 60 }), sunk(-6)])).toBe("conflict");
    expect(of([off(100), screen({ top: 60 }), sunk()])).toBe("review");
    expect(of([off(100), fence({ path: line(500, 50, 700, 50), solid: false })])).toBe("meets");
    const gap = { id: "gap", kind: "opening", opening: "passage", path: line(580, 50, 620, 50) };
    expect(of([off(100), screen({ top: 96 }), gap])).toBe("meets");
  });

  it("rests on how high a person is only where something stands in between", () => {
    const person = "disconnect.personHeight";
    const limits = (...more: object[]) => judge(sight, [unit(), ...more]).limits ?? [];
    expect(limits(off(100))).not.toContain(person);
    expect(limits(off(600.01))).not.toContain(person);
    expect(limits(off(100, { serves: undefined }))).not.toContain(person);
    for (const top of [30, 72]) {
      expect(limits(off(100), wall({ path: line(500, 50, 700, 50), top }))).toContain(person);
    }
  });

  it("names what hides it, and has no margin left by being near", () => {
    const verdict = judge(sight, [unit(), off(100), wall({ path: line(500, 50, 700, 50), top: 72 })]);
    expect(verdict).toMatchObject({ outcome: "conflict", margin: null, measured: { sight: 100 } });
    expect(verdict.why).toMatch(/wall .*hides it/);
    expect(judge(sight, [unit(), off(600.5)])).toMatchObject({ outcome: "conflict", margin: -0.5 });
  });

  it("on a house: outside it, inside it, or just inside its face", () => {
    const house = { id: "house", kind: "building", outline: box(500, 50, 700, 300), top: 120 };
    expect(of([off(49), house])).toBe("meets");
    expect(of([off(54), house])).toBe("review");
    // On the far face, and just inside it: hidden on either side of that wall.
    expect(of([off(300), house])).toBe("conflict");
    expect(of([off(296), house])).toBe("conflict");
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
