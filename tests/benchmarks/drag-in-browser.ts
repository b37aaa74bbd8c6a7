/**
 * Main-thread work a frame while the pool of the busiest demo is dragged, measured in Chromium beside an empty sheet in
 * the same run. `npm run bench:drag` prints figures, asserts none.
 *
 * The browser's own trace is read: every task of the page's main thread is summed between one animation frame and the
 * next, so that script, style, layout and painting all count.
 */
import { readFileSync, rmSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { buildApp, launchChromium, serveApp } from "../end-to-end/chromium.ts";
import { timing } from "./measure.ts";

const SECONDS = 5;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  readonly pid: number;
  readonly tid: number;
  readonly args?: { readonly name?: string };
}

interface Frames {
  readonly work: number[];
  readonly interval: number[];
}

/** Circles with the button held for some seconds, traced. */
async function dragged(browser: Browser, page: Page, at: { x: number; y: number }): Promise<Frames> {
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 12, at.y + 8);
  await page.waitForTimeout(400);
  await browser.startTracing(page, { categories: ["toplevel", "devtools.timeline"] });
  const end = Date.now() + SECONDS * 1000;
  for (let i = 0; Date.now() < end; i++) {
    const turn = i / 25;
    await page.mouse.move(at.x + 40 * Math.cos(turn), at.y + 24 * Math.sin(turn));
  }
  const trace = await browser.stopTracing();
  await page.keyboard.press("Escape");
  await page.mouse.up();
  await page.waitForTimeout(400);
  return framesOf(JSON.parse(trace.toString()).traceEvents as TraceEvent[]);
}

function framesOf(events: readonly TraceEvent[]): Frames {
  const beats = events.filter(({ name }) => name === "FireAnimationFrame").sort((a, b) => a.ts - b.ts);
  const [first] = beats;
  if (!first) throw new Error("the trace holds no animation frame");
  const own = (event: TraceEvent) => event.pid === first.pid && event.tid === first.tid;
  const tasks = events
    .filter((event) => own(event) && event.ph === "X" && /RunTask$/.test(event.name))
    .sort((a, b) => a.ts - b.ts);
  const starts: number[] = [];
  for (const { ts } of beats.filter(own)) if (starts.length === 0 || ts - (starts.at(-1) ?? 0) > 4000) starts.push(ts);
  const work = new Array<number>(Math.max(0, starts.length - 1)).fill(0);
  let frame = 0;
  let busyUntil = 0;
  for (const { ts, dur = 0 } of tasks) {
    // Tasks may nest in the trace: only what is not covered yet counts.
    const from = Math.max(ts, busyUntil);
    const to = ts + dur;
    if (to <= from) continue;
    busyUntil = to;
    while (frame < work.length && (starts[frame + 1] ?? 0) <= from) frame += 1;
    if (frame < work.length && from >= (starts[frame] ?? 0)) work[frame] = (work[frame] ?? 0) + (to - from) / 1000;
  }
  const interval = starts.slice(1).map((ts, i) => (ts - (starts[i] ?? ts)) / 1000);
  return { work, interval };
}

function print(name: string, { work, interval }: Frames): void {
  const [w, i] = [timing(work), timing(interval)];
  const figures = [w.median, w.p95, i.median, i.p95].map((value) => value.toFixed(2).padStart(9));
  console.log(name.padEnd(34), ...figures, String(work.length).padStart(7));
}

async function siteCommand(page: Page, label: RegExp): Promise<void> {
  await page.getByRole("button", { name: "Site menu" }).click();
  await page.getByRole("menuitem", { name: label }).click();
}

/** The middle of the demo's pool, inches. */
function poolMiddle(): [number, number] {
  const site = JSON.parse(readFileSync(new URL("../../demo-sites/busy-yard.site.json", import.meta.url), "utf8"));
  const { vertices } = site.elements.find((one: { kind: string }) => one.kind === "pool").outline;
  const mean = (axis: number) =>
    vertices.reduce((sum: number, v: number[]) => sum + (v[axis] ?? 0), 0) / vertices.length;
  return [mean(0), mean(1)];
}

async function main(): Promise<void> {
  const folder = await buildApp();
  const [browser, app] = await Promise.all([launchChromium(), serveApp(folder)]);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(app.url);
  const sheet = page.getByRole("application");
  await sheet.waitFor();
  console.log("Main-thread work and frame interval while dragging, milliseconds");
  console.log("".padEnd(34), " work med", " work p95", "frame med", "frame p95", " frames");
  await siteCommand(page, /New sheet/);
  const box = await sheet.boundingBox();
  if (!box) throw new Error("the sheet has no size");
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.keyboard.press("d");
  await page.keyboard.press("Escape");
  print("empty sheet, a box being drawn", await dragged(browser, page, { x: middle.x, y: box.y + 90 }));
  await siteCommand(page, /Demo sites/);
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /Tumblestone/ })
    .click();
  await page.waitForTimeout(3000);
  const [x, y] = poolMiddle();
  const [cx = 0, cy = 0, scale = 1] = ((await sheet.getAttribute("data-camera")) ?? "").split(" ").map(Number);
  const at = { x: middle.x + (x - cx) * scale, y: middle.y - (y - cy) * scale };
  print("busiest demo, its pool dragged", await dragged(browser, page, at));
  await browser.close();
  await app.close();
  rmSync(folder, { recursive: true });
}

await main();
