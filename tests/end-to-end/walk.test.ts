/** The walk round the program on a first visit, by keys and by fingers. Our own design, no source. */
import type { BrowserContextOptions } from "playwright-core";
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";

const pages = browserPages();

async function firstVisit(options: BrowserContextOptions = {}) {
  const hand = await pages.open(options, { isFirstVisit: true });
  const { page } = hand;
  const card = page.getByRole("region", { name: "Walk round the program" });
  const step = (number: number) => card.getByText(`Step ${number} of 6`, { exact: true }).waitFor();
  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? "");
  return { page, hand, card, step, focused };
}

describe("on a first visit", () => {
  it("six steps show sheet, parts, a finding, a change, the copper and what comes next; by keys alone", async () => {
    const { page, card, step } = await firstVisit();
    await step(1);
    // It does not take the focus from someone who has begun to work.
    expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
    await card.getByRole("button", { name: "Next" }).focus();
    await page.keyboard.press("Enter");
    await step(2);
    const part = page.getByRole("navigation", { name: "Parts of the article" }).getByRole("button", { name: /^26 B7/ });
    await expect.poll(() => part.getAttribute("aria-pressed")).toBe("true");
    await page.keyboard.press("Enter");
    await step(3);
    const finding = page.getByRole("article", { name: /^Finding/ });
    await finding.getByRole("heading", { name: "Fence, south run" }).waitFor();
    await finding.getByText("needs bonding", { exact: true }).waitFor();
    await page.keyboard.press("Enter");
    await step(4);
    // 55 in. from the water; a foot farther out it stands beyond five feet (NEC 680.26(B)(7), restated).
    await page.keyboard.press("Shift+ArrowDown");
    await finding.getByText("exempt", { exact: true }).waitFor();
    await page.keyboard.press("Control+z");
    await finding.getByText("needs bonding", { exact: true }).waitFor();
    await page.keyboard.press("Enter");
    await step(5);
    await page.getByRole("tab", { name: "Copper", selected: true }).waitFor();
    await page.keyboard.press("Enter");
    await step(6);
    await page.keyboard.press("Enter");
    await card.waitFor({ state: "detached" });
    // The keys go on on the sheet.
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("application");
    await page.getByRole("button", { name: "The whole site", pressed: true }).waitFor();
  });

  it("is left by Escape, remembered after a reload, and comes back from Help with the focus", async () => {
    const { page, hand, card, step, focused } = await firstVisit();
    await step(1);
    await page.keyboard.press("Escape");
    await card.waitFor({ state: "detached" });
    await page.reload();
    await hand.sheet.waitFor();
    await page.getByRole("heading", { name: "Cinderpath Lane 12" }).waitFor();
    await expect.poll(async () => (await hand.camera()).x).toBeGreaterThan(0);
    expect(await card.count()).toBe(0);
    await hand.sheet.focus();
    await page.keyboard.press("?");
    await page.getByRole("dialog", { name: "Help" }).getByRole("button", { name: "Walk round the program" }).click();
    await step(1);
    await expect.poll(focused).toBe("A backyard, drawn to scale");
    await card.getByRole("button", { name: "Next" }).click();
    await step(2);
    await card.getByRole("button", { name: "Back" }).click();
    await step(1);
    await expect.poll(focused).toBe("Next");
    await page.keyboard.press("Escape");
    await card.waitFor({ state: "detached" });
    // The keys go on where they were.
    await expect.poll(() => hand.sheet.evaluate((sheet) => document.activeElement === sheet)).toBe(true);
  });

  it("goes when work begins, and keeps a changed sheet when it is asked for again", async () => {
    const { page, hand, card, step } = await firstVisit();
    await step(1);
    await page.keyboard.press("b");
    await card.waitFor({ state: "detached" });
    await page.keyboard.press("Escape");
    await hand.emptySheet();
    await hand.take("p");
    await page.keyboard.type("384in");
    await page.keyboard.press("Tab");
    await page.keyboard.type("16");
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    // Looked for from before it is said: it goes again after a while.
    const said = page
      .getByRole("status")
      .getByText(/Your own sheet is kept/)
      .waitFor();
    await Promise.all([said, hand.siteCommand("Walk round the program")]);
    await step(1);
    await page.getByRole("heading", { name: "Cinderpath Lane 12" }).waitFor();
  });
});

describe("by fingers", () => {
  it("opens and closes the columns that slide up, and keeps the finding in sight above them", async () => {
    const { page, hand, card, step } = await firstVisit({ viewport: { width: 834, height: 1112 }, hasTouch: true });
    const next = card.getByRole("button", { name: "Next" });
    await step(1);
    await next.tap();
    await step(2);
    await page.getByRole("navigation", { name: "Parts of the article" }).waitFor();
    await next.tap();
    await step(3);
    const details = page.getByRole("complementary", { name: "Details" });
    await details.getByRole("heading", { name: "Fence, south run" }).waitFor();
    // The fence's nearest place, 55 in. south of the pool, is seen above the column and below the card.
    const place = async () => (await hand.onScreen(192, -55)).y;
    const column = async () => (await details.boundingBox())?.y ?? 0;
    await expect.poll(async () => (await place()) < (await column())).toBe(true);
    const end = async () => {
      const box = await card.boundingBox();
      return (box?.y ?? Number.NaN) + (box?.height ?? 0);
    };
    await expect.poll(async () => (await place()) > (await end())).toBe(true);
    await next.tap();
    await step(4);
    await expect.poll(() => details.isVisible()).toBe(false);
    await card.getByRole("button", { name: "Leave the walk" }).tap();
    await card.waitFor({ state: "detached" });
  });

  it.each([
    ["a third of a split screen", { width: 320, height: 700 }],
    ["a low window", { width: 834, height: 500 }],
  ])("goes to its end in %s: no column lies over its buttons", async (_, viewport) => {
    const { card, step } = await firstVisit({ viewport, hasTouch: true, isMobile: true });
    for (let number = 1; number <= 5; number++) {
      await step(number);
      await card.getByRole("button", { name: "Next" }).tap();
    }
    await step(6);
    await card.getByRole("button", { name: "Done" }).tap();
    await card.waitFor({ state: "detached" });
  });
});
