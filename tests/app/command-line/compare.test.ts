// `check --compare`: two editions side by side. Common practice, no source, except where a source stands beside.
import { describe, expect, it } from "vitest";
import { comparisonText, sideBySide } from "../../../app/command-line/comparison-text.ts";
import { run } from "../../../app/command-line/run.ts";
import { NARROWEST, WIDEST } from "../../../app/command-line/text-lines.ts";
import { compareEditions } from "../../../rules/compare-editions.ts";
import { recompute } from "../../../rules/recompute.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { DEMO_SITES, exitCodeOf } from "../../support/demo-sites.ts";
import { fakeTerminal } from "./fake-terminal.ts";

const files = Object.fromEntries(DEMO_SITES.map(({ name, site }) => [`${name}.site.json`, writeSite(site)]));

describe("check --compare", () => {
  for (const { name, site, wanted } of DEMO_SITES) {
    it(`exits for ${name} as its own edition says`, async () => {
      for (const to of ["nec-2017", "nec-2023"]) {
        const terminal = fakeTerminal({ files });
        expect(await run(["check", `${name}.site.json`, "--compare", to, "--json"], terminal)).toBe(wanted.exit);
        const printed = JSON.parse(terminal.out());
        expect(printed).toMatchObject({ format: "copperband-comparison", version: 1, after: to });
        expect(printed.reports.before).toEqual(JSON.parse(JSON.stringify(recompute(site))));
      }
    });
  }

  it("holds the edition of --as against the other", async () => {
    const terminal = fakeTerminal({ files });
    const words = ["check", "fully-bonded.site.json", "--as", "nec-2023", "--compare", "nec-2020", "--json"];
    const site = DEMO_SITES.find(({ name }) => name === "fully-bonded")?.site;
    if (!site) throw new Error("there is no demo site fully-bonded");
    expect(await run(words, terminal)).toBe(exitCodeOf(recompute(site, { as: "nec-2023" })));
    expect(JSON.parse(terminal.out())).toMatchObject({ before: "nec-2023", after: "nec-2020" });
  });

  it("exits with a question for a site that names no edition, even where both editions find nothing open", async () => {
    const site = DEMO_SITES.find(({ name }) => name === "fully-bonded")?.site;
    if (!site) throw new Error("there is no demo site fully-bonded");
    const { edition: _, ...unnamed } = site;
    const terminal = fakeTerminal({ input: writeSite(unnamed as typeof site) });
    expect(await run(["check", "-", "--compare", "nec-2020"], terminal)).toBe(
      exitCodeOf(recompute(unnamed as typeof site)),
    );
  });

  it("refuses an edition that is not held, and a file that cannot be read", async () => {
    const terminal = fakeTerminal({ files });
    expect(await run(["check", "rectangle.site.json", "--compare", "nec-1999"], terminal)).toBe(2);
    expect(await run(["check", "gone.json", "--compare", "nec-2020"], terminal)).toBe(2);
    expect(terminal.out()).toBe("");
  });
});

describe("the text", () => {
  for (const { name, site } of DEMO_SITES) {
    it(`of ${name} keeps its width and names every change`, () => {
      const comparison = compareEditions(site, "nec-2020", "nec-2023");
      for (const width of [NARROWEST, WIDEST]) {
        const text = comparisonText(comparison, site, { width });
        expect(text.split("\n").filter((line) => line.length > width)).toEqual([]);
        for (const { element } of comparison.changes) if (element !== null) expect(text).toContain(element);
        for (const { id } of comparison.parameters) expect(text).toContain(id);
      }
    });
  }

  it("says so when nothing changes", () => {
    const [demo] = DEMO_SITES;
    if (!demo) throw new Error("there is no demo site");
    const text = comparisonText(compareEditions(demo.site, "nec-2020", "nec-2020"), demo.site, { width: 100 });
    expect(text.replace(/\s+/g, " ")).toContain("Nothing changes between these editions on this site.");
  });

  it("sets two texts beside each other, each within its half", () => {
    expect(sideBySide("one two three", "four", 23)).toEqual(["one two      four", "three"]);
  });
});
