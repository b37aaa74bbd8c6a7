import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findChromium, launchChromium, serveApp, watchPage } from "./chromium.ts";

let browser: Browser;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
});

describe("the browser harness", () => {
  it("renders a page", async () => {
    const page = await browser.newPage();
    const watch = watchPage(page);
    await page.goto("data:text/html,<title>ring</title><h1 style='width:120px'>Copper</h1>");
    expect(await page.title()).toBe("ring");
    expect((await page.locator("h1").boundingBox())?.width).toBe(120);
    expect(watch.errors).toEqual([]);
    expect(watch.foreignRequests()).toEqual([]);
    await page.close();
  });

  it("serves the built application, which asks nothing of any other host and reports no error", async () => {
    const app = await serveApp();
    const page = await browser.newPage();
    const watch = watchPage(page);
    await page.goto(app.url);
    await page.waitForFunction(() => Boolean(document.getElementById("root")?.childElementCount));
    expect(await page.title()).toContain("Copperband");
    expect(watch.errors).toEqual([]);
    expect(watch.foreignRequests()).toEqual([]);
    await page.close();
    await app.close();
  });

  it("notices console errors, exceptions and requests to another host", async () => {
    const app = await serveApp();
    const page = await browser.newPage();
    const watch = watchPage(page);
    await page.goto(app.url);
    const elsewhere = new URL("elsewhere.png", app.url.replace("127.0.0.1", "localhost")).href;
    await page.evaluate(async (address) => {
      console.error("reported");
      setTimeout(() => {
        throw new Error("thrown");
      });
      const image = new Image();
      image.src = address;
      await image.decode().catch(() => undefined);
    }, elsewhere);
    await expect.poll(() => watch.errors.join("\n")).toMatch(/reported/);
    await expect.poll(() => watch.errors.join("\n")).toMatch(/thrown/);
    await expect.poll(() => watch.foreignRequests()).toEqual([elsewhere]);
    await page.close();
    await app.close();
  });
});

describe("finding a browser", () => {
  it("refuses a CHROMIUM_PATH that cannot be run, naming it", () => {
    expect(() => findChromium({ CHROMIUM_PATH: "nowhere/chromium" })).toThrow(/nowhere\/chromium/);
  });

  it("takes CHROMIUM_PATH first", () => {
    expect(findChromium({ CHROMIUM_PATH: process.execPath, PATH: process.env.PATH })).toBe(process.execPath);
  });
});
