// Rules found by a word or a section. Common practice, no source; sections: NEC article 680, restated in the rules.
import { describe, expect, it } from "vitest";
import { RULES } from "../../rules/catalogue/index.ts";
import { EDITION_IDS } from "../../rules/editions/edition.ts";
import { editionInForce } from "../../rules/editions/in-force.ts";
import { Yard } from "../../rules/measures/yard.ts";
import { findRules } from "../../rules/search.ts";
import { searchRules } from "../../rules/search-instead.ts";
import { OTHER_NAMES } from "../../rules/words/other-names.ts";
import { examplesByRule, siteOfExample } from "../support/rule-examples.ts";
import { siteOf } from "./catalogue/yards.ts";

const site = siteOf([]);
const find = (text: string) => findRules(text, editionInForce(site, "nec-2020")).map(({ rule }) => rule.id);

describe("a section", () => {
  it.each(["680.26(B)(7)", "26(B)(7)", "26 b 7", "26b7", " 680.26 (b) (7) "])("%s finds fixed metal first", (text) => {
    expect(find(text)[0]).toBe("fixed-metal");
    expect(find(text).length).toBeLessThan(4);
  });

  it("finds what lies under it, its own first, and not what only begins alike", () => {
    expect(find("680.26(B)(2)")[0]).toBe("perimeter-surfaces");
    expect(find("680.2")).toEqual(expect.arrayContaining(["edition-in-force", "storable-pool"]));
    expect(find("680.2")).not.toContain("fixed-metal");
    expect(find("680.22(A)").sort()).toEqual([
      "equipment-room-receptacle",
      "receptacle-distance",
      "receptacle-gfci",
      "required-receptacle",
    ]);
  });

  // The section on how a receptacle's distance is measured: NEC 680.22(A)(5), 2020 on (A)(6). Connections: 250.8, 110.3(B).
  it("finds a rule by a further section that it restates, in the edition's numbering", () => {
    expect(find("680.22(A)(6)")).toEqual(["receptacle-distance"]);
    expect(find("680.22(A)(5)")).toEqual(["equipment-room-receptacle"]);
    const before = findRules("680.22(A)(5)", editionInForce(site, "nec-2017")).map(({ rule }) => rule.id);
    expect(before).toEqual(["receptacle-distance"]);
    expect(find("110.3(B)")).toEqual(["tie-hardware"]);
    expect(find("250.8")).toContain("tie-hardware");
    expect(find("680.43")).toEqual(["spa-exception"]);
  });

  it("finds the words of low voltage and of gas, and of pools that are put away", () => {
    expect(find("680.22(B)(6)")).toEqual(["luminaire-height"]);
    expect(find("680.22(B)(7)")[0]).toBe("gas-piping");
    expect(find("680.30")).toEqual(["storable-pool"]);
  });

  it("finds a rule by the section of one of its limits", () => {
    expect(find("680.22(B)(3)")).toEqual(["luminaire-height"]);
  });

  it("of every rule finds that rule, in every edition", () => {
    for (const id of EDITION_IDS) {
      for (const rule of RULES) {
        const found = findRules(rule.sections[id] ?? "", editionInForce(site, id));
        expect(found.map((one) => one.rule.id)).toContain(rule.id);
      }
    }
  });
});

it("every section under which a rule's examples are judged finds that rule, in its edition", async () => {
  const lost: string[] = [];
  for (const { rule, examples } of await examplesByRule()) {
    for (const id of EDITION_IDS) {
      const verdicts = examples.flatMap((example) => rule.judge(new Yard(siteOfExample(example, id))));
      const sections = verdicts.flatMap(({ section, alsoSections = [] }) => [
        section ?? rule.sections[id],
        ...alsoSections,
      ]);
      for (const section of new Set(sections)) {
        if (rule.sections[id] === undefined || section === undefined) continue;
        const found = findRules(section, editionInForce(site, id)).map((one) => one.rule.id);
        if (!found.includes(rule.id)) lost.push(`${rule.id}: ${section}, ${id}`);
      }
    }
  }
  expect(lost).toEqual([]);
});

describe("a word", () => {
  it.each([
    ["ladder", "fittings"],
    ["reinforcing", "structure-metal"],
    ["overhead", "overhead-clearance"],
    ["awnings", "fixed-metal"],
    ["skimmer", "fittings"],
  ])("%s finds %s", (word, id) => {
    expect(find(word)).toContain(id);
  });

  it("has to be found with every other one", () => {
    expect(find("pump gfci")[0]).toBe("pump-gfci");
    expect(find("pump zebra")).toEqual([]);
    expect(find("receptacle 22(A)(4)")).toEqual(["receptacle-gfci"]);
  });

  it("puts a title before a remark", () => {
    expect(find("receptacles").slice(0, 1)).toEqual(["receptacle-distance"]);
  });

  it("that is missing finds every rule", () => {
    expect(find("  ").sort()).toEqual(RULES.map(({ id }) => id).sort());
  });
});

describe("a number", () => {
  // 8 AWG: NEC 680.26(B); five feet: 680.26(B)(7).
  it("finds the rules that have it as a limit, and not those that have another one beginning alike", () => {
    expect(find("8 AWG")).toContain("conductor-wire");
    expect(find("5 ft")).toContain("fixed-metal");
    expect(find("5'")).toEqual(find("5 feet"));
    expect(find("18")).not.toContain("fixed-metal");
  });
});

describe("what no rule holds", () => {
  const instead = (text: string) => {
    const { found, instead } = searchRules(text, editionInForce(site, "nec-2020"));
    return [instead, ...found.map(({ rule }) => rule.id)];
  };

  it.each([
    ["laddr", "ladder", "fittings"],
    ["Disconect", "disconnect", "disconnect-distance"],
    ["receptical", "receptacle", "receptacle-distance"],
    ["overhed lines", "overhead lines", "overhead-clearance"],
    ["handrails", "fittings", "fittings"],
    ["hot tub", "spa", "spa-exception"],
    ["gfi", "gfci", "receptacle-gfci"],
    ["680.26(B)(7)(1)", "680.26(B)(7)", "fixed-metal"],
    ["umbrella 680.26(B)(7)", "fixed metal 680.26(b)(7)", "fixed-metal"],
  ])("%s is sought as %s and finds %s", (typed, meant, id) => {
    const [said, ...found] = instead(typed);
    expect(said).toBe(meant);
    expect(found).toContain(id);
  });

  it("and is like nothing finds nothing; what is found as typed is sought as typed", () => {
    expect(instead("zzzz")).toEqual([null]);
    expect(instead("680.99")).toEqual([null]);
    expect(instead("pump zebra")).toEqual([null]);
    expect(instead("ladder")).toEqual([null, "fittings"]);
  });

  it("of the other names each finds a rule in every edition", () => {
    for (const id of EDITION_IDS) {
      const lost = Object.keys(OTHER_NAMES).filter(
        (said) => searchRules(said, editionInForce(site, id)).found.length === 0,
      );
      expect(lost).toEqual([]);
    }
  });
});

describe("the limits", () => {
  it("are those of the edition in force, amendments and all", () => {
    const amended = siteOf([], {
      amendments: [{ parameter: "fixedMetal.distance", value: 72, reason: "ordinance 4" }],
    });
    const [found] = findRules("26 b 7", editionInForce(amended));
    expect(found?.limits.find(({ id }) => id === "fixedMetal.distance")).toMatchObject({
      value: `6' 0"`,
      basis: "published",
      amended: "ordinance 4",
    });
    const metric = findRules("26 b 7", editionInForce(site), "m")[0];
    expect(metric?.limits.find(({ id }) => id === "fixedMetal.distance")?.value).toBe("1.52 m");
  });
});
