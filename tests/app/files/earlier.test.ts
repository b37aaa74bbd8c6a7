/** Earlier copies, full storage, moves under way, and files that changed on disk. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { addElement } from "../../../app/edits/add-element.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { draft } from "../../../app/edits/templates.ts";
import { EARLIER_EVERY } from "../../../app/files/keeping.ts";
import { MOST_EARLIER, surplus } from "../../../app/files/kept-records.ts";
import { underWay, withUnderWay } from "../../../app/files/under-way.ts";
import type { Site } from "../../../rules/site/site.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { type Machine, MemoryFile, machine, type Page, page, problem } from "./bench-files.ts";

async function started(on: Machine): Promise<Page> {
  const loaded = page(on);
  await loaded.files.start();
  await loaded.files.settled();
  return loaded;
}

const nudge = async (loaded: Page) => {
  loaded.document.getState().edit(moveElements(["pump-1"], 1, 0));
  await loaded.files.settled();
};
const movesKept = (on: Machine) => [...on.store.values.keys()].filter((key) => key.startsWith("under-way/"));
const at = (loaded: Page) => field(loaded.document.getState().shown, "pump-1", "at");

describe("earlier copies", () => {
  it("are kept as the site was opened and every few minutes, and open as sites of their own", async () => {
    const on = machine();
    const loaded = await started(on);
    await nudge(loaded);
    await nudge(loaded);
    expect(await loaded.files.earlierCopies()).toHaveLength(1);
    on.clock += EARLIER_EVERY;
    await nudge(loaded);
    const id = loaded.files.recordId();
    const earlier = await loaded.files.earlierCopies();
    expect(earlier.map((copy) => copy.id)).toEqual([id, id]);
    expect(await loaded.files.openCopy(id, earlier[0]?.at)).toBe(true);
    expect(at(loaded)).toEqual([522, 220]);
    expect(loaded.files.recordId()).not.toBe(id);
    expect(loaded.files.hasUnsavedChanges()).toBe(true);
    expect(await loaded.files.openCopy(id, earlier[1]?.at)).toBe(true);
    expect(at(loaded)).toEqual([520, 220]);
    expect(await loaded.files.openCopy(id)).toBe(true);
    expect(at(loaded)).toEqual([523, 220]);
    expect(await loaded.files.openCopy(id, 7)).toBe(false);
  });

  it("stay when the site makes way for another, and go with it when it is forgotten", async () => {
    const on = machine();
    const loaded = await started(on);
    const id = loaded.files.recordId();
    await nudge(loaded);
    loaded.document.getState().undo();
    loaded.files.newSite();
    await loaded.files.settled();
    expect((await loaded.files.copies()).map((copy) => copy.id)).toEqual([id]);
    await loaded.files.forgetCopy(id);
    expect(await loaded.files.copies()).toEqual([]);
    expect(await loaded.files.earlierCopies()).toEqual([]);
  });

  it("are as many as there is use for: the newest and the oldest stay, and the rest spread", () => {
    expect(surplus([5, 4, 3], 12)).toEqual([]);
    // Of 1, 2 ... 40 minutes ago twelve remain, closer together the nearer they are.
    const times = Array.from({ length: 40 }, (_, i) => 1e6 - i * 60_000);
    const gone = new Set(surplus(times, MOST_EARLIER));
    const kept = times.filter((time) => !gone.has(time));
    expect(kept).toHaveLength(MOST_EARLIER);
    expect(kept[0]).toBe(times[0]);
    expect(kept.at(-1)).toBe(times.at(-1));
    const gaps = kept.slice(1).map((time, i) => (kept[i] ?? 0) - time);
    expect(gaps[0]).toBe(60_000);
    expect(Math.max(...gaps.slice(0, 3))).toBeLessThan(Math.min(...gaps.slice(-2)));
  });

  it("stand in for a copy that cannot be read", async () => {
    const on = machine();
    const loaded = await started(on);
    await nudge(loaded);
    const key = `site/${loaded.files.recordId()}`;
    on.store.values.set(key, { ...(on.store.values.get(key) as object), text: '{"format":' });
    const again = await started(on);
    expect(at(again)).toEqual([520, 220]);
    expect(again.said()).toMatchObject({
      kind: "problem",
      ways: ["gallery"],
      text: expect.stringMatching(/last good one, of /),
    });
    expect((await again.files.copies()).map(({ broken }) => broken)).toEqual([expect.stringMatching(/not JSON/)]);
  });

  it("make room where the storage is full, the older half first", async () => {
    const on = machine();
    const loaded = await started(on);
    for (let i = 0; i < 4; i++) {
      await nudge(loaded);
      on.clock += EARLIER_EVERY;
    }
    const before = await loaded.files.earlierCopies();
    expect(before).toHaveLength(4);
    const { update } = on.store;
    let refusals = 1;
    on.store.update = async (key, change) => {
      if (refusals-- > 0) throw problem("QuotaExceededError");
      return update(key, change);
    };
    on.clock -= EARLIER_EVERY;
    await nudge(loaded);
    expect(loaded.files.state.getState().keeping).toEqual({ state: "kept" });
    expect(await loaded.files.earlierCopies()).toEqual(before.slice(0, 2));
    expect(at(await started(on))).toEqual([525, 220]);
  });

  it("are given up, and the copy itself is kept, where there is room for one only", async () => {
    const on = machine();
    const loaded = await started(on);
    on.store.room = 1;
    await nudge(loaded);
    expect(loaded.files.state.getState().keeping).toEqual({ state: "kept" });
    expect(await loaded.files.earlierCopies()).toEqual([]);
    expect(at(await started(on))).toEqual([521, 220]);
  });
});

describe("a move under way", () => {
  it("comes back as far as it went, as a step that undo takes back", async () => {
    const on = machine();
    const loaded = await started(on);
    await nudge(loaded);
    loaded.document.getState().beginGesture("Move");
    loaded.document.getState().preview(moveElements(["pump-1"], 40, 5));
    await expect.poll(() => movesKept(on)).toHaveLength(1);
    const again = await started(on);
    expect(at(again)).toEqual([561, 225]);
    expect(again.document.getState().history.past.map(({ label }) => label)).toEqual(["Move pump 1"]);
    expect(again.said()?.text).toMatch(/in the middle of a step.*Move pump 1/);
    again.document.getState().undo();
    expect(again.document.getState().shown).toEqual(loaded.document.getState().history.present);
    await again.files.settled();
    const third = await started(on);
    expect(at(third)).toEqual([521, 220]);
    expect(third.said()).toBeNull();
  });

  it.each(["commitGesture", "cancelGesture"] as const)("is forgotten after %s", async (end) => {
    const on = machine();
    const loaded = await started(on);
    loaded.document.getState().beginGesture("Move");
    loaded.document.getState().preview(moveElements(["pump-1"], 40, 5));
    await expect.poll(() => movesKept(on)).toHaveLength(1);
    loaded.document.getState()[end]();
    await loaded.files.settled();
    expect(movesKept(on)).toEqual([]);
    expect(at(await started(on))).toEqual(end === "commitGesture" ? [560, 225] : [520, 220]);
  });

  it("is kept as its difference, whatever it changes", () => {
    const start = sampleYard();
    const added = addElement(
      draft(start, "keep-out", {
        path: {
          vertices: [
            [0, 0],
            [9, 0],
            [9, 9],
          ],
          closed: true,
        },
      }),
    );
    const taken = (site: Site, ...edits: { apply(site: Site): { ok: boolean } }[]) =>
      edits.reduce((now, edit) => {
        const result = edit.apply(now) as { ok: boolean; site: Site };
        expect(result.ok).toBe(true);
        return result.site;
      }, site);
    const all = taken(
      start,
      moveElements(["fence-1"], 3, 0),
      deleteElements(["pump-1"]),
      added,
      setSiteField("name", "New"),
    );
    const kept = structuredClone(underWay(7, "All of it", start, all));
    const ids = kept?.elements.map((element) => (element as { id: string }).id);
    expect(ids).toContain("fence-1");
    expect(ids).not.toContain("deck-1");
    expect(kept?.removed).toEqual(["pump-1"]);
    expect(withUnderWay(structuredClone(start) as Site, 7, kept)).toEqual({ label: "All of it", site: all });
    expect(withUnderWay(start as Site, 8, kept)).toBeNull();
    expect(withUnderWay(start as Site, 7, { ...kept, elements: [{ id: "x", kind: "pool" }] })).toBeNull();
    for (const odd of [undefined, null, 3, {}, { base: 7, label: "x" }])
      expect(withUnderWay(start as Site, 7, odd)).toBeNull();
    expect(underWay(7, "Nothing", start, start)).toBeNull();
  });
});

describe("a file changed on disk", () => {
  async function opened() {
    const on = machine();
    const loaded = await started(on);
    const file = new MemoryFile("mine.site.json", writeSite(sampleYard()));
    on.toOpen = { name: file.name, text: file.content, handle: file };
    await loaded.files.openByPicker();
    await nudge(loaded);
    return { on, loaded, file };
  }
  const other = writeSite({ ...sampleYard(), name: "From elsewhere" });

  it("is not written over before the person says so, and what it held stays as a copy", async () => {
    const { loaded, file } = await opened();
    expect(await loaded.files.save()).toBe(true);
    file.content = other;
    await nudge(loaded);
    expect(await loaded.files.save()).toBe(false);
    expect(file.content).toBe(other);
    expect(loaded.files.state.getState().changedFile).toMatchObject({ name: "mine.site.json", text: other });
    loaded.files.dismissChangedFile();
    expect(await loaded.files.save()).toBe(false);
    expect(await loaded.files.overwriteChangedFile()).toBe(true);
    expect(file.content).toBe(writeSite(loaded.document.getState().shown));
    expect(loaded.files.state.getState().changedFile).toBeNull();
    expect((await loaded.files.copies()).map(({ name }) => name)).toEqual(["From elsewhere"]);
    await nudge(loaded);
    expect(await loaded.files.save()).toBe(true);
  });

  it("is noticed when somebody comes back, once for what it holds, and never without leave to read it", async () => {
    const { on, loaded, file } = await opened();
    const asked = () => loaded.files.state.getState().changedFile;
    expect(await loaded.files.save()).toBe(true);
    expect(await loaded.files.lookAtFile()).toBe(false);
    file.content = other;
    on.mayPeek = false;
    expect(await loaded.files.lookAtFile()).toBe(false);
    on.mayPeek = true;
    loaded.document.getState().beginGesture("Move");
    expect(await loaded.files.lookAtFile()).toBe(false);
    loaded.document.getState().cancelGesture();
    expect(asked()).toBeNull();
    expect(await loaded.files.lookAtFile()).toBe(true);
    expect(asked()).toMatchObject({ name: "mine.site.json", text: other });
    loaded.files.dismissChangedFile();
    expect(await loaded.files.lookAtFile()).toBe(false);
    file.content = writeSite({ ...sampleYard(), name: "Once more" });
    expect(await loaded.files.lookAtFile()).toBe(true);
    expect(asked()?.text).toContain("Once more");
  });

  it("can be opened as it is now, and what was on the sheet stays as a copy", async () => {
    const { loaded, file } = await opened();
    file.content = other;
    expect(await loaded.files.save()).toBe(false);
    expect(await loaded.files.openChangedFile()).toBe(true);
    expect(loaded.document.getState().shown.name).toBe("From elsewhere");
    await loaded.files.settled();
    expect((await loaded.files.copies()).map(({ file: name }) => name)).toEqual(["mine.site.json"]);
    await nudge(loaded);
    expect(await loaded.files.save()).toBe(true);
    expect(file.content).toContain("From elsewhere");
  });

  it("that holds the same as the sheet by now is no matter, and one that is gone is told", async () => {
    const { loaded, file } = await opened();
    file.content = writeSite(loaded.document.getState().shown);
    expect(await loaded.files.save()).toBe(true);
    file.getFile = () => Promise.reject(problem("NotFoundError"));
    expect(await loaded.files.save()).toBe(false);
    expect(loaded.said()).toMatchObject({ ways: ["save-as"], text: expect.stringMatching(/no longer where it was/) });
  });
});
