// A fact of recorded copper that is left out never makes a yard look safer. Source: the site format's own words on absent
// fields. Each yard holds one of the faults that inspectors find (NEC 680.26(B), restated).
import { describe, expect, it } from "vitest";
import type { Finding, Outcome } from "../../../rules/report.ts";
import {
  branch,
  clampTie,
  concretePool,
  deck,
  findingOf,
  fourTies,
  ladder,
  line,
  pathRoundPool,
  pump,
  reportOf,
  ringCopper,
} from "./yards.ts";

const parts = (changes: { ring?: object; branch?: object; tie?: object; deck?: object; pool?: object }) => [
  deck({ steel: "none", ...changes.deck }),
  concretePool(changes.pool),
  ringCopper(changes.ring),
  ...fourTies().slice(0, 3),
  clampTie("tie-4", [0, 192], ["perimeter", "pool"], changes.tie),
  pump,
  ladder,
  branch("b", line(405, 100, 600, 100), changes.branch),
  clampTie("b-ring", [405, 100], ["perimeter", "b"], changes.tie),
  clampTie("b-pump", [600, 100], ["b", "pump"], changes.tie),
  clampTie("cup-1", [90, -21], ["perimeter", "ladder"], changes.tie),
  clampTie("cup-2", [110, -21], ["perimeter", "ladder"]),
];

const fence = (changes: object) => [
  { id: "fence", kind: "fence", path: line(0, -55, 384, -55), metal: true, ...changes },
  branch("to-fence", line(100, -21, 100, -55)),
  clampTie("fence-ring", [100, -21], ["perimeter", "to-fence"]),
  clampTie("fence-post", [100, -55], ["to-fence", "fence"]),
];

const YARDS: readonly (readonly [string, readonly object[]])[] = [
  ["nothing wrong", parts({})],
  ["stranded ring", parts({ ring: { solid: false } })],
  ["thin aluminum branch", parts({ branch: { awg: 12, material: "aluminum" } })],
  ["ring too deep, insulated and twisted", parts({ ring: { cover: 9, covering: "insulated", joint: "twisted" } })],
  ["ring 30 in. off", parts({ ring: { path: pathRoundPool(30) } })],
  ["branch soldered", parts({ branch: { joint: "solder" } })],
  ["screws", parts({ tie: { hardware: "screw" } })],
  [
    "two wires in a clamp that is not listed for burial",
    parts({ tie: { conductorsInClamp: 2, listedForBurial: false } }),
  ],
  ["steel tie wire on copper", parts({ tie: { hardware: "tie-wire" } })],
  ["bare bars in the deck, tied", parts({ deck: { steel: "rebar" } })],
  ["bars encapsulated in the shell", parts({ pool: { steel: "encapsulated" } })],
  [
    "bars in the deck that nothing ties, and a ring",
    [
      ...parts({ deck: { steel: "rebar" } }).filter((element) => !("id" in element && element.id === "b-ring")),
      clampTie("b-ring", [405, 100], ["ring", "b"]),
    ],
  ],
  ["one connection to a fence in three pieces", [...parts({}), ...fence({ isolatedSections: 3, gates: 0 })]],
  ["one connection to a fence with a gate", [...parts({}), ...fence({ isolatedSections: 1, gates: 1 })]],
];

const FIELDS: Readonly<Record<string, readonly string[]>> = {
  conductor: ["awg", "solid", "material", "covering", "cover", "coverFrom", "joint"],
  tie: ["hardware", "listedForBurial", "conductorsInClamp"],
  surface: ["steel"],
  pool: ["steel"],
  fence: ["metal", "isolatedSections", "gates"],
};
const WARNINGS: readonly Outcome[] = ["bond", "missing", "conflict", "review"];
const keyOf = ({ rule, element, body }: Finding) => `${rule} ${element} ${body}`;

function* leftOut(elements: readonly object[]): Generator<{ name: string; elements: object[] }> {
  for (const [i, element] of elements.entries()) {
    const record = element as Readonly<Record<string, unknown>>;
    for (const field of FIELDS[String(record.kind)] ?? []) {
      if (record[field] === undefined) continue;
      const { [field]: _gone, ...rest } = record;
      yield { name: `${record.id} without ${field}`, elements: elements.map((other, j) => (i === j ? rest : other)) };
    }
  }
}

describe.each(["nec-2020", "nec-2023"])("%s", (edition) => {
  it.each(YARDS)("%s: looks no safer when a fact is left out", (_name, elements) => {
    const before = reportOf(elements, { edition });
    const safer: string[] = [];
    for (const without of leftOut(elements)) {
      const after = new Map(
        reportOf(without.elements, { edition }).findings.map((finding) => [keyOf(finding), finding.outcome]),
      );
      for (const finding of before.findings) {
        const now = after.get(keyOf(finding));
        if (now === undefined) safer.push(`${without.name}: ${keyOf(finding)} vanished`);
        else if (WARNINGS.includes(finding.outcome) && !WARNINGS.includes(now))
          safer.push(`${without.name}: ${keyOf(finding)} ${finding.outcome} -> ${now}`);
      }
    }
    expect(safer).toEqual([]);
  });
});

describe("paving of which it is not given what steel lies in it", () => {
  const found = (head: object = {}) =>
    findingOf(reportOf(parts({ deck: { steel: undefined } }), head), "perimeter-surfaces", "deck");

  it("is a question once a ring is complete, and follows the answer", () => {
    expect(found()).toMatchObject({ outcome: "review", question: { id: "paving-without-steel" } });
    const answers = (answer: string) => ({ answers: [{ question: "paving-without-steel", element: "deck", answer }] });
    expect(found(answers("yes"))).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
    expect(found(answers("no")).outcome).not.toBe("meets");
  });

  it("stays a question when only what is open about the copper is answered", () => {
    const yard = parts({ deck: { steel: undefined }, ring: { joint: undefined } });
    const answers = [{ question: "recorded-perimeter", element: "deck", answer: "yes" }];
    const judge = (more: readonly object[]) =>
      findingOf(reportOf(yard, { answers: [...answers, ...more] }), "perimeter-surfaces", "deck");
    expect(findingOf(reportOf(yard), "perimeter-surfaces", "deck").question?.id).toBe("recorded-perimeter");
    expect(judge([])).toMatchObject({ outcome: "review", question: { id: "paving-without-steel" } });
    const bare = { question: "paving-without-steel", element: "deck", answer: "yes" };
    expect(judge([bare]).outcome).toBe("meets");
  });
});

describe("a fence of which it is not given in how many pieces it stands", () => {
  const found = (changes: object, head: object = {}) =>
    findingOf(reportOf([...parts({}), ...fence(changes)], head), "fixed-metal", "fence");

  it("is a question once one connection reaches it, and follows the answer", () => {
    expect(found({ isolatedSections: 1, gates: 0 }).outcome).toBe("meets");
    for (const changes of [{}, { isolatedSections: 1 }, { gates: 0 }]) {
      expect(found(changes)).toMatchObject({ outcome: "review", question: { id: "fence-one-piece" } });
    }
    const answers = (answer: string) => ({ answers: [{ question: "fence-one-piece", element: "fence", answer }] });
    expect(found({}, answers("yes"))).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
    expect(found({}, answers("no")).outcome).toBe("missing");
  });

  it("stays a question when only what is open about the connection is answered", () => {
    const yard = [...parts({}), ...fence({}).map((one) => ("joins" in one ? { ...one, hardware: undefined } : one))];
    const answers = [{ question: "recorded-connection", element: "fence", answer: "yes" }];
    expect(findingOf(reportOf(yard), "fixed-metal", "fence").question?.id).toBe("recorded-connection");
    expect(findingOf(reportOf(yard, { answers }), "fixed-metal", "fence")).toMatchObject({
      outcome: "review",
      question: { id: "fence-one-piece" },
    });
  });
});
