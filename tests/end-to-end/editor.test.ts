/** The main job in a real browser, with a real pointer and real keys, from an empty sheet to a saved file. */
import { mkdtemp, readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import { type SheetPage, stored } from "./sheet-page.ts";

const pages = browserPages();
let hand: SheetPage;
let page: Page;

beforeEach(async () => {
  hand = await pages.open();
  page = hand.page;
});

async function emptySheet(): Promise<void> {
  await hand.emptySheet();
  await hand.sheet.focus();
}

/** A 16 by 32 ft pool with its lower left corner at the origin. */
async function drawPool(): Promise<void> {
  await hand.sheet.focus();
  await page.keyboard.press("p");
  await hand.click(-192, -96);
  const entry = page.getByRole("form", { name: /typed/i });
  await entry.getByRole("textbox").first().fill("32'");
  await entry.getByRole("textbox").nth(1).fill("16 ft");
  await page.keyboard.press("Enter");
  await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
}

describe("from an empty sheet", () => {
  it("draws a 16 x 32 ft pool and reads 107 ft 0 in. of ring at 21 in.", async () => {
    await emptySheet();
    await drawPool();
    await hand.panel("Copper");
    // Arithmetic: 2 x (384 + 192) + 2 pi x 21 = 1,283.95 in.
    await page.getByText("107' 0\"").first().waitFor();
  });

  it("draws a metal fence, drags it over the five-foot line and watches the finding turn", async () => {
    await emptySheet();
    await drawPool();
    await hand.sheet.focus();
    await page.keyboard.press("f");
    await hand.click(-240, -192);
    await hand.click(240, -192);
    await page.keyboard.press("Enter");
    await hand.panel("Facts");
    await page.getByLabel("Metal", { exact: true }).selectOption("true");
    await hand.panel("Outline");
    const row = page.getByRole("option", { name: /fence/i });
    await row.waitFor();
    const fixed = page
      .getByRole("navigation", { name: "Parts of the article" })
      .getByRole("button", { name: /^26 B7/ });
    // 96 in. out: exempt. Source: NEC 680.26(B)(7), five feet.
    await expect.poll(() => fixed.textContent()).toContain("exempt");
    await hand.pull([-120, -192], [-120, -150]);
    await page.mouse.up();
    await expect.poll(() => fixed.textContent()).toMatch(/need/);
    await page.keyboard.press("Control+z");
    await expect.poll(() => fixed.textContent()).toContain("exempt");
  });

  it("answers a question on the spot, undoes to the empty sheet and redoes to the end", async () => {
    await emptySheet();
    await drawPool();
    await hand.panel("Findings");
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
    await hand.panel("Outline");
    await page.getByText("Nothing is drawn yet.").waitFor();
    expect(await page.getByRole("option").count()).toBe(0);
    const redo = page.getByRole("button", { name: /^Redo/ });
    while (await redo.isEnabled()) await redo.click();
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
  });

  it("finds the site again after a reload, and saves and opens the same file", async () => {
    await emptySheet();
    await drawPool();
    await hand.panel("Outline");
    await page.getByRole("option").first().waitFor();
    await expect.poll(async () => JSON.stringify(await stored(page))).toMatch(/pool-1/);
    await page.reload();
    await hand.sheet.waitFor();
    await hand.panel("Outline");
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
    const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
    const folder = await mkdtemp(join(tmpdir(), "copperband-"));
    const file = join(folder, download.suggestedFilename());
    await download.saveAs(file);
    const saved = JSON.parse(await readFile(file, "utf8"));
    expect(saved.elements).toHaveLength(1);
    expect(saved.elements[0].outline.vertices).toHaveLength(4);
    await hand.siteCommand("New sheet");
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), hand.siteCommand("Open a file")]);
    await chooser.setFiles(file);
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
    const [again] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
    const second = join(folder, `again-${again.suggestedFilename()}`);
    await again.saveAs(second);
    expect(JSON.parse(await readFile(second, "utf8"))).toEqual(saved);
  });

  it("a drawing stays with its site while another is looked at, and is gone on with by keys when it comes back", async () => {
    await emptySheet();
    await drawPool();
    await hand.take("f");
    await hand.click(-200, 60);
    await hand.click(-200, 120);
    await page.getByRole("button", { name: "Take back the last point" }).first().waitFor();
    await hand.siteCommand("Demo sites and kept copies");
    await page.getByRole("button", { name: /Otterbend Court 7/ }).click();
    await page.getByRole("heading", { name: "Otterbend Court 7" }).waitFor();
    await hand.siteCommand("Demo sites and kept copies");
    const copies = page.getByRole("region", { name: "Copies kept in this browser" });
    await copies.getByRole("button", { name: "Open" }).first().click();
    await page.getByText(/A drawing was under way on this site/).waitFor();
    await expect.poll(() => hand.sheet.evaluate((box) => box === document.activeElement)).toBe(true);
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw fence 1");
  });
});
