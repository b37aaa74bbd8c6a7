/**
 * Main-thread work a frame on the sheet, measured in Chromium without a graphics card, beside an empty sheet in the same
 * run: the pool of the busiest demo dragged; an invented site of 2,000 elements dragged, moved about and zoomed; how long
 * one of 10,000 takes to open. `npm run bench:drag` prints figures, asserts none; see trace-frames.ts for what is counted.
 */
import { readFileSync, rmSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { buildApp, launchChromium, serveApp } from "../end-to-end/chromium.ts";
import { SheetPage } from "../end-to-end/sheet-page.ts";
import { crowdedSite } from "./crowd.ts";
import { timing } from "./measure.ts";
import { type Frames, framesOf, type TraceEvent } from "./trace-frames.ts";

const SECONDS = 4;
/** Animation frames, and the tasks of the page and of its workers. */
const TRACED = ["toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline"];

type Place = { readonly x: number; readonly y: number };

/** Does something again and again for some seconds, traced. */
async function traced(browser: Browser, page: Page, move: (i: number) => Promise<void>) {
  for (let i = 0; i < 20; i++) await move(i);
  await browser.startTracing(page, { categories: TRACED });
  const end = Date.now() + SECONDS * 1000;
  for (let i = 20; Date.now() < end; i++) await move(i);
  const trace = await browser.stopTracing();
  return framesOf(JSON.parse(trace.toString()).traceEvents as TraceEvent[]);
}

/** Circles with the button held. */
async function dragged(browser: Browser, page: Page, at: Place, button: "left" | "middle" = "left") {
  await page.mouse.move(at.x, at.y);
  await page.mouse.down({ button });
  await page.mouse.move(at.x + 12, at.y + 8);
  const frames = await traced(browser, page, (i) =>
    page.mouse.move(at.x + 40 * Math.cos(i / 25), at.y + 24 * Math.sin(i / 25)),
  );
  await page.keyboard.press("Escape");
  await page.mouse.up({ button });
  await page.waitForTimeout(500);
  await checkPainted(page);
  return frames;
}

/** Turns the wheel in and out over one place. */
async function zoomed(browser: Browser, page: Page, at: Place) {
  await page.mouse.move(at.x, at.y);
  const frames = await traced(browser, page, (i) => page.mouse.wheel(0, i % 16 < 8 ? 60 : -60));
  await page.waitForTimeout(500);
  await checkPainted(page);
  return frames;
}

/** A sheet that is not painted would be measured as a quick one. */
async function checkPainted(page: Page): Promise<void> {
  const problem = page.locator(".notice", { hasText: "cannot be painted" });
  if ((await problem.count()) > 0) throw new Error((await problem.textContent()) ?? "");
}

function print(name: string, { page, painter }: { page: Frames; painter: Frames }): void {
  const columns = [page.work, page.interval, painter.work, painter.interval].flatMap((values) => {
    const { median, p95 } = timing(values);
    return values.length === 0 ? ["-", "-"] : [median.toFixed(1), p95.toFixed(1)];
  });
  console.log(name.padEnd(36), ...columns.map((text) => text.padStart(6)), String(page.work.length).padStart(7));
}

/** The middle of the demo's pool, inches. */
function poolMiddle(): [number, number] {
  const site = JSON.parse(readFileSync(new URL("../../demo-sites/busy-yard.site.json", import.meta.url), "utf8"));
  const { vertices } = site.elements.find((one: { kind: string }) => one.kind === "pool").outline;
  const mean = (axis: number) =>
    vertices.reduce((sum: number, v: number[]) => sum + (v[axis] ?? 0), 0) / vertices.length;
  return [mean(0), mean(1)];
}

/** Drops a site on the page. Returns milliseconds until it is on the sheet, and until its findings are. */
async function dropped(sheet: SheetPage, name: string, count: number): Promise<{ shown: number; found: number }> {
  const { page } = sheet;
  const begun = await page.evaluate(
    ([body = "", title = ""]) => {
      const data = new DataTransfer();
      data.items.add(new File([body], `${title}.site.json`));
      window.dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
      return performance.now();
    },
    [JSON.stringify({ ...crowdedSite(count, 24), name }), name],
  );
  const after = async (selector: string, words: RegExp): Promise<number> => {
    await page.waitForFunction(
      ([place = "", pattern = ""]) => {
        const found = document.querySelector(place);
        return new RegExp(pattern).test(`${found?.getAttribute("aria-label")} ${found?.textContent}`);
      },
      [selector, words.source],
    );
    return (await page.evaluate(() => performance.now())) - begun;
  };
  const shown = await after("[role=application]", new RegExp(name));
  // Every element has a finding: so many are in the list only once the report is about this site.
  const found = await after(".list-head", new RegExp(`All ${String(count).charAt(0)}\\d{${String(count).length - 1}}`));
  await page.waitForTimeout(3000);
  return { shown, found };
}

async function main(): Promise<void> {
  const folder = await buildApp();
  const [browser, app] = await Promise.all([launchChromium(), serveApp(folder)]);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const sheet = new SheetPage(page);
  await sheet.open(app.url);
  const box = await sheet.sheet.boundingBox();
  if (!box) throw new Error("the sheet has no size");
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };

  console.log("Milliseconds a frame. Work: processor time of all tasks of the thread. Interval: by the clock.");
  console.log("".padEnd(36), " page's work  its interval  painter's work  interval");
  console.log("".padEnd(36), ...["", "", "", ""].flatMap(() => ["   med", "   p95"]), " frames");
  await sheet.emptySheet();
  await sheet.take("d");
  await sheet.take("Escape");
  print("empty sheet, a box being drawn", await dragged(browser, page, { x: middle.x, y: box.y + 90 }));
  print("empty sheet, moved about", await dragged(browser, page, { x: middle.x, y: box.y + 90 }, "middle"));

  await sheet.siteCommand("Demo sites");
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /Tumblestone/ })
    .click();
  await page.waitForTimeout(3000);
  print("busiest demo, its pool dragged", await dragged(browser, page, await sheet.onScreen(...poolMiddle())));
  print("busiest demo, moved about", await dragged(browser, page, middle, "middle"));
  print("busiest demo, zoomed", await zoomed(browser, page, middle));

  await dropped(sheet, "Crowd of 2000", 2000);
  print("2,000 elements, moved about", await dragged(browser, page, middle, "middle"));
  print("2,000 elements, zoomed", await zoomed(browser, page, middle));
  print("2,000 elements, the pool dragged", await dragged(browser, page, await sheet.onScreen(0, 0)));

  const { shown, found } = await dropped(sheet, "Crowd of 10000", 10_000);
  print("10,000 elements, all moved about", await dragged(browser, page, middle, "middle"));
  // Nearer, so that the pool is large enough to be taken hold of.
  const pool = await sheet.onScreen(0, 0);
  await page.mouse.move(pool.x, pool.y);
  for (let i = 0; i < 8; i++) await page.mouse.wheel(0, -240);
  await page.waitForTimeout(800);
  print("10,000 elements, some moved about", await dragged(browser, page, middle, "middle"));
  print("10,000 elements, the pool dragged", await dragged(browser, page, await sheet.onScreen(0, 0)));
  console.log(`10,000 elements: on the sheet after ${shown.toFixed(0)} ms, with findings after ${found.toFixed(0)} ms`);
  await browser.close();
  await app.close();
  rmSync(folder, { recursive: true });
}

await main();
