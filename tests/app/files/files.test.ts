/** Opening and saving. Expectations are arithmetic. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { copyName, fileNameFor, stemOf } from "../../../app/files/file-name.ts";
import { readSite } from "../../../rules/site/reader.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { MemoryFile, machine, page, problem } from "./bench-files.ts";

const TEXT = writeSite(sampleYard());

describe("a demo that does not load", () => {
  it("says so, in the list of demos and when it is opened, and leaves the sheet as it is", async () => {
    const { files, document, said } = page(machine(), "tab-1", "unreachable");
    expect(await files.demos()).toEqual([]);
    expect(said()).toMatchObject({ kind: "problem", text: "The demo sites could not be loaded: no network." });
    const { shown } = document.getState();
    expect(await files.openDemo("first")).toBe(false);
    expect(said()?.text).toBe("The demo sites could not be loaded: no network.");
    expect(document.getState().shown).toBe(shown);
  });
});

describe("opening", () => {
  it("starts with the first demo, and keeps the sheet empty when there is none", async () => {
    const one = page(machine());
    expect(await one.files.start()).toBe("demo");
    expect(one.document.getState().shown).toEqual(sampleYard());
    expect(one.document.getState().file).toEqual({ name: "", saved: null });
    expect(one.opened()).toBe(1);
    const none = page(machine(), "tab-1", []);
    expect(await none.files.start()).toBe("empty");
    expect(none.said()).toMatchObject({ kind: "problem" });
    expect(none.document.getState().shown.elements).toEqual([]);
  });

  it("a text puts it on the sheet with a fresh history and nothing chosen", async () => {
    const { files, document, view } = page(machine());
    await files.start();
    document.getState().edit(moveElements(["pump-1"], 1, 0));
    view.getState().select(["pump-1"]);
    view.getState().setTool("fence");
    expect(files.openText(TEXT, "yard.site.json")).toBe(true);
    expect(document.getState().history.past).toEqual([]);
    expect(document.getState().file.name).toBe("yard.site.json");
    expect(files.hasUnsavedChanges()).toBe(false);
    expect(view.getState()).toMatchObject({ selection: [], tool: "select", part: null, finding: null });
  });

  it("a text leaves nothing of the view that was about the site before: no form, no pool to reshape, no lit copper", async () => {
    const { files, view } = page(machine());
    await files.start();
    const at = [0, 0] as const;
    const sizes = { length: 384, width: 192, radius: 0 };
    const now = view.getState();
    now.reshapePool({
      id: "pool-1",
      shape: "rectangle",
      sizes,
      at,
      turn: 0,
      isMirrored: false,
      first: 0,
      isClockwise: false,
    });
    now.setArranging("move-by");
    now.foresee([{ at: [1, 2] }]);
    now.setHighlight("ring");
    expect(files.openText(TEXT, "yard.site.json")).toBe(true);
    expect(view.getState()).toMatchObject({ reshaping: null, arranging: null, foreseen: [], highlight: null });
  });

  it.each([
    ["{", "not-json"],
    ['{"format":"something-else"}', "not-a-site"],
    ['{"format":"copperband-site","version":99,"elements":[]}', "too-new"],
    [
      '{"format":"copperband-site","version":1,"elements":[{"id":"f","kind":"fence","path":{"vertices":[[0,0]],"closed":false}}]}',
      "invalid",
    ],
  ])("a text that is no site changes nothing and is told: %s", async (text, code) => {
    const { files, document, said } = page(machine());
    await files.start();
    document.getState().edit(moveElements(["pump-1"], 1, 0));
    const before = document.getState();
    expect(files.openText(text, "bad.site.json")).toBe(false);
    expect(document.getState()).toBe(before);
    expect(files.state.getState().refused).toMatchObject({ file: "bad.site.json", refusal: { code } });
    // The window that tells of it stays until it is read: it is not told twice.
    expect(said()).toBeNull();
    if (code === "invalid") {
      expect(files.state.getState().refused?.refusal.problems[0]).toMatchObject({
        element: "f",
        field: "path.vertices",
        expected: "at least 2 vertices",
      });
    }
    files.dismissRefusal();
    expect(files.state.getState().refused).toBeNull();
  });

  it("an older version brings it up and counts it as changed", async () => {
    const on = machine();
    const { files, said } = page(on);
    await files.start();
    const old = readFileSync(new URL("../../fixtures/sites/version-0.site.json", import.meta.url), "utf8");
    expect(files.openText(old, "old.site.json")).toBe(true);
    expect(said()?.text).toMatch(/from version 0/);
    expect(files.hasUnsavedChanges()).toBe(true);
  });

  it("by picker, by drop and from the gallery; a cancel is no problem, a failure is told", async () => {
    const on = machine();
    const { files, said, document } = page(on);
    await files.start();
    document.getState().edit(moveElements(["pump-1"], 1, 0));
    const before = document.getState().history;
    expect(await files.openByPicker()).toBe(false);
    expect(said()).toBeNull();
    on.pickFailure = problem("NotAllowedError", "Not now.");
    expect(await files.openByPicker()).toBe(false);
    expect(said()?.text).toBe("The file could not be read: Not now.");
    expect(document.getState().history).toBe(before);
    on.pickFailure = null;
    on.toOpen = { name: "picked.site.json", text: TEXT, handle: null };
    expect(await files.openByPicker()).toBe(true);
    expect(await files.openFile({ name: "dropped.site.json", text: async () => TEXT })).toBe(true);
    expect(document.getState().file.name).toBe("dropped.site.json");
    expect(await files.openFile({ name: "x", text: () => Promise.reject(problem("NotFoundError", "Gone")) })).toBe(
      false,
    );
    expect(said()?.text).toBe("x could not be read: Gone.");
    expect((await files.demos()).map(({ id }) => id)).toEqual(["first"]);
    expect(await files.openDemo("none")).toBe(false);
  });

  it("a new sheet is empty, and a site file already", async () => {
    const { files, document } = page(machine());
    await files.start();
    expect(files.newSite()).toBe(true);
    expect(document.getState().shown).toEqual(emptySite());
    expect(readSite(writeSite(emptySite()))).toMatchObject({ ok: true });
    expect(files.hasUnsavedChanges()).toBe(false);
  });
});

describe("saving", () => {
  it("asks for a file once, then writes the same one, and the text reads back as the same site", async () => {
    const on = machine();
    const { files, document, said } = page(on);
    await files.start();
    document.getState().edit(moveElements(["pump-1"], 1, 0));
    expect(files.hasUnsavedChanges()).toBe(true);
    on.toSave = new MemoryFile("mine.site.json", "");
    expect(await files.save()).toBe(true);
    expect(said()?.text).toBe("Saved to mine.site.json.");
    expect(files.hasUnsavedChanges()).toBe(false);
    const file = on.toSave;
    on.toSave = null;
    document.getState().edit(moveElements(["pump-1"], 1, 0));
    expect(await files.save()).toBe(true);
    const read = readSite(file.content);
    expect(read.ok && read.site).toEqual(document.getState().shown);
    expect(read.ok && field(read.site, "pump-1", "at")).toEqual([522, 220]);
    document.getState().undo();
    expect(files.hasUnsavedChanges()).toBe(true);
    document.getState().redo();
    expect(files.hasUnsavedChanges()).toBe(false);
  });

  it("writes back to the file that was opened", async () => {
    const on = machine();
    const { files, document } = page(on);
    await files.start();
    const file = new MemoryFile("mine.site.json", TEXT);
    on.toOpen = { name: file.name, text: TEXT, handle: file };
    await files.openByPicker();
    document.getState().edit(setSiteField("name", "Alder Court 3"));
    expect(await files.save()).toBe(true);
    expect(file.content).toContain('"Alder Court 3"');
    files.newSite();
    expect(await files.save()).toBe(false);
    expect(file.content).toContain('"Alder Court 3"');
  });

  it("that is cancelled or fails leaves everything unsaved and as it is", async () => {
    const on = machine();
    const { files, document, said } = page(on);
    await files.start();
    document.getState().edit(moveElements(["pump-1"], 1, 0));
    expect(await files.saveAs()).toBe(false);
    expect(said()).toBeNull();
    on.toSave = new MemoryFile("mine.site.json", "old");
    on.toSave.failure = problem("QuotaExceededError", "The disk is full.");
    expect(await files.save()).toBe(false);
    expect(said()).toMatchObject({
      kind: "problem",
      text: "mine.site.json could not be written: The disk is full. Nothing is lost; save it as another file.",
    });
    expect(on.toSave.content).toBe("old");
    expect(files.hasUnsavedChanges()).toBe(true);
    on.pickFailure = problem("SecurityError", "Not here");
    expect(await files.saveAs()).toBe(false);
    expect(said()?.text).toBe("The site could not be saved: Not here.");
  });

  it("downloads where the browser has no picker, under the site's own name", async () => {
    const on = machine();
    on.canPick = false;
    const { files, document } = page(on);
    await files.start();
    document.getState().edit(setSiteField("name", "Alder Court 3"));
    expect(await files.save()).toBe(true);
    expect(on.downloads.map(({ name }) => name)).toEqual(["alder-court-3.site.json"]);
    expect(on.downloads[0]?.text).toBe(writeSite(document.getState().shown));
    expect(files.hasUnsavedChanges()).toBe(false);
  });
});

describe("file names", () => {
  it.each([
    ["Quarry Lane 14", "quarry-lane-14.site.json"],
    ["Café Zürich / Süd", "cafe-zurich-sud.site.json"],
    ["../../etc", "etc.site.json"],
    ["  ", "untitled.site.json"],
    ["x".repeat(500), `${"x".repeat(80)}.site.json`],
  ])("%j goes to %s", (name, file) => {
    expect(fileNameFor({ ...emptySite(), name })).toBe(file);
  });

  it("lose their ending for titles", () => {
    expect(stemOf("a.site.json")).toBe("a");
    expect(stemOf("a.b.json")).toBe("a.b");
  });
});

describe("duplicating the site", () => {
  it("goes on with a copy of its own name, and keeps the site that it was made from as it was", async () => {
    const on = machine();
    const { files, document, said } = page(on);
    await files.start();
    document.getState().edit(setSiteField("name", "Quarry"));
    await files.settled();
    const before = document.getState().shown;
    expect(await files.duplicateSite()).toBe(true);
    await files.settled();
    expect(document.getState().shown).toEqual({ ...before, name: "Quarry, copy" });
    expect(document.getState().history.past).toEqual([]);
    expect(files.hasUnsavedChanges()).toBe(true);
    expect(said()?.text).toContain("kept as “Quarry, copy”");
    document.getState().edit(moveElements(["pump-1"], 9, 0));
    await files.settled();
    // The copy of a copy is called apart from both.
    expect(await files.duplicateSite()).toBe(true);
    await files.settled();
    expect(document.getState().shown.name).toBe("Quarry, copy 2");
    const copies = await files.copies();
    expect(copies.map(({ name }) => name).sort()).toEqual(["Quarry", "Quarry, copy"]);
    const original = copies.find(({ name }) => name === "Quarry");
    await files.openCopy(original?.id ?? "");
    expect(document.getState().shown).toEqual(before);
  });

  it("names that are copies already are counted on", () => {
    expect(copyName("", new Set())).toBe("Copy");
    expect(copyName("Copy", new Set(["Copy"]))).toBe("Copy 2");
    expect(copyName("Photocopy", new Set())).toBe("Photocopy, copy");
    expect(copyName("A, copy 3", new Set(["A, copy"]))).toBe("A, copy 2");
  });
});
