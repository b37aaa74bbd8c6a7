/** The picture of the sheet: painted by a worker, or by the page where a browser has no canvas for workers. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium, PATIENCE, serveApp, watchPage } from "./chromium.ts";
import { SheetPage } from "./sheet-page.ts";

let browser: Browser;
let app: Awaited<ReturnType<typeof serveApp>>;

beforeAll(async () => {
  [browser, app] = await Promise.all([launchChromium(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.close();
});

/** The share of the sheet's pixels that something is painted on. */
function painted(page: Page): Promise<number> {
  return page.evaluate(() => {
    const source = document.querySelector<HTMLCanvasElement>(".sheet-picture canvas");
    if (!source || source.width === 0) return 0;
    const copy = document.createElement("canvas");
    copy.width = source.width;
    copy.height = source.height;
    const context = copy.getContext("2d");
    if (!context) return 0;
    context.drawImage(source, 0, 0);
    const { data } = context.getImageData(0, 0, copy.width, copy.height);
    let count = 0;
    for (let i = 3; i < data.length; i += 4) if ((data[i] ?? 0) > 0) count += 1;
    return count / (copy.width * copy.height);
  });
}

/** A place in the neighbor's garage of the demo, which stands by itself, inches. */
const GARAGE = [700, 60] as const;

/** The sheet's pixels in one number. */
function picture(page: Page): Promise<number> {
  return page.evaluate(() => {
    const source = document.querySelector<HTMLCanvasElement>(".sheet-picture canvas");
    const copy = document.createElement("canvas");
    copy.width = source?.width ?? 0;
    copy.height = source?.height ?? 0;
    const context = copy.getContext("2d");
    if (!source || !context || copy.width === 0) return 0;
    context.drawImage(source, 0, 0);
    let sum = 7;
    for (const value of context.getImageData(0, 0, copy.width, copy.height).data) sum = (sum * 31 + value) >>> 0;
    return sum;
  });
}

async function openDemo(sheet: SheetPage): Promise<void> {
  await sheet.siteCommand("Demo sites");
  await sheet.page
    .getByRole("dialog")
    .getByRole("button", { name: /Tumblestone/ })
    .click();
  await expect.poll(() => sheet.sheet.getAttribute("aria-label")).toMatch(/Tumblestone.*need bonding/);
}

describe("the picture of the sheet", () => {
  it.each(["a worker", "the page"])("painted by %s, is cleared for an empty sheet and follows the view", async (by) => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(PATIENCE);
    const watched = watchPage(page);
    if (by === "the page") {
      await page.addInitScript(() => {
        Reflect.deleteProperty(HTMLCanvasElement.prototype, "transferControlToOffscreen");
      });
    }
    const sheet = new SheetPage(page);
    await sheet.open(app.url);
    await sheet.emptySheet();
    await expect.poll(() => painted(page)).toBeLessThan(0.05);
    await openDemo(sheet);
    await expect.poll(() => painted(page)).toBeGreaterThan(0.25);
    // So far in that the house, or so far out that next to nothing, fills the view.
    await page.mouse.move(720, 300);
    for (let i = 0; i < 8; i++) await page.mouse.wheel(0, 400);
    await expect.poll(() => painted(page)).toBeLessThan(0.1);
    await expect.poll(() => page.locator(".konvajs-content").count()).toBe(by === "the page" ? 1 : 0);
    expect(watched.errors).toEqual([]);
    expect(watched.foreignRequests()).toEqual([]);
    await page.close();
  });

  it("follows a drag frame by frame while the workers that calculate never answer", async () => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(PATIENCE);
    const watched = watchPage(page);
    await page.addInitScript(() => {
      const Real = window.Worker;
      window.Worker = class extends Real {
        override postMessage(...message: [unknown]): void {
          if (!this.isDeaf) super.postMessage(...message);
        }
        readonly isDeaf: boolean;
        constructor(url: string | URL, options?: WorkerOptions) {
          super(url, options);
          this.isDeaf = String(url).includes("recompute");
        }
      };
    });
    const sheet = new SheetPage(page);
    await sheet.open(app.url);
    await sheet.siteCommand("Demo sites");
    await page
      .getByRole("dialog")
      .getByRole("button", { name: /Tumblestone/ })
      .click();
    await expect.poll(() => sheet.sheet.getAttribute("aria-label")).toMatch(/Tumblestone/);
    await expect.poll(() => painted(page)).toBeGreaterThan(0.15);
    const before = await picture(page);
    await sheet.pull(GARAGE, [GARAGE[0] + 60, GARAGE[1]]);
    await expect.poll(() => picture(page)).not.toBe(before);
    const during = await picture(page);
    const beyond = await sheet.onScreen(GARAGE[0] + 120, GARAGE[1] - 60);
    await page.mouse.move(beyond.x, beyond.y);
    await expect.poll(() => picture(page)).not.toBe(during);
    await page.mouse.up();
    await expect.poll(() => sheet.undoWords()).toMatch(/^Undo: Move/);
    // No report has come, however long all this took.
    expect(await sheet.sheet.getAttribute("aria-label")).toMatch(/: \d+ elements$/);
    expect(watched.errors).toEqual([]);
    await page.close();
  });
});
