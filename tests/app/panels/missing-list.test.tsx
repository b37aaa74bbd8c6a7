// @vitest-environment happy-dom
// What still needs copper, listed with where it goes. Common practice, no source.
import { afterEach, describe, expect, it } from "vitest";
import { loadDemos } from "../../../app/files/gallery.ts";
import { copperLines } from "../../../app/panels/copper-lines.ts";
import { CopperPanel } from "../../../app/panels/copper-panel.tsx";
import { neededFindings } from "../../../app/panels/missing-list.tsx";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import { readSite } from "../../../rules/site/reader.ts";
import { type Bench, bench } from "./panel-bench.tsx";

const demos = await loadDemos();

let page: Bench;

afterEach(() => page.close());

function show(name: string, routesPending = false) {
  const read = readSite(demos.find(({ id }) => id === name)?.text ?? "");
  if (!read.ok) throw new Error(`no demo ${name}`);
  const { site } = read;
  const report = recompute(site, { withoutRoutes: routesPending });
  page = bench(site, report);
  page.report(report, routesPending);
  page.show(<CopperPanel />);
  return report;
}

const rows = () => page.all(".missing-row").map((row) => row.textContent ?? "");

describe("the copper still to lay", () => {
  it("is listed for every need that no recorded copper meets, with its branch, its gap or its ties", () => {
    const report = show("as-built");
    expect(rows()).toHaveLength(report.counts.missing);
    expect(page.query(".missing-list h3").textContent).toContain("Not reached yet");
    const text = (name: string) => rows().find((row) => row.includes(name));
    const branch = report.branches.find(({ to }) => to === "heater-1");
    expect(branch?.run).toBeGreaterThan(0);
    expect(text("Gas heater")).toMatch(/branch of \d+' \d+"/);
    expect(text("Pool deck")).toContain(`8' 10 3/16" open round the water`);
    expect(rows().find((row) => row.includes("ties"))).toContain("1 of 4 ties open");
  });

  it("goes to its finding when it is pressed", () => {
    const report = show("as-built");
    page.press(page.all(".missing-row")[3] as HTMLElement);
    const { finding, panel } = page.editor.view.getState();
    expect([finding, panel]).toEqual([neededFindings(report)[3]?.finding.id, "findings"]);
  });

  it("says that branches are on their way, never a length of none", () => {
    show("as-built", true);
    expect(rows().find((row) => row.includes("Gas heater"))).toContain("branch on its way");
  });

  it("tells the method and the area where nothing is recorded", () => {
    show("rectangle");
    expect(page.query(".missing-list h3").textContent).toContain("What needs bonding");
    expect(rows().find((row) => row.includes("Pool deck"))).toMatch(/copper ring, [\d.]+ sq ft/);
  });
});

describe("two pools", () => {
  it("have their pieces told apart, the ties that they share told of both, and the links between their loops named in the takeoff", () => {
    show("pool-and-spa");
    const told = page.all("[aria-label='What it lays where'] li").map(({ textContent }) => textContent);
    expect(new Set(told).size).toBe(told.length);
    expect(told.every((one) => / by .+:/.test(one ?? ""))).toBe(true);
    // The spa's shell adjoins the pool's: both are joined by the same four ties, NEC 680.26(B)(2).
    const ties = rows().filter((row) => row.includes("ties"));
    expect(ties.map((row) => /\d of .*/.exec(row)?.[0])).toEqual([
      "4 of 4 ties open, their places below",
      "4 of 4 ties open, shared with the shell it adjoins",
    ]);
    const conductor = { ring: 120, grid: 0, ties: 0, branches: 0, drops: 0, tails: 0, spare: 0, total: 120 };
    const label = (links: object) =>
      copperLines({ takeoff: { conductor }, ring: links } as unknown as Report, false, "ft-in")[0]?.label;
    expect([label({}), label({ links: [{ path: [], length: 12, pools: [] }] })]).toEqual([
      "Ring",
      "Ring with its links",
    ]);
  });
});

describe("the method in force", () => {
  it("tells what it lays where, piece by piece, beside its copper and joints", () => {
    const report = show("busy-yard");
    const told = page.all("[aria-label='What it lays where'] li").map(({ textContent }) => textContent);
    const { choices = [] } = report.methods[0] ?? {};
    expect(told).toHaveLength(choices.find(({ chosen }) => chosen)?.pieces.length ?? 0);
    expect(told).toContain("Pool deck: its own steel, 282.7 sq ft");
    expect(told).toContain("Play strip of artificial turf: copper ring, 20.0 sq ft");
    page.press(page.query("input[value=grid]"));
    expect(page.query("[aria-label='What it lays where']").textContent).toContain("copper grid, 20.0 sq ft");
  });
});
