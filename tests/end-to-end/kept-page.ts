import type { Page } from "playwright-core";
import { expect } from "vitest";
import { stored } from "./sheet-page.ts";

/** The name of the site as the page shows it, and any sign beside it; nothing where it shows none. */
export async function nameOf(page: Page): Promise<string> {
  return (await page.locator(".site-name").allTextContents()).join();
}

/** Waits until the page has put a site on the sheet: the one of last time, or the first demo. */
export async function started(page: Page): Promise<void> {
  await expect.poll(() => nameOf(page)).toMatch(/^(?!Site without a name)./);
}

/** Gives the site another name and waits until the page shows it. */
export async function rename(page: Page, name: string): Promise<void> {
  await page.locator(".site-name").getByRole("button").click();
  await page.locator("input.site-name-field").fill(name);
  await page.keyboard.press("Enter");
  await expect.poll(() => nameOf(page)).toContain(name);
}

/** What the browser keeps under keys that begin so. */
export async function textsOf(page: Page, start: string): Promise<string[]> {
  return Object.entries(await stored(page)).flatMap(([key, value]) =>
    key.startsWith(start) ? [JSON.stringify(value)] : [],
  );
}

/** Waits until a copy is kept that holds the words, so that another tab or a reload finds it. */
export async function kept(page: Page, words: string): Promise<void> {
  await expect.poll(async () => (await textsOf(page, "site/")).join()).toContain(words);
}
