// NEC 680.26(C), 680.42(B) and 680.22(A), restated; what is argued: common practice, no source.
import { describe, expect, it } from "vitest";
import { box, concretePool, deck, line, linerPool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as named } from "../../../rules/catalogue/named-pool/rule.ts";
import { rule as receptacles } from "../../../rules/catalogue/receptacle-distance/rule.ts";
import { rule as spas } from "../../../rules/catalogue/spa-exception/rule.ts";
import { rule as fitting } from "../../../rules/catalogue/water-bond-fitting/rule.ts";
import { rule as water } from "../../../rules/catalogue/water-contact/rule.ts";
import { verdictOf, yardOf } from "./yards.ts";

const plate = (changes: object = {}) => ({
  id: "plate",
  kind: "water-bond",
  at: [100, 1],
  pool: "pool",
  exposedArea: 9,
  material: "stainless steel",
  alwaysSubmerged: true,
  ...changes,
});
const ladder = (changes: object = {}) => post(0, { part: "ladder", z: [-48, 36], removable: false, ...changes });

describe("bonded metal in the water", () => {
  const judge = (elements: readonly object[], head: object = {}) => verdictOf(water, yardOf(elements, head), null);

  it("a bonded concrete shell under plaster is contact enough; under what may keep the water off it is a question", () => {
    expect(judge([concretePool()]).outcome).toBe("meets");
    for (const finish of ["epoxy", "fiberglass", "membrane", undefined]) {
      expect(judge([concretePool({ finish })]).question?.id).toBe("shell-touches-water");
    }
    const answers = (answer: string) => ({ answers: [{ question: "shell-touches-water", element: "pool", answer }] });
    expect(judge([concretePool({ finish: "epoxy" })], answers("yes")).outcome).toBe("meets");
    expect(judge([concretePool({ finish: "epoxy" })], answers("no"))).toMatchObject({
      outcome: "bond",
      need: { kind: "water", elements: [] },
    });
  });

  it("a shell that still needs its grid counts once it has it", () => {
    expect(judge([concretePool({ steel: "none" })])).toMatchObject({ outcome: "bond", need: { elements: ["pool"] } });
    expect(judge([concretePool({ steel: undefined })]).question?.id).toBe("shell-steel");
  });

  it("a ladder or a metal light shell counts once bonded", () => {
    expect(judge([linerPool(), ladder()])).toMatchObject({
      outcome: "bond",
      need: { kind: "water", elements: ["post"] },
    });
    const light = { id: "light", kind: "underwater-light", at: [100, 0], pool: "pool", formingShell: "metal" };
    expect(judge([linerPool(), light])).toMatchObject({ outcome: "bond", need: { elements: ["light"] } });
    expect(judge([linerPool(), { ...light, formingShell: "nonmetal" }]).need?.elements).toEqual([]);
  });

  it("a light or a plate whose pool is not drawn counts for no water until somebody says whose it is", () => {
    const light = { id: "light", kind: "underwater-light", at: [100, 0], pool: "pond", formingShell: "metal" };
    for (const [part, id] of [
      [light, "light"],
      [plate({ pool: "pond" }), "plate"],
    ] as const) {
      expect(judge([linerPool(), part])).toMatchObject({
        outcome: "review",
        question: { id: `named-pool-${id}`, options: ["yes", "no"] },
      });
      // The answer may be kept with the part itself or with the water.
      for (const [question, element] of [
        ["named-pool", id],
        [`named-pool-${id}`, "pool"],
      ]) {
        const answers = (answer: string) => ({ answers: [{ question, element, answer }] });
        expect(judge([linerPool(), part], answers("yes"))).toMatchObject({
          outcome: "bond",
          need: { elements: [id] },
        });
        expect(judge([linerPool(), part], answers("no")).outcome).toBe("review");
        const asked = verdictOf(named, yardOf([linerPool(), part], answers("yes")), id);
        expect(asked).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
      }
      expect(verdictOf(named, yardOf([linerPool(), part]), id).why).toMatch(/"pond".*not drawn/);
      expect(named.judge(yardOf([linerPool({ id: "pond" }), part]))).toEqual([]);
      expect(named.judge(yardOf([linerPool(), { ...part, pool: undefined }]))).toEqual([]);
    }
    expect(verdictOf(fitting, yardOf([linerPool(), plate({ pool: "pond" })]), "plate").outcome).toBe("review");
  });

  it("a ladder that can be taken out is a question; the answer names which", () => {
    for (const removable of [true, undefined]) {
      expect(judge([linerPool(), ladder({ removable })])).toMatchObject({
        outcome: "review",
        question: { id: "ladder-stays-post" },
      });
    }
    const answers = (answer: string) => ({ answers: [{ question: "ladder-stays-post", element: "pool", answer }] });
    expect(judge([linerPool(), ladder({ removable: true })], answers("yes"))).toMatchObject({
      outcome: "bond",
      need: { elements: ["post"] },
      answered: { answer: "yes" },
    });
    expect(judge([linerPool(), ladder({ removable: true })], answers("no")).need?.elements).toEqual([]);
  });

  it("metal above the water, and fixed metal over it, is no contact", () => {
    expect(judge([linerPool(), ladder({ part: "handrail", z: [6, 40] })]).need?.elements).toEqual([]);
    expect(judge([linerPool(), post(0, { shape: { point: [100, 100] } })]).need?.elements).toEqual([]);
  });

  it("fixed metal counts where what of it stays in the water is given", () => {
    const screen = post(0, { part: "plate", shape: { point: [100, 100] }, wettedArea: 12, removable: false });
    expect(judge([linerPool(), screen]).need?.elements).toEqual(["post"]);
    expect(judge([linerPool(), { ...screen, fixed: false }]).need?.elements).toEqual([]);
  });

  it("several parts that only together keep 9 sq in. are a question", () => {
    const two = [linerPool(), plate({ exposedArea: 5 }), plate({ id: "second", exposedArea: 4 })];
    expect(judge(two)).toMatchObject({
      outcome: "review",
      measured: { wettedArea: 9 },
      question: { id: "small-parts-together" },
    });
    expect(judge([linerPool(), plate({ exposedArea: 5 }), plate({ id: "second", exposedArea: 3.99 })])).toMatchObject({
      outcome: "bond",
      measured: { wettedArea: 8.99 },
    });
    const answers = [{ question: "small-parts-together", element: "pool", answer: "yes" }];
    expect(judge(two, { answers }).need?.elements).toEqual(["plate", "second"]);
  });

  it("each body has its own", () => {
    const spa = linerPool({ id: "spa", body: "spa", outline: box(600, 0, 700, 100) });
    const found = water.judge(yardOf([concretePool(), spa, plate()])).map((verdict) => [verdict.body, verdict.outcome]);
    expect(found).toEqual([
      ["pool", "meets"],
      ["spa", "bond"],
    ]);
  });
});

describe("a fitting for the water's bond", () => {
  const judge = (changes: object, head: object = {}) =>
    verdictOf(fitting, yardOf([linerPool(), plate(changes)], head), "plate");

  it.each([
    [{}, "bond"],
    [{ exposedArea: 9 - 1e-7 }, "bond"],
    [{ exposedArea: 8.99 }, "conflict"],
    [{ exposedArea: undefined }, "review"],
    [{ alwaysSubmerged: undefined }, "review"],
    [{ alwaysSubmerged: false }, "conflict"],
    [{ alwaysSubmerged: false, location: "return line" }, "review"],
    [{ material: undefined }, "review"],
    [{ material: "galvanized steel" }, "review"],
    [{ material: "Copper" }, "bond"],
  ])("%j: %s", (changes, outcome) => {
    expect(judge(changes).outcome).toBe(outcome);
  });

  // Arithmetic: 2 x 4.5 = 9; pi x 1.5 x 1.91 = 9.0007, pi x 1.5 x 1.9 = 8.95.
  it.each([
    [{ width: 2, height: 4.5 }, "bond", 9],
    [{ width: 2, height: 4.49 }, "conflict", 8.98],
    [{ diameter: 1.5, length: 1.91 }, "bond", Math.PI * 2.865],
    [{ diameter: 1.5, length: 1.9 }, "conflict", Math.PI * 2.85],
    [{ width: 2, diameter: 3 }, "review", null],
    [{ exposedArea: 12, width: 1, height: 1 }, "bond", 12],
  ])("a plate or a tube by its dimensions, %j: %s", (changes, outcome, area) => {
    const found = judge({ exposedArea: undefined, ...changes });
    expect(found.outcome).toBe(outcome);
    if (area === null) expect(found.measured.wettedArea).toBeNull();
    else expect(found.measured.wettedArea).toBeCloseTo(area, 9);
  });

  it("counts only once it is bonded", () => {
    expect(judge({}).need).toMatchObject({ kind: "part", elements: ["plate"], connections: 1 });
  });

  it("follows the answers one after the other", () => {
    const answers = [
      { question: "contact-stays-wet", element: "plate", answer: "yes" },
      { question: "contact-material", element: "plate", answer: "yes" },
    ];
    const open = { alwaysSubmerged: undefined, material: undefined };
    expect(judge(open).question?.id).toBe("contact-stays-wet");
    expect(judge(open, { answers: answers.slice(0, 1) }).question?.id).toBe("contact-material");
    expect(judge(open, { answers }).outcome).toBe("bond");
  });
});

describe("spas", () => {
  const spa = (changes: object = {}) =>
    concretePool({
      id: "spa",
      body: "spa",
      shell: "fiberglass",
      installation: "on-ground",
      listedSelfContained: true,
      indoorOnly: false,
      rim: 28,
      ...changes,
    });
  const judge = (elements: readonly object[]) => verdictOf(spas, yardOf(elements), "spa");

  it.each([
    [{}, "exempt"],
    [{ rim: 27.99 }, "bond"],
    [{ installation: "in-ground" }, "bond"],
    [{ listedSelfContained: false }, "bond"],
    [{ indoorOnly: true }, "bond"],
    [{ rim: undefined }, "review"],
    [{ listedSelfContained: undefined }, "review"],
    [{ indoorOnly: undefined }, "review"],
    [{ installation: undefined }, "review"],
    [{ installation: "indoor" }, "review"],
  ])("%j: %s (28 in.: one source)", (changes, outcome) => {
    expect(judge([spa(changes)]).outcome).toBe(outcome);
  });

  it("looks at every surface within 30 in. of it, and at none farther out", () => {
    const terrace = (distance: number, level: number | undefined) =>
      deck({ outline: box(0, 192 + distance, 384, 400), level });
    expect(judge([spa(), terrace(29, 1)])).toMatchObject({ outcome: "bond", measured: { rimAbove: 27 } });
    expect(judge([spa(), terrace(30.1, 1)]).outcome).toBe("exempt");
    expect(judge([spa(), terrace(29, undefined)]).question?.id).toBe("spa-rim");
  });

  it("of concrete are judged like pools", () => {
    expect(spas.judge(yardOf([spa({ shell: "sprayed-concrete" })]))).toEqual([]);
  });
});

describe("receptacles", () => {
  const outlet = (y: number, changes: object = {}) => ({
    id: "outlet",
    kind: "device",
    device: "receptacle",
    at: [200, y],
    ...changes,
  });
  const judge = (elements: readonly object[], head: object = {}) =>
    verdictOf(receptacles, yardOf([concretePool(), ...elements], head), "outlet");
  const wall = (changes: object = {}) => ({
    id: "wall",
    kind: "wall",
    path: line(0, 216, 384, 216),
    thickness: 6,
    top: 72,
    permanent: true,
    ...changes,
  });

  it("stand at least 6 ft off", () => {
    expect(judge([outlet(264)])).toMatchObject({ outcome: "meets", margin: 0 });
    expect(judge([outlet(264 - 1e-7)]).outcome).toBe("meets");
    expect(judge([outlet(263.99)]).outcome).toBe("conflict");
    expect(judge([outlet(100)])).toMatchObject({ outcome: "conflict", measured: { horizontal: 0, path: 0 } });
    expect(judge([outlet(264.5)], { accuracy: 1 }).outcome).toBe("review");
  });

  it("behind a wall as near to 5 ft high as the drawing may be off are a question", () => {
    const far = (top: number) => judge([outlet(240), wall({ path: line(-400, 216, 784, 216), top })], { accuracy: 1 });
    expect(far(61.01).outcome).toBe("meets");
    for (const top of [61, 60, 59]) expect(far(top)).toMatchObject({ outcome: "review" });
    expect(far(60).why).toContain("measured height of wall");
    expect(far(58.99).outcome).toBe("conflict");
  });

  it.each([
    ["nec-2017", "680.22(A)(5)"],
    ["nec-2020", "680.22(A)(6)"],
    ["nec-2023", "680.22(A)(6)"],
  ])("%s measures by %s", (edition, section) => {
    expect(judge([outlet(300)], { edition }).alsoSections).toEqual([section]);
  });

  it("are reached by a cord round a high wall and over a low one", () => {
    // Arithmetic: up to the wall's corner (0, 213), up its end to (0, 219), across to (200, 240).
    expect(judge([outlet(240), wall()]).measured.path).toBeCloseTo(21 + 6 + Math.hypot(184, 21), 6);
    expect(judge([outlet(240), wall()]).outcome).toBe("meets");
    expect(judge([outlet(240), wall({ top: 59.99 })])).toMatchObject({ outcome: "conflict", measured: { path: 48 } });
    expect(judge([outlet(240), wall({ permanent: false })]).outcome).toBe("conflict");
    expect(
      judge([
        outlet(240),
        { id: "fence", kind: "fence", path: line(-500, 216, 900, 216), solid: true, top: 96, permanent: true },
      ]).outcome,
    ).toBe("conflict");
  });

  it("behind a wall of which too little is given are a question", () => {
    for (const changes of [{ permanent: undefined }, { top: undefined }]) {
      expect(judge([outlet(240), wall(changes)])).toMatchObject({
        outcome: "review",
        question: { id: "cord-keeps-distance" },
      });
    }
    expect(judge([outlet(300), wall({ top: undefined })]).outcome).toBe("meets");
    const paving = deck({ outline: box(-200, 192, 600, 213), level: undefined });
    expect(judge([outlet(240), wall(), paving]).outcome).toBe("review");
  });

  describe("and houses", () => {
    const house = { id: "house", kind: "building", outline: box(0, 240, 384, 500), top: 120 };
    const opening = (kind: string) => ({ id: "way", kind: "opening", path: line(180, 240, 220, 240), opening: kind });

    it("doors and windows stop a cord, open passages do not", () => {
      for (const kind of ["hinged-door", "sliding-door", "window"]) {
        expect(judge([outlet(260), house, opening(kind)])).toMatchObject({
          outcome: "meets",
          measured: { path: null },
          margin: null,
        });
      }
      expect(judge([outlet(260), house, opening("passage")])).toMatchObject({
        outcome: "conflict",
        measured: { path: 68 },
      });
    });

    it("on the outer face it counts, just inside it is a question", () => {
      expect(judge([outlet(240), house]).outcome).toBe("conflict");
      expect(judge([outlet(244), house])).toMatchObject({
        outcome: "review",
        question: { id: "receptacle-outside-face" },
      });
      expect(judge([outlet(244, { indoor: true }), house]).outcome).toBe("meets");
      expect(judge([outlet(244, { indoor: false }), house]).outcome).toBe("conflict");
      const answers = (answer: string) => ({
        answers: [{ question: "receptacle-outside-face", element: "outlet", answer }],
      });
      expect(judge([outlet(244), house], answers("indoors")).outcome).toBe("meets");
      expect(judge([outlet(244), house], answers("outdoors")).outcome).toBe("conflict");
      expect(judge([outlet(260), house]).outcome).toBe("meets");
    });

    it("a pool inside the house is reached inside it", () => {
      const hall = { id: "hall", kind: "building", outline: box(-100, -100, 484, 292), top: 120 };
      expect(judge([outlet(250), hall])).toMatchObject({ outcome: "conflict", measured: { path: 58 } });
      expect(judge([outlet(300), hall])).toMatchObject({ outcome: "meets", measured: { path: null } });
    });
  });

  it("that serve the circulation fall under their own paragraph", () => {
    const pump = { id: "pump-1", kind: "equipment", unit: "pump", at: [600, 100] };
    expect(judge([pump, outlet(300, { serves: ["pump-1"] })]).section).toBe("680.22(A)(2)");
    expect(judge([outlet(300, { serves: "circulation" })]).section).toBe("680.22(A)(2)");
    expect(judge([outlet(300)]).section).toBeUndefined();
  });
});
