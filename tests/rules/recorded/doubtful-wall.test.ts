// Perimeter bonding recorded before a wall that may not end the perimeter: what goes on behind it stays a question, unless a
// ring in its place before the wall serves both sides.
// The wall's rule: NEC 680.26(B)(2), restated; a margin within the drawing's accuracy is a question: the site format.
import { describe, expect, it } from "vitest";
import { box } from "../../../rules/catalogue/common/example-yard.ts";
import { concretePool, deck, findingOf, fourTies, line, reportOf, ringCopper, soundYard } from "./yards.ts";

/** Its face stands `away` from the inside wall, and the band goes on behind it. */
const wall = (away: number, changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: line(-200, 192 + away + 3, 600, 192 + away + 3),
  thickness: 6,
  top: 60,
  permanent: true,
  reinforced: false,
  ...changes,
});
const answered = (answer: string, element = "deck") => ({
  accuracy: 1,
  answers: [{ question: "wall-ends-perimeter", element, answer }],
});
/** Bars in a deck that is drawn on both sides of the wall, tied at four points. */
const deckOfSteel = () => [
  concretePool(),
  deck({ outline: box(-200, -200, 600, 400), steel: "rebar" }),
  ...fourTies().map((tie) => ({ ...tie, joins: ["deck", "pool"] })),
];
const found = (elements: readonly object[], head: object, element: string | null = "deck") =>
  findingOf(reportOf(elements, head), "perimeter-surfaces", element);

describe("a surface that goes on behind a wall of doubtful height", () => {
  it("is no pass once the bonding before the wall is recorded", () => {
    expect(found([...deckOfSteel(), wall(24)], {}).outcome).toBe("meets");
    expect(found([...deckOfSteel(), wall(24, { top: 61.01 })], { accuracy: 1 }).outcome).toBe("meets");
    for (const top of [59, 60, 61]) {
      const finding = found([...deckOfSteel(), wall(24, { top })], { accuracy: 1 });
      expect(finding).toMatchObject({ outcome: "review", question: { id: "wall-ends-perimeter" } });
      expect(finding.why).toMatch(/lies behind wall, which ends the perimeter only if/);
    }
  });

  it("follows the answer", () => {
    const judge = (answer: string) => found([...deckOfSteel(), wall(24)], answered(answer));
    expect(judge("yes")).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
    expect(judge("no")).toMatchObject({ outcome: "missing", answered: { answer: "no" } });
  });

  it("is served on both sides by a ring that has its room before the wall, and not by one squeezed in", () => {
    expect(found([...soundYard(), wall(24)], { accuracy: 1 }, null).outcome).toBe("meets");
    // A grid in the shell is no copper of the perimeter.
    const inShell = ringCopper({ id: "grid", role: "grid", path: line(10, 90, 370, 90) });
    expect(found([...soundYard(), inShell, wall(24)], { accuracy: 1 }, null).outcome).toBe("meets");
    const squeezed = {
      vertices: [
        [-21, -21],
        [405, -21],
        [405, 198],
        [-21, 198],
      ],
      closed: true,
    };
    const near = [concretePool(), ringCopper({ path: squeezed }), ...fourTies(), wall(12)];
    expect(found(near, { accuracy: 1 }, null).outcome).not.toBe("meets");
  });

  it("is no pass by the wall's answer alone while the steel in the paving is not given", () => {
    // A grid besides the ring: not all of the perimeter's copper is a ring that serves both sides of the wall.
    const grid = ringCopper({ id: "grid", role: "grid", path: line(0, -30, 384, -30) });
    const paved = deck({ outline: box(-200, -200, 600, 400), steel: undefined });
    const yard = [concretePool(), paved, grid, ringCopper(), ...fourTies(), wall(24)];
    expect(found(yard, answered("yes"))).toMatchObject({
      outcome: "review",
      question: { id: "paving-without-steel" },
    });
    const both = answered("yes");
    both.answers.push({ question: "paving-without-steel", element: "deck", answer: "yes" });
    expect(found(yard, both).outcome).toBe("meets");
  });

  it("says so before anything is recorded", () => {
    const finding = found([concretePool(), wall(12)], { accuracy: 1 }, null);
    expect(finding.outcome).toBe("bond");
    expect(finding.why).toMatch(/lies behind wall/);
  });
});
