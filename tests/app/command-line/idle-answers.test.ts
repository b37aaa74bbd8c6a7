// Answers that decide nothing are said, not passed over. Source: common practice, no source.
import { describe, expect, it } from "vitest";
import { idleAnswers } from "../../../app/command-line/idle-answers.ts";
import { reportText } from "../../../app/command-line/report-text.ts";
import { recompute } from "../../../rules/recompute.ts";
import { concretePool, fourTies, ringCopper, siteOf } from "../../rules/recorded/yards.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

const site = (...answers: object[]) =>
  siteOf([concretePool(), ringCopper({ solid: undefined }), ...fourTies()], { answers });
const idle = (...answers: object[]) => {
  const yard = site(...answers);
  return idleAnswers(yard, recompute(yard, { withoutRoutes: true })).map(({ answer, says }) => [
    answer.question,
    answer.element,
    says,
  ]);
};
const about = (question: string, element: string | undefined, more: object = {}) => ({
  question,
  element,
  answer: "yes",
  ...more,
});

describe("an answer of the site", () => {
  it("that settles a finding, has lapsed, is no option or is contradicted is told there", () => {
    expect(idle(about("conductor-solid", "ring"))).toEqual([]);
    expect(idle(about("conductor-solid", "ring", { about: "another print" }))).toEqual([]);
    expect(idle(about("conductor-solid", "ring", { answer: "perhaps" }))).toEqual([]);
    expect(idle(about("conductor-solid", "ring"), about("conductor-solid", "ring", { answer: "no" }))).toEqual([]);
  });

  it("about an element that is not there, or to a question that nothing asks, is named", () => {
    const answers = [
      about("conductor-solid", "rign"),
      about("conductor-sold", "ring"),
      about("conductor-solid", "tie-1"),
    ];
    expect(idle(...answers)).toEqual([
      ["conductor-solid", "rign", "the site has no such element"],
      ["conductor-sold", "ring", "nothing here asks this"],
      ["conductor-solid", "tie-1", "nothing here asks this"],
    ]);
    const yard = site(...answers);
    const text = reportText(recompute(yard), yard, { width: 90 });
    expect(text).toContain("Answers that no finding tells of: 3");
    expect(text).toContain('"yes" to conductor-solid about rign: the site has no such element.');
  });

  it("is told somewhere in every demo site", () => {
    for (const demo of DEMO_SITES)
      expect([demo.name, idleAnswers(demo.site, recompute(demo.site))]).toEqual([demo.name, []]);
  });
});
