/** A picture or a page of a PDF laid under the sheet in a real browser. Common practice, no source. */
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();

async function openPage(): Promise<SheetPage> {
  const hand = await pages.open();
  await hand.emptySheet();
  await hand.sheet.focus();
  await hand.page.keyboard.press("Shift+U");
  return hand;
}

/** A PDF of two pages, 400 by 200 points each, with a black square on it. Its table of places is worked out by the reader. */
function pdf(): Buffer {
  const draw = "0 0 0 rg 100 50 100 100 re f";
  const page = (contents: number) =>
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 400 200] /Contents ${contents} 0 R /Resources << >> >>`;
  const objects = [
    "<< /Type /Catalog /Pages 2 0 R >>",
    "<< /Type /Pages /Kids [3 0 R 4 0 R] /Count 2 >>",
    page(5),
    page(5),
    `<< /Length ${draw.length} >>\nstream\n${draw}\nendstream`,
  ];
  const body = objects.map((object, i) => `${i + 1} 0 obj\n${object}\nendobj\n`).join("");
  return Buffer.from(`%PDF-1.4\n${body}trailer\n<< /Root 1 0 R /Size 6 >>\n%%EOF\n`);
}

describe("a picture underneath", () => {
  it("a page of a PDF comes to scale by two places, moves with the sheet, and is undone", async () => {
    const hand = await openPage();
    const { page } = hand;
    const dialog = page.getByRole("dialog", { name: "Picture underneath" });
    await dialog
      .getByLabel("Picture or PDF")
      .setInputFiles({ name: "survey.pdf", mimeType: "application/pdf", buffer: pdf() });
    await dialog.getByLabel("Page of 2").waitFor();
    // The page is drawn 2600 pixels wide: the square's left side lies at 650 of them, its right side at 1300.
    for (const [place, left] of [
      [1, "650"],
      [2, "1300"],
    ] as const) {
      await dialog.getByLabel(`Place ${place}, pixels from the left`).fill(left);
      await dialog.getByLabel(`Place ${place}, pixels from the top`).fill("650");
    }
    await dialog.getByRole("button", { name: "Lay it underneath" }).click();
    await dialog
      .getByRole("alert")
      .getByText(/From 1 to 2/)
      .waitFor();
    await dialog.getByLabel("From 1 to 2", { exact: true }).fill("65'");
    await dialog.getByRole("button", { name: "Lay it underneath" }).click();
    await dialog.waitFor({ state: "detached" });
    const picture = page.locator(".underlay-picture");
    await picture.waitFor({ state: "attached" });
    // 780 in. to 650 pixels: the page is 2600 * 1.2 = 3120 in. wide.
    const width = async () => (await picture.boundingBox())?.width ?? 0;
    const { scale } = await hand.camera();
    await expect.poll(async () => (await width()) / scale).toBeCloseTo(3120, 0);
    /** How far the picture's left side lies from a place, pixels. */
    const off = async (x: number) => ((await picture.boundingBox())?.x ?? Number.NaN) - (await hand.onScreen(x, 0)).x;
    await expect.poll(() => off(-780)).toBeCloseTo(0, 0);
    await hand.sheet.focus();
    await page.keyboard.press("+");
    await expect.poll(async () => (await width()) / (await hand.camera()).scale).toBeCloseTo(3120, 0);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Lay a picture underneath");
    // Brought to scale anew, it stays where it lies and turned as it is: place 1 keeps its place on the sheet.
    await page.keyboard.press("Shift+U");
    await dialog.getByRole("button", { name: "Bring it to scale again" }).click();
    await dialog.getByRole("img", { name: "Place 1, enlarged" }).waitFor();
    await dialog.getByLabel("Place 1, pixels from the left").fill("650");
    await dialog.getByLabel("Place 2, pixels from the left").fill("1300");
    for (const place of [1, 2]) await dialog.getByLabel(`Place ${place}, pixels from the top`).fill("650");
    await dialog.getByLabel("From 1 to 2", { exact: true }).fill("130'");
    await dialog.getByRole("button", { name: "Lay it underneath" }).click();
    await dialog.waitFor({ state: "detached" });
    await expect.poll(async () => (await width()) / (await hand.camera()).scale).toBeCloseTo(6240, 0);
    // Place 1 lay at 0, 0, and 650 pixels are now 1560 in.
    await expect.poll(() => off(-1560)).toBeCloseTo(0, 0);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Shift+U");
    await dialog.getByRole("button", { name: "Hide it" }).click();
    await expect.poll(() => picture.count()).toBe(0);
    await dialog.getByRole("button", { name: "Back to the sheet" }).click();
    await page.keyboard.press("Control+z");
    await expect.poll(() => picture.count()).toBe(1);
    await page.keyboard.press("Control+z");
    await expect.poll(() => picture.count()).toBe(0);
  });

  it("says what cannot be read and changes nothing", async () => {
    const hand = await openPage();
    const { page } = hand;
    const dialog = page.getByRole("dialog", { name: "Picture underneath" });
    const before = await hand.undoWords();
    const choose = (name: string, mimeType: string) =>
      dialog.getByLabel("Picture or PDF").setInputFiles({ name, mimeType, buffer: Buffer.from("not one") });
    await choose("broken.png", "image/png");
    await dialog
      .getByRole("alert")
      .getByText(/broken\.png cannot be read as a picture/)
      .waitFor();
    await choose("broken.pdf", "application/pdf");
    await dialog
      .getByRole("alert")
      .getByText(/broken\.pdf cannot be read as a PDF/)
      .waitFor();
    expect(await hand.undoWords()).toBe(before);
    expect(await page.locator(".underlay-picture").count()).toBe(0);
  });
});
