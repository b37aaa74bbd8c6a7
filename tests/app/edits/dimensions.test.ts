/** Dimensions that follow what they are on. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { anchorAt, anchorPlace, finder } from "../../../app/dimensions/anchors.ts";
import { dimensionLine, lineBetween, wayThrough } from "../../../app/dimensions/dimension-line.ts";
import { planScene } from "../../../app/drawing/plan-scene.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { deleteVertex } from "../../../app/edits/delete-vertex.ts";
import { addDimension, moveDimension, removeDimension } from "../../../app/edits/dimension-edits.ts";
import { duplicateElements, mirrorCopies } from "../../../app/edits/duplicate-elements.ts";
import type { Edit } from "../../../app/edits/edit.ts";
import { insertVertex } from "../../../app/edits/insert-vertex.ts";
import { joinPaths } from "../../../app/edits/join-paths.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { moveVertex } from "../../../app/edits/move-vertex.ts";
import { pasteElements, readTaken, takeElements, takenText } from "../../../app/edits/paste-elements.ts";
import { roundCorner } from "../../../app/edits/round-corner.ts";
import { splitLine } from "../../../app/edits/split-element.ts";
import { recompute } from "../../../rules/recompute.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { DECK, siteWith } from "../tools/hand.ts";

const fence = {
  id: "fence-1",
  kind: "fence",
  path: {
    vertices: [
      [0, -100],
      [240, -100],
    ],
    closed: false,
  },
};
const pump = { id: "pump-1", kind: "equipment", unit: "pump", at: [400, 60] };
const OUTLINE = { field: "outline" } as const;

function done(site: Site, edit: Edit): Site {
  const result = edit.apply(site);
  if (!result.ok) throw new Error(result.reason);
  const read = readSite(JSON.stringify(result.site));
  if (!read.ok) throw new Error(read.refusal.message);
  return result.site;
}

function drawn(): Site {
  const site = siteWith([DECK, fence, pump]);
  const at = (x: number, y: number) => anchorAt([x, y], site.elements);
  let next = done(site, addDimension({ from: at(240, 0), to: at(240, 120), offset: -24 }));
  next = done(next, addDimension({ from: at(60, 0), to: at(60, -100), offset: 12 }));
  return done(next, addDimension({ from: at(240, 120), to: at(400, 60), offset: 30, direction: "across" }));
}

const lengths = (site: Site) => (site.dimensions ?? []).map((one) => dimensionLine(one, finder(site))?.length);

describe("an end of a dimension", () => {
  it("goes onto a corner, a side, a part, or stays a free place", () => {
    const { elements } = siteWith([DECK, fence, pump]);
    expect(anchorAt([240, 120], elements)).toMatchObject({ element: "deck-1", ref: "outline", corner: 2 });
    expect(anchorAt([60, 0], elements)).toMatchObject({ element: "deck-1", corner: 0, share: 0.25 });
    expect(anchorAt([400, 60], elements)).toMatchObject({ element: "pump-1", ref: "at" });
    expect(anchorAt([300, 300], elements)).toEqual({ at: [300, 300] });
  });
});

describe("dimensions", () => {
  it("measure straight, or only across or up", () => {
    expect(lengths(drawn())).toEqual([120, 100, 160]);
    expect(lineBetween([0, 0], [30, 40], { offset: 0 })?.length).toBe(50);
    expect(lineBetween([0, 0], [30, 40], { offset: 10, direction: "up" })).toMatchObject({ a: [40, 0], b: [40, 40] });
    expect(lineBetween([0, 0], [0, 40], { offset: 10, direction: "across" })).toBeNull();
  });

  it("follow their elements", () => {
    let site = done(drawn(), moveElements(["pump-1"], 24, 0));
    expect(lengths(site)).toEqual([120, 100, 184]);
    site = done(site, moveVertex("deck-1", OUTLINE, 2, [240, 144]));
    expect(lengths(site)[0]).toBe(144);
    site = done(site, moveElements(["fence-1"], 0, -20));
    expect(lengths(site)[1]).toBe(120);
  });

  it("stay with their places when corners are put in, rounded, cut and joined", () => {
    let site = done(drawn(), insertVertex("deck-1", OUTLINE, 0, [120, 0]));
    expect(lengths(site)).toEqual([120, 100, 160]);
    site = done(site, splitLine("fence-1", { index: 0, share: 0.1 }));
    expect(lengths(site)).toEqual([120, 100, 160]);
    expect(site.dimensions?.[1]?.to.element).toBe("fence-2");
    site = done(site, joinPaths("fence-1", "fence-2"));
    expect(lengths(site)).toEqual([120, 100, 160]);
    site = done(site, roundCorner("deck-1", OUTLINE, 3, 12));
    expect(site.dimensions).toHaveLength(3);
  });

  it("go with their element, in one step, and with a corner that is taken out", () => {
    const site = done(drawn(), deleteElements(["pump-1"]));
    expect(site.dimensions?.map(({ id }) => id)).toEqual(["dimension-1", "dimension-2"]);
    const less = done(drawn(), deleteVertex("deck-1", OUTLINE, 1));
    expect(less.dimensions?.map(({ id }) => id)).not.toContain("dimension-1");
    const none = done(site, deleteElements(["deck-1"]));
    expect(none).not.toHaveProperty("dimensions");
  });

  it("are moved and taken away, and get numbers of their own", () => {
    let site = done(drawn(), moveDimension("dimension-3", { offset: 60 }));
    expect(site.dimensions?.[2]).not.toHaveProperty("direction");
    site = done(site, removeDimension("dimension-2"));
    site = done(site, addDimension({ from: { at: [0, 0] }, to: { at: [9, 0] }, offset: 0 }));
    expect(site.dimensions?.map(({ id }) => id)).toEqual(["dimension-1", "dimension-3", "dimension-4"]);
    const same = addDimension({ from: { at: [1, 1] }, to: { at: [1, 1] }, offset: 0 }).apply(site);
    expect(same.ok ? "" : same.reason).toMatch(/from one place to another/);
  });

  it("decide nothing: the report is the same without them", () => {
    const { dimensions: _, ...plain } = drawn();
    expect(recompute(drawn())).toEqual(recompute(plain as Site));
  });

  it("are drawn on the plan with their length, ticks and extension lines", () => {
    const site = drawn();
    const items = planScene(site, recompute(site)).layers.find(({ name }) => name === "dimensions")?.items ?? [];
    const texts = items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
    expect(texts).toEqual([`10' 0"`, `8' 4"`, `13' 4"`]);
    expect(items.filter((item) => item.kind === "symbol" && item.symbol === "tick")).toHaveLength(6);
  });

  it("a file with one that is attached to nothing is read, and draws nothing", () => {
    const site = siteWith([DECK], {
      dimensions: [
        { id: "dimension-1", from: { element: "gone", corner: 0, at: [0, 0] }, to: { at: [9, 9] }, offset: 0 },
      ],
    });
    expect(readSite(JSON.stringify(site)).ok).toBe(true);
    expect(anchorPlace({ element: "gone", at: [0, 0] }, finder(site))).toBeNull();
    expect(lengths(site)).toEqual([undefined]);
    const bad = siteWith([DECK], {
      dimensions: [{ id: "dimension-1", from: { at: [0] }, to: { at: [9, 9] }, offset: 0 }],
    });
    expect(readSite(JSON.stringify(bad)).ok).toBe(false);
  });
});

describe("where the line is pulled", () => {
  it("above or below measures across, beside measures up, else straight", () => {
    expect(wayThrough([0, 0], [100, 50], [60, 80], false)).toEqual({ offset: 30, direction: "across" });
    expect(wayThrough([0, 0], [100, 50], [60, -20], false)).toEqual({ offset: -20, direction: "across" });
    expect(wayThrough([0, 0], [100, 50], [130, 20], false)).toEqual({ offset: 30, direction: "up" });
    expect(wayThrough([0, 0], [100, 50], [50, 25], false).direction).toBeUndefined();
    expect(wayThrough([0, 0], [100, 0], [50, 24], false)).toEqual({ offset: 24 });
    expect(wayThrough([0, 0], [100, 50], [60, 80], true).direction).toBeUndefined();
  });

  it("are copied with all that they hang on, each beside its copy", () => {
    const site = done(drawn(), duplicateElements(["deck-1", "fence-1"], 0, 500));
    // The third one also hangs on the pump, which was not copied.
    expect(site.dimensions?.map(({ id }) => id)).toEqual([
      "dimension-1",
      "dimension-2",
      "dimension-3",
      "dimension-4",
      "dimension-5",
    ]);
    const line = (id: string) => {
      const dimension = site.dimensions?.find((one) => one.id === id);
      return dimension && dimensionLine(dimension, finder(site));
    };
    expect(line("dimension-4")).toMatchObject({ a: [264, 500], b: [264, 620], length: 120 });
    expect(line("dimension-5")).toMatchObject({ a: [72, 500], b: [72, 400] });
    expect(done(drawn(), duplicateElements(["pump-1"], 0, 500)).dimensions).toHaveLength(3);
  });

  it("are mirrored with the copies, also those that measure only across", () => {
    const all = ["deck-1", "fence-1", "pump-1"];
    const site = done(drawn(), mirrorCopies(all, [500, 0], 90));
    const [, , , straight, , across] = site.dimensions ?? [];
    expect(straight && dimensionLine(straight, finder(site))).toMatchObject({ a: [736, 0], b: [736, 120] });
    expect(across && dimensionLine(across, finder(site))).toMatchObject({ a: [760, 150], b: [600, 150], length: 160 });
    // Turned by 30 degrees it would measure something else: it stays with the original.
    expect(done(drawn(), mirrorCopies(all, [500, 0], 15)).dimensions).toHaveLength(5);
  });

  it("are copied from where they lie now, not from where they were drawn", () => {
    // A site reaches 1,000,000 in. from its origin: a copy of the place where this one was drawn would lie beyond.
    const far = done(siteWith([DECK]), moveElements(["deck-1"], 900_000, 0));
    const on = (corner: number, at: [number, number]) => ({ element: "deck-1", ref: "outline", corner, at }) as const;
    const measured = done(far, addDimension({ from: on(0, [900_000, 0]), to: on(1, [900_240, 0]), offset: 24 }));
    const home = done(measured, moveElements(["deck-1"], -900_000, 0));
    const copied = done(home, duplicateElements(["deck-1"], 200_000, 0));
    expect(copied.dimensions?.[1]?.from.at).toEqual([200_000, 0]);
    expect(lengths(copied)).toEqual([240, 240]);
  });

  it("go over the clipboard to another sheet; broken ones stay behind", () => {
    const taken = takeElements(drawn(), ["deck-1", "fence-1"]);
    const text = takenText(taken);
    const read = readTaken(text);
    if (!read) throw new Error("the clipboard was not read");
    const site = done(siteWith(), pasteElements(read, { by: [24, 0] }));
    expect(lengths(site)).toEqual([120, 100]);
    const broken = JSON.parse(text);
    broken.dimensions[0].from.at = "here";
    broken.dimensions[1].to.element = "gone";
    expect(readTaken(JSON.stringify(broken))?.dimensions).toBeUndefined();
  });
});
