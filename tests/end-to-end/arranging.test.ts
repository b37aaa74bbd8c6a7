/** Arranging by hand in a real browser, with pointer and keys: places are arithmetic, words our own choice. */
import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();

type Place = readonly number[];
interface Saved {
  readonly name?: string;
  readonly arrangement?: object;
  readonly elements: readonly { readonly id: string; readonly shape?: { readonly point?: Place } }[];
}

const post = (id: string, x: number, y: number) => ({ id, kind: "metal", part: "post", shape: { point: [x, y] } });
/** A pool of 20 by 10 ft and three posts beside it, 4 ft off the wall: invented. */
const YARD = {
  format: "copperband-site",
  version: 1,
  name: "Posts",
  edition: "nec-2020",
  elements: [
    {
      id: "pool-1",
      kind: "pool",
      body: "pool",
      shell: "sprayed-concrete",
      steel: "bare",
      outline: {
        closed: true,
        vertices: [
          [0, 0],
          [240, 0],
          [240, 120],
          [0, 120],
        ],
      },
    },
    post("metal-1", 20, -48),
    post("metal-2", 100, -60),
    post("metal-3", 220, -48),
  ],
};

async function openYard(): Promise<SheetPage> {
  const hand = await pages.open();
  const { page } = hand;
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), hand.siteCommand("Open a file")]);
  await chooser.setFiles({
    name: "posts.site.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(YARD)),
  });
  await hand.panel("Outline");
  await expect.poll(() => page.getByRole("option").count()).toBe(4);
  return hand;
}

/** What a save would write. */
async function saved({ page }: SheetPage): Promise<Saved> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return JSON.parse(await readFile(await download.path(), "utf8"));
}

const postsOf = ({ elements }: Saved) => elements.flatMap(({ shape }) => (shape?.point ? [shape.point] : []));

/** Draws a box round the three posts, from the left to the right. */
async function boxPosts(hand: SheetPage): Promise<void> {
  await hand.pull([-20, -20], [260, -90]);
  await hand.page.mouse.up();
}

async function key(hand: SheetPage, ...keys: string[]): Promise<void> {
  await hand.sheet.focus();
  for (const one of keys) await hand.page.keyboard.press(one);
}

describe("several at once", () => {
  it("boxed, grouped, dragged as one, lined up by a key, locked against the pointer, and freed again", async () => {
    const hand = await openYard();
    const { page } = hand;
    await boxPosts(hand);
    await hand.panel("Facts");
    await page.getByRole("heading", { name: "3 elements selected" }).waitFor();
    await key(hand, "Control+g");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Group 3 metal parts");
    await key(hand, "Escape");
    await hand.pull([100, -60], [100, -84]);
    await page.mouse.up();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Move 3 metal parts");
    await key(hand, "Control+Shift+g", "Control+Shift+ArrowDown");
    // Two of them come down to the lowest.
    await expect.poll(() => hand.undoWords()).toBe("Undo: Line up the bottoms of 2 metal parts");
    const lined = postsOf(await saved(hand));
    expect(new Set(lined.map(([, y]) => y)).size).toBe(1);
    expect(lined.map(([x]) => x)).toEqual([20, 100, 220]);
    await key(hand, "8");
    // The middle post comes to the middle: (20 + 220) / 2.
    expect(postsOf(await saved(hand)).map(([x]) => x)).toEqual([20, 120, 220]);
    await key(hand, "k", "Escape");
    const y = lined[0]?.[1] ?? 0;
    await hand.pull([120, y], [120, y - 60]);
    await page.mouse.up();
    await hand.click(120, y);
    await page.getByRole("status").getByText("Post 2 is locked").waitFor();
    expect(await hand.undoWords()).toBe("Undo: Lock 3 metal parts");
    await key(hand, "Shift+k");
    await hand.click(120, y);
    await page.getByRole("heading", { name: "Post 2" }).waitFor();
  });

  it("moved, turned, mirrored and repeated by typed figures, each one step; a wrong figure is named", async () => {
    const hand = await openYard();
    const { page } = hand;
    await hand.click(20, -48);
    await key(hand, "g");
    const move = page.getByRole("form", { name: "Move by a distance" });
    await move.getByLabel("To the right").fill("wide");
    await page.keyboard.press("Enter");
    await move.getByRole("alert").waitFor();
    await move.getByLabel("To the right").fill("4in");
    await move.getByLabel("Up").fill(`-1' 0"`);
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Move post 1");
    expect(postsOf(await saved(hand))[0]).toEqual([24, -60]);
    await key(hand, "q");
    const turn = page.getByRole("form", { name: "Turn by degrees" });
    await turn.getByLabel("Degrees").fill("90");
    await turn.getByLabel("About").selectOption({ label: "A place on the site" });
    await turn.getByLabel("Right of origin").fill("0");
    await turn.getByLabel("Up from origin").fill("0");
    await page.keyboard.press("Enter");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Turn post 1");
    expect(postsOf(await saved(hand))[0]).toEqual([60, 24]);
    await key(hand, "v");
    const mirror = page.getByRole("form", { name: "Mirror" });
    await mirror.getByLabel("About").selectOption({ label: "The side of an element" });
    await mirror.getByLabel("Element").selectOption("pool-1");
    await mirror.getByRole("button", { name: "Mirror" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Mirror post 1");
    // About the pool's first side, which lies on y = 0.
    expect(postsOf(await saved(hand))[0]).toEqual([60, -24]);
    await key(hand, "Shift+Y");
    const repeat = page.getByRole("form", { name: "Repeat along a line" });
    await repeat.getByLabel("Along").selectOption("pool-1");
    await repeat.getByLabel("Spacing").fill("10'");
    await repeat.getByLabel("Beside the line").fill("-24in");
    await repeat.getByRole("button", { name: "Repeat" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Repeat post 1");
    // Six places 120 in. apart round 720 in.
    expect(postsOf(await saved(hand))).toHaveLength(3 + 6);
    await key(hand, "Control+z", "Control+z", "Control+z", "Control+z");
    expect(postsOf(await saved(hand))).toEqual([
      [20, -48],
      [100, -60],
      [220, -48],
    ]);
  });

  it("copied to another sheet, and the whole site duplicated under its own name", async () => {
    const hand = await openYard();
    const { page } = hand;
    await boxPosts(hand);
    await key(hand, "Control+c", "Control+v");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Paste 3 metal parts");
    expect(postsOf(await saved(hand)).slice(3)).toEqual([
      [44, -72],
      [124, -84],
      [244, -72],
    ]);
    await hand.siteCommand("Duplicate the site");
    await page.getByText("kept as “Posts, copy”").waitFor();
    await hand.emptySheet();
    await key(hand, "Control+v");
    await expect.poll(() => hand.undoWords()).toBe("Undo: Paste 3 metal parts");
    const [a, b, c] = postsOf(await saved(hand));
    expect([(b?.[0] ?? 0) - (a?.[0] ?? 0), (c?.[0] ?? 0) - (a?.[0] ?? 0)]).toEqual([80, 200]);
    await hand.siteCommand("Demo sites and kept copies");
    // The site and its copy, each kept.
    await expect.poll(() => page.locator(".kept-row", { hasText: "Posts" }).count()).toBe(2);
    expect(await page.locator(".kept-row", { hasText: "Posts, copy" }).count()).toBe(1);
  });
});

describe("what is not drawn", () => {
  it("is hidden by a key, still judged, found by its name, and shown again; so are the parts", async () => {
    const hand = await openYard();
    const { page } = hand;
    const counts = page.locator(".topbar").getByText(/need bonding|needs bonding/);
    await expect.poll(() => counts.textContent()).toBe("2 need bonding");
    await hand.click(220, -48);
    await key(hand, "j");
    await page.getByText("Not drawn, but still judged: 1 element.").waitFor();
    expect((await saved(hand)).arrangement).toEqual({ hidden: ["metal-3"] });
    await expect.poll(() => counts.textContent()).toBe("2 need bonding");
    await key(hand, "Control+f");
    await page.keyboard.type("hidden");
    await expect.poll(() => page.getByRole("option").count()).toBe(1);
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Show again" }).click();
    await expect.poll(() => hand.undoWords()).toBe("Undo: Show post 3");
    expect((await saved(hand)).arrangement).toBeUndefined();
    await hand.panel("Facts");
    await page.getByRole("heading", { name: "Post 3" }).waitFor();
    await page.getByRole("button", { name: "Do not draw: Fixed metal" }).click();
    // What is no longer drawn is no longer selected.
    await page.getByRole("heading", { name: "The site" }).waitFor();
    await page.getByText("Not drawn, but still judged: 1 part of the article.").waitFor();
    await page.getByRole("button", { name: "Show all" }).click();
    await expect.poll(() => page.locator(".hidden-note").count()).toBe(0);
    await key(hand, "Control+k");
    await page.getByRole("combobox", { name: /^Search the commands/ }).fill("post 2");
    await page.getByRole("option", { name: /Go to\s*Post 2/ }).waitFor();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "Post 2" }).waitFor();
  });
});
