/** The site's own fields, editions, amendments, answers and ties. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { answerQuestion, answersAbout, withdrawAnswer } from "../../../app/edits/answer-question.ts";
import { recordTie } from "../../../app/edits/record-tie.ts";
import { removeAmendment, setAmendment } from "../../../app/edits/set-amendment.ts";
import { setEdition } from "../../../app/edits/set-edition.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { setSetting, setSiteField } from "../../../app/edits/set-site-field.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import type { EditionId } from "../../../rules/editions/edition.ts";
import { findAnswer } from "../../../rules/measures/answers.ts";
import type { Answer } from "../../../rules/site/site.ts";
import { applied, field, labelOf, refusalOf, sampleYard } from "./yard.ts";

const yard = sampleYard();
const question = { id: "wall-stays", text: "Does this wall stay?", options: ["yes", "no"] };
const finding = { element: "wall-1", body: "pool-1", question };

describe("the site's fields", () => {
  it("are set and taken away, with the settings' own defaults behind them", () => {
    expect(applied(yard, setSiteField("name", "Alder Court 3"))).toMatchObject({ name: "Alder Court 3" });
    expect(applied(yard, setSetting("ringOffset", 20)).settings).toMatchObject({ ringOffset: 20, ties: 4 });
    expect(applied(yard, setSiteField("display.units", "m")).display).toEqual({ units: "m" });
    const bare = applied(applied(emptySite(), setSetting("ties", 6)), setSetting("ties", undefined));
    expect("settings" in bare).toBe(false);
    expect("name" in applied(yard, setSiteField("name", undefined))).toBe(false);
    expect(setSetting("ties", 4).apply(yard)).toEqual({ ok: true, site: yard });
    expect(labelOf(yard, setSetting("ringOffset", 20))).toBe("Set ring offset of the site");
  });

  it("are refused where the reader would refuse them", () => {
    expect(refusalOf(yard, setSiteField("accuracy", -1)).reason).toBe(
      "Accuracy has to be a number from 0 to 1,000,000; it cannot be -1.",
    );
    expect(refusalOf(yard, setSetting("spools", [0])).reason).toMatch(/^Spools has to be/);
    expect(refusalOf(yard, setSetting("ringStyle", "loose")).reason).toMatch(/"even" or "short"/);
    expect(refusalOf(yard, setSiteField("elements", [])).reason).toMatch(/no field "elements"/);
    expect(refusalOf(yard, setSiteField("position", { lon: 500, lat: 0 })).reason).toMatch(/^Place on the earth/);
  });
});

describe("editions and amendments", () => {
  it("names an edition of the program only", () => {
    expect(applied(yard, setEdition("nec-2023")).edition).toBe("nec-2023");
    expect(labelOf(yard, setEdition("nec-2017"))).toMatch(/^Judge by .*2017/);
    expect(setEdition("nec-2020").apply(yard)).toEqual({ ok: true, site: yard });
    expect(refusalOf(yard, setEdition("nec-1999" as EditionId)).reason).toMatch(/no edition "nec-1999"/);
  });

  it("puts an amendment in force, in place of the one before, and takes it back", () => {
    const site = applied(yard, setAmendment("fixedMetal.distance", 72, "local ordinance 3"));
    expect(site.amendments).toHaveLength(2);
    expect(applied(site, setAmendment("fixedMetal.distance", 84, "ordinance 4")).amendments?.at(-1)).toMatchObject({
      value: 84,
    });
    const bare = applied(
      applied(site, removeAmendment("fixedMetal.distance")),
      removeAmendment("perimeter.ringUnderPaving"),
    );
    expect("amendments" in bare).toBe(false);
    expect(refusalOf(bare, removeAmendment("fixedMetal.distance")).reason).toMatch(/No amendment/);
  });

  it("refuses one that cannot act or says no reason", () => {
    expect(refusalOf(yard, setAmendment("fixedMetal.distance", "far", "x")).reason).toMatch(/cannot act.*number/);
    expect(refusalOf(yard, setAmendment("no.such", 1, "x")).reason).toMatch(/names no parameter/);
    expect(refusalOf(yard, setAmendment("fixedMetal.distance", 72, "  ")).reason).toMatch(/Name the ordinance/);
  });
});

describe("answers", () => {
  it("are kept with initials, date and what they were about, and lapse when that changes", () => {
    const site = applied(yard, answerQuestion(finding, "yes", " TB ", "2026-05-01"));
    expect(site.answers?.at(-1)).toMatchObject({
      question: "wall-stays",
      element: "wall-1",
      answer: "yes",
      by: "TB",
      on: "2026-05-01",
    });
    const found = findAnswer(site, "nec-2020", "wall-stays", "wall-1", "pool-1");
    expect(found).toMatchObject({ lapsed: false });
    for (const change of [setField("wall-1", "top", 60), setField("pool-1", "depth", 61)]) {
      const later = applied(site, change);
      expect(findAnswer(later, "nec-2020", "wall-stays", "wall-1", "pool-1")).toMatchObject({ lapsed: true });
    }
    expect(findAnswer(site, "nec-2023", "wall-stays", "wall-1", "pool-1")).toMatchObject({ lapsed: true });
  });

  it("take the place of an earlier one, lapsed or not, and leave other questions alone", () => {
    const once = applied(yard, answerQuestion(finding, "yes", "TB", "2026-05-01"));
    const twice = applied(once, answerQuestion(finding, "no", "KL", "2026-05-02"));
    expect(twice.answers).toHaveLength(2);
    const lapsed = applied(once, setField("wall-1", "top", 60));
    expect(applied(lapsed, answerQuestion(finding, "no", "KL", "2026-05-02")).answers).toHaveLength(2);
    expect(answersAbout(twice, finding)).toHaveLength(2);
  });

  it("stand beside the answers about other pools", () => {
    const spa = { ...(yard.elements[0] as object), id: "spa-1" } as (typeof yard.elements)[number];
    const site = { ...yard, elements: [...yard.elements, spa] };
    const one = applied(site, answerQuestion(finding, "yes", "TB", "2026-05-01"));
    const both = applied(one, answerQuestion({ ...finding, body: "spa-1" }, "no", "TB", "2026-05-01"));
    expect(both.answers).toHaveLength(3);
    // And stay when one of them is taken back.
    const [, , last] = both.answers ?? [];
    expect(applied(both, withdrawAnswer(last as Answer)).answers).toEqual(one.answers);
  });

  it("are taken back", () => {
    const site = applied(yard, answerQuestion(finding, "yes", "TB", "2026-05-01"));
    const [other, kept] = site.answers as [Answer, Answer];
    expect(applied(site, withdrawAnswer(kept)).answers).toEqual(yard.answers);
    expect("answers" in applied(yard, withdrawAnswer(other))).toBe(false);
    expect(refusalOf(yard, withdrawAnswer(kept)).reason).toMatch(/no such answer/);
  });

  it("are refused without a right option, initials and day", () => {
    const ask = (answer: string, by: string, on: string) =>
      refusalOf(yard, answerQuestion(finding, answer, by, on)).reason;
    expect(ask("maybe", "TB", "2026-05-01")).toMatch(/Choose one of the answers: yes, no/);
    expect(ask("yes", " ", "2026-05-01")).toMatch(/initials/);
    expect(ask("yes", "TB", "May 1")).toMatch(/as 2026-05-01/);
    expect(ask("yes", "TB", "2026-02-30")).toMatch(/as 2026-05-01/);
    const gone = { ...finding, element: "wall-9" };
    expect(refusalOf(yard, answerQuestion(gone, "yes", "TB", "2026-05-01")).reason).toMatch(/gone/);
    expect(refusalOf(yard, answerQuestion({ element: null, body: null }, "yes", "TB", "2026-05-01")).reason).toMatch(
      /asks nothing/,
    );
  });
});

describe("recording a tie", () => {
  it("makes a connection at its place, between what it was to join", () => {
    const site = applied(yard, recordTie({ at: [12, 34], between: ["perimeter", "pool-1"], present: false }));
    expect(site.elements.at(-1)).toEqual({ id: "tie-2", kind: "tie", at: [12, 34], joins: ["perimeter", "pool-1"] });
    expect(field(site, "tie-2", "hardware")).toBeUndefined();
  });

  it("is refused when it is recorded already or an end is gone", () => {
    expect(refusalOf(yard, recordTie({ at: [0, 0], between: ["perimeter", "pool-1"], present: true })).reason).toMatch(
      /already/,
    );
    expect(refusalOf(yard, recordTie({ at: [0, 0], between: ["perimeter", "pool-9"], present: false })).reason).toMatch(
      /"pool-9"/,
    );
  });
});
