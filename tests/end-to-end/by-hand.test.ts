/** A yard drawn and worked on by hand in a real browser: by pointer, by keys alone and by fingers. Common practice, no source. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import { moveFingers, type SheetPage } from "./sheet-page.ts";

const { open: openPage } = browserPages();

/** A pool of 32 by 16 ft round the origin: its first corner by a click, its sizes typed. */
async function drawPool(hand: SheetPage): Promise<void> {
  const { keyboard } = hand.page;
  await hand.take("p");
  await hand.click(-192, -96);
  await keyboard.type("384in");
  await keyboard.press("Tab");
  await keyboard.type("16");
  await keyboard.press("Enter");
  await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
}

describe("by pointer", () => {
  it("a refused corner says why and springs back; a bend is drawn and Escape gives it up", async () => {
    const hand = await openPage();
    const { page } = hand;
    await hand.emptySheet();
    await drawPool(hand);
    await hand.pull([192, 96], [0, -150]);
    const reason = /cross itself between corner/;
    await expect.poll(() => page.locator(".hint").textContent()).toMatch(reason);
    await page.mouse.up();
    await page.getByRole("status").getByText(reason).waitFor();
    expect(await hand.undoWords()).toBe("Undo: Draw pool 1");
    await hand.pull([192, 0], [230, 0]);
    await page.keyboard.press("Escape");
    await page.mouse.up();
    expect(await hand.undoWords()).toBe("Undo: Draw pool 1");
    await hand.pull([192, 0], [240, 0]);
    await page.mouse.up();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Bend a side of pool 1");
    // Pulled 48 in. out of a side 192 in. long.
    await expect.poll(() => page.getByLabel("Bend of the side from corner 2").inputValue()).toBe(`4' 0"`);
  });

  it("a proposed tie that is tapped is recorded, and undo takes it back", async () => {
    const hand = await openPage();
    const { page } = hand;
    await hand.panel("Copper");
    const open = page.getByRole("button", { name: /^Record tie T/ });
    await expect.poll(() => open.count()).toBe(4);
    // The first tie of the first demo lies 21 in. west of the shell's lower left corner, which is its origin.
    await hand.click(-21, 0);
    await page.getByRole("button", { name: "Record this tie" }).click();
    await expect.poll(() => open.count()).toBe(3);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Record tie 1");
    await page.keyboard.press("Control+z");
    await expect.poll(() => open.count()).toBe(4);
  });
});

describe("by keys alone", () => {
  it("draws a pool and a fence with the crosshair, and moves what is selected", async () => {
    const hand = await openPage();
    const { page } = hand;
    await hand.emptySheet();
    await hand.take("p");
    await page.keyboard.press("Enter");
    for (const key of ["Shift+ArrowRight", "Shift+ArrowRight", "Shift+ArrowUp"]) await page.keyboard.press(key);
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    await hand.take("f");
    for (const key of ["ArrowDown", "Shift+ArrowDown", "Enter", "Shift+ArrowRight", "Enter", "Enter"]) {
      await page.keyboard.press(key);
    }
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw fence 1");
    await page.keyboard.press("ArrowLeft");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Move fence 1");
    await hand.panel("Outline");
    // Two and one steps of 12 in.
    await page.getByRole("option", { name: /Pool 1.*2' 0" by 1' 0"/ }).waitFor();
    await page.getByRole("option", { name: /Fence 1.*1' 0" long/ }).waitFor();
  });
});

describe("by fingers", () => {
  it("one draws, two zoom the sheet and leave the drawing alone", async () => {
    const hand = await openPage({ viewport: { width: 834, height: 1112 }, hasTouch: true });
    const { page } = hand;
    await hand.emptySheet();
    const session = await page.context().newCDPSession(page);
    await page.getByRole("button", { name: /Rectangle by size/ }).tap();
    await hand.holds("pool-rectangle");
    await moveFingers(session, [[250, 400]], [[350, 450]], [[550, 560]]);
    await expect.poll(() => hand.undoWords()).toBe("Undo: Draw pool 1");
    const before = await hand.camera();
    const apart = (half: number): [number, number][] => [
      [400 - half, 480],
      [400 + half, 480],
    ];
    await moveFingers(session, apart(100), apart(150), apart(200));
    await expect.poll(async () => (await hand.camera()).scale / before.scale).toBeCloseTo(2, 2);
    expect(await hand.undoWords()).toBe("Undo: Draw pool 1");
    expect(await page.getByText("A drawing aid, not an approval.", { exact: true }).isVisible()).toBe(true);
  });
});

describe("opening", () => {
  it("shows the whole of what was opened, and says what is wrong with a file that cannot be", async () => {
    const hand = await openPage();
    const { page } = hand;
    // Before the site is there the view lies round the origin.
    await expect.poll(async () => (await hand.camera()).x).toBeGreaterThan(0);
    const first = await hand.camera();
    await hand.emptySheet();
    await expect.poll(() => hand.camera()).toMatchObject({ x: 0, y: 0 });
    await hand.siteCommand("Demo sites and kept copies");
    await page.getByRole("button", { name: /Cinderpath Lane 12/ }).click();
    await expect.poll(() => hand.camera()).toEqual(first);
    const folder = await mkdtemp(join(tmpdir(), "copperband-"));
    const file = join(folder, "torn.site.json");
    await writeFile(file, '{"format": "copper');
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), hand.siteCommand("Open a file")]);
    await chooser.setFiles(file);
    const dialog = page.getByRole("dialog", { name: "This file was not opened" });
    await dialog.getByText("torn.site.json").waitFor();
    await dialog.getByRole("button", { name: "Back to the sheet" }).click();
    expect(await hand.camera()).toEqual(first);
    await rm(folder, { recursive: true });
  });
});
