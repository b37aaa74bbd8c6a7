/** The main job in a real browser, with a real pointer and real keys, from an empty sheet to a saved file. */
import { mkdtemp, readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launchChromium, serveApp, watchPage } from "./chromium.ts";

let browser: Browser;
let app: Awaited<ReturnType<typeof serveApp>>;
let context: BrowserContext;
let page: Page;
let watch: ReturnType<typeof watchPage>;

beforeAll(async () => {
  [browser, app] = await Promise.all([launchChromium(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.close();
});

beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  context.setDefaultTimeout(8_000);
  page = await context.newPage();
  // Without the file picker a save is a download, which a test can read.
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, "showSaveFilePicker");
    Reflect.deleteProperty(window, "showOpenFilePicker");
  });
  watch = watchPage(page);
  await page.goto(app.url);
  await sheet().waitFor();
});

afterEach(async () => {
  expect(watch.errors).toEqual([]);
  expect(watch.foreignRequests()).toEqual([]);
  await context.close();
});

const sheet = () => page.getByRole("application");

/** Where a place of the site lies on the screen now. */
async function onScreen(x: number, y: number): Promise<{ x: number; y: number }> {
  const box = await sheet().boundingBox();
  const camera = (await sheet().getAttribute("data-camera"))?.split(" ").map(Number);
  if (!box || camera?.length !== 3) throw new Error("the sheet has no size or camera");
  const [cx = 0, cy = 0, scale = 1] = camera;
  return { x: box.x + box.width / 2 + (x - cx) * scale, y: box.y + box.height / 2 - (y - cy) * scale };
}

async function clickAt(x: number, y: number): Promise<void> {
  const at = await onScreen(x, y);
  await page.mouse.move(at.x - 3, at.y - 3);
  await page.mouse.move(at.x, at.y);
  await page.mouse.click(at.x, at.y);
}

async function drag(from: [number, number], to: [number, number]): Promise<void> {
  const [a, b] = [await onScreen(...from), await onScreen(...to)];
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  for (let i = 1; i <= 8; i++) await page.mouse.move(a.x + ((b.x - a.x) * i) / 8, a.y + ((b.y - a.y) * i) / 8);
  await page.mouse.up();
}

/** Runs a command of the Site menu. */
async function siteCommand(label: string): Promise<void> {
  await page.getByRole("button", { name: "Site menu" }).click();
  await page.getByRole("menuitem", { name: label }).click();
}

async function emptySheet(): Promise<void> {
  await siteCommand("New sheet");
  await page.getByRole("heading", { name: "Begin with the pool" }).waitFor();
  await sheet().focus();
}

/** A 16 by 32 ft pool with its lower left corner at the origin. */
async function drawPool(): Promise<void> {
  await sheet().focus();
  await page.keyboard.press("p");
  await clickAt(-192, -96);
  const entry = page.getByRole("form", { name: /typed/i });
  await entry.getByRole("textbox").first().fill("32'");
  await entry.getByRole("textbox").nth(1).fill("16 ft");
  await page.keyboard.press("Enter");
}

async function showPanel(name: string): Promise<void> {
  await page.getByRole("tab", { name }).click();
}

describe("from an empty sheet", () => {
  it("draws a 16 x 32 ft pool and reads 107 ft 0 in. of ring at 21 in.", async () => {
    await emptySheet();
    await drawPool();
    await showPanel("Copper");
    // Arithmetic: 2 x (384 + 192) + 2 pi x 21 = 1,283.95 in.
    await page.getByText("107' 0\"").first().waitFor();
  });

  it("draws a metal fence, drags it over the five-foot line and watches the finding turn", async () => {
    await emptySheet();
    await drawPool();
    await sheet().focus();
    await page.keyboard.press("f");
    await clickAt(-240, -192);
    await clickAt(240, -192);
    await page.keyboard.press("Enter");
    await showPanel("Facts");
    await page.getByLabel("Metal", { exact: true }).selectOption("true");
    await showPanel("Outline");
    const row = page.getByRole("option", { name: /fence/i });
    await row.waitFor();
    const fixed = page
      .getByRole("navigation", { name: "Parts of the article" })
      .getByRole("button", { name: /^26 B7/ });
    // 96 in. out: exempt. Source: NEC 680.26(B)(7), five feet.
    await expect.poll(() => fixed.textContent()).toContain("exempt");
    await drag([-120, -192], [-120, -150]);
    await expect.poll(() => fixed.textContent()).toMatch(/need/);
    await page.keyboard.press("Control+z");
    await expect.poll(() => fixed.textContent()).toContain("exempt");
  });

  it("answers a question on the spot, undoes to the empty sheet and redoes to the end", async () => {
    await emptySheet();
    await drawPool();
    await showPanel("Findings");
    await page
      .getByRole("region", { name: "Findings" })
      .getByRole("button", { name: /The site/ })
      .click();
    const slip = page.getByRole("region", { name: "Question" });
    await slip.getByLabel("Initials").fill("QA");
    await slip.getByRole("button", { name: /2020/ }).click();
    await page.getByText(/QA/).first().waitFor();
    const undo = page.getByRole("button", { name: /^Undo/ });
    while (await undo.isEnabled()) await undo.click();
    await showPanel("Outline");
    expect(await page.getByRole("option").count()).toBe(0);
    const redo = page.getByRole("button", { name: /^Redo/ });
    while (await redo.isEnabled()) await redo.click();
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
  });

  it("finds the site again after a reload, and saves and opens the same file", async () => {
    await emptySheet();
    await drawPool();
    await showPanel("Outline");
    await page.getByRole("option").first().waitFor();
    await page.waitForTimeout(300);
    await page.reload();
    await sheet().waitFor();
    await showPanel("Outline");
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
    const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
    const folder = await mkdtemp(join(tmpdir(), "copperband-"));
    const file = join(folder, download.suggestedFilename());
    await download.saveAs(file);
    const saved = JSON.parse(await readFile(file, "utf8"));
    expect(saved.elements).toHaveLength(1);
    expect(saved.elements[0].outline.vertices).toHaveLength(4);
    await siteCommand("New sheet");
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), siteCommand("Open a file")]);
    await chooser.setFiles(file);
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
    const [again] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
    const second = join(folder, `again-${again.suggestedFilename()}`);
    await again.saveAs(second);
    expect(JSON.parse(await readFile(second, "utf8"))).toEqual(saved);
  });
});
