// A recorded tie against what it says that it joins. Sources: the site format (a tie joins elements, `at` is where it is made);
// how far a tie may lie from them, and that it holds a wire at least: judgement, common practice, no source.
import { describe, expect, it } from "vitest";
import {
  branch,
  clampTie,
  concretePool,
  findingOf,
  fourTies,
  line,
  pathRoundPool,
  reportOf,
  ringCopper,
  soundYard,
} from "./yards.ts";

const post = (y: number) => ({
  id: "post",
  kind: "metal",
  shape: { point: [100, y] },
  part: "light pole",
  z: [0, 90],
});
const tieIn = (tie: object, ...more: object[]) =>
  findingOf(reportOf([...soundYard(), post(230), ...more, tie]), "tie-hardware", "t");
const t = (at: readonly [number, number], joins: readonly string[], changes: object = {}) =>
  clampTie("t", at, joins, changes);

describe("a tie", () => {
  it("may have a short wire of its own, up to 60 in., and is a question beyond it", () => {
    // The ring's north side lies at y 213, the post at y 230.
    expect(tieIn(t([100, 230], ["ring", "post"])).outcome).toBe("meets");
    expect(tieIn(t([100, 273], ["ring", "pool"])).outcome).toBe("review");
    expect(tieIn(t([100, 252], ["ring", "pool"])).outcome).toBe("meets");
    const far = tieIn(t([100, 252.01], ["ring", "pool"]));
    expect(far).toMatchObject({ outcome: "review", question: { id: "tie-place" } });
    expect(far.why).toContain("which it is said to join");
    expect(tieIn(t([100, 290.01], ["post", "w"]), branch("w", line(100, 351, 100, 400))).outcome).toBe("review");
  });

  it("at a part may name the far copper that it is wired to, and at the copper the far part", () => {
    expect(tieIn(t([100, 330], ["ring", "post"]), { ...post(330), id: "other" }).outcome).toBe("review");
    expect(tieIn(t([100, 330], ["ring", "other"]), { ...post(330), id: "other" }).outcome).toBe("meets");
    expect(tieIn(t([100, 213], ["perimeter", "other"]), { ...post(330), id: "other" }).outcome).toBe("meets");
    expect(tieIn(t([100, 330], ["pool", "other"]), { ...post(330), id: "other" }).outcome).toBe("meets");
  });

  it("far off leaves the part reached by it as it was, and stays open itself", () => {
    const report = reportOf([...soundYard(), post(230), t([100, 400], ["ring", "post"])]);
    expect(findingOf(report, "fixed-metal", "post").outcome).toBe("meets");
    expect(findingOf(report, "tie-hardware", "t").outcome).toBe("review");
  });

  it("in the water of a pool lies at its shell", () => {
    expect(tieIn(t([100, 150], ["ring", "pool"])).outcome).toBe("review");
    expect(tieIn(t([100, 180], ["ring", "pool"])).outcome).toBe("meets");
  });

  it("holds one wire at least", () => {
    expect(tieIn(t([100, 230], ["ring", "post"], { conductorsInClamp: 1 })).outcome).toBe("meets");
    expect(tieIn(t([100, 230], ["ring", "post"], { conductorsInClamp: 0 }))).toMatchObject({
      outcome: "review",
      question: { id: "tie-wires-in-clamp" },
    });
  });

  it("joins no tie, itself included, no keep-out and no line overhead", () => {
    const pit = {
      id: "pit",
      kind: "keep-out",
      outline: {
        closed: true,
        vertices: [
          [90, 240],
          [110, 240],
          [110, 260],
        ],
      },
    };
    for (const [name, more] of [
      ["t", []],
      ["tie-1", []],
      ["pit", [pit]],
    ] as const) {
      const found = tieIn(t([100, 230], ["post", name]), ...more);
      expect([name, found.outcome, found.question?.id]).toEqual([name, "review", "tie-joins"]);
    }
  });
});

// A ring is closed by a splice, or by a clamp that takes both of its ends: 680.26(B), 250.8, restated.
describe("a tie at the ends of an open ring", () => {
  const { vertices } = pathRoundPool(21);
  const ring = ringCopper({ joint: "none", path: { closed: false, vertices: [...vertices, vertices[0]] } });
  const yard = (...ties: object[]) => reportOf([concretePool(), ring, ...fourTies(), ...ties]);

  it("closes it where it names nothing else", () => {
    expect(yard().missing).toBe(1);
    for (const joins of [["ring"], ["ring", "ring"], ["ring", "perimeter"]]) {
      const report = yard(t([0, -21], joins));
      expect([report.missing, findingOf(report, "tie-hardware", "t").outcome]).toEqual([0, "meets"]);
    }
  });

  it("does not close it from elsewhere, by a screw, or across a gap", () => {
    expect(yard(t([192, -21], ["ring"])).missing).toBe(1);
    expect(yard(t([0, -21], ["ring"], { hardware: "screw" })).missing).toBe(1);
    const gap = { ...ring, path: { closed: false, vertices: [...vertices, [-3, -21]] } };
    expect(reportOf([concretePool(), gap, ...fourTies(), t([0, -21], ["ring"])]).missing).toBe(1);
  });
});
