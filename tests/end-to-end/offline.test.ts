/** Without a network after the first visit, installable, and renewed without losing work. Expectations are arithmetic. */
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { launchChromium, PATIENCE, serveApp, watchPage } from "./chromium.ts";
import { kept, nameOf, rename, started } from "./kept-page.ts";
import { SheetPage } from "./sheet-page.ts";

let browser: Browser;
let folder: string;
let app: Awaited<ReturnType<typeof serveApp>>;

beforeAll(async () => {
  // A copy of the build, so that a newer one can be put in its place.
  folder = await mkdtemp(join(tmpdir(), "copperband-served-"));
  await cp(inject("builtApp"), folder, { recursive: true });
  [app, browser] = await Promise.all([serveApp(folder), launchChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Waits until the program is kept on the machine and answers for the page. */
async function isOnMachine(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
}

it("starts, opens demos and draws with no network after the first visit; a newer version waits until it is asked for", async () => {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  const watch = watchPage(page);
  const sheet = new SheetPage(page);
  await sheet.open(app.url);
  await started(page);
  await isOnMachine(page);
  await rename(page, "Kept on the machine");
  await kept(page, "Kept on the machine");

  await context.setOffline(true);
  await page.reload();
  await sheet.sheet.waitFor();
  await expect.poll(() => nameOf(page)).toContain("Kept on the machine");
  // Parts that load late, and the workers behind the report, are there as well.
  await sheet.siteCommand("Demo sites and kept copies");
  const demos = page.getByRole("dialog").locator(".demo");
  await expect.poll(() => demos.count()).toBeGreaterThan(3);
  await demos.nth(1).click();
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await expect.poll(async () => (await page.locator(".topbar-counts").allTextContents()).join()).toMatch(/Copper.*\d/);
  await sheet.siteCommand("Print the plan");
  const print = page.getByRole("dialog", { name: "Print the plan" });
  await print.getByText("Caution", { exact: false }).first().waitFor();
  await page.keyboard.press("Escape");
  await print.waitFor({ state: "hidden" });
  await context.setOffline(false);

  // Another build is put in place of the one that is served.
  const worker = join(folder, "service-worker.js");
  await writeFile(worker, `${await readFile(worker, "utf8")}\n// newer\n`);
  const index = join(folder, "index.html");
  await writeFile(index, (await readFile(index, "utf8")).replace("<html", '<html data-newer=""'));
  await writeFile(
    worker,
    (await readFile(worker, "utf8")).replace(
      /(version\\+":\\+")([0-9a-f]{16})/,
      (_, start) => `${start}${"0".repeat(16)}`,
    ),
  );
  await rename(page, "Before the newer version");
  await kept(page, "Before the newer version");
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  const notice = page.locator(".notice", { hasText: "A newer version of the program is ready" });
  await notice.waitFor();
  expect(await page.locator("html").getAttribute("data-newer")).toBeNull();
  await notice.getByRole("button", { name: "Use the newer version" }).click();
  await page.locator('html[data-newer=""]').waitFor({ state: "attached" });
  await expect.poll(() => nameOf(page)).toContain("Before the newer version");
  expect(watch.errors).toEqual([]);
  expect(watch.foreignRequests()).toEqual([]);
  await context.close();
});

it("can be installed: manifest and icons are there and of the sizes they claim, and every built file is kept", async () => {
  const page = await browser.newPage();
  await page.goto(app.url);
  const address = await page.locator('link[rel="manifest"]').getAttribute("href");
  const sizes = await page.evaluate(async (href) => {
    const manifest = await (await fetch(href ?? "")).json();
    const found: [string, string, string][] = [];
    for (const { src, sizes: claimed, type } of manifest.icons as Record<string, string>[]) {
      const image = new Image();
      image.src = src ?? "";
      await image.decode();
      found.push([type ?? "", claimed ?? "", `${image.naturalWidth}x${image.naturalHeight}`]);
    }
    return { icons: found, display: manifest.display, start: manifest.start_url };
  }, address);
  expect(sizes).toMatchObject({ display: "standalone", start: "./" });
  expect(sizes.icons.map(([, claimed]) => claimed)).toEqual(["any", "192x192", "192x192", "512x512", "512x512"]);
  for (const [type, claimed, is] of sizes.icons) if (type === "image/png") expect(is).toBe(claimed);
  const listed = await readFile(join(folder, "service-worker.js"), "utf8");
  const files = (await readdir(join(folder, "assets"))).filter((name) => !/\.(map|woff)$/.test(name));
  expect(files.filter((name) => !listed.includes(`assets/${name}`))).toEqual([]);
  await page.close();
});
