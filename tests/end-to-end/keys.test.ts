/** The program by keys and by ear: the list of commands, the parts of the page, tips, what is said. Our own design, no source. */
import { beforeEach, describe, expect, it } from "vitest";
import { COMMANDS } from "../../app/commands/commands.ts";
import { TAKE_BACK } from "../../app/tools/take-back.ts";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();
let hand: SheetPage;

beforeEach(async () => {
  hand = await pages.open();
  await hand.page.getByRole("heading", { name: "Cinderpath Lane 12" }).waitFor();
  await expect.poll(async () => (await hand.camera()).x).toBeGreaterThan(0);
});

const focusedIn = (selectors: readonly string[]) =>
  hand.page.evaluate((all) => all.find((selector) => document.activeElement?.closest(selector)) ?? "none", selectors);

describe("one list of commands", () => {
  it("serves the palette: what is typed is found, said why it cannot run, and run by Enter", async () => {
    const { page } = hand;
    await hand.sheet.focus();
    await page.keyboard.press("Control+k");
    const search = page.getByRole("combobox", { name: /^Search the commands/ });
    await search.fill("redo");
    await page.getByRole("option", { name: /There is nothing to redo/ }).waitFor();
    await search.fill("metal part");
    await page.getByRole("option", { name: /Metal part.*M/ }).waitFor();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Metal part", pressed: true }).waitFor();
    await expect.poll(() => focusedIn([".sheet-canvas", "body"])).toBe(".sheet-canvas");
  });

  it("gives the focus back to where it was, and the keys of a tool to the sheet", async () => {
    const { page } = hand;
    const finding = page.getByRole("button", { name: /Fence, south run/ }).first();
    await finding.focus();
    await page.keyboard.press("Control+k");
    await page.getByRole("combobox", { name: /^Search the commands/ }).waitFor();
    await page.keyboard.press("Escape");
    await expect.poll(() => finding.evaluate((one) => one === document.activeElement)).toBe(true);
    // With something selected the arrow keys would move it, were they not the crosshair's.
    await hand.panel("Outline");
    await page.getByRole("option", { name: /Fence, south run/ }).click();
    await page.getByRole("tab", { name: "Outline" }).focus();
    await page.keyboard.press("Shift+r");
    await expect.poll(() => focusedIn([".sheet-canvas", "body"])).toBe(".sheet-canvas");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Shift+ArrowRight");
    // The crosshair's first place is what would be taken back; nothing was moved.
    await page.getByRole("button", { name: TAKE_BACK.begin, exact: true }).first().waitFor();
    await page.keyboard.press("Escape");
    await expect.poll(() => hand.undoWords()).toBe("Undo");
  });

  it("serves help: every command with a key stands there with it", async () => {
    const { page } = hand;
    await hand.sheet.focus();
    await page.keyboard.press("?");
    const terms = page.getByRole("dialog", { name: "Help" }).locator(".help-keys dt");
    await terms.first().waitFor();
    // Reading begins at the title, not at the button that closes with its tip over the text.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Help");
    const keys = await terms.allTextContents();
    expect(keys.sort()).toEqual(COMMANDS.all.flatMap(({ key, label }) => (key === undefined ? [] : [label])).sort());
  });
});

describe("keys alone", () => {
  it("go through the parts of the page and open the panels", async () => {
    const { page } = hand;
    const parts = [".topbar", ".left", ".toolbar", ".sheet", ".side", ".status"];
    await hand.sheet.focus();
    const seen: string[] = [];
    for (const key of ["F6", "F6", "F6", "F6", "Shift+F6"]) {
      await page.keyboard.press(key);
      const before = seen.at(-1) ?? ".sheet";
      await expect.poll(() => focusedIn(parts)).not.toBe(before);
      seen.push(await focusedIn(parts));
    }
    expect(seen).toEqual([".side", ".status", ".topbar", ".left", ".topbar"]);
    await hand.sheet.focus();
    await page.keyboard.press("4");
    await page.getByRole("tab", { name: "Outline", selected: true }).waitFor();
    await expect.poll(() => focusedIn(parts)).toBe(".side");
  });

  it("close the print window from a notice in it too", async () => {
    const { page } = hand;
    // A problem stays: what is only told could be gone before a slow machine gets to it.
    await hand.click(456, 240);
    await hand.panel("Facts");
    await page
      .getByRole("heading", { name: /antern/ })
      .first()
      .waitFor();
    await hand.sheet.focus();
    await page.keyboard.press(".");
    await page.locator(".notice-problem").waitFor();
    await page.keyboard.press("Control+p");
    const print = page.getByRole("dialog", { name: "Print the plan" });
    await print.getByRole("button", { name: "Put the notice away" }).focus();
    await page.keyboard.press("Escape");
    await print.waitFor({ state: "hidden" });
    await expect.poll(() => hand.sheet.evaluate((box) => box === document.activeElement)).toBe(true);
  });

  it("wait for a tool that is still being fetched; one that it has no use for is then the commands'", async () => {
    const { page } = hand;
    let send: () => void = () => undefined;
    const sent = new Promise<void>((resolve) => {
      send = resolve;
    });
    await page.route("**/measure-tool-*.js", async (route) => {
      await sent;
      await route.continue();
    });
    await hand.sheet.focus();
    const asked = page.waitForRequest("**/measure-tool-*.js");
    await page.keyboard.press("Shift+r");
    await asked;
    for (const key of ["ArrowRight", "Enter", "Shift+ArrowRight", "Enter", "4"]) await page.keyboard.press(key);
    await page.getByRole("status").getByText("The tool is getting ready.").waitFor({ state: "attached" });
    await page.getByRole("tab", { name: "Findings", selected: true }).waitFor();
    send();
    await page.getByRole("status").getByText("1' 0\" at 0 deg.").waitFor({ state: "attached" });
    await page.getByRole("tab", { name: "Outline", selected: true }).waitFor();
  });

  it("select one element after the other, move it, and hear both", async () => {
    const { page } = hand;
    // The counts that a change is told against are those of the site as it was opened.
    await page.locator(".topbar-counts").getByText("9 need bonding").waitFor();
    const said = (words: string | RegExp) => page.getByRole("status").getByText(words).waitFor({ state: "attached" });
    await hand.sheet.focus();
    await page.keyboard.press("n");
    await said(/is selected/);
    // The south fence stands 55 in. from the water: a foot farther out it is exempt (NEC 680.26(B)(7), restated).
    await hand.panel("Outline");
    await page.getByRole("option", { name: /Fence, south run/ }).click();
    await hand.sheet.focus();
    await page.keyboard.press("Shift+ArrowDown");
    await said(/^Now 8 need bonding, \d+ exempt\.$/);
    expect(await hand.undoWords()).toBe("Undo: Move Fence, south run");
    await page.keyboard.press("Control+z");
    await said(/^Now 9 need bonding, \d+ exempt\.$/);
  });
});

describe("a tip", () => {
  it("tells name and key beside a button, for the pointer and for keys, and goes with Escape", async () => {
    const { page } = hand;
    const tip = page.locator(".tip");
    await page.getByRole("button", { name: "Zoom in" }).hover();
    await expect.poll(() => tip.textContent()).toBe("Zoom in+");
    await page.mouse.move(700, 400);
    await tip.waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Select and move" }).focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => tip.textContent()).toMatch(/^Move the sheetH/);
    await page.keyboard.press("Escape");
    await tip.waitFor({ state: "detached" });
  });

  it("stands at every button that shows a sign alone, and every tool", async () => {
    const { page } = hand;
    const without = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>("button")]
        .filter((button) => button.matches(".tool, .icon-button") || button.textContent?.trim() === "")
        .filter((button) => button.checkVisibility({ visibilityProperty: true }) && !button.dataset.tip)
        .map((button) => button.outerHTML.slice(0, 100)),
    );
    expect(without).toEqual([]);
    const tools = page.getByRole("toolbar", { name: "Drawing tools" }).locator("button.tool:not([aria-haspopup])");
    for (const tool of await tools.all()) expect(await tool.getAttribute("data-tip-key")).toMatch(/\S/);
  });
});

describe("the wheel", () => {
  it("zooms about the pointer; a trackpad's small steps move the sheet, and a key shows all of it again", async () => {
    const { page } = hand;
    const first = await hand.camera();
    const box = await hand.sheet.boundingBox();
    if (!box) throw new Error("the sheet has no size");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.wheel(0, -200);
    await expect.poll(async () => (await hand.camera()).scale).toBeGreaterThan(first.scale * 1.2);
    // A quarter of a second without scrolling begins another scroll.
    await expect
      .poll(async () => {
        const before = await hand.camera();
        await page.evaluate(() => new Promise((done) => setTimeout(done, 300)));
        await page.mouse.wheel(6, 10);
        await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
        const now = await hand.camera();
        const [dx, dy] = [(now.x - before.x) * now.scale, (before.y - now.y) * now.scale];
        return now.scale === before.scale ? [Math.round(dx), Math.round(dy)] : [];
      })
      .toEqual([6, 10]);
    await hand.sheet.focus();
    await page.keyboard.press("0");
    await expect.poll(() => hand.camera()).toEqual(first);
  });
});
