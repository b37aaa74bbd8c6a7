/** Two tabs on one site: neither writes over what the other did. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { type Machine, MemoryFile, machine, type Page, page } from "./bench-files.ts";

async function started(on: Machine, tab: string): Promise<Page> {
  const loaded = page(on, tab);
  await loaded.files.start();
  await loaded.files.settled();
  return loaded;
}

const nudge = (loaded: Page) => loaded.document.getState().edit(moveElements(["pump-1"], 1, 0));
const at = (loaded: Page) => field(loaded.document.getState().shown, "pump-1", "at");
const elsewhere = (loaded: Page) => loaded.files.state.getState().elsewhere;
const keys = (on: Machine) => [...on.store.values.keys()].filter((key) => key.startsWith("site/"));
/** Lets what tabs say to each other arrive and be acted on. */
const arrive = () => new Promise((resolve) => setTimeout(resolve, 5));

async function twoTabs() {
  const on = machine();
  const one = await started(on, "tab-1");
  nudge(one);
  await one.files.settled();
  const two = await started(on, "tab-2");
  return { on, one, two };
}

describe("a second tab", () => {
  it("shows the site of the first, says so, and changes nothing", async () => {
    const { on, one, two } = await twoTabs();
    expect(two.document.getState().shown).toEqual(one.document.getState().shown);
    expect(elsewhere(two)).toEqual({ how: "open", isDecided: false });
    expect(nudge(two)?.reason).toMatch(/open in another tab/);
    expect(at(two)).toEqual([521, 220]);
    expect(await two.files.save()).toBe(false);
    expect(two.files.hasUnsavedChanges()).toBe(false);
    await two.files.settled();
    expect(keys(on)).toHaveLength(1);
    two.files.lookOnly();
    expect(elsewhere(two)).toEqual({ how: "open", isDecided: true });
    expect(elsewhere(one)).toBeNull();
  });

  it("that looks only follows what the first does", async () => {
    const { one, two } = await twoTabs();
    two.files.lookOnly();
    nudge(one);
    await one.files.settled();
    await arrive();
    expect(at(two)).toEqual([522, 220]);
    expect(nudge(two)?.reason).toMatch(/open in another tab/);
    expect(elsewhere(two)).toEqual({ how: "open", isDecided: true });
  });

  it("does not delete the copy that the first goes by", async () => {
    const { on, two } = await twoTabs();
    const [id = ""] = keys(on).map((key) => key.slice("site/".length));
    two.files.newSite();
    await two.files.settled();
    expect((await two.files.copies()).map((copy) => copy.id)).toContain(id);
    expect(await two.files.forgetCopy(id)).toMatch(/is open in another tab.*Close it there first/);
    expect(keys(on)).toContain(`site/${id}`);
    on.running.delete("tab-1");
    expect(await two.files.forgetCopy(id)).toBeNull();
    expect(keys(on)).not.toContain(`site/${id}`);
  });

  it("can take the site over, with all that was done in the first, which from then on only looks", async () => {
    const { on, one, two } = await twoTabs();
    one.document.getState().beginGesture("Move");
    one.document.getState().preview(moveElements(["pump-1"], 10, 0));
    expect(await two.files.takeOver()).toBe(true);
    expect(at(two)).toEqual([531, 220]);
    expect(elsewhere(two)).toBeNull();
    expect(elsewhere(one)).toEqual({ how: "taken", isDecided: false });
    expect(one.said()?.text).toMatch(/taken over by another tab/);
    expect(nudge(one)?.reason).toMatch(/open in another tab/);
    expect(nudge(two)).toBeNull();
    await two.files.settled();
    await arrive();
    expect(at(one)).toEqual([532, 220]);
    expect(keys(on)).toHaveLength(1);
    expect(await one.files.takeOver()).toBe(true);
    expect(nudge(one)).toBeNull();
    expect(elsewhere(two)?.how).toBe("taken");
  });

  it("that takes over from one that does not hear is safe from what that one still writes", async () => {
    const { on, one, two } = await twoTabs();
    on.ears.get("tab-1")?.splice(0);
    expect(await two.files.takeOver()).toBe(true);
    nudge(two);
    await two.files.settled();
    one.document.getState().edit(setSiteField("name", "Late"));
    await one.files.settled();
    expect(JSON.stringify([...on.store.values.values()])).not.toContain("Late");
    expect(elsewhere(one)?.how).toBe("taken");
    on.running.clear();
    expect(at(await started(on, "tab-2"))).toEqual([522, 220]);
  });

  it("can go on with a copy of its own", async () => {
    const { on, one, two } = await twoTabs();
    expect(two.files.workOnCopy()).toBe(true);
    expect(elsewhere(two)).toBeNull();
    two.document.getState().edit(setSiteField("name", "Two"));
    nudge(one);
    await Promise.all([one.files.settled(), two.files.settled()]);
    expect(keys(on)).toHaveLength(2);
    on.running.clear();
    expect((await started(on, "tab-1")).document.getState().shown.name).not.toBe("Two");
    expect((await started(on, "tab-2")).document.getState().shown.name).toBe("Two");
  });

  it("that opens the file which the first has open looks at it as it stands there", async () => {
    const on = machine();
    const one = await started(on, "tab-1");
    const file = new MemoryFile("mine.site.json", writeSite(sampleYard()));
    on.toOpen = { name: file.name, text: file.content, handle: file };
    await one.files.openByPicker();
    nudge(one);
    await one.files.settled();
    // The store of a browser takes its own handles only; here it is put in by hand.
    const [key = ""] = keys(on);
    const record = on.store.values.get(key) as object;
    on.store.values.set(key, { ...record, handle: null });
    const two = await started(on, "tab-2");
    two.files.newSite();
    const clone = on.store.get;
    on.store.get = async (name) =>
      name === key ? { ...(on.store.values.get(key) as object), handle: file } : clone(name);
    await two.files.openByPicker();
    expect(at(two)).toEqual([521, 220]);
    expect(elsewhere(two)?.how).toBe("open");
  });

  it("finds what a closed one left, goes on with it, and leaves no second copy", async () => {
    const on = machine();
    nudge(await started(on, "tab-1"));
    await arrive();
    on.running.delete("tab-1");
    const next = await started(on, "tab-9");
    expect(elsewhere(next)).toBeNull();
    nudge(next);
    await next.files.settled();
    expect(at(next)).toEqual([522, 220]);
    expect(keys(on)).toHaveLength(1);
  });

  it("and a third that start at once after a crash do not both take the same site", async () => {
    const on = machine();
    nudge(await started(on, "tab-1"));
    await arrive();
    on.running.delete("tab-1");
    const both = await Promise.all([started(on, "tab-2"), started(on, "tab-3")]);
    expect(both.filter((one) => elsewhere(one) !== null)).toHaveLength(1);
    expect(keys(on)).toHaveLength(1);
  });
});
