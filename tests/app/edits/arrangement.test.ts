/** Locking, hiding and grouping. What they do is our own decision; counts are arithmetic. */
import { describe, expect, it } from "vitest";
import {
  groupElements,
  groupOf,
  hiddenIds,
  lockedIds,
  pickableElements,
  setHidden,
  setLocked,
  ungroupElements,
  withGroups,
} from "../../../app/edits/arrangement.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { duplicateElements } from "../../../app/edits/duplicate-elements.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { moveVertex } from "../../../app/edits/move-vertex.ts";
import { newId } from "../../../app/edits/new-id.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { turnElements } from "../../../app/edits/turn-elements.ts";
import { printOf } from "../../../rules/measures/answers.ts";
import { recompute } from "../../../rules/recompute.ts";
import { readSite } from "../../../rules/site/reader.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";
import { applied, labelOf, refusalOf, sampleYard } from "./yard.ts";

const yard = sampleYard();

describe("a locked element", () => {
  const site = applied(yard, setLocked(["fence-1", "pump-1"], true));

  it("cannot be moved, turned, bent or deleted, by itself or among others, and says so", () => {
    for (const edit of [
      moveElements(["pool-1", "fence-1"], 1, 0),
      turnElements(["fence-1"], 90, [0, 0]),
      deleteElements(["fence-1"]),
      moveVertex("fence-1", { field: "path" }, 0, [1, 1]),
    ]) {
      expect(refusalOf(site, edit)).toMatchObject({
        element: "fence-1",
        reason: expect.stringMatching(/is locked\. Unlock it first\.$/),
      });
    }
  });

  it("keeps its facts open, can be copied (the copy is free), and is not picked", () => {
    expect(setField("fence-1", "metal", false).apply(site)).toMatchObject({ ok: true });
    const copied = applied(site, duplicateElements(["fence-1"]));
    expect([...lockedIds(copied)]).toEqual(["fence-1", "pump-1"]);
    expect(pickableElements(site).map(({ id }) => id)).not.toContain("fence-1");
    expect(pickableElements(site)).toHaveLength(yard.elements.length - 2);
    expect(pickableElements(site)).toBe(pickableElements(site));
  });

  it("is free again when unlocked, and the file is what it was", () => {
    expect(applied(site, setLocked(["fence-1", "pump-1"], false))).toEqual(yard);
    expect(labelOf(yard, setLocked(["fence-1", "pump-1"], true))).toBe("Lock 2 elements");
    expect(setLocked(["fence-1"], true).apply(site)).toEqual({ ok: true, site });
  });
});

describe("groups", () => {
  const site = applied(yard, groupElements(["pump-1", "fence-1"]));

  it("bring their members along, in the order of the file", () => {
    const order = yard.elements.map(({ id }) => id).filter((id) => id === "pump-1" || id === "fence-1");
    expect(groupOf(site, "fence-1")).toEqual(order);
    expect(withGroups(site, ["pool-1", "pump-1"])).toEqual(["pool-1", ...order]);
    expect(groupOf(site, "pool-1")).toEqual(["pool-1"]);
  });

  it("an element is in one group at most; a group of one is none", () => {
    const other = applied(site, groupElements(["pump-1", "pole-1"]));
    expect(other.arrangement?.groups).toHaveLength(1);
    expect(groupOf(other, "fence-1")).toEqual(["fence-1"]);
    expect(refusalOf(yard, groupElements(["pump-1"])).reason).toMatch(/at least two/);
    expect(groupElements(["pump-1", "fence-1"]).apply(site)).toEqual({ ok: true, site });
  });

  it("are taken apart, copied as groups, and forgotten with what is deleted", () => {
    expect(applied(site, ungroupElements(["pump-1"]))).toEqual(yard);
    expect(refusalOf(yard, ungroupElements(["pump-1"])).reason).toMatch(/in a group/);
    const copied = applied(site, duplicateElements(["pump-1", "fence-1"]));
    expect(copied.arrangement?.groups).toHaveLength(2);
    expect(copied.arrangement?.groups?.[1]?.elements).toEqual(copied.elements.slice(-2).map(({ id }) => id));
    expect(applied(site, duplicateElements(["pump-1"])).arrangement?.groups).toHaveLength(1);
    expect(applied(site, deleteElements(["pump-1"])).arrangement).toBeUndefined();
  });
});

describe("what is hidden, locked or grouped", () => {
  it("is judged as before, in every demo, and no recorded answer lapses", () => {
    for (const { name, site } of DEMO_SITES) {
      const ids = site.elements.map(({ id }) => id);
      const [half, rest] = [ids.filter((_, i) => i % 2 === 0), ids.filter((_, i) => i % 2 === 1)];
      let arranged = applied(site, setHidden(half, true));
      arranged = applied(arranged, setLocked(rest, true));
      if (ids.length > 1) arranged = applied(arranged, groupElements(ids));
      expect([...hiddenIds(arranged)], name).toEqual(half);
      expect(recompute(arranged), name).toEqual(recompute(site));
      for (const id of ids) {
        expect(printOf(arranged, "nec-2020", id, null)).toBe(printOf(site, "nec-2020", id, null));
      }
    }
  });

  it("is kept by the file, with whatever else stands there; ids of nothing are passed over", () => {
    const arrangement = {
      locked: ["fence-1", "nobody-7"],
      groups: [{ name: "north", elements: ["a"], color: 3 }],
      more: [1],
    };
    const site = { ...yard, arrangement };
    const read = readSite(writeSite(site));
    if (!read.ok) throw new Error(read.refusal.message);
    expect(read.site.arrangement).toEqual(arrangement);
    expect(applied(site, setHidden(["pump-1"], true)).arrangement).toEqual({ ...arrangement, hidden: ["pump-1"] });
    const broken = readSite(writeSite({ ...yard, arrangement: { locked: "all" } } as never));
    expect(broken.ok).toBe(false);
    // A new element is never locked by an old name.
    expect(newId({ ...yard, arrangement: { locked: ["fence-99"] } }, "fence")).toBe("fence-100");
    const dimension = { id: "dimension-1", from: { element: "fence-120", at: [0, 0] }, to: { at: [9, 9] }, offset: 0 };
    expect(newId({ ...yard, dimensions: [dimension as never] }, "fence")).toBe("fence-121");
  });
});
