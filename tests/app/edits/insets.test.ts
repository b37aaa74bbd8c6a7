import { describe, expect, it } from "vitest";
import { planScene } from "../../../app/drawing/plan-scene.ts";
import { addElement } from "../../../app/edits/add-element.ts";
import { setLocked } from "../../../app/edits/arrangement.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { duplicateElements } from "../../../app/edits/duplicate-elements.ts";
import type { Edit } from "../../../app/edits/edit.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { moveVertex } from "../../../app/edits/move-vertex.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { draft } from "../../../app/edits/templates.ts";
import { pathFrom } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";
import { recompute } from "../../../rules/recompute.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { writeSite } from "../../../rules/site/writer.ts";

const box = (x0: number, y0: number, x1: number, y1: number): PathData => ({
  vertices: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
});

/** Two pools side by side; the first has a half circle at its right end. */
const site = {
  format: "copperband-site",
  version: 1,
  elements: [
    {
      id: "pool-1",
      kind: "pool",
      body: "pool",
      shell: "cast-concrete",
      steel: "bare",
      outline: {
        vertices: [
          [0, 0],
          [360, 0, 1],
          [360, 192],
          [0, 192],
        ],
        closed: true,
      },
    },
    { id: "pool-2", kind: "pool", body: "spa", shell: "fiberglass", outline: box(-200, 0, -100, 100) },
  ],
} as unknown as Site;

function applied(before: Site, edit: Edit): Site {
  const result = edit.apply(before);
  if (!result.ok) throw new Error(result.reason);
  return result.site;
}

function reason(before: Site, edit: Edit): string {
  const result = edit.apply(before);
  if (result.ok) throw new Error("it was taken");
  return result.reason;
}

const drawn = (outline: PathData, before: Site = site) => draft(before, "inset", { path: outline });
const withStep = applied(site, addElement(drawn(box(0, 40, 60, 150))));
const outlineOf = (of: Site, id: string) =>
  (of.elements.find((one) => one.id === id) as unknown as { outline: PathData }).outline;
const left = (of: Site, id: string) => pathFrom(outlineOf(of, id)).bounds.minX;

// Source: arithmetic, and the meaning of an inset in the site file.
describe("steps, benches and ledges", () => {
  it("belong to the pool that they lie in, along its wall too, straight or round", () => {
    expect(drawn(box(0, 40, 60, 150))).toMatchObject({ id: "inset-1", kind: "inset", pool: "pool-1" });
    expect(drawn(box(-180, 0, -120, 30))).toMatchObject({ pool: "pool-2" });
    const bench: PathData = {
      vertices: [
        [360, 0, 1],
        [360, 192],
        [360, 172, -1],
        [360, 20],
      ],
      closed: true,
    };
    expect(applied(site, addElement(drawn(bench))).elements).toHaveLength(3);
  });

  it("are refused outside, across the wall, over two pools and without any pool", () => {
    const words = "Step or ledge 1 has to lie inside a pool, at most along its wall.";
    expect(reason(site, addElement(drawn(box(0, -80, 60, -20))))).toBe(words);
    expect(reason(site, addElement(drawn(box(-6, 40, 60, 150))))).toBe(words);
    expect(reason(site, addElement(drawn(box(-150, 20, 50, 80))))).toBe(words);
    expect(reason(site, addElement(drawn(box(300, 10, 450, 60))))).toBe(words);
    const empty = { ...site, elements: [] };
    expect(reason(empty, addElement(drawn(box(0, 0, 9, 9), empty)))).toBe(
      "Step or ledge 1 lies inside a pool: draw the pool first.",
    );
  });

  it("neither a corner nor a move takes one out; it goes where its pool goes, and is copied with it", () => {
    expect(reason(withStep, moveVertex("inset-1", { field: "outline" }, 0, [-9, 40]))).toContain("inside a pool");
    expect(reason(withStep, moveElements(["inset-1"], -24, 0))).toContain("inside a pool");
    expect(left(applied(withStep, moveElements(["inset-1"], 24, 0)), "inset-1")).toBe(24);
    const moved = applied(withStep, moveElements(["pool-1"], 500, 12));
    expect([left(moved, "pool-1"), left(moved, "inset-1")]).toEqual([500, 500]);
    const both = applied(withStep, moveElements(["pool-1", "inset-1"], 7, 0));
    expect(left(both, "inset-1")).toBe(7);
    const copied = applied(withStep, duplicateElements(["pool-1"]));
    expect(copied.elements.filter(({ kind }) => kind === "inset").map(({ pool }) => pool)).toEqual([
      "pool-1",
      "pool-3",
    ]);
  });

  it("one that a file gives outside is kept, and may be moved and changed freely", () => {
    const stray = { id: "ledge", kind: "inset", outline: box(0, -300, 60, -240) };
    const read = readSite(JSON.stringify({ ...site, elements: [...site.elements, stray] }));
    if (!read.ok) throw new Error("refused");
    expect(left(applied(read.site, moveElements(["ledge"], 12, 0)), "ledge")).toBe(12);
    expect(left(applied(read.site, moveElements(["ledge"], 12, 320)), "ledge")).toBe(12);
  });

  it("say what they are, go through the file unchanged, and are named on the plan with their depth", () => {
    const named = applied(
      applied(withStep, setField("inset-1", "inset", "tanning-ledge")),
      setField("inset-1", "depth", 9),
    );
    const back = readSite(writeSite(named));
    expect(back.ok && back.site.elements).toEqual(named.elements);
    expect(reason(withStep, setField("inset-1", "inset", "slide"))).toContain("one of: Step, Bench, Tanning ledge");
    const scene = planScene(named, recompute(named), { pointsPerInch: 3 });
    const items = scene.layers.flatMap(({ items }) => items).filter(({ element }) => element === "inset-1");
    expect(items.some((item) => item.kind === "shape" && item.role === "inset")).toBe(true);
    const texts = items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
    expect(texts).toEqual(['Tanning ledge, 9" deep']);
  });

  it("change nothing that a rule finds and nothing of the copper", () => {
    const ledge = applied(withStep, addElement(drawn(box(300, 20, 360, 150), withStep)));
    const { findings, takeoff } = recompute(ledge);
    const plain = recompute(site);
    expect(findings).toEqual(plain.findings);
    expect(takeoff).toEqual(plain.takeoff);
  });

  it("go with their pool when it is deleted, in one step that says so, and not while one is locked", () => {
    const deletion = deleteElements(["pool-1"]);
    const result = deletion.apply(withStep);
    expect(result).toMatchObject({ ok: true, label: "Delete pool 1 with step or ledge 1" });
    expect(applied(withStep, deletion).elements.map(({ id }) => id)).toEqual(["pool-2"]);
    expect(applied(withStep, deleteElements(["pool-2"])).elements.map(({ id }) => id)).toEqual(["pool-1", "inset-1"]);
    const locked = applied(withStep, setLocked(["inset-1"], true));
    expect(reason(locked, deletion)).toBe("Step or ledge 1 is locked. Unlock it first.");
  });

  it("belong to the pool into which they are moved or copied", () => {
    const low = applied(site, addElement(drawn(box(0, 40, 60, 100))));
    const moved = applied(low, moveElements(["inset-1"], -190, -40));
    expect(moved.elements.at(-1)).toMatchObject({ id: "inset-1", pool: "pool-2" });
    const copied = applied(low, duplicateElements(["inset-1"], -190, -40));
    expect(copied.elements.slice(-2)).toMatchObject([{ pool: "pool-1" }, { id: "inset-2", pool: "pool-2" }]);
    expect(applied(low, moveElements(["inset-1"], 20, 0)).elements.at(-1)).toMatchObject({ pool: "pool-1" });
  });
});
