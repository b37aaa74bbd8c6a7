/** The list of steps taken: back and forward through it by pointer and by keys. Expectations are arithmetic. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launchChromium, PATIENCE, serveApp, watchPage } from "./chromium.ts";
import { SheetPage } from "./sheet-page.ts";

let app: Awaited<ReturnType<typeof serveApp>>;
let browser: Browser;

beforeAll(async () => {
  [app, browser] = await Promise.all([serveApp(), launchChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.close();
});

it("goes back and forward through the steps; the one that is shown is marked and stays in view in a long list", async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(PATIENCE);
  const watch = watchPage(page);
  const sheet = new SheetPage(page);
  await sheet.open(app.url);
  await page.locator(".site-name").getByRole("button", { name: "Cinderpath" }).waitFor();
  await sheet.sheet.focus();
  await page.keyboard.press("Control+a");
  // Sixty steps, each a nudge of its own.
  for (let i = 0; i < 60; i++) await page.keyboard.press(i % 2 === 0 ? "ArrowRight" : "ArrowUp");
  await page.getByRole("button", { name: "Steps taken" }).click();
  const list = page.getByRole("listbox", { name: "Steps, oldest first" });
  const shown = list.locator('[aria-selected="true"]');
  await expect.poll(() => shown.getAttribute("aria-posinset")).toBe("61");
  expect(await shown.getAttribute("aria-setsize")).toBe("61");
  expect(await list.getByRole("option").count()).toBeLessThan(40);
  const inView = async () => {
    const [row, box] = await Promise.all([shown.boundingBox(), list.boundingBox()]);
    return row !== null && box !== null && row.y >= box.y - 1 && row.y + row.height <= box.y + box.height + 1;
  };
  await expect.poll(inView).toBe(true);

  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  await expect.poll(() => shown.getAttribute("aria-posinset")).toBe("59");
  await expect.poll(() => list.locator(".taken-undone").count()).toBe(2);
  await page.keyboard.press("Home");
  await expect.poll(() => shown.textContent()).toContain("As it was opened");
  await expect.poll(() => sheet.undoWords()).toBe("Undo");
  await expect.poll(inView).toBe(true);
  await page.keyboard.press("PageDown");
  await expect.poll(() => shown.getAttribute("aria-posinset")).toBe("11");
  await list.getByRole("option").nth(3).click();
  await expect.poll(() => shown.getAttribute("aria-posinset")).toBe("4");
  await page.keyboard.press("End");
  await expect.poll(() => shown.getAttribute("aria-posinset")).toBe("61");
  await page.keyboard.press("Escape");
  await list.waitFor({ state: "detached" });
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).toBe("Steps taken");
  expect(watch.errors).toEqual([]);
  await page.close();
});

it("takes back one thing at a time: the last corner of a drawing, the move under way, then the steps behind them", async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(PATIENCE);
  const watch = watchPage(page);
  const sheet = new SheetPage(page);
  await sheet.open(app.url);
  await sheet.emptySheet();
  await sheet.take("m");
  await sheet.click(60, 60);
  await expect.poll(() => sheet.undoWords()).toMatch(/^Undo: Draw /);
  const placed = await sheet.undoWords();
  await sheet.take("f");
  await sheet.click(-120, -60);
  await sheet.click(0, -60);
  const back = page.getByRole("button", { name: "Take back the last point" });
  // Above and in the bar beneath the sheet.
  await expect.poll(() => back.count()).toBe(2);
  await page.locator(".topbar").getByRole("button", { name: "Take back the last point" }).click();
  await page.keyboard.press("Control+z");
  await expect.poll(() => back.count()).toBe(0);
  await expect.poll(() => sheet.undoWords()).toBe(placed);
  await page.keyboard.press("Escape");

  await sheet.pull([60, 60], [60, 120]);
  await page.keyboard.press("Control+z");
  await page.getByRole("status").getByText("Undone: Move").waitFor();
  await page.mouse.up();
  expect(await sheet.undoWords()).toBe(placed);
  await page.keyboard.press("Control+z");
  await expect.poll(() => sheet.undoWords()).toBe("Undo");
  expect(watch.errors).toEqual([]);
  await page.close();
});
