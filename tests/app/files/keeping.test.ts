/** Copies kept in the browser and found again. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { type Machine, MemoryFile, machine, type Page, page, problem } from "./bench-files.ts";

const TEXT = writeSite(sampleYard());

/** A page loaded in a tab after whatever ran in it is gone. */
async function started(on: Machine, tab?: string): Promise<Page> {
  const loaded = page(on, tab);
  await loaded.files.start();
  await loaded.files.settled();
  return loaded;
}

const nudge = (loaded: Page) => loaded.document.getState().edit(moveElements(["pump-1"], 1, 0));
/** The names of the copies as they are now, without earlier ones. */
const keys = (on: Machine) => [...on.store.values.keys()].filter((key) => key.startsWith("site/")).sort();

describe("a copy", () => {
  it("is kept at every step, of undo too, and found again after a reload", async () => {
    const on = machine();
    const before = await started(on);
    for (let i = 1; i <= 3; i++) {
      nudge(before);
      await before.files.settled();
      expect(JSON.stringify([...on.store.values.values()])).toContain(`[${520 + i}, 220]`);
    }
    before.document.getState().undo();
    await before.files.settled();
    const again = page(on);
    expect(await again.files.start()).toBe("kept");
    expect(again.document.getState().shown).toEqual(before.document.getState().shown);
    expect(field(again.document.getState().shown, "pump-1", "at")).toEqual([522, 220]);
    expect(again.files.hasUnsavedChanges()).toBe(true);
    await again.files.settled();
    expect(keys(on)).toHaveLength(1);
  });

  it("is not written while a gesture runs, and once when it ends", async () => {
    const on = machine();
    const loaded = await started(on);
    const before = on.store.writes;
    loaded.document.getState().beginGesture("Move");
    for (let i = 1; i <= 20; i++) loaded.document.getState().preview(moveElements(["pump-1"], i, 0));
    await loaded.files.settled();
    expect(on.store.writes).toBe(before);
    loaded.document.getState().commitGesture();
    await loaded.files.settled();
    expect(on.store.writes).toBe(before + 1);
  });

  it("of many quick steps is the newest, without writing each", async () => {
    const on = machine();
    const loaded = await started(on);
    const before = on.store.writes;
    for (let i = 0; i < 50; i++) nudge(loaded);
    await loaded.files.settled();
    expect(on.store.writes - before).toBeLessThanOrEqual(2);
    expect(JSON.stringify([...on.store.values.values()])).toContain("[570, 220]");
  });

  it("remembers its file and whether that holds the same", async () => {
    const on = machine();
    const loaded = await started(on);
    nudge(loaded);
    on.toSave = new MemoryFile("mine.site.json", "");
    await loaded.files.save();
    await loaded.files.settled();
    const again = await started(on);
    expect(again.document.getState().file.name).toBe("mine.site.json");
    expect(again.files.hasUnsavedChanges()).toBe(false);
    nudge(again);
    await again.files.settled();
    expect((await started(on)).files.hasUnsavedChanges()).toBe(true);
  });

  it("of a demo that was only looked at gives way; one with unsaved changes stays, and opens again", async () => {
    const on = machine();
    const loaded = await started(on);
    loaded.files.openText(TEXT, "a.site.json");
    await loaded.files.settled();
    expect(keys(on)).toHaveLength(1);
    loaded.document.getState().edit(setSiteField("name", "Changed yard"));
    loaded.files.newSite();
    await loaded.files.settled();
    expect(keys(on)).toHaveLength(2);
    const [copy] = await loaded.files.copies();
    expect(copy).toMatchObject({ name: "Changed yard", file: "a.site.json", broken: null });
    expect(await loaded.files.openCopy(copy?.id ?? "")).toBe(true);
    expect(loaded.document.getState().shown.name).toBe("Changed yard");
    expect(loaded.files.hasUnsavedChanges()).toBe(true);
    await loaded.files.settled();
    expect(keys(on)).toHaveLength(1);
    expect(await loaded.files.copies()).toEqual([]);
  });

  it("that is forgotten is gone", async () => {
    const on = machine();
    const loaded = await started(on);
    nudge(loaded);
    loaded.files.newSite();
    await loaded.files.settled();
    const [copy] = await loaded.files.copies();
    await loaded.files.forgetCopy(copy?.id ?? "");
    expect(await loaded.files.copies()).toEqual([]);
    expect(await loaded.files.openCopy(copy?.id ?? "")).toBe(false);
  });
});

describe("a copy that cannot be read", () => {
  it("is set aside, told, and can be had as it was; the one before it opens", async () => {
    const on = machine();
    const loaded = await started(on);
    nudge(loaded);
    await loaded.files.settled();
    const broken = {
      id: "broken",
      tab: "tab-1",
      name: "",
      file: "",
      text: TEXT.slice(0, 200),
      saved: false,
      changed: true,
      at: 1e9,
    };
    on.store.values.set("site/broken", broken);
    on.store.values.set("site/odd", "no record at all");
    const again = await started(on);
    expect(field(again.document.getState().shown, "pump-1", "at")).toEqual([521, 220]);
    expect(again.said()).toMatchObject({ kind: "problem", text: expect.stringMatching(/set aside/) });
    expect(on.store.values.get("set-aside/broken")).toEqual(broken);
    expect(on.store.values.get("set-aside/odd")).toBe("no record at all");
    expect((await again.files.copies()).find(({ id }) => id === "broken")?.broken).toMatch(/not JSON/);
    expect(await again.files.downloadCopy("broken")).toBe(true);
    expect(on.downloads).toEqual([{ name: "kept-copy-broken.site.json", text: TEXT.slice(0, 200) }]);
    expect(await again.files.openCopy("broken")).toBe(false);
    expect(again.files.state.getState().refused?.refusal.code).toBe("not-json");
  });

  it("and is the only one leaves the first demo on the sheet", async () => {
    const on = machine();
    on.store.values.set("site/broken", { id: "broken", tab: "x", text: "{", at: 1 });
    const loaded = page(on);
    expect(await loaded.files.start()).toBe("demo");
    expect(on.store.values.has("set-aside/broken")).toBe(true);
    expect(loaded.said()?.kind).toBe("problem");
  });
});

describe("a store that fails", () => {
  it.each([
    ["QuotaExceededError", /storage is full/],
    ["SecurityError", /keeps no copies/],
    ["DataError", /could be kept in the browser \(It failed\.\)/],
  ])("with %s is told once, in plain words, and tried again at the next step", async (name, words) => {
    const on = machine();
    const loaded = await started(on);
    on.store.failure = problem(name);
    nudge(loaded);
    await loaded.files.settled();
    expect(loaded.said()).toMatchObject({ kind: "problem", text: expect.stringMatching(words) });
    expect(loaded.files.state.getState().keeping).toMatchObject({ state: "failed" });
    loaded.view.getState().unsay();
    nudge(loaded);
    await loaded.files.settled();
    expect(loaded.said()).toBeNull();
    on.store.failure = null;
    nudge(loaded);
    await loaded.files.settled();
    expect(loaded.said()?.text).toMatch(/being kept .* again/);
    expect(loaded.files.state.getState().keeping).toEqual({ state: "kept" });
    expect(field((await started(on)).document.getState().shown, "pump-1", "at")).toEqual([523, 220]);
  });

  it("at the start still opens the demo, and works on", async () => {
    const on = machine();
    on.store.failure = problem("InvalidStateError");
    const loaded = page(on);
    expect(await loaded.files.start()).toBe("demo");
    await loaded.files.settled();
    expect(loaded.said()?.text).toMatch(/keeps no copies/);
    expect(loaded.document.getState().shown.elements.length).toBeGreaterThan(0);
    expect(await loaded.files.copies()).toEqual([]);
  });

  it("makes it ask before changes would be lost, and not otherwise", async () => {
    const on = machine();
    const loaded = await started(on);
    on.store.failure = problem("QuotaExceededError");
    nudge(loaded);
    await loaded.files.settled();
    expect(loaded.files.atRisk()).toBe(true);
    expect(loaded.files.newSite()).toBe(false);
    expect(on.questions).toHaveLength(1);
    expect(field(loaded.document.getState().shown, "pump-1", "at")).toEqual([521, 220]);
    on.agrees = true;
    expect(loaded.files.newSite()).toBe(true);
    expect(loaded.files.atRisk()).toBe(false);
    expect(loaded.files.newSite()).toBe(true);
    expect(on.questions).toHaveLength(2);
  });
});
