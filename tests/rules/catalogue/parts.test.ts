// NEC 680.26(B)(1), (3) to (6) and 680.27(B), restated; what is argued: common practice, no source.
import { describe, expect, it } from "vitest";
import { box, concretePool, linerPool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as coverMotor } from "../../../rules/catalogue/cover-motor/rule.ts";
import { rule as tail } from "../../../rules/catalogue/double-insulated-tail/rule.ts";
import { rule as equipment } from "../../../rules/catalogue/equipment/rule.ts";
import { rule as fittings } from "../../../rules/catalogue/fittings/rule.ts";
import { rule as fixedMetal } from "../../../rules/catalogue/fixed-metal/rule.ts";
import type { Rule } from "../../../rules/catalogue/rule.ts";
import { rule as shell } from "../../../rules/catalogue/shell/rule.ts";
import { rule as storable } from "../../../rules/catalogue/storable-pool/rule.ts";
import { rule as structure } from "../../../rules/catalogue/structure-metal/rule.ts";
import { rule as lights } from "../../../rules/catalogue/underwater-lights/rule.ts";
import { verdictOf, yardOf } from "./yards.ts";

const metalRules: Rule[] = [fittings, structure, fixedMetal];

/** The part under which a piece of metal is judged, with the outcome: exactly one of the three. */
function partOf(changes: object, head: object = {}): string {
  const yard = yardOf([concretePool(), post(0, changes)], head);
  const found = metalRules.flatMap((rule) =>
    rule
      .judge(yard)
      .filter((verdict) => verdict.element === "post")
      .map((verdict) => `${rule.id} ${verdict.outcome}`),
  );
  if (found.length !== 1) throw new Error(`judged ${found.length} times: ${found.join(", ")}`);
  return found[0] as string;
}

describe("a piece of metal falls under exactly one part", () => {
  it.each([
    ["a ladder at the water", { part: "ladder" }, "fittings bond"],
    ["a hand rail 5 ft out", { part: "hand-rail", shape: { point: [200, 252] } }, "fittings bond"],
    ["a hand rail beyond 5 ft", { part: "handrail", shape: { point: [200, 252.01] } }, "fixed-metal exempt"],
    ["a railing is no rail of the pool", { part: "balcony railing" }, "fixed-metal bond"],
    ["a drain pipe is no drain", { part: "drain pipe" }, "fixed-metal bond"],
    [
      "a small part of the structure",
      { inPoolStructure: true, part: "hook", largestDimension: 3, penetration: 0.5, isolated: true },
      "fittings exempt",
    ],
    ["a part of the structure without a name", { inPoolStructure: true, part: undefined }, "structure-metal bond"],
    [
      "reinforcing steel",
      { inPoolStructure: true, part: "rebar", shape: { point: [200, 400] } },
      "structure-metal bond",
    ],
    ["encapsulated bars", { inPoolStructure: true, part: "encapsulated rebar" }, "structure-metal exempt"],
    ["bars not encapsulated", { inPoolStructure: true, part: "rebar, not encapsulated" }, "structure-metal bond"],
    ["bars without a coat", { inPoolStructure: true, part: "unencapsulated rebar" }, "structure-metal bond"],
    ["a pole", { part: "light pole" }, "fixed-metal bond"],
  ])("%s", (_name, changes, expected) => {
    expect(partOf(changes)).toBe(expected);
  });
});

describe("fittings", () => {
  const small = { part: "cup", isolated: true, largestDimension: 4, penetration: 1 };

  it.each([
    [{}, "exempt"],
    [{ largestDimension: 4.01 }, "bond"],
    [{ penetration: 1.01 }, "bond"],
    [{ isolated: false }, "bond"],
    [{ isolated: undefined }, "review"],
    [{ largestDimension: undefined }, "review"],
    [{ penetration: undefined }, "review"],
    [{ isolated: undefined, largestDimension: 12 }, "bond"],
    [{ isolated: undefined, penetration: 2 }, "bond"],
  ])("%j: %s (4 in.; 1 in.: one source)", (changes, outcome) => {
    expect(partOf({ ...small, ...changes })).toBe(`fittings ${outcome}`);
  });

  it("a ladder needs a connection for each cup", () => {
    const yard = yardOf([concretePool(), post(0, { part: "ladder", anchors: 2 })]);
    expect(verdictOf(fittings, yard, "post").need).toMatchObject({ kind: "part", connections: 2, elements: ["post"] });
  });

  it("2023 frees small cover anchors by name (from memory)", () => {
    const anchor = { part: "cover anchor", shape: { point: [200, 210] }, largestDimension: 2 };
    expect(partOf(anchor, { edition: "nec-2023" })).toBe("fittings exempt");
    expect(partOf({ ...anchor, largestDimension: 2.01 }, { edition: "nec-2023" })).toBe("fittings review");
    expect(partOf(anchor, { edition: "nec-2020" })).toBe("fittings review");
    expect(partOf(anchor, { edition: undefined })).toBe("fittings review");
  });
});

describe("equipment", () => {
  const judge = (changes: object, at: [number, number] = [600, 100]) =>
    verdictOf(
      equipment,
      yardOf([concretePool(), { id: "unit", kind: "equipment", unit: "pump", at, ...changes }]),
      "unit",
    );

  it.each(["pump", "heater", "blower", "heat-pump", "controller", "cover-motor"])(
    "a %s is bonded at any distance",
    (unit) => {
      expect(judge({ unit })).toMatchObject({ outcome: "bond", need: { kind: "part", connections: 1 } });
    },
  );

  it("without metal parts is exempt", () => {
    expect(judge({ metalParts: false }).outcome).toBe("exempt");
  });

  it("that is double insulated is exempt, and a tail is left for the next motor", () => {
    const elements = [
      concretePool(),
      { id: "unit", kind: "equipment", unit: "pump", at: [600, 100], doubleInsulated: true },
    ];
    expect(verdictOf(equipment, yardOf(elements), "unit").outcome).toBe("exempt");
    expect(verdictOf(tail, yardOf(elements), "unit")).toMatchObject({ outcome: "bond", need: { elements: ["unit"] } });
    expect(tail.judge(yardOf([concretePool(), { ...elements[1], doubleInsulated: undefined }]))).toEqual([]);
  });

  it("a heater over 50 A with instructions of its own has only the marked parts bonded", () => {
    const marked = /only the parts they mark/;
    expect(judge({ unit: "heater", ratedAmps: 50.01, bondingInstructions: true }).why).toMatch(marked);
    for (const changes of [
      { ratedAmps: 50, bondingInstructions: true },
      { ratedAmps: 60 },
      { bondingInstructions: true },
    ]) {
      const verdict = judge({ unit: "heater", ...changes });
      expect(verdict.outcome).toBe("bond");
      expect(verdict.why).not.toMatch(marked);
    }
  });

  it.each(["filter", "chlorinator", "other"])(
    "a %s with nothing electric is a question, near the water fixed metal",
    (unit) => {
      expect(judge({ unit, electric: true })).toMatchObject({ outcome: "bond" });
      expect(judge({ unit, electric: false }).question?.id).toBe("tank-bonded");
      expect(judge({ unit }).question?.id).toBe("tank-bonded");
      expect(judge({ unit, electric: false }, [444, 100])).toMatchObject({ outcome: "bond", section: "680.26(B)(7)" });
      expect(judge({ unit, electric: false }, [444.01, 100]).outcome).toBe("review");
    },
  );

  it("that has nothing to do with the water is fixed metal", () => {
    expect(judge({ servesWater: false })).toMatchObject({ outcome: "exempt", section: "680.26(B)(7)" });
    expect(judge({ servesWater: false }, [444, 100])).toMatchObject({ outcome: "bond", section: "680.26(B)(7)" });
  });
});

describe("cover motors (680.27(B), from memory)", () => {
  const judge = (x: number, head: object = {}) =>
    verdictOf(
      coverMotor,
      yardOf([concretePool(), { id: "motor", kind: "equipment", unit: "cover-motor", at: [x, 96] }], head),
      "motor",
    );

  it("stand at least 5 ft off, unless separated", () => {
    expect(judge(444).outcome).toBe("meets");
    expect(judge(443.99).outcome).toBe("conflict");
    expect(judge(444.5, { accuracy: 1 }).outcome).toBe("review");
    const answers = [{ question: "cover-motor-separated", element: "motor", answer: "yes" }];
    expect(judge(400, { answers })).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
  });
});

describe("underwater lights", () => {
  const judge = (changes: object) =>
    verdictOf(
      lights,
      yardOf([concretePool(), { id: "light", kind: "underwater-light", at: [100, 0], ...changes }]),
      "light",
    ).outcome;

  it("bonds metal shells whatever the voltage, and metal brackets", () => {
    expect(judge({ formingShell: "metal", listedLowVoltage: true })).toBe("bond");
    expect(judge({ formingShell: "none", metalBracket: true })).toBe("bond");
    expect(judge({ formingShell: "nonmetal", metalBracket: false })).toBe("exempt");
    expect(judge({ formingShell: "nonmetal", listedLowVoltage: true })).toBe("exempt");
    expect(judge({ formingShell: "none" })).toBe("review");
  });
});

describe("shells", () => {
  const judge = (changes: object, head: object = {}) => verdictOf(shell, yardOf([concretePool(changes)], head), "pool");
  const answer = (question: string, text: string) => ({ answers: [{ question, element: "pool", answer: text }] });

  it.each(["cast-concrete", "sprayed-concrete", "coated-block"])("%s conducts", (kind) => {
    expect(judge({ shell: kind }).outcome).toBe("meets");
    expect(judge({ shell: kind, steel: "none" })).toMatchObject({
      outcome: "bond",
      need: { kind: "shell-grid", elements: ["pool"] },
    });
    expect(judge({ shell: kind, steel: undefined }).question?.id).toBe("shell-steel");
  });

  it("follows the answers about steel, kind and frame", () => {
    expect(judge({ steel: undefined }, answer("shell-steel", "encapsulated")).outcome).toBe("bond");
    expect(judge({ steel: undefined }, answer("shell-steel", "bare, tied together")).outcome).toBe("meets");
    const unknown = { shell: "unknown", wallFrame: "nonmetal" };
    expect(judge(unknown).question?.id).toBe("shell-kind");
    expect(judge(unknown, answer("shell-kind", "liner or fiberglass")).outcome).toBe("exempt");
    const frame = { shell: "vinyl-liner", wallFrame: "metal" };
    expect(judge(frame).question?.id).toBe("wall-frame-conductive");
    expect(judge(frame, answer("wall-frame-conductive", "no")).outcome).toBe("exempt");
    expect(judge(frame, answer("wall-frame-conductive", "yes")).outcome).toBe("meets");
    expect(judge({ shell: "metal" }).question?.id).toBe("wall-frame-conductive");
    expect(judge({ shell: "vinyl-liner" }).question?.id).toBe("pool-wall-frame");
    expect(judge({ shell: "fiberglass" }).outcome).toBe("exempt");
  });

  it("a metal wall or frame is a part of the structure", () => {
    for (const changes of [{ shell: "vinyl-liner", wallFrame: "metal" }, { shell: "metal" }]) {
      expect(verdictOf(structure, yardOf([concretePool(changes)]), "pool")).toMatchObject({
        outcome: "bond",
        need: { elements: ["pool"] },
      });
    }
    expect(structure.judge(yardOf([concretePool({ shell: "fiberglass" })]))).toEqual([]);
  });
});

describe("storable pools (680.2)", () => {
  const judge = (changes: object, head: object = {}) =>
    storable.judge(yardOf([linerPool({ storable: undefined, ...changes })], head)).map((verdict) => verdict.outcome);

  it("is the first question about a pool that may stand above the ground", () => {
    expect(judge({ installation: "on-ground" })).toEqual(["review"]);
    expect(judge({ installation: undefined })).toEqual(["review"]);
    expect(judge({ installation: "in-ground" })).toEqual([]);
    expect(judge({ installation: "on-ground", storable: false })).toEqual([]);
    expect(judge({ installation: "on-ground", storable: true })).toEqual(["exempt"]);
    expect(judge({ installation: "in-ground", storable: true })).toEqual(["review"]);
    const answers = [{ question: "pool-storable", element: "pool", answer: "yes" }];
    expect(judge({ installation: "on-ground" }, { answers })).toEqual(["exempt"]);
  });

  it("frees everything of 680.26 and nothing while it is open", () => {
    const yard = (changes: object) =>
      yardOf([
        linerPool({ installation: "on-ground", ...changes }),
        post(10),
        { id: "pump", kind: "equipment", unit: "pump", at: [600, 0] },
      ]);
    expect(shell.judge(yard({ storable: true }))).toEqual([]);
    expect(equipment.judge(yard({ storable: true }))).toEqual([]);
    expect(verdictOf(fixedMetal, yard({ storable: true }), "post").outcome).toBe("exempt");
    expect(verdictOf(fixedMetal, yard({ storable: undefined }), "post").outcome).toBe("bond");
    expect(verdictOf(equipment, yard({ storable: undefined }), "pump").outcome).toBe("bond");
  });
});

describe("spas of 680.42(B)", () => {
  it("a pool beside it is judged for itself", () => {
    const spa = concretePool({
      id: "spa",
      body: "spa",
      shell: "fiberglass",
      installation: "on-ground",
      listedSelfContained: true,
      indoorOnly: false,
      rim: 40,
      outline: box(600, 0, 700, 100),
    });
    const yard = yardOf([concretePool(), spa, post(0, { shape: { point: [650, 110] }, z: [0, 30] })]);
    expect(verdictOf(fixedMetal, yard, "post")).toMatchObject({ outcome: "bond", body: "spa" });
  });
});
