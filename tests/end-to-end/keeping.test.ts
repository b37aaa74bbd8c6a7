/** Nothing is lost: the browser killed, two tabs, full storage, none at all, a broken copy, a file changed on disk. Expectations are arithmetic. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { launchChromium, launchOnProfile, PATIENCE, type ProfileBrowser, serveApp, watchPage } from "./chromium.ts";
import { kept, nameOf, rename, started, textsOf } from "./kept-page.ts";
import { SheetPage, stored } from "./sheet-page.ts";

let app: Awaited<ReturnType<typeof serveApp>>;
let browser: Browser;

beforeAll(async () => {
  app = await serveApp();
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
  await app?.close();
});

const SIZE = { viewport: { width: 1440, height: 900 } };

/** For one test: its pages go with it. */
async function newContext(): Promise<BrowserContext> {
  const context = await browser.newContext(SIZE);
  onTestFinished(() => context.close());
  context.setDefaultTimeout(PATIENCE);
  return context;
}

async function opened(context: BrowserContext, before?: (page: Page) => Promise<unknown>): Promise<SheetPage> {
  const page = await context.newPage();
  await before?.(page);
  const sheet = new SheetPage(page);
  await sheet.open(app.url);
  await started(page);
  return sheet;
}

const problem = (page: Page) => page.locator(".notice-problem");
const problemText = async (page: Page) => (await problem(page).allTextContents()).join();

/** A pool of 32 by 16 ft round the origin, by its sizes alone. */
async function drawPool(sheet: SheetPage): Promise<void> {
  await sheet.take("p");
  await sheet.page.keyboard.type("384in");
  await sheet.page.keyboard.press("Tab");
  await sheet.page.keyboard.type("16");
  await sheet.page.keyboard.press("Enter");
  await expect.poll(() => sheet.undoWords()).toBe("Undo: Draw pool 1");
}

/** The pool's corners as they are kept. */
async function outlineOf(page: Page): Promise<[number, number][]> {
  const [text] = Object.entries(await stored(page)).flatMap(([key, value]) =>
    key.startsWith("site/") && value?.text !== undefined ? [value.text] : [],
  );
  return JSON.parse(text ?? "{}").elements?.[0]?.outline?.vertices ?? [];
}

/** Starts browsers one after the other on one profile; with the test they end, and the profile goes. */
function browsersOnProfile(): () => Promise<ProfileBrowser> {
  const profile = mkdtemp(join(tmpdir(), "copperband-profile-"));
  const browsers: ProfileBrowser[] = [];
  onTestFinished(async () => {
    for (const started of browsers) await started.kill();
    await rm(await profile, { recursive: true, force: true, maxRetries: 5 });
  });
  return async () => {
    const started = await launchOnProfile(await profile);
    started.context.setDefaultTimeout(PATIENCE);
    browsers.push(started);
    return started;
  };
}

describe("the browser killed", () => {
  it("in the middle of a drag comes back with every step, and with the drag as far as it went", async () => {
    const start = browsersOnProfile();
    const first = await start();
    const sheet = await opened(first.context);
    await sheet.page.setViewportSize(SIZE.viewport);
    await sheet.emptySheet();
    await rename(sheet.page, "Lost and found");
    await drawPool(sheet);
    await expect.poll(() => outlineOf(sheet.page)).toHaveLength(4);
    const drawn = await outlineOf(sheet.page);
    // A corner is dragged outward; the button is never let go.
    const [x, y] = drawn[2] ?? [0, 0];
    await sheet.pull([x, y], [x + 48, y + 24]);
    await expect.poll(() => textsOf(sheet.page, "under-way/")).toHaveLength(1);
    await first.kill();

    const second = await start();
    const again = await opened(second.context);
    await expect.poll(() => nameOf(again.page)).toContain("Lost and found");
    await expect.poll(() => again.undoWords()).toMatch(/^Undo: .*corner/i);
    await expect.poll(async () => (await outlineOf(again.page))[2]?.[0] ?? 0).toBeGreaterThan(x);
    await again.page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(() => again.undoWords()).toBe("Undo");
    await expect.poll(() => outlineOf(again.page)).toEqual(drawn);
    await expect.poll(() => textsOf(again.page, "under-way/")).toEqual([]);
  });

  it("in the middle of a drawing comes back with the corners placed so far, to go on with", async () => {
    const start = browsersOnProfile();
    const first = await start();
    const sheet = await opened(first.context);
    await sheet.page.setViewportSize(SIZE.viewport);
    await sheet.emptySheet();
    await rename(sheet.page, "Half a fence");
    await sheet.take("f");
    await sheet.click(-120, 60);
    await sheet.click(0, 60);
    await sheet.click(120, 0);
    const drawings = async (page: Page) =>
      Object.entries(await stored(page)).filter(([key]) => key.startsWith("drawing/"));
    await expect.poll(async () => JSON.stringify(await drawings(sheet.page))).toMatch(/"fence".*120,0/);
    await first.kill();

    const second = await start();
    const again = await opened(second.context);
    await again.page.locator(".notice").getByText("in the middle of a drawing").waitFor();
    await again.sheet.focus();
    await again.page.keyboard.press("Enter");
    await expect.poll(() => again.undoWords()).toBe("Undo: Draw fence 1");
    const fence = async () => {
      const [record] = await textsOf(again.page, "site/");
      return JSON.parse(JSON.parse(record ?? "{}").text ?? "{}").elements?.[0];
    };
    await expect.poll(async () => (await fence())?.path.vertices.length).toBe(3);
    await expect.poll(() => drawings(again.page)).toEqual([]);
  });
});

describe("two tabs", () => {
  it("on one site: the second says so and follows, and takes it over when asked", async () => {
    const context = await newContext();
    const one = await opened(context);
    await rename(one.page, "Shared yard");
    await kept(one.page, "Shared yard");
    const two = await opened(context);
    const bar = two.page.getByRole("region", { name: "Open in another tab" });
    await bar.waitFor();
    await expect.poll(() => bar.textContent()).toMatch(/open in another tab/);
    await bar.getByRole("button", { name: "Only look" }).click();
    await two.page.keyboard.press("Control+z");
    await expect.poll(() => problemText(two.page)).toMatch(/only looked at/);
    await rename(one.page, "Shared yard, changed");
    await expect.poll(() => nameOf(two.page)).toContain("Shared yard, changed");

    await bar.getByRole("button", { name: "Work on it here" }).click();
    await bar.waitFor({ state: "detached" });
    await one.page.getByRole("region", { name: "Open in another tab" }).waitFor();
    await rename(two.page, "Taken over");
    await expect.poll(() => nameOf(one.page)).toContain("Taken over");
    await expect.poll(() => textsOf(two.page, "site/")).toHaveLength(1);
  });

  it("on their own sites: the copy that one goes by is not deleted from the other, which says so on the spot", async () => {
    const context = await newContext();
    const one = await opened(context);
    await rename(one.page, "In use");
    await kept(one.page, "In use");
    const two = await opened(context);
    await two.page.getByRole("button", { name: "Only look" }).click();
    await two.emptySheet();
    await two.siteCommand("Demo sites and kept copies");
    const row = two.page.locator(".kept-row", { hasText: "In use" });
    await row.getByRole("button", { name: "Delete" }).click();
    await row.getByRole("button", { name: "Delete for good?" }).click();
    await row.getByRole("alert").getByText("open in another tab").waitFor();
    expect((await textsOf(one.page, "site/")).join()).toContain("In use");
  });

  it("go their own ways once the second opens a copy", async () => {
    const context = await newContext();
    const one = await opened(context);
    await rename(one.page, "First");
    await kept(one.page, "First");
    const two = await opened(context);
    await two.page.getByRole("button", { name: "Open a copy" }).click();
    await rename(two.page, "Second");
    await kept(two.page, "Second");
    await expect.poll(async () => (await textsOf(two.page, "site/")).length).toBe(2);
    await Promise.all([one.page.reload(), two.page.reload()]);
    await expect.poll(() => nameOf(one.page)).toContain("First");
    await expect.poll(() => nameOf(two.page)).toContain("Second");
  });
});

describe("storage", () => {
  it("that is full is said with a way out, and saving to a file works", async () => {
    const context = await newContext();
    const sheet = await opened(context, (page) =>
      page.addInitScript(() => {
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...args) {
          if (document.documentElement.dataset.full === undefined) return put.apply(this, args);
          throw new DOMException("no room", "QuotaExceededError");
        };
      }),
    );
    await expect.poll(() => textsOf(sheet.page, "site/")).toHaveLength(1);
    await sheet.page.evaluate(() => {
      document.documentElement.dataset.full = "";
    });
    await rename(sheet.page, "No room for it");
    await expect.poll(() => problemText(sheet.page)).toMatch(/storage is full/);
    const download = sheet.page.waitForEvent("download");
    await problem(sheet.page).getByRole("button", { name: "Save" }).click();
    expect((await download).suggestedFilename()).toBe("no-room-for-it.site.json");
    await sheet.page.getByRole("button", { name: "Not kept: save to a file" }).waitFor();
    // With room again, the next step is kept.
    await sheet.page.evaluate(() => {
      delete document.documentElement.dataset.full;
    });
    await rename(sheet.page, "Room again");
    await kept(sheet.page, "Room again");
    await sheet.page.getByRole("button", { name: "Not kept: save to a file" }).waitFor({ state: "detached" });
  });

  it("that the browser refuses, as in a private window, is said, and the program works", async () => {
    const context = await newContext();
    const sheet = await opened(context, (page) =>
      page.addInitScript(() => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("not here", "SecurityError");
        };
      }),
    );
    await expect.poll(() => problemText(sheet.page)).toMatch(/keeps no copies \(it may be a private one\)/);
    await rename(sheet.page, "Unkept");
    expect(await sheet.undoWords()).toMatch(/^Undo: /);
    const download = sheet.page.waitForEvent("download");
    await sheet.page.getByRole("button", { name: "Not kept: save to a file" }).click();
    expect((await download).suggestedFilename()).toBe("unkept.site.json");
  });

  it("with a broken copy: the last good one opens, and both can be had from the gallery", async () => {
    const context = await newContext();
    const sheet = await opened(context);
    await rename(sheet.page, "Before");
    await expect.poll(async () => (await textsOf(sheet.page, "earlier/")).length).toBe(1);
    await sheet.page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open("copperband");
          opening.onsuccess = () => {
            const walk = opening.result.transaction("kept", "readwrite").objectStore("kept").openCursor();
            walk.onsuccess = () => {
              const { result } = walk;
              if (!result) {
                opening.result.close();
                return resolve();
              }
              if (String(result.key).startsWith("site/")) {
                result.update({ ...result.value, text: result.value.text.slice(0, 300) });
              }
              result.continue();
            };
          };
        }),
    );
    await sheet.page.reload();
    await expect.poll(() => problemText(sheet.page)).toMatch(/was set aside.*The last good one, of /);
    await problem(sheet.page).getByRole("button", { name: "Demo sites and kept copies" }).click();
    const shelf = sheet.page.getByRole("region", { name: "Copies kept in this browser" });
    await expect.poll(async () => (await shelf.allTextContents()).join()).toMatch(/not JSON/);
    const download = sheet.page.waitForEvent("download");
    await shelf.getByRole("button", { name: "Download" }).first().click();
    expect((await download).suggestedFilename()).toMatch(/^kept-copy-/);
    await shelf.getByText("1 earlier copy").first().click();
    await shelf.locator(".kept-earlier button").first().click();
    await expect
      .poll(async () => (await sheet.page.locator(".notice").allTextContents()).join())
      .toMatch(/the site as it was on/);
  });
});

describe("a file on the machine", () => {
  it("is opened and saved in place, and not written over once it was changed elsewhere", async () => {
    const context = await newContext();
    const page = await context.newPage();
    const watch = watchPage(page);
    // The browser's own private folder stands in for the machine's: its files are of the same kind, without a question.
    await page.addInitScript(() => {
      localStorage.setItem("copperband-walk-seen", "yes");
      const file = async () =>
        (await navigator.storage.getDirectory()).getFileHandle("yard.site.json", { create: true });
      const write = async (text: string) => {
        const writable = await (await file()).createWritable();
        await writable.write(text);
        await writable.close();
      };
      const read = async () => (await (await file()).getFile()).text();
      Object.assign(window, {
        showOpenFilePicker: async () => [await file()],
        showSaveFilePicker: async () => file(),
        onDisk: { write, read },
      });
    });
    const onDisk = {
      write: (name: string) =>
        page.evaluate(
          (text) => (window as unknown as { onDisk: { write(text: string): Promise<void> } }).onDisk.write(text),
          JSON.stringify({ format: "copperband-site", version: 1, name, elements: [] }),
        ),
      read: () => page.evaluate(() => (window as unknown as { onDisk: { read(): Promise<string> } }).onDisk.read()),
    };
    await page.goto(app.url);
    const sheet = new SheetPage(page);
    await started(page);
    await onDisk.write("On disk");
    await page.keyboard.press("Control+o");
    await expect.poll(() => nameOf(page)).toContain("On disk");
    await rename(sheet.page, "Saved in place");
    await page.keyboard.press("Control+s");
    await expect.poll(onDisk.read).toContain("Saved in place");
    await kept(sheet.page, '"saved":true');
    // The handle outlives the page.
    await page.reload();
    await expect.poll(() => nameOf(page)).toContain("Saved in place");
    await onDisk.write("From another program");
    await rename(sheet.page, "Mine");
    // Somebody comes back from the other program, and is asked once.
    await page.evaluate(() => window.dispatchEvent(new Event("focus")));
    const dialog = page.getByRole("dialog", { name: "The file was changed since you opened it" });
    await dialog.getByRole("button", { name: "Not now" }).click();
    await dialog.waitFor({ state: "detached" });
    await page.keyboard.press("Control+s");
    await dialog.waitFor();
    expect(await onDisk.read()).toContain("From another program");
    await dialog.getByRole("button", { name: "Write over it" }).click();
    await expect.poll(onDisk.read).toContain("Mine");
    await dialog.waitFor({ state: "detached" });
    await kept(sheet.page, "From another program");
    expect(watch.errors).toEqual([]);
  });
});
