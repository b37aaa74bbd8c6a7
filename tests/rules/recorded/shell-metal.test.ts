// A shell is bonded only by what it holds. Source: NEC 680.26(B)(1), (B)(2), (C), restated: encapsulated steel cannot serve
// and a copper grid takes its place; a bonded conductive shell is contact enough; the perimeter is tied to the shell's steel
// or grid; a plate counts only when it is bonded. Sums: arithmetic.
import { describe, expect, it } from "vitest";
import { clampTie, concretePool, findingOf, fourTies, ladder, line, linerPool, reportOf, ringCopper } from "./yards.ts";

const grid = ringCopper({ id: "mesh", role: "grid", path: line(10, 96, 374, 96), cover: undefined });
const soundBut = (pool: object) => [pool, ringCopper(), ...fourTies()];
const outcomes = (elements: readonly object[], head: object = {}) => {
  const report = reportOf(elements, head);
  return {
    shell: findingOf(report, "shell", "pool").outcome,
    ties: findingOf(report, "tie-spacing", null).outcome,
    water: findingOf(report, "water-contact", null).outcome,
    missing: report.missing,
  };
};

describe("a concrete shell with a ring and four ties that name it", () => {
  it("meets with bare steel", () => {
    expect(outcomes(soundBut(concretePool()))).toEqual({ shell: "meets", ties: "meets", water: "meets", missing: 0 });
  });

  it("holds nothing to tie to, and nothing bonded that touches the water, without bare steel or a grid", () => {
    for (const steel of ["encapsulated", "none"]) {
      expect(outcomes(soundBut(concretePool({ steel })))).toEqual({
        shell: "missing",
        ties: "review",
        water: "missing",
        missing: 2,
      });
    }
  });

  it("meets with a recorded grid instead", () => {
    const pool = concretePool({ steel: "encapsulated" });
    expect(outcomes([...soundBut(pool), grid])).toEqual({ shell: "meets", ties: "meets", water: "meets", missing: 0 });
  });

  it("meets where the ties name that grid itself, and not where what they name does not serve", () => {
    const pool = concretePool({ steel: "encapsulated" });
    const ties = (joins: readonly string[]) => fourTies().map((tie) => ({ ...tie, joins }));
    const found = (copper: object, joins: readonly string[] = ["ring", "mesh"]) =>
      outcomes([pool, ringCopper(), copper, ...ties(joins)]);
    expect(found(grid)).toEqual({ shell: "meets", ties: "meets", water: "meets", missing: 0 });
    expect(found(grid, ["perimeter", "mesh"])).toMatchObject({ ties: "meets", missing: 0 });
    expect(found({ ...grid, solid: false })).toMatchObject({ shell: "missing", ties: "missing", water: "missing" });
    expect(found({ ...grid, solid: undefined })).toMatchObject({ shell: "review", ties: "review", water: "review" });
  });

  it("counts no tie between the shell's grid and a part as one to the perimeter", () => {
    const pool = concretePool({ steel: "encapsulated" });
    const [first, ...others] = fourTies();
    const report = reportOf([pool, ringCopper(), grid, ladder, { ...first, joins: ["mesh", "ladder"] }, ...others]);
    expect(findingOf(report, "tie-spacing", null)).toMatchObject({ outcome: "missing", margin: -1 });
    const jumped = reportOf([
      pool,
      ringCopper(),
      grid,
      { ...first, joins: ["mesh", "ring"] },
      ...others.map((tie) => ({ ...tie, joins: ["mesh", "pool"] })),
    ]);
    expect(findingOf(jumped, "tie-spacing", null)).toMatchObject({ outcome: "missing", margin: -3 });
  });

  it("is a question where its steel is not given, and the ties to it are one too", () => {
    const pool = concretePool({ steel: undefined });
    expect(outcomes(soundBut(pool))).toEqual({ shell: "review", ties: "review", water: "review", missing: 0 });
  });

  it("takes each tie's own answer for that tie", () => {
    const pool = concretePool({ steel: "encapsulated" });
    const answer = (element: string, word: string) => ({ question: "tie-steel-there", element, answer: word });
    const all = ["tie-1", "tie-2", "tie-3", "tie-4"];
    const ties = (answers: object[]) => {
      const report = reportOf(soundBut(pool), { answers });
      return [findingOf(report, "tie-spacing", null).outcome, report.missing];
    };
    expect(ties(all.map((id) => answer(id, "yes")))).toEqual(["meets", 2]);
    expect(ties(all.map((id) => answer(id, id === "tie-4" ? "no" : "yes")))).toEqual(["missing", 3]);
    expect(ties(all.slice(1).map((id) => answer(id, "yes")))).toEqual(["review", 2]);
  });
});

describe("plates that only together keep 9 sq in. in the water", () => {
  const plate = (id: string, y: number) => ({
    id,
    kind: "water-bond",
    at: [0, y],
    pool: "pool",
    exposedArea: 4.5,
    material: "copper",
    alwaysSubmerged: true,
  });
  const both = [linerPool(), ringCopper(), plate("a", 40), plate("b", 60), clampTie("ta", [0, 40], ["ring", "a"])];
  const answers = [{ question: "small-parts-together", element: "pool", answer: "yes" }];
  const water = (elements: readonly object[]) => findingOf(reportOf(elements, { answers }), "water-contact", null);

  it("are accepted by the authority only as far as all of them are bonded", () => {
    expect(water(both).outcome).toBe("missing");
    expect(water([...both, clampTie("tb", [0, 60], ["ring", "b"])]).outcome).toBe("meets");
    expect(water([...both, clampTie("tb", [0, 60], ["ring", "b"], { hardware: undefined })]).outcome).toBe("review");
  });
});
