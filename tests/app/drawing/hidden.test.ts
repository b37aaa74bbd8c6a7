/** What a site hides, and parts that are not drawn: left out of the plan, never out of the findings. Our own decision. */
import { describe, expect, it } from "vitest";
import { planScene } from "../../../app/drawing/plan-scene.ts";
import type { Scene } from "../../../app/drawing/scene.ts";
import { planSheets } from "../../../app/drawing/sheets.ts";
import { idsOfHiddenParts, withoutParts } from "../../../app/view/hidden-parts.ts";
import { PARTS } from "../../../rules/catalogue/rule.ts";
import { partOf } from "../../../rules/findings-by-part.ts";
import { recompute } from "../../../rules/recompute.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

const demo = DEMO_SITES.find(({ name }) => name.includes("rectangle"));
if (!demo) throw new Error("the rectangle demo is gone");
const { site } = demo;
const report = recompute(site);
/** Copper and zones are drawn from the report: they stay, whatever is hidden. */
const FROM_REPORT: ReadonlySet<string> = new Set([
  "branches",
  "ties",
  "ring",
  "grid",
  "band",
  "reach",
  "marks",
  "focus",
]);

const drawnIn = (scene: Scene) =>
  new Set(
    scene.layers.flatMap(({ name, items }) =>
      FROM_REPORT.has(name) ? [] : items.flatMap(({ element }) => element ?? []),
    ),
  );

describe("what the site hides", () => {
  const all = drawnIn(planScene(site, report));
  const hidden = site.elements.filter(({ kind, id }) => ["fence", "metal", "surface"].includes(kind) && all.has(id));
  const ids = hidden.map(({ id }) => id);
  const hiding = { ...site, arrangement: { hidden: ids } };

  it("is not drawn, and everything else is", () => {
    expect(ids.length).toBeGreaterThan(3);
    const left = drawnIn(planScene(hiding, report));
    expect([...all].filter((id) => !left.has(id)).sort()).toEqual([...ids].sort());
  });

  it("is named on the printed sheet, as judged like the rest", () => {
    expect(JSON.stringify(planSheets(hiding, report))).toContain("Not drawn on the plan");
    expect(JSON.stringify(planSheets(site, report))).not.toContain("Not drawn on the plan");
  });

  it("comes back while a finding about it is looked at", () => {
    const finding = report.findings.find(({ element }) => element !== null && ids.includes(element));
    const scene = planScene(hiding, report, { focus: finding?.id ?? "" });
    expect(drawnIn(scene).has(finding?.element ?? "none")).toBe(true);
  });
});

describe("parts that are not drawn", () => {
  it("take away what belongs to them alone, with its numbers; water stays", () => {
    const whole = planScene(site, report, { marks: "all" });
    expect(withoutParts(whole, report, [])).toBe(whole);
    const ids = idsOfHiddenParts(report, ["fixed-metal"]);
    expect(ids.size).toBeGreaterThan(0);
    for (const id of ids) {
      const parts = report.findings.filter(({ element }) => element === id).map(partOf);
      expect(new Set(parts)).toEqual(new Set(["fixed-metal"]));
    }
    const scene = withoutParts(whole, report, ["fixed-metal"]);
    for (const id of ids) expect([drawnIn(whole).has(id), drawnIn(scene).has(id)], id).toEqual([true, false]);
    const marks = (of: Scene) =>
      of.layers.find(({ name }) => name === "marks")?.items.flatMap(({ findings }) => findings ?? []) ?? [];
    const gone = marks(whole).filter((id) => !marks(scene).includes(id));
    expect(gone.length).toBeGreaterThan(0);
    for (const id of gone) {
      const finding = report.findings.find((one) => one.id === id);
      expect(finding && partOf(finding)).toBe("fixed-metal");
    }
    const nothing = withoutParts(
      whole,
      report,
      PARTS.map(({ id }) => id),
    );
    expect(nothing.layers.find(({ name }) => name === "water")?.items.length).toBeGreaterThan(0);
    expect(nothing.layers.find(({ name }) => name === "ring")?.items).toEqual([]);
  });
});
