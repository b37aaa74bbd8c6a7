import type { CDPSession, Page } from "playwright-core";

/** A person's hand on the sheet of an opened page; places are inches of the site. */
export class SheetPage {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
    // From the first on, files are asked of the test. Asked for along with the press that wants one, that may come late, and
    // the browser, which shows no window, has then picked none.
    page.on("filechooser", () => undefined);
  }

  get sheet() {
    return this.page.getByRole("application");
  }

  /**
   * Opens the page without the file picker: a save is then a download, and opening asks for a file that a test can give.
   * Whoever opens it has been here before; with `isFirstVisit` the walk shows itself.
   */
  async open(url: string, { isFirstVisit = false } = {}): Promise<void> {
    if (!isFirstVisit) await this.page.addInitScript(() => localStorage.setItem("copperband-walk-seen", "yes"));
    await this.page.addInitScript(() => {
      Reflect.deleteProperty(window, "showSaveFilePicker");
      Reflect.deleteProperty(window, "showOpenFilePicker");
    });
    await this.page.goto(url);
    await this.sheet.waitFor();
  }

  /** Center of the view in inches, and pixels to an inch: where it lies once all that was done before is shown. */
  async camera(): Promise<{ x: number; y: number; scale: number }> {
    // A command may move the view in the next frame, and the frame after it shows that.
    await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const [x, y, scale] = (await this.sheet.getAttribute("data-camera"))?.split(" ").map(Number) ?? [];
    if (x === undefined || y === undefined || scale === undefined) throw new Error("the sheet has no camera");
    return { x, y, scale };
  }

  async onScreen(x: number, y: number): Promise<{ x: number; y: number }> {
    const box = await this.sheet.boundingBox();
    if (!box) throw new Error("the sheet has no size");
    const camera = await this.camera();
    return {
      x: box.x + box.width / 2 + (x - camera.x) * camera.scale,
      y: box.y + box.height / 2 - (y - camera.y) * camera.scale,
    };
  }

  async click(x: number, y: number): Promise<void> {
    const at = await this.onScreen(x, y);
    await this.page.mouse.move(at.x - 3, at.y - 3);
    await this.page.mouse.click(at.x, at.y);
  }

  /** Presses at one place and moves to another; the button stays down. */
  async pull(from: readonly [number, number], to: readonly [number, number]): Promise<void> {
    const [a, b] = [await this.onScreen(...from), await this.onScreen(...to)];
    await this.page.mouse.move(a.x, a.y);
    await this.page.mouse.down();
    for (let i = 1; i <= 8; i++) {
      await this.page.mouse.move(a.x + ((b.x - a.x) * i) / 8, a.y + ((b.y - a.y) * i) / 8);
    }
  }

  /** Takes a tool by its key, whatever was going on before. */
  async take(key: string): Promise<void> {
    await this.page.keyboard.press("Escape");
    await this.sheet.focus();
    await this.page.keyboard.press(key);
  }

  /** Waits until a tool is the one in hand: what a finger taps is not yet done when the tap ends. */
  async holds(tool: string): Promise<void> {
    await this.page.locator(`.sheet-canvas[data-tool="${tool}"]`).waitFor();
  }

  async siteCommand(label: string): Promise<void> {
    await this.page.getByRole("button", { name: "Site menu" }).click();
    await this.page.getByRole("menuitem", { name: label }).click();
  }

  async emptySheet(): Promise<void> {
    await this.siteCommand("New sheet");
    await this.page.getByRole("heading", { name: "Begin with the pool" }).waitFor();
  }

  async panel(name: string): Promise<void> {
    await this.page.getByRole("tab", { name }).click();
  }

  /** What undo would take back, as its button says. */
  async undoWords(): Promise<string> {
    return (await this.page.getByRole("button", { name: /^Undo/ }).getAttribute("aria-label")) ?? "";
  }
}

/** Fingers on a touch screen, each at a place of the page. */
export async function moveFingers(
  session: CDPSession,
  ...path: readonly (readonly [number, number])[][]
): Promise<void> {
  const put = (type: "touchStart" | "touchMove" | "touchEnd", places: readonly (readonly [number, number])[]) =>
    session.send("Input.dispatchTouchEvent", { type, touchPoints: places.map(([x, y], id) => ({ x, y, id })) });
  const [first = [], ...rest] = path;
  await put("touchStart", first);
  for (const places of rest) await put("touchMove", places);
  await put("touchEnd", []);
}

/** What the browser's store holds, by its names. */
export function stored(page: Page): Promise<Record<string, { text?: string } | undefined>> {
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open("copperband");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const found: Record<string, { text?: string }> = {};
          const walk = opening.result.transaction("kept").objectStore("kept").openCursor();
          walk.onsuccess = () => {
            const { result } = walk;
            if (!result) {
              opening.result.close();
              return resolve(found);
            }
            found[String(result.key)] = result.value;
            result.continue();
          };
        };
      }),
  );
}
