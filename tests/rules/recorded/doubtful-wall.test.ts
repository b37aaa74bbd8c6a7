// Perimeter bonding recorded before a wall that may not end the perimeter: whatever goes on behind it stays a question.
// The wall's rule: NEC 680.26(B)(2), restated; a margin within the drawing's accuracy is a question: the site format.
import { describe, expect, it } from "vitest";
import { box } from "../../../rules/catalogue/common/example-yard.ts";
import { deck, findingOf, line, reportOf, soundYard } from "./yards.ts";

/** 24 in. off: the ring passes in front of it, and the band goes on 6 in. behind it. */
const wall = (changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: line(-200, 219, 600, 219),
  thickness: 6,
  top: 60,
  permanent: true,
  reinforced: false,
  ...changes,
});
const found = (elements: readonly object[], head: object, element: string | null = null) =>
  findingOf(reportOf([...soundYard(), ...elements], head), "perimeter-surfaces", element);
const answered = (answer: string) => ({
  accuracy: 1,
  answers: [{ question: "wall-ends-perimeter", element: "pool", answer }],
});

describe("ground that goes on behind a wall of doubtful height", () => {
  it("is no pass once the ring before the wall is recorded", () => {
    expect(found([wall()], {}).outcome).toBe("meets");
    expect(found([wall({ top: 61.01 })], { accuracy: 1 }).outcome).toBe("meets");
    for (const top of [59, 60, 61]) {
      const finding = found([wall({ top })], { accuracy: 1 });
      expect(finding).toMatchObject({ outcome: "review", question: { id: "wall-ends-perimeter" } });
      expect(finding.why).toMatch(/lies behind wall, which ends the perimeter only if/);
    }
  });

  it("is no pass either where one surface lies on both sides", () => {
    const paving = deck({ outline: box(-200, -200, 600, 400), steel: "none" });
    expect(found([paving, wall()], { accuracy: 1 }, "deck")).toMatchObject({
      outcome: "review",
      question: { id: "wall-ends-perimeter" },
    });
    expect(found([paving, wall()], {}, "deck").outcome).toBe("meets");
  });

  it("follows the answer", () => {
    expect(found([wall()], answered("yes"))).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
    expect(found([wall()], answered("no"))).toMatchObject({ outcome: "missing", answered: { answer: "no" } });
  });

  it("says so before anything is recorded", () => {
    const [pool] = soundYard();
    const report = reportOf([pool as object, wall()], { accuracy: 1 });
    const finding = findingOf(report, "perimeter-surfaces", null);
    expect(finding.outcome).toBe("bond");
    expect(finding.why).toMatch(/lies behind wall/);
  });
});
