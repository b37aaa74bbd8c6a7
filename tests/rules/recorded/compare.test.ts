// The count of what is missing, by hand, and how recorded copper turns needs into meets, missing and questions.
// The count's formula: the report format; what needs bonding: NEC 680.26(B), (C), restated; each sum: arithmetic.
import { describe, expect, it } from "vitest";
import { missingCount } from "../../../rules/recorded/missing.ts";
import type { Report } from "../../../rules/report.ts";
import {
  branch,
  clampTie,
  concretePool,
  deck,
  findingOf,
  fourTies,
  ladder,
  line,
  linerPool,
  pathRoundPool,
  pump,
  reportOf,
  ringCopper,
  soundYard,
} from "./yards.ts";

const toPump = [
  branch("b", line(405, 100, 600, 100)),
  clampTie("b-ring", [405, 100], ["perimeter", "b"]),
  clampTie("b-pump", [600, 100], ["b", "pump"]),
];
const cups = [
  clampTie("cup-1", [90, -21], ["perimeter", "ladder"]),
  clampTie("cup-2", [110, -21], ["perimeter", "ladder"]),
];
const contact = {
  id: "plate",
  kind: "water-bond",
  at: [0, 96],
  pool: "pool",
  exposedArea: 12,
  material: "stainless-steel",
  alwaysSubmerged: true,
  location: "skimmer",
};

describe("what is missing, counted by hand", () => {
  it.each<[string, readonly object[], number]>([
    ["a bare concrete pool: 4 ties + its perimeter", [concretePool()], 5],
    ["the same with a pump and a ladder: 4 + 1 + 2 parts", [concretePool(), pump, ladder], 7],
    ["ring and ties recorded: nothing", soundYard(), 0],
    ["ring and ties, pump not joined: 1 part", [...soundYard(), pump], 1],
    ["pump joined by a branch tied at both ends: nothing", [...soundYard(), pump, ...toPump], 0],
    ["the branch tied at the pump only: 1 part", [...soundYard(), pump, toPump[0] as object, toPump[2] as object], 1],
    ["ladder with one of its two cups joined: 1 part", [...soundYard(), ladder, cups[0] as object], 1],
    ["ladder with both: nothing", [...soundYard(), ladder, ...cups], 0],
    [
      "one of four ties a screw: 1 tie",
      [
        concretePool(),
        ringCopper(),
        ...fourTies().slice(0, 3),
        clampTie("s", [0, 192], ["perimeter", "pool"], { hardware: "screw" }),
      ],
      1,
    ],
    ["only four ties, no perimeter bonding: 1 perimeter", [concretePool(), ...fourTies()], 1],
    [
      "ring 30 in. off: its perimeter; the ties stand",
      [concretePool(), ringCopper({ path: pathRoundPool(30) }), ...fourTies()],
      1,
    ],
    [
      "stranded ring with a pump on it: perimeter + pump",
      [concretePool(), ringCopper({ solid: false }), ...fourTies(), pump, ...toPump],
      2,
    ],
    ["deck with bare bars, tied at four points: nothing", [deck({ steel: "rebar" }), concretePool(), ...fourTies()], 0],
    ["a bare liner pool: perimeter + water; no ties", [linerPool()], 2],
    [
      "liner pool with ring and a plate in the water that is not joined: the water once, by the plate that is there for it",
      [linerPool(), ringCopper(), contact],
      1,
    ],
    [
      "a second plate beside one that is joined is a part that is not reached: 1 part",
      [
        linerPool(),
        ringCopper(),
        contact,
        clampTie("w", [0, 96], ["perimeter", "plate"]),
        { ...contact, id: "spare", at: [0, 40] },
      ],
      1,
    ],
    [
      "a ladder in the water that is not joined: the ladder as a part, and the water",
      [linerPool(), ringCopper(), { ...ladder, removable: false, z: [-40, 30], anchors: 1 }],
      2,
    ],
    [
      "the plate joined: nothing",
      [linerPool(), ringCopper(), contact, clampTie("w", [0, 96], ["perimeter", "plate"])],
      0,
    ],
    [
      "pool with encapsulated bars and no grid: 4 ties + perimeter + grid + water",
      [concretePool({ steel: "encapsulated" })],
      7,
    ],
  ])("%s", (_name, elements, expected) => {
    expect(reportOf(elements).missing).toBe(expected);
  });

  it("has two pools far apart count each loop", () => {
    const outline = {
      closed: true,
      vertices: [
        [1000, 0],
        [1384, 0],
        [1384, 192],
        [1000, 192],
      ],
    };
    expect(reportOf([...soundYard(), concretePool({ id: "second", outline })]).missing).toBe(5);
  });

  it("is a plain sum over ties, parts, loops and waters; a part once, questions not at all", () => {
    const need = { elements: ["a"], connections: 1, at: [], drop: 0 };
    const part = { outcome: "missing", need: { ...need, kind: "part" }, element: "a", body: "p" } as const;
    const gap = { path: [], length: 1, at: [0, 0], surface: null, body: "p", needed: true } as const;
    expect(missingCount({ ties: [{ present: true }, { present: false }], verdicts: [], loops: [] })).toBe(1);
    expect(missingCount({ ties: [], verdicts: [part, part, { ...part, outcome: "meets" }], loops: [] })).toBe(1);
    expect(missingCount({ ties: [], verdicts: [{ ...part, outcome: "review" }], loops: [] })).toBe(0);
    expect(missingCount({ ties: [], verdicts: [{ ...part, need: { ...need, kind: "water" } }], loops: [] })).toBe(1);
    const water = { ...part, need: { ...need, kind: "water" } } as const;
    const plate = { ...part, need: { ...part.need, elements: ["plate"], servesWater: true } } as const;
    expect(missingCount({ ties: [], verdicts: [plate], loops: [] })).toBe(1);
    expect(missingCount({ ties: [], verdicts: [plate, water], loops: [] })).toBe(1);
    expect(missingCount({ ties: [], verdicts: [plate, { ...water, body: "other" }], loops: [] })).toBe(2);
    expect(missingCount({ ties: [], verdicts: [plate, { ...water, outcome: "meets" }], loops: [] })).toBe(1);
    const loops = [
      { bodies: ["p"], complete: "no", gaps: [gap] },
      { bodies: ["p"], complete: "doubtful", gaps: [gap] },
      { bodies: ["p"], complete: "no", gaps: [{ ...gap, needed: false }] },
    ] as const;
    expect(missingCount({ ties: [], verdicts: [], loops })).toBe(1);
    const ground = { ...part, need: { ...need, kind: "perimeter" } } as const;
    expect(missingCount({ ties: [], verdicts: [ground], loops })).toBe(1);
    expect(missingCount({ ties: [], verdicts: [ground, ground], loops: loops.slice(1) })).toBe(1);
    expect(missingCount({ ties: [], verdicts: [ground, { ...ground, body: "q" }], loops })).toBe(2);
  });
});

describe("needs held against what is recorded", () => {
  const pumpOf = (report: Report) => findingOf(report, "equipment", "pump");

  it("stay bond on a site without recorded copper, and are missing on one with", () => {
    expect(pumpOf(reportOf([concretePool(), pump])).outcome).toBe("bond");
    const missing = pumpOf(reportOf([...soundYard(), pump]));
    expect(missing.outcome).toBe("missing");
    expect(missing.why).toMatch(/No recorded connection reaches it/);
    expect(missing.remedy).not.toBe("");
  });

  it("name the ties that reach a part", () => {
    const met = pumpOf(reportOf([...soundYard(), pump, ...toPump]));
    expect(met.outcome).toBe("meets");
    expect(met.why).toMatch(/Reached by tie b-pump/);
  });

  it("are a question where a connection rests on a fact that is not given, until the site answers", () => {
    const open = { ...(toPump[2] as object), hardware: undefined };
    const elements = [...soundYard(), pump, toPump[0] as object, toPump[1] as object, open];
    const report = reportOf(elements);
    expect(pumpOf(report)).toMatchObject({ outcome: "review", question: { id: "recorded-connection" } });
    expect(report.missing).toBe(0);
    const answered = (question: string, element: string, answer: string) =>
      pumpOf(reportOf(elements, { answers: [{ question, element, answer }] })).outcome;
    expect(answered("tie-hardware", "b-pump", "yes")).toBe("meets");
    expect(answered("tie-hardware", "b-pump", "no")).toBe("missing");
    expect(answered("recorded-connection", "pump", "yes")).toBe("meets");
    expect(answered("recorded-connection", "pump", "no")).toBe("missing");
  });

  it("say how long and where the perimeter is open", () => {
    const { vertices } = pathRoundPool(21);
    const finding = findingOf(
      reportOf([concretePool(), ringCopper({ path: { closed: false, vertices } }), ...fourTies()]),
      "perimeter-surfaces",
      null,
    );
    expect(finding.outcome).toBe("missing");
    expect(finding.measured.gap).toBeCloseTo((21 * Math.PI) / 2, 5);
    expect(finding.why).toMatch(/2' 9" open at/);
  });

  it("judge each surface by the loop that passes it", () => {
    const south = deck({
      id: "south",
      outline: {
        closed: true,
        vertices: [
          [-120, -120],
          [504, -120],
          [504, 96],
          [-120, 96],
        ],
      },
    });
    const { vertices } = pathRoundPool(21);
    const half = { closed: false, vertices: [[405, 96], ...vertices.slice(3, 7), [-21, 96]] };
    const report = reportOf([south, concretePool(), ringCopper({ path: half }), ...fourTies()]);
    expect(findingOf(report, "perimeter-surfaces", "south").outcome).toBe("missing");
    expect(findingOf(report, "perimeter-surfaces", null).outcome).toBe("meets");
    expect(report.missing).toBe(1);
  });

  it("take a recorded tail at a double-insulated motor, though nothing joins it to the motor", () => {
    const motor = { ...pump, doubleInsulated: true };
    const tail = branch("tail", line(405, 100, 590, 100), { role: "tail" });
    const tied = clampTie("t", [405, 100], ["perimeter", "tail"]);
    const outcome = (...more: object[]) =>
      findingOf(reportOf([...soundYard(), motor, ...more]), "double-insulated-tail", "pump").outcome;
    expect(outcome(tail, tied)).toBe("meets");
    expect(outcome(tail)).toBe("missing");
    expect(outcome({ ...tail, solid: false }, tied)).toBe("missing");
    expect(outcome(branch("tail", line(405, 100, 500, 100), { role: "tail" }), tied)).toBe("missing");
  });

  it("take a grid recorded in a shell whose bars are encapsulated, once it is tied", () => {
    const pool = concretePool({ steel: "encapsulated" });
    const grid = ringCopper({
      id: "grid",
      role: "grid",
      path: {
        closed: true,
        vertices: [
          [6, 6],
          [378, 6],
          [378, 186],
          [6, 186],
        ],
      },
      cover: undefined,
      coverFrom: undefined,
    });
    const withGrid = (given: object, ...more: object[]) =>
      findingOf(reportOf([pool, ringCopper(), given, ...more]), "shell", "pool").outcome;
    const outcome = (...more: object[]) => withGrid(grid, ...more);
    expect(outcome()).toBe("missing");
    expect(outcome(...fourTies())).toBe("meets");
    // A grid is bare copper (680.26(B)(1)(b)): an insulated one is none.
    expect(withGrid({ ...grid, covering: "insulated" }, ...fourTies())).toBe("missing");
    expect(findingOf(reportOf([pool, ringCopper(), ...fourTies()]), "shell", "pool").outcome).toBe("missing");
  });
});
