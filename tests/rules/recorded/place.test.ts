// Where perimeter copper lies. Source: NEC 680.26(B)(2), restated: 18 to 24 in. from the inside walls, 4 to 6 in. below the
// subgrade (2023: below finished grade, from memory), bare. Lengths: arithmetic. "Not given" cases: common practice, no source.
import { describe, expect, it } from "vitest";
import { rule } from "../../../rules/catalogue/conductor-place/rule.ts";
import { verdictOf } from "../catalogue/yards.ts";
import { box, branch, concretePool, deck, line, pathRoundPool, ringCopper, yardOf } from "./yards.ts";

const judge = (changes: object, more: readonly object[] = [], head: object = {}) =>
  verdictOf(rule, yardOf([concretePool(), ...more, ringCopper(changes)], head), "ring");
describe("the offset of a ring", () => {
  it("is measured at its least and greatest, with a witness that starts at the inside wall", () => {
    const { outcome, measured, margin, witness } = judge({ path: pathRoundPool(17) });
    expect([outcome, margin]).toEqual(["conflict", -1]);
    expect(measured.offsetMin).toBe(17);
    expect(
      Math.hypot((witness[1]?.[0] ?? 0) - (witness[0]?.[0] ?? 0), (witness[1]?.[1] ?? 0) - (witness[0]?.[1] ?? 0)),
    ).toBeCloseTo(17, 9);
  });

  it("counts a value within a millionth of an inch of a limit as the limit", () => {
    expect(judge({ path: pathRoundPool(24 + 9e-7) }).outcome).toBe("meets");
    expect(judge({ path: pathRoundPool(24 + 2e-6) }).outcome).toBe("conflict");
    expect(judge({ path: pathRoundPool(18 - 9e-7) }).outcome).toBe("meets");
    expect(judge({ path: pathRoundPool(18 - 2e-6) }).outcome).toBe("conflict");
  });

  it("never shows a number that looks like the limit it breaks", () => {
    expect(judge({ path: pathRoundPool(24.01) }).why).toMatch(/24\.01|2' 0\.0/);
  });

  it("is a question within the site's accuracy of a limit, which an answer settles", () => {
    const head = (answers: object[]) => ({ accuracy: 1, answers });
    expect(judge({ path: pathRoundPool(17.5) }, [], head([]))).toMatchObject({
      outcome: "review",
      question: { id: "conductor-offset" },
    });
    expect(judge({ path: pathRoundPool(16.5) }, [], head([])).outcome).toBe("conflict");
    const answer = (word: string) =>
      judge({ path: pathRoundPool(17.5) }, [], head([{ question: "conductor-offset", element: "ring", answer: word }]))
        .outcome;
    expect([answer("yes"), answer("no")]).toEqual(["meets", "conflict"]);
  });

  it("nearer than 18 in. is a question only where a wall or keep-out leaves no room", () => {
    const near = { path: box(-21, -21, 405, 200), joint: "exothermic" };
    const corners = {
      closed: false,
      vertices: [
        [20, 200],
        [364, 200],
      ],
    };
    const wall = { id: "wall", kind: "wall", path: line(-200, 209, 584, 209), thickness: 6, top: 72, permanent: true };
    const ground = { id: "ground", kind: "surface", outline: box(-300, -300, 700, 500), material: "lawn", level: 0 };
    expect(judge({ ...near, path: corners }, [ground, wall])).toMatchObject({
      outcome: "review",
      question: { id: "conductor-no-room" },
    });
    expect(judge({ ...near, path: corners }, [ground]).outcome).toBe("conflict");
    const footing = { id: "footing", kind: "keep-out", outline: box(-50, 206, 434, 230) };
    expect(judge({ ...near, path: corners }, [ground, footing]).outcome).toBe("review");
  });

  it("is measured from the nearest of two pools", () => {
    const other = concretePool({ id: "other", outline: box(414, 0, 798, 192) });
    // 21 in. off the first pool and 9 in. off the second.
    expect(judge({ path: line(405, 20, 405, 170) }, [other])).toMatchObject({
      outcome: "conflict",
      measured: { offsetMin: 9 },
    });
  });
});

describe("the depth", () => {
  it.each([
    [4, "meets"],
    [6, "meets"],
    [3.9, "conflict"],
    [6.1, "conflict"],
  ])("%s in. below the subgrade %s", (cover, outcome) => {
    expect(judge({ cover })).toMatchObject({
      outcome,
      measured: { depth: cover },
      required: { depthMin: 4, depthMax: 6 },
    });
  });

  it("from another reference than the edition's is a question", () => {
    expect(judge({ coverFrom: "grade" })).toMatchObject({ outcome: "review", question: { id: "subgrade-means" } });
    expect(judge({ coverFrom: "subgrade" }, [], { edition: "nec-2023" }).outcome).toBe("review");
    expect(judge({ coverFrom: "grade" }, [], { edition: "nec-2023" }).outcome).toBe("meets");
    expect(judge({ coverFrom: undefined }).outcome).toBe("review");
  });

  // What subgrade means is argued (common practice, no source): one question, whose answer says which was meant.
  it("below a subgrade of which nobody says what it is asks that before 2023, and follows the answer", () => {
    const question = {
      id: "subgrade-means",
      options: ["the top of the base, and it does", expect.anything(), "it does not"],
    };
    const answered = (answer: string, coverFrom: string | undefined) =>
      judge({ coverFrom }, [], { answers: [{ question: "subgrade-means", element: "ring", answer, by: "q" }] });
    for (const coverFrom of ["grade", undefined]) {
      expect(judge({ coverFrom })).toMatchObject({ outcome: "review", question });
      for (const meaning of question.options.slice(0, 1).concat("the soil under the base, and it does")) {
        const verdict = answered(meaning as string, coverFrom);
        expect(verdict).toMatchObject({ outcome: "meets", answered: { answer: meaning } });
        expect(verdict.why).toContain(String(meaning));
      }
      expect(answered("it does not", coverFrom)).toMatchObject({ outcome: "conflict", question });
    }
    expect(judge({ cover: undefined }).question?.id).toBe("subgrade-means");
    expect(judge({ cover: undefined }, [], { edition: "nec-2023" }).question?.id).toBe("conductor-depth");
    expect(judge({}).why).toMatch(/the top of the base or the soil under it, is argued/);
    expect(judge({ coverFrom: "grade" }, [], { edition: "nec-2023" }).why).not.toMatch(/argued/);
  });

  it("of a grid has no least in 2023", () => {
    const grid = { role: "grid", path: box(-40, -40, 424, 232), coverFrom: "grade" };
    expect(judge({ ...grid, cover: 2 }, [], { edition: "nec-2023" }).outcome).toBe("meets");
    expect(judge({ ...grid, cover: 7 }, [], { edition: "nec-2023" }).outcome).toBe("conflict");
    expect(judge({ ...grid, cover: 2, coverFrom: "subgrade" }).outcome).toBe("conflict");
  });
});

describe("what lies above a ring in 2023", () => {
  const head = { edition: "nec-2023" };
  const soil = { coverFrom: "grade" };

  it("tells the length under paving that takes no lone ring", () => {
    const south = deck({ outline: box(-120, -120, 504, 96) });
    const { outcome, why, margin } = judge(soil, [south], head);
    // Half of 1152 + 42 pi in. = 641.97 in. = 53' 6".
    expect([outcome, margin]).toEqual(["conflict", null]);
    expect(why).toMatch(/53' 6"/);
  });

  it("is fine where a grid or bare bars serve beside it, and is a question under stone", () => {
    const grid = ringCopper({ ...soil, id: "grid", role: "grid", path: box(-40, -40, 424, 232) });
    expect(judge(soil, [deck(), grid], head).outcome).toBe("meets");
    expect(judge(soil, [deck({ steel: "rebar" })], head).outcome).toBe("meets");
    expect(judge(soil, [deck({ material: "stone" })], head)).toMatchObject({
      outcome: "review",
      question: { id: "conductor-under-argued-surface" },
    });
  });

  it("follows a local amendment that keeps the ring", () => {
    const amended = {
      ...head,
      amendments: [{ parameter: "perimeter.ringUnderPaving", value: true, reason: "invented ordinance" }],
    };
    expect(judge(soil, [deck()], amended).outcome).toBe("meets");
  });
});

describe("the rest", () => {
  it("gives no finding of place for branches and tails, and one for a ring without any pool", () => {
    expect(rule.judge(yardOf([concretePool(), branch("b", line(405, 100, 600, 100))]))).toEqual([]);
    expect(verdictOf(rule, yardOf([ringCopper()]), "ring").outcome).toBe("review");
  });

  it("judges a grid in the shell by its joints, under the shell's section", () => {
    const pool = concretePool({ steel: "encapsulated" });
    const grid = (changes: object) =>
      verdictOf(
        rule,
        yardOf([
          pool,
          ringCopper({
            id: "grid",
            role: "grid",
            path: box(6, 6, 378, 186),
            cover: undefined,
            coverFrom: undefined,
            ...changes,
          }),
        ]),
        "grid",
      );
    expect(grid({})).toMatchObject({ outcome: "meets", section: "680.26(B)(1)", body: "pool" });
    expect(grid({ joint: "twisted" }).outcome).toBe("conflict");
  });

  it("asks about conduit as the perimeter conductor", () => {
    expect(judge({ material: "brass-conduit", awg: undefined, solid: undefined })).toMatchObject({
      outcome: "review",
      question: { id: "conductor-conduit-perimeter" },
    });
  });
});
