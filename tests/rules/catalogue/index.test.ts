// Common practice, no source: the generated list of rules is in step with the folders, and every rule says what it is.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rulesHeadingsText, rulesIndexText, rulesTableText } from "../../../app/command-line/rules-index.ts";
import { RULES } from "../../../rules/catalogue/index.ts";
import { PARTS } from "../../../rules/catalogue/rule.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { EDITIONS } from "../../../rules/editions/in-force.ts";

const catalogue = new URL("../../../rules/catalogue/", import.meta.url);
const read = (path: string) => readFileSync(new URL(path, catalogue), "utf8");

describe("the index of the rules", () => {
  it("lists every folder, and its table every rule: npm run rules", () => {
    const folders = readdirSync(catalogue, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && existsSync(new URL(`${entry.name}/rule.ts`, catalogue)))
      .map((entry) => entry.name);
    const sources = folders.map((folder) => ({ folder, text: read(`${folder}/rule.ts`) }));
    expect(read("index.ts")).toBe(rulesIndexText(sources));
    expect(read("headings.ts")).toBe(rulesHeadingsText(RULES));
    expect(read("../README.md")).toBe(rulesTableText(RULES));
    expect(RULES.map((rule) => rule.id).sort()).toEqual(folders.sort());
  });

  it("refuses a folder without a rule", () => {
    expect(() => rulesIndexText([{ folder: "empty", text: "export const nothing = 1;" }])).toThrow(/empty/);
  });
});

describe.each(RULES)("$id", (rule) => {
  it("says what it is in plain words", () => {
    expect(rule.id).toMatch(/^[a-z][a-z0-9-]*$/);
    expect(PARTS.map((part) => part.id)).toContain(rule.part);
    for (const text of [rule.title, rule.subjects, rule.measure, rule.protects]) expect(text.trim()).not.toBe("");
    expect(rule.protects).toMatch(/\.$/);
  });

  it("reads only numbers that every edition holds, and names sections without a prefix", () => {
    for (const edition of EDITION_IDS) {
      for (const id of rule.parameters) expect(EDITIONS[edition].parameters).toHaveProperty([id]);
      const section = rule.sections[edition];
      if (section !== undefined) expect(section).toMatch(/^\d+\.\d+[0-9A-Za-z()]*$/);
    }
  });
});
