/** A hostile site file shows as text and harms nothing; the page's policy forbids what nothing of ours needs. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launchChromium, PATIENCE, type PageWatch, serveApp, watchPage } from "./chromium.ts";
import { SheetPage } from "./sheet-page.ts";

let app: Awaited<ReturnType<typeof serveApp>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let sheet: SheetPage;
let watch: PageWatch;

beforeAll(async () => {
  [app, browser] = await Promise.all([serveApp(), launchChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.close();
});

beforeEach(async () => {
  await context?.close();
  context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  context.setDefaultTimeout(PATIENCE);
  page = await context.newPage();
  watch = watchPage(page);
  sheet = new SheetPage(page);
  await sheet.open(app.url);
});

async function openFile(name: string, text: string): Promise<void> {
  const choosing = page.waitForEvent("filechooser");
  await sheet.siteCommand("Open a file");
  await (await choosing).setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

/** What a hostile text would have done. */
const harm = () =>
  page.evaluate(() => {
    const own = window as unknown as Record<string, unknown>;
    return [own.harmed, ({} as Record<string, unknown>).polluted, document.querySelector("img[src='x'], [onerror]")];
  });
const UNHARMED = [undefined, undefined, null];

const SCRIPT = "<img src=x onerror='window.harmed=1'><script>window.harmed=1</script>";
const POOL =
  '"kind":"pool","body":"pool","shell":"fiberglass","outline":{"closed":true,"vertices":[[0,0],[240,0],[240,144],[0,144]]}';
const HOSTILE = `{"format":"copperband-site","version":1,"name":${JSON.stringify(SCRIPT)},
  "__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"note":${JSON.stringify(SCRIPT)},
  "elements":[
   {"id":"__proto__","name":${JSON.stringify(`"><svg onload=window.harmed=1>${SCRIPT}`)},${POOL},"__proto__":{"polluted":1}},
   {"id":"constructor","name":"\\u202E\\u0000${"long ".repeat(400)}","kind":"metal","part":${JSON.stringify(SCRIPT)},"shape":{"point":[-12,40]}},
   {"id":"toString","name":"javascript:window.harmed=1","kind":"fence","metal":true,"path":{"vertices":[[-40,-40],[300,-40]],"closed":false}},
   {"id":"hasOwnProperty","kind":${JSON.stringify(SCRIPT)},"name":"{{7*7}}\${7*7}"}
  ]}`;

describe("a hostile site file", () => {
  it("opens, and every text in it is shown as text, in every panel and on paper", async () => {
    await openFile("hostile.site.json", HOSTILE);
    await expect.poll(async () => (await page.locator(".site-name").allTextContents()).join()).toContain(SCRIPT);
    for (const panel of ["Findings", "Outline", "Copper", "Code", "Facts"]) {
      await sheet.panel(panel);
      await expect
        .poll(async () => (await page.locator("#details-column").allTextContents()).join().length)
        .toBeGreaterThan(20);
      expect(await harm()).toEqual(UNHARMED);
    }
    await sheet.panel("Outline");
    await expect
      .poll(async () => (await page.locator("#details-column").allTextContents()).join())
      .toContain("<svg onload=window.harmed=1>");
    // It is changed, taken back and kept like any other.
    await page.locator(".site-name").getByRole("button").click();
    await page.locator("input.site-name-field").fill(`${SCRIPT} again`);
    await page.keyboard.press("Enter");
    await expect.poll(() => sheet.undoWords()).toBe("Undo: Rename the site");
    await sheet.sheet.focus();
    await page.keyboard.press("Shift+H");
    await page.getByRole("region", { name: "Steps taken" }).waitFor();
    await page.keyboard.press("Escape");
    await sheet.siteCommand("Print the plan");
    const print = page.getByRole("dialog", { name: "Print the plan" });
    await expect.poll(async () => (await print.locator(".print-page").allTextContents()).join()).toContain("harmed=1");
    await page.keyboard.press("Escape");
    await print.waitFor({ state: "hidden" });
    await page.reload();
    await expect.poll(async () => (await page.locator(".site-name").allTextContents()).join()).toContain(SCRIPT);
    expect(await harm()).toEqual(UNHARMED);
    expect(watch.errors).toEqual([]);
    expect(watch.foreignRequests()).toEqual([]);
  });

  it.each([
    [
      "numbers beyond all measure",
      `{"format":"copperband-site","version":1,"elements":[{"id":"p",${POOL.replace("240,0", "1e308,0")}}]}`,
      /1e\+308|1000000|1,000,000/,
    ],
    [
      "nesting without end",
      `{"format":"copperband-site","version":1,"elements":[],"x":${"[".repeat(200_000)}${"]".repeat(200_000)}}`,
      /deep/,
    ],
    [
      "a name that is no text",
      '{"format":"copperband-site","version":1,"name":{"__proto__":{"polluted":1}},"elements":[]}',
      /name/,
    ],
    [
      "markup in what is refused",
      `{"format":"copperband-site","version":1,"elements":[{"id":${JSON.stringify(SCRIPT)},"kind":"pool"}]}`,
      /<img src=x/,
    ],
  ])("with %s is refused in words, and the sheet stays", async (_, text, words) => {
    await expect.poll(async () => (await page.locator(".site-name").allTextContents()).join()).toContain("Cinderpath");
    await openFile("bad.site.json", text);
    const dialog = page.getByRole("dialog", { name: "This file was not opened" });
    await dialog.waitFor();
    await expect.poll(() => dialog.textContent()).toMatch(words);
    await dialog.getByRole("button", { name: "Back to the sheet" }).click();
    expect((await page.locator(".site-name").allTextContents()).join()).toContain("Cinderpath");
    expect(await harm()).toEqual(UNHARMED);
    expect(watch.errors).toEqual([]);
  });
});

describe("the content policy", () => {
  it("is set in the page and by the server, and allows no script or style but the page's own", async () => {
    const inPage = (await page.locator("meta[http-equiv='Content-Security-Policy']").getAttribute("content")) ?? "";
    const headers = (await page.request.get(app.url)).headers();
    expect(headers["content-security-policy"]).toBe(`${inPage}; frame-ancestors 'none'`);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    const rules = new Map(inPage.split("; ").map((rule) => [rule.split(" ")[0], rule.split(" ").slice(1).join(" ")]));
    expect(Object.fromEntries(rules)).toMatchObject({
      "default-src": "'self'",
      "script-src": "'self'",
      "style-src": "'self'",
      "worker-src": "'self'",
      "connect-src": "'self'",
      "object-src": "'none'",
      "base-uri": "'none'",
      "form-action": "'none'",
    });
    expect(inPage).not.toMatch(/unsafe|\*|https?:/);
  });

  it("holds: no evaluated text, no script put into the page, nothing from or to another host", async () => {
    const elsewhere = new URL("/", app.url.replace("127.0.0.1", "localhost")).href;
    const stopped = await page.evaluate(async (other) => {
      const broken: string[] = [];
      Object.assign(window, { broken });
      document.addEventListener("securitypolicyviolation", (event) => broken.push(event.effectiveDirective));
      // In a task of its own: what the test itself sends may evaluate.
      const evaluated = await new Promise((resolve) => {
        setTimeout(() => {
          try {
            // biome-ignore lint/security/noGlobalEval: this is what must not work
            globalThis.eval("window.harmed = 1");
            resolve("ran");
          } catch (error) {
            resolve((error as Error).name);
          }
        });
      });
      const script = document.createElement("script");
      script.textContent = "window.harmed = 1";
      document.body.append(script);
      const far = document.createElement("script");
      far.src = `${other}far.js`;
      document.body.append(far);
      const picture = new Image();
      picture.src = `${other}far.png`;
      const fetched = await fetch(other).then(
        () => "sent",
        () => "stopped",
      );
      await new Promise((resolve) => {
        if (picture.complete) resolve(null);
        else picture.onerror = resolve;
      });
      return { evaluated, fetched };
    }, elsewhere);
    expect(stopped.evaluated).toBe("EvalError");
    expect(stopped.fetched).toBe("stopped");
    const broken = () => page.evaluate(() => (window as unknown as { broken: string[] }).broken);
    await expect.poll(broken).toEqual(expect.arrayContaining(["connect-src", "img-src", "script-src-elem"]));
    expect(await harm()).toEqual(UNHARMED);
  });
});
