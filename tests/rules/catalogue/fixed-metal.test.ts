// NEC 680.26(B)(7), restated: fixed metal within 5 ft of the inside walls, with the exceptions by distance, height and
// barrier. Where another source stands beside a test, that one.
import { describe, expect, it } from "vitest";
import type { PathData } from "../../../geometry/types.ts";
import { box, concretePool, line, linerPool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { rule } from "../../../rules/catalogue/fixed-metal/rule.ts";
import type { Verdict } from "../../../rules/catalogue/rule.ts";
import { printOf } from "../../../rules/measures/answers.ts";
import { placed, startedAt, turnedBy } from "../../oracles/variants.ts";
import { siteOf, verdictOf, yardOf } from "./yards.ts";

const judged = (elements: readonly object[], element = "post", head: object = {}): Verdict =>
  verdictOf(rule, yardOf([concretePool(), ...elements], head), element);

const wall = (changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: line(0, 216, 384, 216),
  thickness: 6,
  top: 72,
  permanent: true,
  reinforced: false,
  ...changes,
});

describe("distance", () => {
  // Arithmetic: the pool's right end is a half circle of radius 60 round (360, 96), so its point on the axis is (420, 96).
  const roman: PathData = {
    vertices: [
      [0, 0],
      [360, 0],
      [360, 36, 1],
      [360, 156],
      [360, 192],
      [0, 192],
    ],
    closed: true,
  };
  const inside = 1e-7;
  const turns = [0, 30, 90, 211.7].map(turnedBy);

  it.each([
    [60 - 0.01, "bond"],
    [60 - inside, "bond"],
    [60, "bond"],
    [60 + inside, "bond"],
    [60.01, "exempt"],
  ])("%f in. from the middle of an arc: %s, however it lies and wherever the outline starts", (distance, outcome) => {
    for (const turn of turns) {
      for (const mirrored of [false, true]) {
        const place = ([x, y]: readonly [number, number]) => turn(mirrored ? [-x, y] : [x, y]);
        for (let start = 0; start < roman.vertices.length; start++) {
          const outline = startedAt(placed(roman, place, mirrored), start);
          const yard = yardOf([concretePool({ outline }), post(0, { shape: { point: place([420 + distance, 96]) } })]);
          const found = verdictOf(rule, yard, "post");
          expect(found.outcome).toBe(outcome);
          expect(found.measured.horizontal).toBeCloseTo(distance, 8);
          expect(found.margin).toBeCloseTo(distance - 60, 8);
        }
      }
    }
  });

  it("is 0 over the water, and a roof over the whole pool is over the water", () => {
    const over = judged([post(0, { shape: { point: [100, 100] } })]);
    expect(over).toMatchObject({ outcome: "bond", measured: { horizontal: 0, path: 0 } });
    const roof = judged([post(0, { shape: box(-100, -100, 500, 300), z: [96, 100] })]);
    expect(roof).toMatchObject({ outcome: "bond", measured: { horizontal: 0, path: 0, vertical: 96 } });
  });

  it("is to the nearest point of a line or an area, and gives a line's extent", () => {
    const pipe = judged([post(0, { shape: line(-200, 232, 600, 232), z: [0, 2], part: "handrail piping" })]);
    expect(pipe.measured.horizontal).toBe(40);
    // Arithmetic: 384 straight, and at each corner sqrt(60^2 - 40^2).
    expect(pipe.extent).toBeCloseTo(384 + 2 * Math.sqrt(2000), 9);
    expect(judged([post(0, { shape: { ...box(0, 250, 40, 300), line: true } })]).measured.horizontal).toBe(58);
    expect(judged([post(0, { shape: box(0, 250, 40, 300) })]).measured.horizontal).toBe(58);
  });

  it("within the drawing's accuracy is a question (the site format)", () => {
    const at = (distance: number) => judged([post(distance)], "post", { accuracy: 1 }).outcome;
    expect([58.99, 59, 59.5, 60, 60.5, 61, 61.01].map(at)).toEqual([
      "bond",
      "review",
      "review",
      "review",
      "review",
      "review",
      "exempt",
    ]);
  });
});

describe("height", () => {
  const stand = (top: number | undefined, structure = "tower") => ({
    id: "stand",
    kind: "structure",
    outline: box(100, 300, 140, 340),
    structure,
    top,
  });

  it("is taken above that body's own water", () => {
    const verdict = verdictOf(rule, yardOf([concretePool({ waterLevel: 30 }), post(10, { z: [174, 180] })]), "post");
    expect(verdict).toMatchObject({ outcome: "bond", measured: { vertical: 144 }, required: { vertical: 144 } });
    const higher = verdictOf(rule, yardOf([concretePool({ waterLevel: 30 }), post(10, { z: [174.01, 180] })]), "post");
    expect(higher.outcome).toBe("exempt");
    expect(higher.margin).toBeCloseTo(0.01, 9);
  });

  it("is taken above every stand, tower, platform and diving structure too", () => {
    const high = post(10, { z: [200, 210] });
    expect(judged([high]).outcome).toBe("exempt");
    for (const structure of ["tower", "stand", "platform", "diving-board"]) {
      expect(judged([high, stand(56, structure)]).outcome).toBe("bond");
      expect(judged([high, stand(56, structure)]).why).toMatch(
        /lowest point is 12' 0" above .*stand; only more than 12' 0"/,
      );
      expect(judged([high, stand(55.99, structure)]).outcome).toBe("exempt");
      expect(judged([high, stand(undefined, structure)])).toMatchObject({
        outcome: "review",
        question: { id: "metal-height" },
      });
    }
    expect(judged([high, stand(undefined, "slide")]).outcome).toBe("exempt");
  });

  // Judgement: a stand counts up to 10 ft from the inside wall, or up to 5 ft from the metal. Distances: arithmetic.
  it("is taken above stands near the water, or near the metal, and not above those elsewhere", () => {
    const at = (y: number, x = 100, top: number | undefined = 150) => ({
      ...stand(top),
      outline: box(x, y, x + 40, y + 40),
    });
    const high = post(10, { z: [200, 210] });
    expect(judged([high, at(192 + 120)]).outcome).toBe("bond");
    expect(judged([high, at(192 + 120.01)])).toMatchObject({ outcome: "exempt", margin: 56 });
    expect(judged([high, at(192 + 120.01)]).why).toMatch(/Farther than 10' 0" .* not counted: .*stand\./);
    expect(judged([high, { ...at(2000), top: undefined }]).outcome).toBe("exempt");
    expect(judged([high, at(2000, 100, 20)]).why).not.toMatch(/not counted/);
    // A roof from the water out to 150 in. beyond the wall, and a stand 60 or 60.01 in. from its edge.
    const roof = { ...high, shape: box(100, 150, 200, 342) };
    expect(judged([roof, at(342 + 60)]).outcome).toBe("bond");
    expect(judged([roof, at(342 + 60.01)]).outcome).toBe("exempt");
  });

  it("is a question where a stand is as near as the drawing may be off", () => {
    const near = { ...stand(150), outline: box(100, 192 + 121, 140, 400) };
    const verdict = judged([post(10, { z: [200, 210] }), near], "post", { accuracy: 1 });
    expect(verdict).toMatchObject({ outcome: "review", question: { id: "metal-height" } });
    expect(verdict.why).toMatch(/near enough to count/);
  });

  it("not given is a question, which its answer settles", () => {
    const answers = (answer: string) => ({ answers: [{ question: "metal-height", element: "post", answer }] });
    const low = post(10, { z: undefined });
    expect(judged([low]).question?.id).toBe("metal-height");
    expect(judged([low], "post", answers("yes"))).toMatchObject({ outcome: "exempt", answered: { answer: "yes" } });
    expect(judged([low], "post", answers("no"))).toMatchObject({ outcome: "bond", answered: { answer: "no" } });
    expect(judged([low], "post", answers("perhaps")).outcome).toBe("review");
  });

  it("of metal in the ground is a question of its own (common practice, no source)", () => {
    expect(judged([post(10, { part: "piping", z: [-20, -18] })]).question?.id).toBe("buried-metal");
    expect(judged([post(10, { part: "piping", z: [-20, 0] })]).outcome).toBe("bond");
  });
});

describe("a barrier", () => {
  it("between makes it a question, whose answer settles it and lapses with what it was about", () => {
    const behind = [post(48), wall()];
    const open = judged(behind);
    // Arithmetic: from (0, 192) up to the wall's corner (0, 213), up its end to (0, 219), across to (200, 240).
    expect(open.measured.path).toBeCloseTo(21 + 6 + Math.hypot(184, 21), 6);
    expect(open).toMatchObject({ outcome: "review", question: { id: "barrier-prevents-contact" } });
    const site = siteOf([concretePool(), ...behind]);
    const about = printOf(site, "nec-2020", "post", "pool", open.question?.restsOn);
    const answers = (answer: string) => [
      { question: "barrier-prevents-contact", element: "post", answer, about, restsOn: open.question?.restsOn },
    ];
    expect(judged(behind, "post", { answers: answers("yes") }).outcome).toBe("exempt");
    expect(judged(behind, "post", { answers: answers("no") }).outcome).toBe("bond");
    const moved = judged([post(47), wall()], "post", { answers: answers("yes") });
    expect(moved).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("that is low, or not known to be permanent, is none", () => {
    for (const changes of [{ top: 59.99 }, { permanent: false }, { permanent: undefined }, { top: undefined }]) {
      expect(judged([post(48), wall(changes)])).toMatchObject({ outcome: "bond", measured: { path: 48 } });
    }
    expect(judged([post(48), wall({ top: 60 })]).outcome).toBe("review");
  });

  it("without a way round gives no path", () => {
    const round = {
      id: "wall",
      kind: "wall",
      path: box(180, 230, 220, 270),
      thickness: 2,
      top: 72,
      permanent: true,
      reinforced: false,
    };
    expect(judged([post(48), round])).toMatchObject({ outcome: "review", measured: { horizontal: 48, path: null } });
  });

  it("is not looked for where the metal is far or high", () => {
    expect(judged([post(60.01), wall()]).outcome).toBe("exempt");
    expect(judged([post(48, { z: [150, 160] }), wall()]).outcome).toBe("exempt");
  });
});

describe("metal that is not fixed", () => {
  it("is exempt, unless it may be a ladder or rail", () => {
    expect(judged([post(10, { fixed: false, part: "table" })]).outcome).toBe("exempt");
    expect(judged([post(10, { fixed: false, part: "ladder" })]).question?.id).toBe("loose-fitting");
    expect(judged([post(10, { fixed: false, part: undefined })]).question?.id).toBe("loose-fitting");
    expect(judged([post(100, { fixed: false, part: undefined })]).outcome).toBe("exempt");
  });
});

describe("several bodies", () => {
  const spa = concretePool({ id: "spa", body: "spa", outline: box(440, 0, 540, 100), waterLevel: 40 });

  it("each judge by their own water, and the worst stands, naming the others", () => {
    const high = post(0, { shape: { point: [412, 50] }, z: [150, 160] });
    const verdict = verdictOf(rule, yardOf([concretePool(), spa, high]), "post");
    expect(verdict).toMatchObject({ outcome: "bond", body: "spa", measured: { vertical: 110 } });
    const low = post(0, { shape: { point: [414, 50] }, z: [0, 10] });
    const both = verdictOf(rule, yardOf([concretePool(), spa, low]), "post");
    expect(both).toMatchObject({ outcome: "bond", body: "spa", alsoBodies: ["pool"], measured: { horizontal: 26 } });
  });

  it("that are storable ask for nothing, and neither does a site without a pool", () => {
    const storable = linerPool({ storable: true, installation: "on-ground" });
    expect(verdictOf(rule, yardOf([storable, post(1)]), "post").outcome).toBe("exempt");
    expect(verdictOf(rule, yardOf([post(1)]), "post").outcome).toBe("exempt");
  });
});
