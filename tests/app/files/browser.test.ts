// @vitest-environment happy-dom
/** What meets the browser itself: the gallery, drops, leaving, pickers, tab ids. Expectations are arithmetic. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { browserFiles } from "../../../app/files/file-access.ts";
import { demoIds, FIRST_DEMO, loadDemo, loadDemos } from "../../../app/files/gallery.ts";
import { acceptDrops, guardLeaving } from "../../../app/files/page-window.ts";
import { browserTab, randomId } from "../../../app/files/tab.ts";
import { readSite } from "../../../rules/site/reader.ts";
import { MemoryFile, problem } from "./bench-files.ts";

describe("the gallery", () => {
  it("holds every demo, readable and with a title, the first one first", async () => {
    const demos = await loadDemos();
    expect(demos.map(({ id }) => id)).toEqual(demoIds());
    expect(demos[0]?.id).toBe(FIRST_DEMO);
    expect(demos.length).toBeGreaterThan(2);
    for (const { id, title, text } of demos) {
      expect([id, readSite(text).ok, title.trim() !== ""]).toEqual([id, true, true]);
    }
    expect(await loadDemo("none")).toBeNull();
  });
});

describe("a drop", () => {
  function drag(type: string, files: { name: string }[] | null): Event {
    const event = new Event(type, { bubbles: true, cancelable: true });
    Object.assign(event, {
      dataTransfer: { types: files ? ["Files"] : ["text/plain"], files: files ?? [], dropEffect: "none" },
      relatedTarget: null,
    });
    return event;
  }

  it("opens the site file among what is dropped, and leaves other drags alone", () => {
    const opened: string[] = [];
    const over: boolean[] = [];
    const files = {
      openFile: async ({ name }: { name: string }) => {
        opened.push(name);
        return true;
      },
    };
    const stop = acceptDrops(window, files, (is) => over.push(is));
    const hover = drag("dragover", [{ name: "x" }]);
    window.dispatchEvent(hover);
    expect(hover.defaultPrevented).toBe(true);
    window.dispatchEvent(drag("drop", [{ name: "plan.pdf" }, { name: "yard.site.json" }]));
    window.dispatchEvent(drag("dragover", [{ name: "x" }]));
    window.dispatchEvent(drag("dragleave", [{ name: "x" }]));
    expect(over).toEqual([true, false, true, false]);
    const text = drag("drop", null);
    window.dispatchEvent(text);
    expect(text.defaultPrevented).toBe(false);
    stop();
    window.dispatchEvent(drag("drop", [{ name: "late.site.json" }]));
    expect(opened).toEqual(["yard.site.json"]);
  });
});

describe("leaving", () => {
  it("asks only when changes would be lost", () => {
    let atRisk = false;
    const stop = guardLeaving(window, { atRisk: () => atRisk });
    const leave = () => {
      const event = new Event("beforeunload", { cancelable: true });
      window.dispatchEvent(event);
      return event.defaultPrevented;
    };
    expect(leave()).toBe(false);
    atRisk = true;
    expect(leave()).toBe(true);
    stop();
    expect(leave()).toBe(false);
  });
});

describe("the browser's files", () => {
  const pickers = window as unknown as Record<string, unknown>;
  afterEach(() => {
    delete pickers.showOpenFilePicker;
    delete pickers.showSaveFilePicker;
  });

  it("come through the pickers where they are, and a cancel is nothing", async () => {
    const file = new MemoryFile("a.site.json", "text");
    pickers.showOpenFilePicker = async () => [file];
    pickers.showSaveFilePicker = async () => file;
    const access = browserFiles(window);
    expect(await access.pickToOpen()).toEqual({ name: "a.site.json", text: "text", handle: file });
    expect(access.canPickToSave).toBe(true);
    expect(await access.pickToSave("a")).toBe(file);
    pickers.showOpenFilePicker = () => Promise.reject(problem("AbortError"));
    pickers.showSaveFilePicker = () => Promise.reject(problem("AbortError"));
    expect(await access.pickToOpen()).toBeNull();
    expect(await access.pickToSave("a")).toBeNull();
    pickers.showOpenFilePicker = () => Promise.reject(problem("SecurityError"));
    await expect(access.pickToOpen()).rejects.toThrow("It failed.");
  });

  it("are written whole or not at all, and only with leave", async () => {
    const access = browserFiles(window);
    const file = new MemoryFile("a.site.json", "old");
    await access.write(file, "new");
    expect(file).toMatchObject({ content: "new", closed: true });
    file.failure = problem("QuotaExceededError");
    await expect(access.write(file, "newer")).rejects.toThrow("It failed.");
    expect(file).toMatchObject({ content: "new", closed: true });
    const refused = Object.assign(new MemoryFile("b", "old"), {
      queryPermission: async () => "prompt" as const,
      requestPermission: async () => "denied" as const,
    });
    await expect(access.write(refused, "new")).rejects.toThrow(/not allowed/);
    expect(refused.content).toBe("old");
  });

  it("come through a file field and go to the downloads where there are no pickers", async () => {
    const access = browserFiles(window);
    expect(access.canPickToSave).toBe(false);
    const picking = access.pickToOpen();
    const field = document.querySelector<HTMLInputElement>("input[type=file]");
    expect(field?.accept).toContain(".json");
    Object.defineProperty(field, "files", { value: [new File(["text"], "a.site.json")] });
    field?.dispatchEvent(new Event("change"));
    expect(await picking).toEqual({ name: "a.site.json", text: "text", handle: null });
    const cancelled = access.pickToOpen();
    document.querySelector("input[type=file]")?.dispatchEvent(new Event("cancel"));
    expect(await cancelled).toBeNull();
    expect(document.querySelector("input[type=file]")).toBeNull();
    const clicked = vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(() => undefined);
    access.download("a.site.json", "text");
    expect(clicked.mock.instances[0]).toMatchObject({ download: "a.site.json" });
    clicked.mockRestore();
  });
});

describe("a tab", () => {
  /** A browser's locks, of which only what is asked here is made. */
  function lockedPage() {
    const held = new Set<string>();
    const locks = {
      async request(name: string, _: unknown, use: (lock: object | null) => unknown) {
        if (held.has(name)) return use(null);
        held.add(name);
        return use({ name });
      },
      query: async () => ({ held: [...held].map((name) => ({ name })) }),
    };
    const open = (storage: Map<string, string>) =>
      ({
        navigator: { locks },
        sessionStorage: {
          getItem: (key: string) => storage.get(key) ?? null,
          setItem: (key: string, value: string) => storage.set(key, value),
        },
      }) as unknown as Window;
    return { open, held };
  }

  it("keeps its id over a reload, a duplicate gets another, and others know that it runs", async () => {
    const { open, held } = lockedPage();
    const storage = new Map<string, string>();
    const first = await browserTab(open(storage));
    const duplicate = await browserTab(open(new Map(storage)));
    expect(duplicate.id).not.toBe(first.id);
    expect(await duplicate.isRunning(first.id)).toBe(true);
    held.clear();
    const reloaded = await browserTab(open(storage));
    expect(reloaded.id).toBe(first.id);
    expect(await reloaded.isRunning(duplicate.id)).toBe(false);
  });

  it("works without locks and where the storage is forbidden", async () => {
    const forbidden = () => {
      throw problem("SecurityError");
    };
    const bare = { navigator: {}, sessionStorage: { getItem: forbidden, setItem: forbidden } } as unknown as Window;
    const tab = await browserTab(bare);
    expect(tab.id).toMatch(/^[0-9a-f]{32}$/);
    expect(await tab.isRunning("other")).toBe(true);
    expect(randomId()).not.toBe(randomId());
  });
});
