/** What comes late, after another site was put on the sheet: it may not come to be about that one. Arithmetic. */
import { describe, expect, it } from "vitest";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { sampleYard } from "../edits/yard.ts";
import { type Machine, MemoryFile, machine, type Page, page } from "./bench-files.ts";

/** A promise that is kept when it is opened. */
function gate(): { readonly passed: Promise<void>; open(): void } {
  let open = () => {};
  const passed = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { passed, open: () => open() };
}

/** Lets everything that waits for nothing but its turn go on. */
const arrive = () => new Promise((resolve) => setTimeout(resolve, 5));

async function started(on: Machine, tab = "tab-1"): Promise<Page> {
  const loaded = page(on, tab);
  await loaded.files.start();
  await loaded.files.settled();
  return loaded;
}

const nudge = (loaded: Page) => loaded.document.getState().edit(moveElements(["pump-1"], 1, 0));
const asked = (loaded: Page) => loaded.files.state.getState().changedFile;

async function opened() {
  const on = machine();
  const loaded = await started(on);
  const file = new MemoryFile("mine.site.json", writeSite(sampleYard()));
  on.toOpen = { name: file.name, text: file.content, handle: file };
  await loaded.files.openByPicker();
  nudge(loaded);
  await loaded.files.settled();
  return { on, loaded, file };
}

describe("a file that is slow", () => {
  it("to write is not taken for the file of the site that was opened meanwhile", async () => {
    const { on, loaded, file } = await opened();
    const slow = gate();
    const write = file.createWritable;
    file.createWritable = async () => {
      await slow.passed;
      return write();
    };
    const first = writeSite(loaded.document.getState().shown);
    const saving = loaded.files.save();
    await arrive();
    expect(loaded.files.newSite()).toBe(true);
    slow.open();
    await saving;
    expect(file.content).toBe(first);
    expect(loaded.document.getState().file).toEqual({ name: "", saved: null });
    on.toSave = null;
    expect(await loaded.files.save()).toBe(false);
    expect(file.content).toBe(first);
  });

  it("to read asks nothing about the site that was opened meanwhile, and is not written over with it", async () => {
    const { loaded, file } = await opened();
    const slow = gate();
    file.content = writeSite({ ...sampleYard(), name: "From elsewhere" });
    const text = file.content;
    file.getFile = async () => {
      await slow.passed;
      return { text: async () => text };
    };
    const saving = loaded.files.save();
    await arrive();
    expect(loaded.files.newSite()).toBe(true);
    slow.open();
    expect(await saving).toBe(false);
    expect(asked(loaded)).toBeNull();
    expect(await loaded.files.overwriteChangedFile()).toBe(false);
    expect(file.content).toBe(text);
  });

  it("to be looked at asks nothing either", async () => {
    const { loaded, file } = await opened();
    file.content = writeSite({ ...sampleYard(), name: "From elsewhere" });
    const looking = loaded.files.lookAtFile();
    // It is read at once; its mark takes the machine a turn.
    for (let i = 0; i < 50; i++) await Promise.resolve();
    expect(loaded.files.newSite()).toBe(true);
    expect(await looking).toBe(false);
    expect(asked(loaded)).toBeNull();
  });

  it("to be picked is not given another site than the one that it was picked for", async () => {
    const { on, loaded } = await opened();
    const slow = gate();
    const target = new MemoryFile("new.site.json", "");
    on.toSave = slow.passed.then(() => target) as never;
    const saving = loaded.files.saveAs();
    await arrive();
    expect(loaded.files.newSite()).toBe(true);
    slow.open();
    expect(await saving).toBe(false);
    expect(target.content).toBe("");
    expect(loaded.said()?.text).toMatch(/not saved/);
  });
});

describe("a changed file", () => {
  it("is not written over where what it holds cannot be kept", async () => {
    const { on, loaded, file } = await opened();
    file.content = writeSite({ ...sampleYard(), name: "From elsewhere" });
    const held = file.content;
    expect(await loaded.files.save()).toBe(false);
    on.store.room = on.store.values.size;
    expect(await loaded.files.overwriteChangedFile()).toBe(false);
    expect(file.content).toBe(held);
    expect(asked(loaded)).not.toBeNull();
    expect(loaded.said()).toMatchObject({ kind: "problem", text: expect.stringMatching(/not written over/) });
  });
});

describe("another tab", () => {
  const recordOf = (loaded: Page) => loaded.files.recordId();

  it("that goes on with its site does not draw it on a sheet that shows another by then", async () => {
    const on = machine();
    const one = await started(on, "tab-1");
    nudge(one);
    await one.files.settled();
    const two = await started(on, "tab-2");
    const record = recordOf(two);
    one.document.getState().edit(setSiteField("name", "Of the first tab"));
    await one.files.settled();
    await arrive();
    expect(two.document.getState().shown.name).toBe("Of the first tab");

    const slow = gate();
    const key = `site/${record}`;
    const value = on.store.values.get(key) as { text: string };
    on.store.values.set(key, { ...value, text: value.text.replace("Of the first tab", "Still of the first tab") });
    on.store.silence = slow.passed;
    for (const ear of on.ears.get("tab-2") ?? []) ear({ say: "kept", record });
    expect(two.files.workOnCopy()).toBe(true);
    two.document.getState().edit(setSiteField("name", "Mine"));
    slow.open();
    await arrive();
    await two.files.settled();
    expect(two.document.getState().shown.name).toBe("Mine");
    expect(two.document.getState().locked).toBeNull();
  });

  it("that takes a site over does not take the one that is on the sheet by then", async () => {
    const on = machine();
    const one = await started(on, "tab-1");
    await one.files.settled();
    const slow = gate();
    on.store.silence = slow.passed;
    nudge(one);
    for (const ear of on.ears.get("tab-1") ?? []) ear({ say: "take", record: recordOf(one), by: "tab-2" });
    expect(one.files.newSite()).toBe(true);
    slow.open();
    await one.files.settled();
    await arrive();
    expect(one.files.state.getState().elsewhere).toBeNull();
    expect(one.document.getState().locked).toBeNull();
  });
});
