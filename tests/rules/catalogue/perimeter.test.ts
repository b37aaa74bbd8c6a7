// NEC 680.26(B)(2) by edition, restated. What inspectors ask and what is argued: common practice, no source.
import { describe, expect, it } from "vitest";
import { fourTies, pathRoundPool, ringCopper } from "../../../rules/catalogue/common/example-copper.ts";
import { box, concretePool, deck, line, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import { rule } from "../../../rules/catalogue/perimeter-surfaces/rule.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { type PieceMethod, perimeterMethods } from "../../../rules/perimeter/methods.ts";
import { recompute } from "../../../rules/recompute.ts";
import { siteOf, verdictOf, yardOf } from "./yards.ts";

/** The method of a deck round the whole pool, and the verdict on it. */
function deckIn(edition: string | undefined, changes: object, head: object = {}, pool: object = {}) {
  const yard = yardOf([concretePool(pool), deck(changes)], { ...head, edition });
  const body = yard.bodies[0];
  if (!body) throw new Error("no pool");
  const [method] = perimeterMethods(yard, body).filter((entry) => entry.piece.surface === "deck");
  return { method: method as PieceMethod, verdict: verdictOf(rule, yard, "deck") };
}

type Row = [edition: string, changes: object, bonding: string, outcome: string, allowed: string[], planned: string];

const raised = { support: "raised", supports: "nonconductive" };
const rows: Row[] = [
  ["nec-2017", { steel: "rebar" }, "steel", "bond", ["steel"], "steel"],
  ["nec-2017", { steel: "none" }, "ring", "bond", ["ring"], "ring"],
  ["nec-2017", { steel: "mesh" }, "review", "review", ["ring"], "ring"],
  ["nec-2017", { material: "lawn" }, "ring", "bond", ["ring"], "ring"],
  ["nec-2017", { material: "wood", ...raised }, "review", "review", ["ring"], "ring"],
  ["nec-2017", { material: "wood", support: "grade" }, "ring", "bond", ["ring"], "ring"],
  ["nec-2017", { material: "stone" }, "ring", "bond", ["ring"], "ring"],
  ["nec-2020", { steel: "encapsulated" }, "ring", "bond", ["ring", "grid"], "ring"],
  ["nec-2020", { steel: "fiber" }, "ring", "bond", ["ring", "grid"], "ring"],
  ["nec-2020", { steel: undefined }, "ring", "bond", ["ring", "grid"], "ring"],
  ["nec-2020", { steel: "mesh" }, "review", "review", ["ring", "grid"], "ring"],
  ["nec-2020", { material: "artificial-turf" }, "ring", "bond", ["ring", "grid"], "ring"],
  ["nec-2023", { steel: "rebar" }, "steel", "bond", ["steel"], "steel"],
  ["nec-2023", { steel: "mesh" }, "steel", "bond", ["steel"], "steel"],
  ["nec-2023", { steel: "none" }, "grid", "bond", ["grid"], "grid"],
  ["nec-2023", { steel: undefined }, "grid", "bond", ["grid"], "grid"],
  ["nec-2023", { material: "pavers", steel: "none" }, "grid", "bond", ["grid"], "grid"],
  ["nec-2023", { material: "gravel" }, "ring", "bond", ["ring", "grid"], "ring"],
  ["nec-2023", { material: "soil" }, "ring", "bond", ["ring", "grid"], "ring"],
  ["nec-2023", { material: "composite", ...raised }, "none-needed", "exempt", ["none-needed"], "none-needed"],
  [
    "nec-2023",
    { material: "plastic", support: "raised", supports: "conductive" },
    "ring",
    "bond",
    ["ring", "grid"],
    "ring",
  ],
  ["nec-2023", { material: "wood", support: "raised" }, "review", "review", ["ring", "grid"], "ring"],
  ["nec-2023", { material: "wood", support: "grade" }, "review", "review", ["ring", "grid"], "ring"],
  ["nec-2023", { material: "tile" }, "review", "review", ["grid"], "grid"],
  ["nec-2023", { material: "stone", steel: "rebar" }, "steel", "bond", ["steel"], "steel"],
  ["nec-2023", { material: "pavers", ...raised }, "review", "review", ["grid"], "grid"],
];

describe("the method by edition and surface", () => {
  it.each(rows)("%s %j: %s", (edition, changes, bonding, outcome, allowed, planned) => {
    const { method, verdict } = deckIn(edition, changes);
    expect(method).toMatchObject({ bonding, allowed, planned });
    expect(verdict.outcome).toBe(outcome);
    expect(verdict.need?.kind).toBe(outcome === "bond" ? "perimeter" : undefined);
    if (outcome === "review") expect(verdict.question?.options.length).toBeGreaterThan(1);
  });

  it("takes an amendment that writes nothing where an edition writes nothing", () => {
    const head = { amendments: [{ parameter: "perimeter.above", value: null, reason: "invented" }] };
    expect(deckIn("nec-2023", { level: 40 }).verdict.outcome).toBe("review");
    expect(deckIn("nec-2023", { level: 40 }, head).verdict.outcome).toBe("bond");
    const useless = { amendments: [{ parameter: "perimeter.width", value: null, reason: "invented" }] };
    expect(yardOf([concretePool()], useless).edition.useless).toHaveLength(1);
  });

  it("follows local amendments: a grid asked for in 2020, a ring kept in 2023", () => {
    const amendments = (value: boolean) => ({
      amendments: [{ parameter: "perimeter.ringUnderPaving", value, reason: "invented" }],
    });
    expect(deckIn("nec-2020", {}, amendments(false)).method).toMatchObject({ bonding: "grid", allowed: ["grid"] });
    expect(deckIn("nec-2017", {}, amendments(false)).method).toMatchObject({ bonding: "grid", allowed: ["grid"] });
    expect(deckIn("nec-2023", {}, amendments(true)).method).toMatchObject({
      bonding: "ring",
      allowed: ["ring", "grid"],
    });
  });

  it("grants no exemption that only some editions write while the site names none", () => {
    expect(deckIn(undefined, { material: "wood", ...raised }).verdict.outcome).toBe("review");
  });

  it("names the slab that is there already", () => {
    expect(deckIn("nec-2020", { existing: true }).verdict.remedy).toMatch(/without breaking it/);
    expect(deckIn("nec-2020", { existing: true, steel: "rebar" }).verdict.remedy).not.toMatch(/breaking/);
    expect(deckIn("nec-2020", {}).verdict.remedy).not.toMatch(/breaking/);
  });

  it.each([
    ["nec-2020", { steel: "mesh" }, "mesh-counts", "yes", "steel"],
    ["nec-2020", { steel: "mesh" }, "mesh-counts", "no", "ring"],
    ["nec-2020", { material: "wood", ...raised }, "deck-over-soil", "yes", "ring"],
    ["nec-2020", { material: "wood", ...raised }, "deck-over-soil", "no", "none-needed"],
    ["nec-2023", { material: "wood" }, "deck-supports", "it lies on the earth", "ring"],
    [
      "nec-2023",
      { material: "wood", support: undefined },
      "deck-supports",
      "on metal or other conductive supports",
      "ring",
    ],
    [
      "nec-2023",
      { material: "wood" },
      "deck-supports",
      "on nonconductive supports, or separated from the earth",
      "none-needed",
    ],
    ["nec-2023", { material: "tile" }, "surface-class", "conductive paving", "grid"],
    ["nec-2023", { material: "tile" }, "surface-class", "unpaved ground", "ring"],
    ["nec-2023", { material: "tile" }, "surface-class", "nonconductive and separated from the earth", "none-needed"],
    ["nec-2023", { ...raised }, "raised-over-bonded", "yes", "none-needed"],
    ["nec-2023", { ...raised }, "raised-over-bonded", "no", "grid"],
    ["nec-2023", { ...raised, steel: undefined }, "raised-over-bonded", "no", "grid"],
    ["nec-2023", { level: 50 }, "outside-height-band", "yes", "grid"],
    ["nec-2023", { level: 50 }, "outside-height-band", "no", "none-needed"],
  ])("%s %j, asked %s and answered %s: %s", (edition, changes, question, answer, bonding) => {
    expect(deckIn(edition, changes).verdict).toMatchObject({ outcome: "review", question: { id: question } });
    const { method, verdict } = deckIn(edition, changes, { answers: [{ question, element: "deck", answer }] });
    expect(method.bonding).toBe(bonding);
    expect(verdict.outcome).toBe(bonding === "none-needed" ? "exempt" : "bond");
    expect(verdict.answered?.answer).toBe(answer);
    expect(verdict.question).toBeUndefined();
  });
});

describe("the heights of 2023 (one source, and from memory)", () => {
  it.each([
    [36, "bond"],
    [36.01, "review"],
    [-24, "bond"],
    [-24.01, "review"],
    [undefined, "bond"],
  ])("a deck at %s: %s", (level, outcome) => {
    expect(deckIn("nec-2023", { level }).verdict.outcome).toBe(outcome);
    for (const edition of ["nec-2017", "nec-2020"]) expect(deckIn(edition, { level }).verdict.outcome).toBe("bond");
  });

  it("are taken from each body's own water level, and never silently drop a surface", () => {
    expect(deckIn("nec-2023", { level: 50 }, {}, { waterLevel: 14 }).verdict.outcome).toBe("bond");
    expect(deckIn("nec-2023", { level: 50 }, {}, { waterLevel: 13.99 }).verdict).toMatchObject({
      outcome: "review",
      question: { id: "outside-height-band" },
    });
  });
});

describe("the band", () => {
  it.each(EDITION_IDS)(
    "%s: 3 ft beyond the inside walls, 45,543.50 sq in. round 16 by 32 ft (arithmetic)",
    (edition) => {
      const { verdict } = deckIn(edition, {});
      expect(Math.abs((verdict.measured.area as number) - 45543.49769)).toBeLessThan(0.1);
    },
  );

  it("holds what is nearer than 36 in.; what starts there or farther is exempt with its margin", () => {
    const at = (distance: number, head: object = {}) => {
      const yard = yardOf([concretePool(), deck({ outline: box(0, 192 + distance, 384, 300) })], head);
      return verdictOf(rule, yard, "deck");
    };
    expect(at(35.99)).toMatchObject({ outcome: "bond" });
    expect(at(36)).toMatchObject({ outcome: "exempt", margin: 0 });
    expect(at(36.01)).toMatchObject({ outcome: "exempt", measured: { horizontal: 36.00999999999999 } });
    expect(at(36.5, { accuracy: 1 })).toMatchObject({ outcome: "review", question: { id: "surface-in-perimeter" } });
  });

  it("gives each surface and each body its own finding, the ground that nothing covers too", () => {
    const spa = concretePool({ id: "spa", body: "spa", outline: box(420, 0, 520, 100) });
    const yard = yardOf([concretePool(), spa, deck({ outline: box(-40, -40, 405, 240) })]);
    const found = rule.judge(yard).map((verdict) => [verdict.element, verdict.body, verdict.outcome]);
    expect(found).toContainEqual(["deck", "pool", "bond"]);
    expect(found).toContainEqual(["deck", "spa", "bond"]);
    expect(found).toContainEqual([null, "pool", "bond"]);
    expect(found).toContainEqual([null, "spa", "bond"]);
    expect(found).toHaveLength(4);
  });

  it("lets the later surface lie on top: one wholly covered is not judged twice", () => {
    const yard = yardOf([concretePool(), deck(), deck({ id: "tiles", material: "pavers" })]);
    expect(verdictOf(rule, yard, "deck").outcome).toBe("exempt");
    expect(verdictOf(rule, yard, "tiles").outcome).toBe("bond");
    const wood = deck({ id: "boards", material: "wood", support: "raised", supports: "nonconductive" });
    const open = verdictOf(rule, yardOf([concretePool(), deck(), wood], { edition: "nec-2023" }), "deck");
    expect(open).toMatchObject({ outcome: "review", question: { id: "covered-surface" } });
  });

  it("asks about a covered surface only where the one above it is free or may be", () => {
    const boards = (changes: object) => deck({ id: "boards", material: "wood", support: "raised", ...changes });
    const below = (changes: object, edition: string) =>
      verdictOf(rule, yardOf([concretePool(), deck(), boards(changes)], { edition }), "deck").outcome;
    expect(below({}, "nec-2023")).toBe("review");
    expect(below({ supports: "conductive" }, "nec-2023")).toBe("exempt");
    expect(below({}, "nec-2020")).toBe("exempt");
  });

  it("ends at a permanent wall of 5 ft, and asks where the wall's height hangs on a level that is not given", () => {
    const wall = {
      id: "wall",
      kind: "wall",
      path: line(-200, 210, 600, 210),
      thickness: 6,
      top: 66,
      permanent: true,
      reinforced: false,
    };
    const beyond = deck({ id: "beyond", outline: box(-200, 213, 600, 300) });
    const paving = (level: number | undefined) => deck({ outline: box(-200, 192, 600, 207), level });
    const judge = (level: number | undefined) =>
      verdictOf(rule, yardOf([concretePool(), wall, paving(level), beyond]), "beyond");
    expect(judge(0).outcome).toBe("exempt");
    expect(judge(6).outcome).toBe("exempt");
    expect(judge(6.01).outcome).toBe("bond");
    expect(judge(undefined)).toMatchObject({ outcome: "review", question: { id: "wall-ends-perimeter" } });
    expect(judge(undefined).why).toMatch(/\(wall: the level of the ground at its foot is not given\)/);
  });

  // The site format: a margin within the drawing's accuracy is a question. Heights: arithmetic.
  it("asks where a wall or a building is as near to 5 ft high as the drawing may be off", () => {
    const wall = { id: "wall", kind: "wall", path: line(-200, 210, 600, 210), thickness: 6, permanent: true };
    const shed = { id: "wall", kind: "building", outline: box(-200, 207, 600, 213), metalCladding: false };
    const beyond = deck({ id: "beyond", outline: box(-200, 213, 600, 300) });
    const judge = (barrier: object, top: number) =>
      verdictOf(rule, yardOf([concretePool(), { ...barrier, top }, beyond], { accuracy: 1 }), "beyond");
    for (const barrier of [wall, shed]) {
      expect(judge(barrier, 61.01).outcome).toBe("exempt");
      for (const top of [61, 60, 59.01, 59]) {
        expect(judge(barrier, top)).toMatchObject({ outcome: "review", question: { id: "wall-ends-perimeter" } });
        expect(judge(barrier, top).why).toMatch(/its height is as near to the limit/);
      }
      expect(judge(barrier, 58.99).outcome).toBe("bond");
    }
  });
});

describe("bodies that need no perimeter bonding", () => {
  it("storable ones have no finding here", () => {
    expect(rule.judge(yardOf([linerPool({ storable: true, installation: "on-ground" }), deck()]))).toEqual([]);
  });

  it("a spa that meets its exception frees its surroundings (680.42(B))", () => {
    const spa = concretePool({
      shell: "fiberglass",
      body: "spa",
      installation: "on-ground",
      listedSelfContained: true,
      indoorOnly: false,
      rim: 28,
    });
    const yard = yardOf([spa, deck()]);
    expect(verdictOf(rule, yard, "deck").outcome).toBe("exempt");
    expect(verdictOf(rule, yardOf([{ ...spa, rim: 27.99 }, deck()]), "deck").outcome).toBe("bond");
  });
});

describe("a surface in the perimeters of two bodies", () => {
  // Arithmetic: 384 x 36 along the pool's side; along the spa's 96 x 36 and two quarter discs, pi 36^2 / 2: 5,491.8 sq in.
  const second = (changes: object = {}) =>
    concretePool({ id: "spa", body: "spa", outline: box(96, 264, 192, 360), waterLevel: 0, ...changes });
  const strip = deck({ outline: box(0, 192, 384, 264) });
  const found = (spa: object, head: object = {}, ...more: object[]) =>
    recompute(siteOf([concretePool(), spa, strip, ...more], head)).findings.filter(
      ({ rule: id, element }) => id === rule.id && element === "deck",
    );

  it("has one finding, by the first, naming the other and saying what lies in each", () => {
    const [finding, ...others] = found(second());
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ outcome: "bond", body: "pool", alsoBodies: ["spa"] });
    expect(finding?.measured.area).toBeCloseTo(384 * 36, 0);
    expect(finding?.why).toMatch(/96\.0 sq ft of it.*38\.1 sq ft of it/);
    expect(finding?.remedy.match(/Bond it by/g)).toHaveLength(1);
  });

  it("takes the worse of the two, and names no body that frees it", () => {
    // Under the 2023 edition a surface 40 in. above the spa's water is argued; by the pool it needs bonding all the same.
    const [finding] = found(second({ waterLevel: -40 }), { edition: "nec-2023" });
    expect(finding).toMatchObject({ outcome: "bond", body: "pool", alsoBodies: ["spa"] });
    const [lower] = found(second({ storable: true, shell: "vinyl-liner", installation: "on-ground" }));
    expect(lower).toMatchObject({ outcome: "bond", body: "pool" });
    expect(lower?.alsoBodies).toBeUndefined();
  });

  it("stays missing by the body whose perimeter is not complete, and by it alone", () => {
    const [finding] = found(second(), {}, ringCopper({ path: pathRoundPool(21) }), ...fourTies());
    expect(finding).toMatchObject({ outcome: "missing", body: "spa" });
    expect(finding?.alsoBodies).toContain("pool");
  });
});
