// The plan as data: what is drawn for what. Source of the drawing rules: the art direction of the project (proposed copper
// broken, recorded solid; a needed tie open, a recorded one filled), otherwise common practice, no source.
import { describe, expect, it } from "vitest";
import { planScene, sceneBounds } from "../../../app/drawing/plan-scene.ts";
import { type Item, LAYERS, type LayerName, type MarkItem, type Scene } from "../../../app/drawing/scene.ts";
import { findingNumbers } from "../../../rules/findings-by-part.ts";
import { KINDS } from "../../../rules/site/elements.ts";
import { DRAWN, drawn, EVERY_KIND, POOL, siteOf } from "./drawn-sites.ts";

const everyKind = siteOf(EVERY_KIND);

function items(scene: Scene, layer?: LayerName): Item[] {
  return scene.layers.flatMap(({ name, items: list }) => (layer === undefined || name === layer ? [...list] : []));
}

const marksOf = (scene: Scene) => items(scene, "marks").filter((item): item is MarkItem => item.kind === "mark");

describe("a scene", () => {
  it("draws every kind of element, and one of an unknown kind", () => {
    const kinds = new Set(everyKind.site.elements.map(({ kind }) => kind));
    expect(KINDS.filter((kind) => !kinds.has(kind))).toEqual([]);
    const shown = new Set(items(planScene(everyKind.site, everyKind.report)).flatMap(({ element }) => element ?? []));
    expect(everyKind.site.elements.map(({ id }) => id).filter((id) => !shown.has(id) && id !== "tie-x")).toEqual([]);
  });

  it("holds its layers from the ground up", () => {
    const names = planScene(everyKind.site, everyKind.report).layers.map(({ name }) => name);
    expect(names).toEqual([...LAYERS]);
  });

  it("is the same for the same site", () => {
    for (const { site, report } of DRAWN) expect(planScene(site, report)).toEqual(planScene(site, report));
  });

  it("of an empty site is empty", () => {
    const empty = siteOf([]);
    const scene = planScene(empty.site, empty.report);
    expect(scene.bounds).toBeNull();
    expect(items(scene)).toEqual([]);
  });

  it("leaves out what has to be placed when asked to", () => {
    const scene = planScene(everyKind.site, everyKind.report, { withoutLettering: true });
    expect(items(scene, "marks")).toEqual([]);
    expect(items(scene, "names")).toEqual([]);
    expect(items(scene, "water").length).toBeGreaterThan(0);
  });

  it("lets lines overhead leave the sheet instead of shrinking the yard", () => {
    // Arithmetic: the overhead line runs to x = 2000, the lawn to 500.
    expect(sceneBounds(everyKind.site, everyKind.report)?.maxX).toBe(500);
  });

  it("refuses a scale that is none", () => {
    expect(() => planScene(everyKind.site, everyKind.report, { pointsPerInch: 0 })).toThrow(/scale/);
  });
});

describe("copper", () => {
  it("that is proposed and copper that is recorded are drawn by different roles", () => {
    const proposed = siteOf([POOL]);
    expect(items(planScene(proposed.site, proposed.report), "ring").length).toBeGreaterThan(0);
    expect(items(planScene(proposed.site, proposed.report), "recorded")).toEqual([]);
    const recorded = items(planScene(everyKind.site, everyKind.report), "recorded");
    expect(
      recorded.map((item) => [item.element, item.kind === "symbol" ? "" : item.kind === "shape" && item.role]),
    ).toEqual([["copper", "copper-recorded"]]);
  });

  it("gives each tie of the report an open or a filled diamond", () => {
    for (const { site, report } of DRAWN) {
      const symbols = items(planScene(site, report), "ties").flatMap((item) =>
        item.kind === "symbol" ? item.symbol : [],
      );
      const filled = report.ties.filter(({ present }) => present).length;
      expect(symbols.filter((symbol) => symbol === "tie-recorded").length).toBe(filled);
      expect(symbols.filter((symbol) => symbol === "tie-needed").length).toBe(report.ties.length - filled);
    }
  });

  it("that is all in place leaves no proposed ring, grid or branch", () => {
    const { site, report } = drawn("fully-bonded");
    const scene = planScene(site, report);
    for (const layer of ["ring", "grid", "branches"] as const) expect(items(scene, layer)).toEqual([]);
    expect(items(scene, "recorded").length).toBeGreaterThan(0);
  });
});

describe("marks", () => {
  it("carry the number and the outcome of their finding", () => {
    for (const { site, report } of DRAWN) {
      const numbers = findingNumbers(report);
      for (const mark of marksOf(planScene(site, report))) {
        const [id] = mark.findings ?? [];
        const finding = report.findings.find((one) => one.id === id);
        expect([mark.number, mark.outcome]).toEqual([numbers.get(id ?? ""), finding?.outcome]);
      }
    }
  });

  it("stand for every finding that is not settled, or are named as having found no room", () => {
    for (const { site, report } of DRAWN) {
      const scene = planScene(site, report);
      const numbers = findingNumbers(report);
      const shown = new Set([...marksOf(scene).map(({ number }) => number), ...scene.unmarked]);
      const wanted = report.findings.filter(
        ({ outcome, element, body }) => outcome !== "meets" && outcome !== "exempt" && (element ?? body) !== null,
      );
      expect(wanted.map(({ id }) => numbers.get(id)).filter((number) => !shown.has(number ?? 0))).toEqual([]);
    }
  });

  it("can be kept to one part of the article", () => {
    const { site, report } = drawn("rectangle");
    const marks = marksOf(planScene(site, report, { part: "fixed-metal" }));
    expect(marks.length).toBeGreaterThan(0);
    for (const mark of marks) {
      const finding = report.findings.find(({ id }) => mark.findings?.includes(id));
      expect(finding?.section).toMatch(/^680\.26\(B\)\(7\)/);
    }
  });
});

describe("a finding in focus", () => {
  const { site, report } = drawn("rectangle");
  const finding = report.findings.find(({ element, outcome }) => element === "fence-south" && outcome === "bond");

  it("shows its element, what was measured, and the limit", () => {
    expect(finding).toBeDefined();
    const focus = items(planScene(site, report, { focus: finding?.id ?? "" }), "focus");
    const roles = focus.flatMap((item) => (item.kind === "shape" ? item.role : []));
    // The stretch of the fence within the limit, and the measured line; the rest of the fence stays lighter.
    expect(roles.filter((role) => role === "focus").length).toBe(2);
    expect(roles).toContain("focus-rest");
    expect(roles).toContain("limit");
    const texts = focus.flatMap((item) => (item.kind === "text" ? item.text : []));
    // The demo's own figure: the south run stands 55.03 in. away, 4' 7" to the nearest sixteenth.
    expect(texts).toEqual([`4' 7"`]);
  });

  it("that the report does not hold shows nothing", () => {
    expect(items(planScene(site, report, { focus: "no-such-finding" }), "focus")).toEqual([]);
  });
});
