import type { Browser, BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { launchChromium, PATIENCE, serveApp, watchPage } from "./chromium.ts";
import { SheetPage } from "./sheet-page.ts";

/**
 * One browser and one served application for the tests of a file. `open` gives a fresh page with the first demo on it,
 * wide unless told; after each test its page must have raised no error and asked no other host, and is closed.
 */
export function browserPages(): {
  open(options?: BrowserContextOptions, visit?: Parameters<SheetPage["open"]>[1]): Promise<SheetPage>;
} {
  let browser: Browser;
  let app: Awaited<ReturnType<typeof serveApp>>;
  const opened: { readonly hand: SheetPage; readonly watch: ReturnType<typeof watchPage> }[] = [];

  beforeAll(async () => {
    [browser, app] = await Promise.all([launchChromium(), serveApp()]);
  });

  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  afterEach(async () => {
    const pages = opened.splice(0);
    try {
      for (const { watch } of pages) {
        expect(watch.errors).toEqual([]);
        expect(watch.foreignRequests()).toEqual([]);
      }
    } finally {
      for (const { hand } of pages) await hand.page.context().close();
    }
  });

  return {
    async open(options = {}, visit = {}) {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
      context.setDefaultTimeout(PATIENCE);
      const hand = new SheetPage(await context.newPage());
      opened.push({ hand, watch: watchPage(hand.page) });
      await hand.open(app.url, visit);
      // Until then whatever is chosen goes again when the demo comes.
      await hand.page.getByRole("heading", { name: "Cinderpath Lane 12" }).waitFor();
      return hand;
    },
  };
}
