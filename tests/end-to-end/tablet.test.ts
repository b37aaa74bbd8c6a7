/** The sheet on a tablet: stylus and fingers, turned round, in half of a split screen. The art direction of the project. */
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import { moveFingers, type SheetPage } from "./sheet-page.ts";

const UPRIGHT = { width: 834, height: 1112 };
const ON_ITS_SIDE = { width: 1112, height: 834 };
const HALF = { width: 507, height: 1000 };
/** Slices of a split screen, the narrowest a third of a small tablet. */
const SLICES = [320, 375, 417] as const;

const pages = browserPages();

async function tablet(viewport = UPRIGHT): Promise<SheetPage> {
  const hand = await pages.open({ viewport, hasTouch: true, isMobile: true, reducedMotion: "reduce" });
  await expect.poll(async () => (await hand.camera()).x).toBeGreaterThan(0);
  return hand;
}

/** Everything of the bars that lies outside of the page or under another part of it. */
function outOfReach(): string[] {
  const controls = document.querySelectorAll<HTMLElement>(".topbar button, .toolbar button, .status button");
  return [...controls].flatMap((button) => {
    const { left, right, top, bottom } = button.getBoundingClientRect();
    const over = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    const isHere = left >= 0 && right <= innerWidth && top >= 0 && bottom <= innerHeight;
    return isHere && over !== null && button.contains(over)
      ? []
      : [button.getAttribute("aria-label") ?? button.textContent];
  });
}

describe("a stylus", () => {
  it("draws while the hand rests on the sheet; then two fingers move and zoom it", async () => {
    const hand = await tablet();
    const { page } = hand;
    await hand.emptySheet();
    const session = await page.context().newCDPSession(page);
    await page.getByRole("button", { name: /Rectangle by size/ }).tap();
    await hand.holds("pool-rectangle");
    const pen = (type: "mousePressed" | "mouseMoved" | "mouseReleased", x: number, y: number) =>
      session.send("Input.dispatchMouseEvent", {
        type,
        x,
        y,
        button: "left",
        buttons: type === "mouseReleased" ? 0 : 1,
        clickCount: 1,
        pointerType: "pen",
      });
    await pen("mousePressed", 250, 400);
    await pen("mouseMoved", 350, 450);
    const palm = [{ x: 600, y: 800, id: 5 }];
    await session.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: palm });
    await pen("mouseMoved", 550, 560);
    await session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await pen("mouseReleased", 550, 560);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    const before = await hand.camera();
    await moveFingers(
      session,
      [
        [350, 700],
        [450, 700],
      ],
      [
        [320, 740],
        [480, 740],
      ],
      [
        [300, 760],
        [500, 760],
      ],
    );
    await expect.poll(async () => (await hand.camera()).scale / before.scale).toBeCloseTo(2, 1);
    expect(await hand.undoWords()).toBe("Undo: Draw pool 1");
  });
});

describe("a finger", () => {
  it("adds a second thing to what is selected, on the sheet and in the outline", async () => {
    const hand = await tablet();
    const { page } = hand;
    const add = page.getByRole("button", { name: "Add what is picked to the selection" });
    await page.getByRole("button", { name: "Details", exact: true }).tap();
    await page.getByRole("tab", { name: "Outline" }).tap();
    await page.getByRole("option", { name: /^.*Fence, south run/ }).tap();
    await page.getByRole("button", { name: "Close the details" }).tap();
    await add.tap();
    await expect.poll(() => add.getAttribute("aria-pressed")).toBe("true");
    // The middle of the pool, which lies from 0, 0 to 32 by 16 ft; beside its label.
    const at = await hand.onScreen(300, 40);
    await page.touchscreen.tap(at.x, at.y);
    await page.getByRole("status").getByText("2 elements are selected").waitFor({ state: "attached" });
    await page.getByRole("button", { name: "Details", exact: true }).tap();
    await page.getByRole("tab", { name: "Outline" }).tap();
    await page
      .getByRole("option", { name: /^.*House/ })
      .first()
      .tap();
    await expect.poll(() => page.getByRole("option", { selected: true }).count()).toBe(3);
  });

  it("goes through the steps taken by taps, as their list says", async () => {
    const hand = await tablet();
    const { page } = hand;
    await page.getByRole("button", { name: "Steps taken" }).tap();
    await page.getByRole("region", { name: "Steps taken" }).getByText("A tap goes to one.").waitFor();
  });

  it("draws a box that begins on the deck once adding is asked for, and moves nothing", async () => {
    const hand = await tablet();
    const { page } = hand;
    await page.getByRole("button", { name: "Add what is picked to the selection" }).tap();
    await page.locator(".hint").getByText("drag a box round several").waitFor();
    // Round the umbrella's sleeve in the south deck of the first demo, at 84, -30.
    const [a, b] = [await hand.onScreen(66, -12), await hand.onScreen(102, -46)];
    const session = await page.context().newCDPSession(page);
    await moveFingers(session, [[a.x, a.y]], [[(a.x + b.x) / 2, (a.y + b.y) / 2]], [[b.x, b.y]]);
    await page.getByRole("status").getByText("1 element selected").waitFor({ state: "attached" });
    expect(await hand.undoWords()).toBe("Undo");
  });
});

describe("turning the tablet round", () => {
  it("in the middle of a drawing loses nothing, and every control stays in reach", async () => {
    const hand = await tablet();
    const { page } = hand;
    await expect.poll(() => page.evaluate(outOfReach)).toEqual([]);
    await hand.emptySheet();
    await page.getByRole("button", { name: /Free outline/ }).tap();
    await hand.holds("pool-outline");
    const tap = async (x: number, y: number) => {
      const at = await hand.onScreen(x, y);
      await page.touchscreen.tap(at.x, at.y);
    };
    await tap(-96, -96);
    await tap(96, -96);
    await page.setViewportSize(ON_ITS_SIDE);
    await expect.poll(async () => (await hand.sheet.boundingBox())?.width).toBeGreaterThan(834);
    await expect.poll(() => page.evaluate(outOfReach)).toEqual([]);
    await tap(96, 96);
    await page.getByRole("button", { name: "Close the outline" }).tap();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    await page.getByRole("button", { name: "Details", exact: true }).tap();
    await page.getByRole("tab", { name: "Outline" }).tap();
    // Corners at (-96, -96), (96, -96) and (96, 96).
    await page.getByRole("option", { name: /Pool 1.*16' 0" by 16' 0"/ }).waitFor();
    await page.setViewportSize(UPRIGHT);
    await expect.poll(async () => (await hand.sheet.boundingBox())?.width).toBe(834);
    await page.getByRole("option", { name: /Pool 1/ }).waitFor();
  });
});

describe("a slice of a split screen", () => {
  it("keeps every control in reach, and says what is open and how much copper", async () => {
    const hand = await tablet();
    const { page } = hand;
    for (const width of SLICES) {
      await page.setViewportSize({ width, height: 1000 });
      await expect.poll(async () => (await hand.sheet.boundingBox())?.width).toBe(width);
      await expect.poll(() => page.evaluate(outOfReach)).toEqual([]);
      const box = async (selector: string) => (await page.locator(selector).boundingBox()) ?? { x: -1, y: 0, width: 0 };
      for (const selector of [".topbar .counts", ".copper-total", ".topbar-site"]) {
        const isThere = async () => {
          const { x, width: wide } = await box(selector);
          return [x >= 0, x + wide <= width, wide > 20];
        };
        await expect.poll(isThere, { message: `${selector} at ${width}` }).toEqual([true, true, true]);
      }
    }
    await page.getByRole("button", { name: "Details", exact: true }).tap();
    await page.getByRole("button", { name: /Fence, south run/ }).tap();
    await page.getByRole("complementary", { name: "Details" }).getByText("needs bonding", { exact: true }).waitFor();
  });
});

describe("half of a split screen", () => {
  it("holds every control, and a finding stays in sight above its words", async () => {
    const hand = await tablet(HALF);
    const { page } = hand;
    await expect.poll(() => page.evaluate(outOfReach)).toEqual([]);
    await page.getByRole("button", { name: "Parts", exact: true }).tap();
    await page.getByRole("button", { name: /^26 B7.*Fixed metal/ }).tap();
    await page.getByRole("button", { name: /Fence, south run/ }).tap();
    const details = page.getByRole("complementary", { name: "Details" });
    await details.getByRole("heading", { name: "Fence, south run" }).waitFor();
    const column = async () => (await details.boundingBox())?.y ?? 0;
    await expect.poll(async () => (await hand.onScreen(192, -55)).y < (await column())).toBe(true);
    await page.getByRole("button", { name: "Close the details" }).tap();
    await expect.poll(() => details.isVisible()).toBe(false);
    // Key hints are for keyboards.
    await page.getByRole("button", { name: "Site menu" }).tap();
    const save = page.getByRole("menuitem", { name: "Save", exact: true });
    await save.waitFor();
    expect(await save.locator("kbd").isVisible()).toBe(false);
  });
});
