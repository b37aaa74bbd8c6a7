/** Exact drawing by hand in a real browser: typed lengths, arcs, snapping, corners, offsets, dimensions, measuring. Figures are arithmetic. */
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();

/** A page with a pool of 32 by 16 ft round the origin, stretched on the grid. */
async function pageWithPool(): Promise<SheetPage> {
  const hand = await pages.open();
  await hand.emptySheet();
  await hand.take("p");
  await hand.pull([-192, -96], [192, 96]);
  await hand.page.mouse.up();
  await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
  return hand;
}

/** Types into fields of the entry bar and presses Enter in the last. */
async function typeInto(hand: SheetPage, texts: Readonly<Record<string, string>>): Promise<void> {
  const bar = hand.page.getByRole("form", { name: "Typed measurements" });
  for (const [label, text] of Object.entries(texts)) await bar.getByRole("textbox", { name: label }).fill(text);
  await hand.page.keyboard.press("Enter");
}

/** The numbers of the corner table of what is selected: right, up, bend. */
async function corner(hand: SheetPage, number: number): Promise<string[]> {
  const { page } = hand;
  return Promise.all(
    [`Corner ${number}, right`, `Corner ${number}, up`].map((label) => page.getByLabel(label).inputValue()),
  );
}

describe("while drawing", () => {
  it("takes length and direction each in its own field, in feet, meters and as a compass bearing", async () => {
    const hand = await pageWithPool();
    await hand.take("f");
    await typeInto(hand, { Right: "-30'", Up: "0" });
    await typeInto(hand, { Length: `16' 6 1/2"`, Direction: "90 deg" });
    await typeInto(hand, { Length: "5.08 m", Direction: "N 45 E" });
    await hand.page.getByRole("button", { name: "End the line" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw fence 1");
    await expect.poll(() => corner(hand, 2)).toEqual([`-30' 0"`, `16' 6 1/2"`]);
    // 5.08 m are 200 in., at 45 degrees 100 times the root of 2 each way.
    expect(
      Number.parseFloat((await hand.page.getByLabel("Corner 3, right").inputValue()).replace('"', "")),
    ).toBeCloseTo(-360 + 100 * Math.SQRT2, 6);
  });

  it("draws an arc by its radius, refuses one that is too small, and one through three points", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.take("f");
    await typeInto(hand, { Right: "-20'", Up: "-20'" });
    await hand.sheet.focus();
    await page.keyboard.press("r");
    await typeInto(hand, { Length: "10'", Direction: "0", Radius: "4'" });
    await page
      .getByText(/reaches at most 8' 0" from end to end/)
      .first()
      .waitFor();
    await typeInto(hand, { Radius: "5'" });
    await page.getByRole("button", { name: "Arc by 3 points" }).click();
    await typeInto(hand, { Length: `60in`, Direction: "90" });
    await typeInto(hand, { Length: "60in", Direction: "0" });
    await page.getByRole("button", { name: "End the line" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw fence 1");
    // A half circle of radius 60 is 60 deep.
    await expect.poll(() => page.getByLabel("Bend of the side from corner 1").inputValue()).toBe(`5' 0"`);
    await expect.poll(() => corner(hand, 3)).toEqual([`-5' 0"`, `-20' 0"`]);
  });
});

describe("snapping", () => {
  it("comes to lie exactly 5 ft from the pool's corner; Alt holds it off", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    // 60 in. from the corner at 45 degrees, an inch or so off.
    const near = [-192 - 43, -96 - 43] as const;
    const apart = async () => {
      await expect.poll(() => hand.undoWords()).toMatch(/^Undo: Draw metal/);
      const [x, y] = await Promise.all(
        ["To the right", "Up"].map(async (label) => inches(await page.getByLabel(label, { exact: true }).inputValue())),
      );
      return Math.hypot((x ?? 0) + 192, (y ?? 0) + 96);
    };
    await hand.take("m");
    await hand.click(...near);
    expect(await apart()).toBeCloseTo(60, 6);
    await page.keyboard.press("Control+z");
    await hand.take("m");
    await page.keyboard.down("Alt");
    await hand.click(...near);
    await page.keyboard.up("Alt");
    const free = await apart();
    expect(Math.abs(free - 60)).toBeGreaterThan(0.01);
    // Within a pixel of where it was pointed.
    expect(Math.abs(free - 43 * Math.SQRT2)).toBeLessThan(2);
  });
});

/** A length as a field shows it, inches: all its digits and the mark. */
function inches(text: string): number {
  return Number(text.replace('"', ""));
}

describe("corners and sides", () => {
  it("a corner is rounded by a typed radius, and one that is too large is refused with what fits", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.click(192, 96);
    await typeInto(hand, { radius: "17'" });
    await page
      .getByText(/at most 16' 0" fits/)
      .first()
      .waitFor();
    await typeInto(hand, { radius: "4'" });
    await expect.poll(() => hand.undoWords()).toBe("Undo: Round a corner of pool 1");
    await expect.poll(() => corner(hand, 3)).toEqual([`16' 0"`, `4' 0"`]);
    await expect.poll(() => corner(hand, 4)).toEqual([`12' 0"`, `8' 0"`]);
  });

  it("by keys alone: a side is chosen, made an arc, bent by a radius and made straight", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.sheet.focus();
    for (const key of [".", ".", "a"]) await page.keyboard.press(key);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Bend a side of pool 1");
    await page.keyboard.type("20");
    await page.keyboard.press("Enter");
    // A chord of 384 in a circle of radius 240: 96 deep.
    await expect.poll(() => page.getByLabel("Bend of the side from corner 1").inputValue()).toBe(`8' 0"`);
    await hand.sheet.focus();
    await page.keyboard.press("a");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Straighten a side of pool 1");
  });
});

describe("offset, cut, join", () => {
  it("a deck's edge 4 ft round the pool, by one typed distance", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.sheet.focus();
    await page.keyboard.press("Shift+F");
    await page.getByRole("button", { name: "Square corners" }).click();
    await typeInto(hand, { Distance: "4'" });
    await expect.poll(() => hand.undoWords()).toBe("Undo: Offset pool 1");
    await hand.panel("Outline");
    await page.getByRole("option", { name: /surface 1.*40' 0" by 24' 0"/i }).waitFor();
  });

  it("a fence is cut where it is clicked and joined again", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.take("f");
    await typeInto(hand, { Right: "-20'", Up: "-12'" });
    await typeInto(hand, { Length: "40'", Direction: "0" });
    await page.getByRole("button", { name: "End the line" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw fence 1");
    await hand.take("Shift+C");
    await expect.poll(() => hand.sheet.getAttribute("data-tool")).toBe("split");
    await hand.click(0, -144);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Cut fence 1");
    await page.keyboard.press("Shift+V");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Join fence 1 and fence 2");
  });
});

describe("dimensions and measuring", () => {
  it("a dimension follows the pool and goes with it in one step", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.take("Shift+E");
    await expect.poll(() => hand.sheet.evaluate((box) => box.style.cursor)).toBe("crosshair");
    await hand.click(-192, -96);
    await hand.click(192, -96);
    await hand.click(0, -140);
    await expect.poll(() => hand.undoWords()).toBe(`Undo: Draw dimension 32' 0"`);
    await hand.take("s");
    await hand.click(0, 0);
    await page.getByRole("button", { name: `Take dimension 32' 0" away` }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Take a dimension away");
    await hand.sheet.focus();
    await page.keyboard.press("Control+z");
    await page.getByRole("button", { name: `Take dimension 32' 0" away` }).waitFor();
    await hand.click(100, -140);
    await page
      .getByRole("status")
      .getByText(/^Dimension 32' 0" is picked/)
      .waitFor({ state: "attached" });
    await page.getByRole("button", { name: "Take the dimension away" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Take a dimension away");
    await page.keyboard.press("Control+z");
    await hand.click(100, -140);
    await page.keyboard.press("Delete");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Take a dimension away");
    await page.keyboard.press("Control+z");
    await hand.click(0, 0);
    await page.keyboard.press("Delete");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Delete pool 1");
    await page.keyboard.press("Control+z");
    await expect.poll(() => hand.undoWords()).toBe(`Undo: Draw dimension 32' 0"`);
  });

  it("measures between snapped places and says it, without a step of the history", async () => {
    const hand = await pageWithPool();
    const { page } = hand;
    await hand.take("Shift+R");
    await expect.poll(() => hand.sheet.evaluate((box) => box.style.cursor)).toBe("crosshair");
    await hand.click(-191, -95);
    await hand.click(191, 95);
    // The root of 384 squared and 192 squared.
    await page.getByText(`35' 9 5/16" at 26.6 deg; 32' 0" across, 16' 0" up.`).waitFor({ state: "attached" });
    expect(await hand.undoWords()).toBe("Undo: Draw pool 1");
  });
});
