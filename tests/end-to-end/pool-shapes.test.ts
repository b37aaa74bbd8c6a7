/** Pools placed by their dimensions, in a real browser: typed sizes, and the ring that the program reports for them. */
import { describe, expect, it } from "vitest";
import { feetAndInches } from "../../rules/words/lengths.ts";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const { PI, acos, sqrt, tan } = Math;

const pages = browserPages();

async function openPage(): Promise<SheetPage> {
  const hand = await pages.open();
  await hand.emptySheet();
  return hand;
}

/** The ring lies this far out unless the site says otherwise, inches. */
const OUT = 21;
const WHOLE = 2 * PI * OUT;

/** Angle between the sides p and q of a triangle, across from r (law of cosines). */
const across = (p: number, q: number, r: number) => acos((p * p + q * q - r * r) / (2 * p * q));

/** A half circle of radius r between two shoulders of a wall: its ring goes round the circle and meets the shoulders' ring. */
function romanEnd(width: number, r: number): number {
  const height = sqrt((r + OUT) ** 2 - OUT ** 2);
  return width - 2 * height + 2 * (r + OUT) * acos(OUT / (r + OUT));
}

/** Outline of a kidney: each arc's angle from the triangle of its center and the centers beside it. */
function kidney(length: number, a: number, b: number, outer: number, inner: number): number {
  const c = length - a - b;
  const [oa, ob, ia, ib] = [outer - a, outer - b, inner + a, inner + b];
  const ends = a * (PI + across(oa, c, ob) - across(ia, c, ib)) + b * (PI + across(ob, c, oa) - across(ib, c, ia));
  return ends + outer * across(oa, ob, c) + inner * across(ia, ib, c);
}

/** Outline of a figure 8 with equal ends: the neck's arcs by the right triangle of half of it. */
function figureEight(length: number, a: number, neck: number): number {
  const half = length / 2 - a;
  const r = (half * half + (neck / 2) ** 2 - a * a) / (2 * a - neck);
  const angle = Math.asin(half / (r + a));
  return 2 * r * 2 * angle + 2 * a * (PI + 2 * angle);
}

/**
 * What is typed, and the ring's length, inches. A ring of a smooth or convex outline is as long as the outline and a
 * circle of radius 21 (Steiner's formula for parallel curves). A corner that points into the water by t takes 2 tan(t/2)
 * of 21 and what it turns by has to be turned once more.
 */
const SHAPES: readonly (readonly [string, Readonly<Record<string, string>>, number])[] = [
  [
    "Rectangle",
    { Length: "32'", Width: "16' 6\"", "Corner radius": "2'" },
    2 * (384 + 198) - (8 - 2 * PI) * 24 + WHOLE,
  ],
  [
    "Rectangle, corners apart",
    { Length: "32'", Width: "16'", "Lower right radius": "3'", "Upper right radius": "0", "Upper left radius": "18in" },
    2 * (384 + 192) - (2 - PI / 2) * (36 + 18) + WHOLE,
  ],
  // 1,291.48 in. by GEOS for a body of 30 by 16 ft.
  [
    "Roman end",
    { "Length overall": "35'", Width: "16'", "Arc width": "10'", "Arc depth": "5'" },
    2 * 360 + 192 + WHOLE + romanEnd(192, 60),
  ],
  [
    "Double Roman end",
    { "Length overall": "40'", Width: "18'", "Arc width": "10'" },
    2 * 360 + WHOLE + 2 * romanEnd(216, 60),
  ],
  [
    "Grecian",
    { Length: "36'", Width: "18'", "Cut along the length": "4'", "Cut along the width": "3'" },
    2 * (432 - 96) + 2 * (216 - 72) + 4 * 60 + WHOLE,
  ],
  ["Oval", { Length: "10.06 m", Width: "18'" }, 2 * (1006 / 2.54 - 216) + 216 * PI + WHOLE],
  ["Round", { Diameter: "24'" }, (288 + 2 * OUT) * PI],
  [
    "Kidney",
    { Length: "32'", "Large end": "18'", "Small end": "14'", "Outside radius": "24'", "Inside radius": "8'" },
    kidney(384, 108, 84, 288, 96) + WHOLE,
  ],
  [
    "Lazy L",
    { Length: "32'", Width: "16'", "Leg length": "26'", Bend: "45" },
    // Equal arms: the inner corner lies w tan(t/2) short of the outer one, on both.
    2 * 384 + 2 * 312 + 2 * 192 - 2 * 192 * tan(PI / 8) + WHOLE + (PI / 4) * OUT - 2 * OUT * tan(PI / 8),
  ],
  [
    "True L",
    { Length: "40'", Width: "16'", "Leg length": "30'", "Leg width": "14'" },
    2 * (480 + 360) + WHOLE + (PI / 2) * OUT - 2 * OUT,
  ],
  [
    "Figure 8",
    { Length: "32'", "Large end": "17'", "Small end": "17'", Neck: "12'" },
    figureEight(384, 102, 144) + WHOLE,
  ],
];

async function choose(hand: SheetPage, shape: string): Promise<void> {
  await hand.take("p");
  await hand.page.getByRole("radio", { name: shape, exact: true }).click();
  // The tool's code has come: before, it takes no key.
  await hand.page.getByRole("button", { name: "Place the pool" }).waitFor();
}

async function typeSizes(hand: SheetPage, sizes: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, text] of Object.entries(sizes)) await hand.page.getByLabel(label, { exact: true }).fill(text);
}

describe("the ring of a pool by its dimensions", () => {
  it.each(SHAPES)("%s", async (shape, sizes, ring) => {
    const hand = await openPage();
    const { page } = hand;
    await choose(hand, shape);
    await typeSizes(hand, sizes);
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    await hand.panel("Copper");
    const line = page.locator(".takeoff-line", { hasText: "Ring" });
    // Copper is shown to the inch.
    await expect.poll(() => line.textContent()).toContain(feetAndInches(Math.round(ring)));
    await page.keyboard.press("Control+z");
    await page.getByRole("heading", { name: "Begin with the pool" }).waitFor();
  });
});

describe("a pool that stands", () => {
  it("is given other dimensions of its shape from its facts, in one step", async () => {
    const hand = await openPage();
    const { page } = hand;
    await choose(hand, "Oval");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Change its dimensions" }).click();
    await page.getByRole("button", { name: "Change the pool" }).waitFor();
    // The first field has the focus as soon as it is there.
    const length = page.getByLabel("Length", { exact: true });
    await expect.poll(() => length.evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.type("30'");
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Change the dimensions of pool 1");
    await hand.panel("Copper");
    // Two half circles of 18 ft and two sides of 12 ft (arithmetic); the ring 21 in. further out.
    const ring = 2 * (360 - 216) + 216 * PI + WHOLE;
    const line = page.locator(".takeoff-line", { hasText: "Ring" });
    await expect.poll(() => line.textContent()).toContain(feetAndInches(Math.round(ring)));
  });
});

describe("placing a pool", () => {
  it("a dimension that cannot be is named with its range; the pool is turned, mirrored and put where it is clicked", async () => {
    const hand = await openPage();
    const { page } = hand;
    await choose(hand, "True L");
    await typeSizes(hand, { "Corner radius": "9'" });
    await page.keyboard.press("Enter");
    await page.getByText("Corner radius can be at most 8' 0\" with these sides; it is 9' 0\".").waitFor();
    await typeSizes(hand, { "Corner radius": "" });
    await page.getByRole("button", { name: "Turn", exact: true }).click();
    await page.getByRole("button", { name: "Mirror", exact: true }).click();
    await page.getByRole("button", { name: "Held at: middle" }).click();
    const { x, y } = await hand.camera();
    const [left, up] = [Math.round((x - 240) / 60) * 60, Math.round(y / 60) * 60];
    await hand.click(left, up);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    // The held corner lies where it was clicked; mirrored and turned by a quarter, its short side runs to the right.
    const corner = (number: number) =>
      Promise.all(
        ["right", "up"].map((way) => page.getByLabel(`Corner ${number}, ${way}`, { exact: true }).inputValue()),
      );
    await expect.poll(() => corner(1)).toEqual([feetAndInches(left), feetAndInches(up)]);
    await expect.poll(() => corner(2)).toEqual([feetAndInches(left + 192), feetAndInches(up)]);
  });

  it("by keys alone, from the list of commands; typed sizes and Enter", async () => {
    const hand = await openPage();
    const { page } = hand;
    await hand.sheet.focus();
    await page.keyboard.press("Control+k");
    await page.keyboard.type("dimensions oval");
    await page.keyboard.press("Enter");
    await page.getByRole("radio", { name: "Oval", exact: true, checked: true }).waitFor();
    await hand.sheet.focus();
    await page.keyboard.type("30'");
    await page.keyboard.press("Tab");
    await page.keyboard.type("15'");
    await page.keyboard.press("Enter");
    await hand.panel("Copper");
    const line = page.locator(".takeoff-line", { hasText: "Ring" });
    const ring = 2 * 180 + 180 * PI + WHOLE;
    await expect.poll(() => line.textContent()).toContain(feetAndInches(Math.round(ring)));
  });

  it("flowing curves: points clicked along the wall close without a corner", async () => {
    const hand = await openPage();
    const { page } = hand;
    await hand.take("p");
    await page.getByRole("radio", { name: "Flowing curves" }).click();
    await page.getByLabel("Right", { exact: true }).waitFor();
    const { x, y } = await hand.camera();
    await page.keyboard.down("Alt");
    // Points of a circle of 10 ft: the curve through them is the circle.
    for (const degrees of [180, 250, 320, 30, 100]) {
      const angle = (degrees * PI) / 180;
      await hand.click(x - 40 + 120 * Math.cos(angle), y + 40 + 120 * Math.sin(angle));
    }
    await page.keyboard.up("Alt");
    await page.getByRole("button", { name: "Close the outline" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    await hand.panel("Copper");
    const line = page.locator(".takeoff-line", { hasText: "Ring" });
    // A pixel is about half an inch here: to the foot.
    await expect.poll(() => line.textContent()).toContain(`${Math.floor((2 * PI * 141) / 12)}'`);
  });

  it("a tanning ledge inside: refused across the wall, drawn inside, named; the ring stays as it is", async () => {
    const hand = await openPage();
    const { page } = hand;
    await choose(hand, "Rectangle");
    await typeSizes(hand, { Length: "32'", Width: "16'" });
    const { x, y } = await hand.camera();
    const at = [Math.round(x / 60) * 60, Math.round(y / 60) * 60] as const;
    await hand.click(...at);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    // The pool's left wall lies 16 ft left of its middle.
    const left = at[0] - 192;
    await hand.take("i");
    await hand.pull([left - 48, at[1] - 60], [left + 48, at[1] + 60]);
    await page.mouse.up();
    await page.getByText("Step or ledge 1 has to lie inside a pool, at most along its wall.").waitFor();
    await hand.take("i");
    await hand.pull([left, at[1] - 60], [left + 96, at[1] + 60]);
    await page.mouse.up();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw step or ledge 1");
    await page.getByLabel("What it is", { exact: true }).selectOption({ label: "Tanning ledge" });
    await page.getByRole("heading", { name: "Tanning ledge 1" }).waitFor();
    await hand.panel("Copper");
    const line = page.locator(".takeoff-line", { hasText: "Ring" });
    await expect.poll(() => line.textContent()).toContain(feetAndInches(Math.round(2 * (384 + 192) + WHOLE)));
  });
});
