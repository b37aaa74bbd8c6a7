import { describe, expect, it } from "vitest";
import { createStore } from "zustand/vanilla";
import { SceneKeeper, type Shown } from "../../../app/canvas/scene-keeper.ts";
import { SheetStateReader } from "../../../app/canvas/sheet-state.ts";
import { sheetSummary } from "../../../app/canvas/sheet-summary.ts";
import type { Item, LayerName } from "../../../app/drawing/scene.ts";
import type { Editor } from "../../../app/editor.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { createDocumentStore } from "../../../app/site-document/store.ts";
import { createViewStore } from "../../../app/view/view-store.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";

const site = {
  format: "copperband-site",
  version: 1,
  edition: "nec-2020",
  elements: [
    {
      id: "pool-1",
      kind: "pool",
      body: "pool",
      shell: "sprayed-concrete",
      steel: "bare",
      outline: {
        vertices: [
          [0, 0],
          [384, 0],
          [384, 192],
          [0, 192],
        ],
        closed: true,
      },
    },
    {
      id: "fence-1",
      kind: "fence",
      name: "South fence",
      metal: true,
      top: 48,
      path: {
        vertices: [
          [0, -50],
          [384, -50],
        ],
        closed: false,
      },
    },
    { id: "pump-1", kind: "equipment", unit: "pump", at: [500, 300], metalParts: true, electric: true },
  ],
} as unknown as Site;

/** A keeper over real stores; reports are set by hand, as a worker would. */
function keeperOf(start: Site = site) {
  const document = createDocumentStore(start, { name: "", saved: null });
  const view = createViewStore();
  const live = createStore<{ report: Report | null; reportRevision: number; routesPending: boolean }>(() => ({
    report: null,
    reportRevision: 0,
    routesPending: true,
  }));
  const reader = new SheetStateReader({ document, view, live } as unknown as Editor);
  const scenes = new SceneKeeper();
  const keeper = {
    now: (isMoving: boolean) =>
      scenes.now(reader.read({ isMoving, width: 800, height: 600, pixelRatio: 1, overlay: [] })),
  };
  const reportOn = (withoutRoutes = false) => {
    const { shown, revision } = document.getState();
    const report = recompute(shown, { withoutRoutes });
    live.setState({ report, reportRevision: revision, routesPending: withoutRoutes });
    return report;
  };
  return { document, view, live, keeper, reportOn };
}

const itemsOf = (keeper: { now(isMoving: boolean): Shown }, name: LayerName): readonly Item[] =>
  keeper.now(false).scene.layers.find((layer) => layer.name === name)?.items ?? [];

describe("the scene of the sheet", () => {
  it("shows what is drawn before the first report, and no findings or copper", () => {
    const { keeper } = keeperOf();
    expect(itemsOf(keeper, "water")).toHaveLength(2);
    expect(itemsOf(keeper, "marks")).toEqual([]);
    expect(itemsOf(keeper, "ring")).toEqual([]);
  });

  it("is worked out once, until something that it shows has changed", () => {
    const { keeper, view, reportOn } = keeperOf();
    reportOn();
    const first = keeper.now(false);
    expect(keeper.now(false)).toBe(first);
    view.getState().select(["fence-1"]);
    expect(keeper.now(false)).toBe(first);
    view.getState().choosePart("fixed-metal");
    expect(keeper.now(false)).not.toBe(first);
  });

  it("waits with a new lettering until the view rests", () => {
    const { keeper, view, reportOn } = keeperOf();
    reportOn();
    const first = keeper.now(false);
    view.getState().setCamera({ x: 0, y: 0, scale: 2 });
    expect(keeper.now(true)).toBe(first);
    expect(keeper.now(false).scene.pointsPerInch).toBeCloseTo(2 / 1.5, 12);
  });

  it("keeps the branches drawn that are still on their way, and says so", () => {
    const { keeper, document, reportOn } = keeperOf();
    reportOn();
    const before = itemsOf(keeper, "branches").length;
    expect(before).toBeGreaterThan(0);
    expect(keeper.now(false).areBranchesOld).toBe(false);
    document.getState().edit(moveElements(["pump-1"], 12, 0));
    reportOn(true);
    expect(itemsOf(keeper, "branches")).toHaveLength(before);
    expect(keeper.now(false).areBranchesOld).toBe(true);
  });

  it("shows nothing of the report about the site that was on the sheet before", () => {
    const { keeper, document, reportOn } = keeperOf();
    reportOn();
    document.getState().open({ ...site, elements: site.elements.slice(0, 1) }, { name: "", saved: null });
    expect(itemsOf(keeper, "branches")).toEqual([]);
    expect(itemsOf(keeper, "marks")).toEqual([]);
  });

  it("shows nothing of it either where the other site was opened in the middle of a drag", () => {
    const { keeper, document, live, reportOn } = keeperOf();
    reportOn();
    expect(itemsOf(keeper, "branches").length).toBeGreaterThan(0);
    document.getState().beginGesture("Move");
    document.getState().preview(moveElements(["fence-1"], 0, -24));
    document.getState().open({ ...site, elements: site.elements.slice(0, 1) }, { name: "", saved: null });
    expect(itemsOf(keeper, "marks")).toEqual([]);
    expect(live.getState().report).not.toBeNull();
    reportOn(true);
    expect(itemsOf(keeper, "branches")).toEqual([]);
  });

  it("lets names and marks ride along with what is dragged, and marks turn with their findings", () => {
    const { keeper, document, reportOn } = keeperOf();
    reportOn();
    const find = () =>
      itemsOf(keeper, "marks").find((item) => item.kind === "mark" && item.element === "fence-1") as
        | (Item & { kind: "mark" })
        | undefined;
    const before = find();
    expect(before?.outcome).toBe("bond");
    document.getState().beginGesture("Move");
    document.getState().preview(moveElements(["fence-1"], 0, -24));
    reportOn(true);
    const after = find();
    expect(after?.outcome).toBe("exempt");
    expect(after?.at[1]).toBeCloseTo((before?.at[1] ?? 0) - 24, 9);
    expect(after?.at[0]).toBeCloseTo(before?.at[0] ?? 0, 9);
    expect(after?.beside?.of[1]).toBeCloseTo((before?.beside?.of[1] ?? Number.NaN) - 24, 9);
    expect(after?.beside?.by).toEqual(before?.beside?.by);
  });
});

describe("the number of a tie", () => {
  const numbers = (keeper: Parameters<typeof itemsOf>[0]) =>
    itemsOf(keeper, "names").flatMap((item) => (item.kind === "text" && item.tie !== undefined ? [item] : []));

  it("stays beside its tie while the pool is dragged", () => {
    const { keeper, document, reportOn } = keeperOf();
    reportOn();
    const before = numbers(keeper);
    expect(before.length).toBeGreaterThan(0);
    document.getState().beginGesture("Move");
    document.getState().preview(moveElements(["pool-1"], 30, -12));
    const report = reportOn(true);
    const after = numbers(keeper);
    expect(after.map(({ text }) => text)).toEqual(before.map(({ text }) => text));
    for (const [i, { at, tie = -1, beside }] of after.entries()) {
      const was = before[i];
      expect(beside?.of).toEqual(report.ties[tie]?.to);
      expect(at[0] - (beside?.of[0] ?? 0)).toBeCloseTo((was?.at[0] ?? 0) - (was?.beside?.of[0] ?? 0), 9);
      expect(at[1] - (beside?.of[1] ?? 0)).toBeCloseTo((was?.at[1] ?? 0) - (was?.beside?.of[1] ?? 0), 9);
    }
  });

  it("stands, as every figure that is beside something, where its paper has it", () => {
    const { keeper, reportOn } = keeperOf();
    reportOn();
    const { scene } = keeper.now(false);
    const beside = scene.layers
      .flatMap(({ items }) => items)
      .flatMap((item) => ("beside" in item && item.beside ? [{ at: item.at, ...item.beside }] : []));
    const marks = itemsOf(keeper, "marks").filter(({ kind }) => kind === "mark").length;
    expect(marks).toBeGreaterThan(0);
    expect(beside.length).toBeGreaterThan(numbers(keeper).length + marks);
    for (const { at, of, by } of beside) {
      expect((at[0] - of[0]) * scene.pointsPerInch).toBeCloseTo(by[0], 6);
      expect((at[1] - of[1]) * scene.pointsPerInch).toBeCloseTo(by[1], 6);
    }
  });
});

describe("what stays strong over the veil", () => {
  it("nothing is veiled while the whole site is looked at", () => {
    const { keeper, reportOn } = keeperOf();
    reportOn();
    expect(keeper.now(false).strong).toBeNull();
  });

  it("of a part: its elements, its zone, the water and its marks", () => {
    const { keeper, view, reportOn } = keeperOf();
    reportOn();
    view.getState().choosePart("fixed-metal");
    const strong = keeper.now(false).strong ?? [];
    expect(strong.some((item) => item.element === "fence-1" && item.kind === "shape")).toBe(true);
    expect(strong.some((item) => item.kind === "shape" && item.role === "reach")).toBe(true);
    expect(strong.some((item) => item.kind === "shape" && item.role === "water")).toBe(true);
    expect(strong.some((item) => item.kind === "mark")).toBe(true);
    expect(strong.some((item) => item.element === "pump-1")).toBe(false);
    expect(strong.some((item) => item.kind === "shape" && item.role === "band")).toBe(false);
  });

  it("of a finding: its element, its measured line with the number, the limit and its own mark", () => {
    const { keeper, view, reportOn } = keeperOf();
    const report = reportOn();
    const finding = report.findings.find(({ element, rule }) => element === "fence-1" && rule === "fixed-metal");
    view.getState().chooseFinding(finding?.id ?? "");
    const strong = keeper.now(false).strong ?? [];
    expect(strong.some((item) => item.kind === "shape" && item.role === "limit")).toBe(true);
    expect(strong.some((item) => item.kind === "text" && item.text === `4' 2"`)).toBe(true);
    expect(strong.filter((item) => item.kind === "mark")).toHaveLength(1);
  });
});

describe("the sheet in one sentence", () => {
  it("names the plan, what lies on it and what is open", () => {
    expect(sheetSummary(undefined, 0, null)).toBe("Plan of the yard, empty");
    expect(sheetSummary("Ash Row 3", 1, null)).toBe("Plan of Ash Row 3: 1 element");
    const counts = { bond: 2, missing: 1, conflict: 1, review: 4, meets: 0, exempt: 0 };
    expect(sheetSummary("Ash Row 3", 12, { counts } as unknown as Report)).toBe(
      "Plan of Ash Row 3: 12 elements; 3 need bonding, 1 in conflict, 4 to be answered",
    );
  });
});
