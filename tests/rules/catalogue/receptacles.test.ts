// NEC 680.22(A)(1), (4) and (5), restated; which side of a wall: common practice, no source. Distances: arithmetic.
import { describe, expect, it } from "vitest";
import { box, concretePool, deck, line, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as room } from "../../../rules/catalogue/equipment-room-receptacle/rule.ts";
import { rule as distance } from "../../../rules/catalogue/receptacle-distance/rule.ts";
import { rule as gfci } from "../../../rules/catalogue/receptacle-gfci/rule.ts";
import { rule as required } from "../../../rules/catalogue/required-receptacle/rule.ts";
import type { Rule } from "../../../rules/catalogue/rule.ts";
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
function judge(rule: Rule, elements: readonly object[], head: object = {}) {
  return verdictOf(rule, yardOf([concretePool(), ...elements], head), "it");
}

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
    expect(of([outlet(100, { z: 80 })], { edition })).toMatchObject({ margin: -2 });
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

  it("just inside the face of a building that part of the pool runs under, from whichever corner the pool is drawn", () => {
    // Arithmetic: along the outer face at y = -18 to the building's corner, 111.1 in., then 18 in. square to the water.
    const corners = [
      [0, 0],
      [384, 0],
      [384, 192],
      [0, 192],
    ];
    for (const start of corners.keys()) {
      const vertices = [...corners.slice(start), ...corners.slice(0, start)];
      const pool = { ...concretePool(), outline: { vertices, closed: true } };
      const house = { id: "house", kind: "building", outline: box(192, -18, 408, 200), top: 100 };
      const outlet = { id: "it", kind: "device", device: "receptacle", at: [303.1, -17.63], z: 20 };
      const verdict = verdictOf(gfci, yardOf([pool, house, outlet]), "it");
      expect(verdict.outcome).toBe("review");
      expect(verdict.measured.path).toBeCloseTo(129.1, 9);
    }
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

describe("a receptacle drawn inside a free wall", () => {
  const outlet = (off: number, changes: object = {}) => device("receptacle", off, { gfci: true, ...changes });
  const said = (answer: string) => ({ answers: [{ question: "receptacle-wall-face", element: "it", answer }] });

  it("is on one face of it or the other", () => {
    // Near face 17 in. off; round the end of a wall from 0 to 400: 23 in. to the corner, then 200 along.
    const verdict = judge(distance, [wall(), outlet(20)]);
    expect(verdict).toMatchObject({
      outcome: "review",
      measured: { path: 17 },
      question: { id: "receptacle-wall-face" },
    });
    expect(judge(distance, [wall({ id: "wall-7" }), outlet(20)])).toMatchObject({
      question: { text: "Which face of wall 7 is this receptacle on?" },
    });
    expect(judge(distance, [wall(), outlet(20)], said("toward the water")).outcome).toBe("conflict");
    const away = judge(distance, [wall({ path: line(0, 212, 384, 212) }), outlet(20)], said("away from it"));
    expect(away).toMatchObject({ outcome: "meets", measured: { path: 23 + 184 } });
    // Bowed toward the water by 20 in. at its middle.
    const bowed = {
      vertices: [
        [0, 232, 0.1],
        [400, 232],
      ],
      closed: false,
    };
    expect(judge(distance, [wall({ path: bowed }), outlet(20)])).toMatchObject({ outcome: "review" });
    expect(judge(distance, [wall({ top: 30 }), outlet(20)])).toMatchObject({
      outcome: "conflict",
      measured: { path: 20 },
    });
    // A wall that gives no thickness may be as thick as the receptacle lies behind its middle.
    expect(judge(distance, [wall({ thickness: undefined }), outlet(23)]).outcome).toBe("review");
    expect(judge(distance, [wall({ thickness: undefined }), outlet(17)]).outcome).toBe("conflict");
    expect(judge(distance, [wall({ thickness: undefined }), outlet(27)]).outcome).toBe("meets");
    const farther = wall({ path: line(0, 300, 400, 300) });
    expect(judge(distance, [farther, outlet(108)])).toMatchObject({ outcome: "meets", measured: { path: 105 } });
  });

  it("is protected by GFCI, and is the one that every pool has, only where that holds on both", () => {
    const long = wall({ path: line(-900, 431, 1300, 431) });
    expect(judge(gfci, [long, outlet(239, { gfci: false })])).toMatchObject({ outcome: "review" });
    expect(judge(gfci, [long, outlet(239)]).outcome).toBe("meets");
    const rated = { volts: 125, amps: 20, generalPurpose: true, z: 24 };
    const [body] = required.judge(yardOf([concretePool(), long, outlet(239, rated)]));
    expect(body).toMatchObject({ outcome: "review" });
  });
});
