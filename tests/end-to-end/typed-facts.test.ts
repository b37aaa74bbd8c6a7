/** What is typed into a field of facts is never lost, however the hand goes on. Common practice, no source. */
import { readFile } from "node:fs/promises";
import { expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();

/** A site of two pumps, opened from a file; the first is selected and its facts are shown. */
async function twoPumps(): Promise<SheetPage> {
  const hand = await pages.open();
  const site = {
    format: "copperband-site",
    version: 1,
    edition: "nec-2020",
    elements: [
      { id: "pump-1", kind: "equipment", unit: "pump", at: [0, 0] },
      { id: "pump-2", kind: "equipment", unit: "pump", at: [200, 0] },
    ],
  };
  const chooser = hand.page.waitForEvent("filechooser");
  await hand.siteCommand("Open a file");
  await (await chooser).setFiles({
    name: "pumps.site.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(site)),
  });
  await expect
    .poll(async () => (await hand.page.locator(".kept").allTextContents()).join())
    .toContain("pumps.site.json");
  await hand.panel("Facts");
  await hand.click(0, 0);
  await hand.page.getByText("Equipment, pump-1").waitFor();
  return hand;
}

it("stays where the next thing on the sheet is pressed", async () => {
  const hand = await twoPumps();
  await hand.page.getByLabel("Name", { exact: true }).fill("North pump");
  await hand.click(200, 0);
  await hand.page.getByText("Equipment, pump-2").waitFor();
  await expect.poll(() => hand.undoWords()).toMatch(/name/i);
  await hand.click(0, 0);
  await hand.page.getByText("Equipment, pump-1").waitFor();
  await expect.poll(() => hand.page.getByLabel("Name", { exact: true }).inputValue()).toBe("North pump");
});

it("is in the file that is saved by its key", async () => {
  const hand = await twoPumps();
  await hand.page.getByLabel("Name", { exact: true }).fill("North pump");
  const download = hand.page.waitForEvent("download");
  await hand.page.keyboard.press("Control+s");
  const saved = JSON.parse(await readFile(await (await download).path(), "utf8"));
  expect(saved.elements[0]).toMatchObject({ id: "pump-1", name: "North pump" });
  const name = hand.page.getByLabel("Name", { exact: true });
  await expect.poll(() => name.evaluate((field) => field === document.activeElement)).toBe(true);
});
