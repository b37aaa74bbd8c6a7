/** A yard taped from two stakes, pasted, looked over and drawn in a real browser. Common practice, no source. */
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();

async function openPage(): Promise<SheetPage> {
  const hand = await pages.open();
  await hand.emptySheet();
  return hand;
}

/**
 * Stakes 240 in. apart; a pool of 192 by 384 in. that begins 120 in. off their line, each corner with the tape to the
 * one before. Arithmetic: hypotenuses of right triangles, written in inches.
 */
const CORNERS = [
  [0, 120],
  [192, 120],
  [192, 504],
  [0, 504],
] as const;
const POOL = CORNERS.map(([x, y], i) => {
  const [px, py] = CORNERS[(i + 3) % 4] as readonly [number, number];
  return [Math.hypot(x, y), Math.hypot(x - 240, y), Math.hypot(x - px, y - py)];
});
const tableOf = (rows: readonly (readonly number[])[]) =>
  ["Pool", ...rows.map((row, i) => [String(i + 1), ...row.map((one) => `${one.toFixed(4)}in`)].join("\t"))].join("\n");

describe("taping in", () => {
  it("a pasted pool: the slip shows, is mended, and the ring follows; the table stays until it is cleared", async () => {
    const hand = await openPage();
    const { page } = hand;
    await page.getByRole("button", { name: /^Tape it in/ }).click();
    const dialog = page.getByRole("dialog", { name: "Tape points in" });
    await dialog.getByLabel("From A to B").fill("20'");
    await dialog.getByText("Paste a table").click();
    const slipped = POOL.map(([a = 0, b = 0, check = 0], i) => [i === 2 ? a + 12 : a, b, check]);
    await dialog.getByLabel(/A line for each point/).fill(tableOf(slipped));
    await dialog.getByRole("button", { name: "Read it" }).click();
    await dialog.getByText(/from A does not fit the others/).waitFor();
    await dialog.getByRole("status").getByText("in doubt").waitFor();
    await dialog.getByLabel("From A, point 3").fill(`${POOL[2]?.[0]?.toFixed(4)}in`);
    await expect.poll(() => dialog.getByText(/does not fit/).count()).toBe(0);
    await dialog.getByRole("button", { name: "Draw it" }).click();
    await dialog.waitFor({ state: "detached" });
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1 as taped");
    await hand.panel("Copper");
    // A ring 21 in. off a pool of 16 by 32 ft: 2 (192 + 384) + 2 pi 21 = 1283.95 in., 107 ft 0 in.
    await page.getByText(`107' 0"`).first().waitFor();
    // The stakes' tape was given as good to half an inch.
    await page.keyboard.press("Control+z");
    await page.getByRole("heading", { name: "Begin with the pool" }).waitFor();
    await page.reload();
    await hand.sheet.waitFor();
    await hand.sheet.focus();
    await page.keyboard.press("Shift+T");
    await expect.poll(() => dialog.getByLabel("From B, point 3").inputValue()).toBe(`${POOL[2]?.[1]?.toFixed(4)}in`);
    await dialog.getByRole("button", { name: "Clear the table" }).click();
    await expect.poll(() => dialog.getByLabel("From B, point 3").inputValue()).toBe("");
    // A slip of the hand loses nothing.
    await dialog.getByRole("button", { name: "Bring the table back" }).click();
    await expect.poll(() => dialog.getByLabel("From B, point 3").inputValue()).toBe(`${POOL[2]?.[1]?.toFixed(4)}in`);
  });

  it("by keys: Enter goes on to the next point; what cannot be read is named and draws nothing", async () => {
    const hand = await openPage();
    const { page } = hand;
    await hand.sheet.focus();
    await page.keyboard.press("Shift+T");
    const dialog = page.getByRole("dialog", { name: "Tape points in" });
    await dialog.getByRole("button", { name: "Along a straight line" }).click();
    await dialog.getByLabel("Along, point 1").click();
    for (const [along, off] of [
      ["0", "5"],
      ["20", "5"],
      ["20", "15"],
      ["0", "wide"],
    ] as const) {
      await page.keyboard.type(along);
      await page.keyboard.press("Tab");
      await page.keyboard.type(off);
      await page.keyboard.press("Enter");
    }
    await dialog.getByText(/"wide"/).waitFor();
    await dialog.getByRole("button", { name: "Draw it" }).click();
    await dialog
      .getByRole("alert")
      .getByText(/point 4 cannot be read/)
      .waitFor();
    await dialog.getByLabel("Off, point 4").fill("15");
    await dialog.getByRole("button", { name: "Draw it" }).click();
    await dialog.waitFor({ state: "detached" });
    await hand.panel("Outline");
    await page
      .getByRole("treeitem", { name: /pool/i })
      .or(page.getByRole("button", { name: /Pool 1/i }))
      .first()
      .waitFor();
  });
});
