// Ring copper behind a wall that ends the perimeter. Source: NEC 680.26(B)(2), restated (surfaces on the pool side of a wall of
// five feet are bonded); that a ring behind the wall does not surely serve them: judgement, common practice, no source.
import { describe, expect, it } from "vitest";
import { findingOf, line, reportOf, soundYard } from "./yards.ts";

/** A wall 6 in. thick south of the pool, its near face `away` in. off. */
const wall = (away: number, changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: line(100, -away - 3, 284, -away - 3),
  thickness: 6,
  top: 72,
  base: 0,
  permanent: true,
  ...changes,
});
const judged = (elements: readonly object[], head: object = {}) => {
  const report = reportOf(elements, head);
  const surface = report.findings.find(({ rule, element }) => rule === "perimeter-surfaces" && element === null);
  const place = findingOf(report, "conductor-place", "ring");
  return { place: place.outcome, question: place.question?.id, surface: surface?.outcome, missing: report.missing };
};
const fine = { place: "meets", question: undefined, surface: "meets", missing: 0 };

describe("a ring 21 in. off", () => {
  it("is fine before a wall, beside a low one, and where no wall is", () => {
    expect(judged(soundYard())).toEqual(fine);
    expect(judged([...soundYard(), wall(22)])).toEqual(fine);
    expect(judged([...soundYard(), wall(14, { top: 59 })])).toEqual(fine);
    expect(judged([...soundYard(), wall(14, { permanent: false })])).toEqual(fine);
  });

  it("is a question behind one, and so is the surface in front of it", () => {
    const behind = { place: "review", question: "conductor-behind-wall", surface: "review", missing: 0 };
    expect(judged([...soundYard(), wall(14)])).toEqual(behind);
    expect(judged([...soundYard(), wall(6)])).toEqual(behind);
    // Facts that are not given and might make a wall of it: no less of a question.
    for (const unknown of [{ permanent: undefined }, { top: undefined }])
      expect(judged([...soundYard(), wall(14, unknown)])).toMatchObject({ place: "review", surface: "review" });
  });

  it("follows the authority's word", () => {
    const answers = (answer: string) => ({ answers: [{ question: "conductor-behind-wall", element: "ring", answer }] });
    expect(judged([...soundYard(), wall(14)], answers("yes"))).toEqual(fine);
    expect(judged([...soundYard(), wall(14)], answers("no"))).toMatchObject({
      place: "conflict",
      surface: "missing",
      missing: 1,
    });
  });

  it("may pass under a wall that runs away from the pool", () => {
    const away = wall(0, { path: line(192, -4, 192, -120) });
    expect(judged([...soundYard(), away])).toEqual(fine);
  });
});
