/** A drawing that is under way when the page goes. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { createDrawingKeeper } from "../../../app/files/kept-drawing.ts";
import { type Machine, MemoryStore, machine, type Page, page, problem } from "./bench-files.ts";

const FENCE = {
  tool: "fence",
  begun: {
    corners: [
      [0, 0],
      [120, 0],
      [120, 60],
    ],
  },
};

async function started(on: Machine, tab = "tab-1"): Promise<Page> {
  const loaded = page(on, tab);
  await loaded.files.start();
  loaded.document.getState().edit(moveElements(["pump-1"], 1, 0));
  await loaded.files.settled();
  return loaded;
}

const kept = (on: Machine) => [...on.store.values.keys()].filter((key) => key.startsWith("drawing/"));

describe("a drawing under way", () => {
  it("comes back as far as it went, on its own site, and says so", async () => {
    const on = machine();
    const loaded = await started(on);
    loaded.files.keepDrawing({ ...FENCE, begun: { corners: [[0, 0]] } });
    loaded.files.keepDrawing(FENCE);
    await expect.poll(() => kept(on)).toEqual([`drawing/${loaded.files.recordId()}`]);
    const again = page(on);
    await again.files.start();
    expect(again.drawings).toEqual([FENCE]);
    expect(again.said()?.text).toMatch(/in the middle of a drawing/);
    // Ended or given up, it is forgotten.
    again.files.keepDrawing(null);
    await expect.poll(() => kept(on)).toEqual([]);
    const third = page(on);
    await third.files.start();
    expect([third.drawings, third.said()]).toEqual([[], null]);
  });

  it("stays with its site when another is opened, and comes back when that is opened from the kept copies", async () => {
    const on = machine();
    const loaded = await started(on);
    const record = loaded.files.recordId();
    loaded.files.keepDrawing(FENCE);
    loaded.files.newSite();
    // The tool lets go of it with the site that it was begun on.
    loaded.files.keepDrawing(null);
    await expect.poll(() => kept(on)).toEqual([`drawing/${record}`]);
    expect(await loaded.files.openCopy(record)).toBe(true);
    expect(loaded.drawings).toEqual([FENCE]);
    expect(loaded.said()?.text).toMatch(/A drawing was under way/);
    loaded.files.keepDrawing(FENCE);
    loaded.files.keepDrawing(null);
    await expect.poll(() => kept(on)).toEqual([]);
    expect(await loaded.files.openCopy(record)).toBe(true);
    expect(loaded.drawings).toHaveLength(1);
  });

  it("keeps the copy of a site on which nothing else was changed, also of a page that went", async () => {
    const on = machine();
    const loaded = page(on);
    await loaded.files.start();
    await loaded.files.settled();
    const record = loaded.files.recordId();
    loaded.files.keepDrawing(FENCE);
    await expect.poll(() => kept(on)).toEqual([`drawing/${record}`]);
    // Another tab, while the first is gone.
    on.running.delete("tab-1");
    const other = page(on, "tab-2");
    other.files.openText(JSON.stringify({ format: "copperband-site", version: 1, elements: [] }), "empty.site.json");
    await other.files.start();
    expect(other.drawings).toEqual([]);
    expect(await other.files.openCopy(record)).toBe(true);
    expect(other.drawings).toEqual([FENCE]);
    other.files.keepDrawing(FENCE);
    other.files.newSite();
    await other.files.settled();
    expect((await other.files.copies()).map(({ id }) => id)).toContain(record);
  });

  it("is taken over with its site by another tab", async () => {
    const on = machine();
    const loaded = await started(on);
    loaded.files.keepDrawing(FENCE);
    await expect.poll(() => kept(on)).toHaveLength(1);
    const second = page(on, "tab-2");
    await second.files.start();
    expect(second.drawings).toEqual([]);
    expect(await second.files.takeOver()).toBe(true);
    expect(second.drawings).toEqual([FENCE]);
  });

  it("is not written once it is ended, nor by a tab that only looks, and goes with its site", async () => {
    const on = machine();
    const loaded = await started(on);
    const writes: string[] = [];
    const { set } = on.store;
    on.store.set = (key, value) => {
      writes.push(key);
      return set(key, value);
    };
    loaded.files.keepDrawing(FENCE);
    loaded.files.keepDrawing(null);
    const second = page(on, "tab-2");
    await second.files.start();
    second.files.keepDrawing(FENCE);
    // What comes later is written: by then the others would have been.
    loaded.files.keepDrawing({ ...FENCE, tool: "wall" });
    await expect.poll(() => kept(on)).toHaveLength(1);
    expect(writes.filter((key) => key.startsWith("drawing/"))).toHaveLength(1);
    expect(on.store.values.get(kept(on)[0] ?? "")).toMatchObject({ tool: "wall" });
    on.running.delete("tab-1");
    second.files.keepDrawing(null);
    second.files.newSite();
    await second.files.settled();
    expect(await second.files.forgetCopy(loaded.files.recordId())).toBeNull();
    expect(kept(on)).toEqual([]);
  });

  it("given up by a tab whose site was taken over stays with that site: it may be the other tab's by now", async () => {
    const store = new MemoryStore();
    let record: string | null = "site-1";
    const drawings = createDrawingKeeper({
      store,
      recordId: () => record,
      tellFailed: () => undefined,
      takeUp: () => false,
    });
    drawings.keep(FENCE);
    await expect.poll(() => store.values.has("drawing/site-1")).toBe(true);
    record = null;
    drawings.keep(null);
    await store.keys();
    expect(store.values.get("drawing/site-1")).toEqual(FENCE);
  });

  it("that is no drawing is passed over, and a store that fails is told", async () => {
    const on = machine();
    const loaded = await started(on);
    const key = `drawing/${loaded.files.recordId()}`;
    for (const odd of [7, null, { tool: 3, begun: {} }, { tool: "fence", begun: null }]) {
      on.store.values.set(key, odd);
      const again = page(on);
      await again.files.start();
      expect([again.drawings, again.said()]).toEqual([[], null]);
    }
    const last = page(on);
    await last.files.start();
    on.store.failure = problem("QuotaExceededError");
    last.files.keepDrawing(FENCE);
    await expect.poll(() => last.files.state.getState().keeping).toMatchObject({ state: "failed" });
  });
});
