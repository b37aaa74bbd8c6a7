// The commands: exit codes and streams. Source of the exit codes, of JSON Lines and of the typed refusals: the project's
// report format; otherwise common practice, no source.
import { describe, expect, it } from "vitest";
import { exitCodeOf } from "../../../app/command-line/check.ts";
import { run } from "../../../app/command-line/run.ts";
import { worstCode } from "../../../app/command-line/terminal.ts";
import { recompute } from "../../../rules/recompute.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";
import { fakeTerminal } from "./fake-terminal.ts";

const files = Object.fromEntries(DEMO_SITES.map(({ name, site }) => [`${name}.site.json`, writeSite(site)]));
const BAD = JSON.stringify({
  format: "copperband-site",
  version: 1,
  elements: [{ id: "lamp", kind: "device", at: [0, "east"], device: "receptacle" }],
});

describe("check", () => {
  for (const { name, wanted } of DEMO_SITES) {
    it(`exits as ${name} says (demo-sites/${name}.findings.json)`, async () => {
      const terminal = fakeTerminal({ files });
      expect(await run(["check", `${name}.site.json`], terminal)).toBe(wanted.exit);
      expect(terminal.err()).toBe("");
    });
  }

  it("prints the whole report as one line of JSON", async () => {
    const [demo] = DEMO_SITES;
    if (!demo) throw new Error("There is no demo site.");
    const terminal = fakeTerminal({ files });
    await run(["check", `${demo.name}.site.json`, "--json"], terminal);
    expect(terminal.out().trimEnd()).not.toContain("\n");
    const { file, ...report } = JSON.parse(terminal.out());
    expect(file).toBe(`${demo.name}.site.json`);
    expect(report).toEqual(JSON.parse(JSON.stringify(recompute(demo.site))));
  });

  it("prints one report a line for several files, in their order", async () => {
    const terminal = fakeTerminal({ files });
    const names = Object.keys(files);
    await run(["check", "--json", ...names], terminal);
    const lines = terminal.out().trimEnd().split("\n");
    expect(lines.map((line) => JSON.parse(line).site)).toEqual(DEMO_SITES.map(({ site }) => site.name ?? ""));
  });

  it("heads each of several files in text", async () => {
    const terminal = fakeTerminal({ files });
    const names = Object.keys(files).slice(0, 2);
    await run(["check", ...names], terminal);
    for (const name of names) expect(terminal.out()).toContain(`## ${name} ##`);
  });

  it("reads standard input for -", async () => {
    const terminal = fakeTerminal({ input: files["rectangle.site.json"] ?? "" });
    expect(await run(["check", "-", "--json"], terminal)).toBe(1);
    expect(JSON.parse(terminal.out()).format).toBe("copperband-report");
  });

  it("judges by another edition when told to", async () => {
    for (const edition of ["nec-2017", "nec-2020", "nec-2023"]) {
      const terminal = fakeTerminal({ files });
      await run(["check", "rectangle.site.json", "--json", "--as", edition], terminal);
      expect(JSON.parse(terminal.out()).edition).toBe(edition);
    }
  });

  it("refuses a bad file with element, field and what was expected", async () => {
    const terminal = fakeTerminal({ files: { "bad.site.json": BAD } });
    expect(await run(["check", "bad.site.json"], terminal)).toBe(2);
    expect(terminal.out()).toBe("");
    expect(terminal.err()).toMatch(/bad\.site\.json cannot be read.*"lamp", field at.*expected a number.*got "east"/s);
  });

  it("tells of a file that is not there, and goes on to the next", async () => {
    const terminal = fakeTerminal({ files });
    expect(await run(["check", "gone.json", "rectangle.site.json", "--json"], terminal)).toBe(2);
    expect(terminal.err()).toContain("gone.json cannot be read: there is no such file.");
    const lines = terminal.out().trimEnd().split("\n");
    expect(lines.map((line) => JSON.parse(line))).toMatchObject([
      { format: "copperband-refusal", file: "gone.json", code: "unreadable", problems: [] },
      { format: "copperband-report", file: "rectangle.site.json" },
    ]);
  });

  for (const also of [[], ["--compare", "nec-2017"]]) {
    it(`prints one line a file, always, and the worst code of all ${also.join(" ")}`, async () => {
      const terminal = fakeTerminal({ files: { ...files, "bad.site.json": BAD }, input: "{" });
      const names = ["rectangle.site.json", "bad.site.json", "-", "true-l.site.json"];
      expect(await run(["check", "--json", ...names, ...also], terminal)).toBe(2);
      const lines = terminal.out().trimEnd().split("\n");
      expect(lines.map((line) => JSON.parse(line).file)).toEqual(names);
      const refusals = lines.map((line) => JSON.parse(line)).filter(({ format }) => format === "copperband-refusal");
      expect(refusals).toMatchObject([
        { version: 1, file: "bad.site.json", code: "invalid", problems: [{ element: "lamp", field: "at[1]" }] },
        { version: 1, file: "-", code: "not-json", problems: [] },
      ]);
      expect(refusals[0].message).toContain("expected a number");
      expect(terminal.err()).toContain("bad.site.json cannot be read");
    });
  }

  it("lets a mistake of the program through as what it is", async () => {
    const terminal = { ...fakeTerminal(), readFile: () => Promise.reject(new TypeError("a mistake")) };
    await expect(run(["check", "x.json"], terminal)).rejects.toThrow("a mistake");
  });
});

describe("the exit code", () => {
  const counts = { bond: 0, exempt: 3, meets: 2, missing: 0, conflict: 0, review: 0 };

  it.each([
    [0, 0, counts],
    [1, 2, counts],
    [1, 0, { ...counts, bond: 1 }],
    [1, 0, { ...counts, conflict: 1, review: 1 }],
    [1, 0, { ...counts, missing: 1 }],
    [3, 0, { ...counts, review: 1 }],
  ])("is %i", (code, missing, given) => {
    expect(exitCodeOf({ missing, counts: given })).toBe(code);
  });

  it("of several files is the worst: 2, then 1, then 3, then 0", () => {
    expect(worstCode([0, 3, 1, 2])).toBe(2);
    expect(worstCode([0, 3, 1])).toBe(1);
    expect(worstCode([0, 3, 0])).toBe(3);
    expect(worstCode([0])).toBe(0);
  });
});

describe("a command that cannot be understood", () => {
  it.each([
    [[], /Usage/],
    [["judge", "x.json"], /judge/],
    [["check"], /file/],
    [["check", "x.json", "--loud"], /--loud/],
    [["check", "x.json", "--as", "nec-1999"], /nec-1999.*nec-2017, nec-2020, nec-2023/s],
    [["draw", "x.json"], /--out/],
    [["draw", "x.json", "--out", "x.pdf"], /\.svg/],
    [["draw", "x.json", "y.json", "--out", "x.svg"], /argument/],
  ])("%j exits 2 and says what is wrong", async (words, message) => {
    const terminal = fakeTerminal({ files });
    expect(await run(words, terminal)).toBe(2);
    expect(terminal.err()).toMatch(message);
    expect(terminal.out()).toBe("");
  });

  it("is told apart from a call for help", async () => {
    const terminal = fakeTerminal();
    expect(await run(["check", "--help"], terminal)).toBe(0);
    expect(terminal.out()).toContain("Exit codes");
    expect(terminal.err()).toBe("");
  });
});

describe("draw", () => {
  it("writes an SVG file and prints nothing", async () => {
    const terminal = fakeTerminal({ files });
    expect(await run(["draw", "true-l.site.json", "--out", "plan.svg"], terminal)).toBe(0);
    expect(terminal.written.get("plan.svg")).toMatch(/^<\?xml.*<svg /s);
    expect(terminal.out() + terminal.err()).toBe("");
  });

  it("writes to standard output for -", async () => {
    const terminal = fakeTerminal({ files });
    expect(
      await run(["draw", "true-l.site.json", "--out", "-", "--paper", "arch-d", "--palette", "plain"], terminal),
    ).toBe(0);
    expect(terminal.out()).toMatch(/width="36in"/);
  });

  it("exits 2 where it cannot write or read", async () => {
    const terminal = fakeTerminal({ files: { ...files, "bad.site.json": BAD } });
    expect(await run(["draw", "true-l.site.json", "--out", "missing-folder/plan.svg"], terminal)).toBe(2);
    expect(terminal.err()).toContain("missing-folder/plan.svg cannot be written: there is no such folder.");
    expect(await run(["draw", "bad.site.json", "--out", "plan.svg"], terminal)).toBe(2);
    expect(terminal.written.size).toBe(0);
  });
});

describe("rules", () => {
  it("prints the rules that hold a word, with limits, basis and teaching note", async () => {
    const terminal = fakeTerminal();
    expect(await run(["rules", "fixed", "metal", "--as", "nec-2020"], terminal)).toBe(0);
    expect(terminal.out()).toMatch(/680\.26\(B\)\(7\)/);
    expect(terminal.out().replace(/\s+/g, " ")).toMatch(/Limit: 5' 0"\. [^.]*\. 680\.26\(B\)\(7\), published\./);
    expect(terminal.out()).toContain("limits by NEC 2020");
  });

  it("prints all of them without a word, and says so where nothing is found", async () => {
    const all = fakeTerminal();
    expect(await run(["rules"], all)).toBe(0);
    expect(all.out().match(/ {2}Looks at: /g)?.length).toBeGreaterThan(30);
    const none = fakeTerminal();
    expect(await run(["rules", "zebra"], none)).toBe(1);
    expect(none.out()).toBe("");
    expect(none.err()).toContain("No rule");
  });
});
