/** Every screen of the program, each with the way to it: what has to hold everywhere is asked of all of them. */
import type { Page } from "playwright-core";
import type { SheetPage } from "./sheet-page.ts";

export interface Screen {
  readonly name: string;
  /** What of the page is new on it; absent: all of it. */
  readonly region?: string;
  /** Opens it, from the sheet with a demo on it. */
  open(hand: SheetPage): Promise<void>;
  /** Puts it away again. */
  close?(hand: SheetPage): Promise<void>;
}

const byEscape = async ({ page }: SheetPage): Promise<void> => {
  await page.keyboard.press("Escape");
  await page.locator("dialog[open], .print-view.is-open, .menu-list").waitFor({ state: "detached" });
};

/** The column with the panels, which on a narrow screen lies away until it is asked for. */
async function showDetails(page: Page): Promise<void> {
  const toggle = page.getByRole("button", { name: "Details", exact: true });
  if ((await toggle.isVisible()) && (await toggle.getAttribute("aria-expanded")) === "false") await toggle.click();
}

async function panel({ page }: SheetPage, name: string): Promise<void> {
  await showDetails(page);
  await page.getByRole("tab", { name, exact: true }).click();
  await page.getByRole("tab", { name, exact: true, selected: true }).waitFor();
}

function panelScreen(name: string): Screen {
  return { name: `panel ${name}`, region: ".side", open: (hand) => panel(hand, name) };
}

/** A window that a command opens, by the command's name and the window's. */
function windowScreen(command: string, title: string): Screen {
  return {
    name: title,
    region: "dialog[open]",
    async open({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Control+k");
      await page.getByRole("combobox", { name: /^Search the commands/ }).fill(command);
      await page.keyboard.press("Enter");
      await page.getByRole("dialog", { name: title }).waitFor();
    },
    close: byEscape,
  };
}

/** A form beside the facts of what is selected, by its key. */
function arrangeScreen(key: string, title: string): Screen {
  return {
    name: title,
    region: ".side",
    async open(hand) {
      const { page } = hand;
      await panel(hand, "Outline");
      await page.getByRole("option").first().click();
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press(key);
      await page.getByRole("form", { name: title }).waitFor();
    },
    async close({ page }) {
      await page.getByRole("form", { name: title }).getByRole("button", { name: "Close" }).click();
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Escape");
    },
  };
}

function codeTab(name: string): Screen {
  return {
    name: `code, ${name}`,
    region: ".side",
    async open(hand) {
      await panel(hand, "Code");
      await hand.page.getByRole("button", { name, exact: true }).click();
    },
  };
}

export const SCREENS: readonly Screen[] = [
  { name: "the sheet", open: async () => {} },
  panelScreen("Findings"),
  {
    name: "a finding with a question",
    region: ".side",
    async open(hand) {
      await panel(hand, "Findings");
      await hand.page
        .getByRole("region", { name: "Findings" })
        .getByText(/^question/)
        .first()
        .click();
      await hand.page.getByRole("region", { name: "Question" }).waitFor();
    },
    async close({ page }) {
      await page.getByRole("button", { name: "All findings" }).click();
    },
  },
  {
    name: "facts of the site",
    region: ".side",
    async open(hand) {
      await hand.page.keyboard.press("Escape");
      await panel(hand, "Facts");
    },
  },
  {
    name: "facts of an element",
    region: ".side",
    async open(hand) {
      await panel(hand, "Outline");
      await hand.page.getByRole("option").first().click();
      await panel(hand, "Facts");
      await hand.page.getByRole("button", { name: "Delete", exact: true }).waitFor();
    },
  },
  panelScreen("Copper"),
  panelScreen("Outline"),
  codeTab("Rules"),
  codeTab("Amendments"),
  codeTab("Editions"),
  {
    name: "site menu",
    region: ".topbar",
    async open({ page }) {
      await page.getByRole("button", { name: "Site menu" }).click();
      await page.getByRole("menuitem", { name: "New sheet" }).waitFor();
    },
    close: byEscape,
  },
  {
    name: "more tools",
    region: ".toolbar",
    async open({ page }) {
      await page.getByRole("button", { name: /^More tools/ }).click();
      await page.getByRole("menuitemradio").first().waitFor();
    },
    close: byEscape,
  },
  windowScreen("help", "Help"),
  windowScreen("demo sites", "Demo sites and kept copies"),
  windowScreen("tape points", "Tape points in"),
  windowScreen("picture underneath", "Picture underneath"),
  {
    name: "all commands",
    region: "dialog[open]",
    async open({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Control+k");
      await page.getByRole("dialog", { name: "All commands" }).waitFor();
    },
    close: byEscape,
  },
  {
    name: "a pool by its dimensions",
    region: ".sheet",
    async open(hand) {
      await hand.take("p");
      await hand.page.getByRole("radio", { name: "Lazy L", exact: true }).click();
      await hand.page.getByLabel("Leg width", { exact: true }).waitFor();
    },
    async close(hand) {
      await hand.take("s");
    },
  },
  {
    name: "print",
    region: ".print-view",
    async open({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Control+p");
      await page.getByRole("dialog", { name: "Print the plan" }).locator("svg").first().waitFor();
    },
    close: byEscape,
  },
  {
    name: "drawing",
    region: ".middle",
    async open({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("o");
      await page.keyboard.press("Enter");
      await page.keyboard.press("Shift+ArrowRight");
      await page.keyboard.press("Enter");
      await page.getByRole("form", { name: "Typed measurements" }).waitFor();
      await page.keyboard.press("r");
      await page.getByRole("button", { name: "Bend the other way" }).waitFor();
    },
    async close({ page }) {
      await page.keyboard.press("Escape");
      await page.keyboard.press("Escape");
    },
  },
  {
    name: "a side chosen",
    region: ".middle",
    async open(hand) {
      const { page } = hand;
      await panel(hand, "Outline");
      await page.getByRole("option").first().click();
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press(".");
      await page.keyboard.press(".");
      await page.getByRole("button", { name: "Corner in its middle" }).waitFor();
    },
    async close({ page }) {
      await page.keyboard.press("Escape");
      await page.keyboard.press("Escape");
    },
  },
  {
    name: "a dimension picked",
    region: ".middle",
    async open(hand) {
      const { page } = hand;
      await hand.take("Home");
      await hand.take("Shift+e");
      // The whole yard is in view then.
      await page.locator('.sheet-canvas[data-tool="dimension"]').waitFor();
      // Above the yard, where nothing lies but what was said of the screen before; it may be going by itself just now.
      await page.evaluate(() => document.querySelector<HTMLElement>(".notice > [aria-label^='Put']")?.click());
      await hand.click(0, 460);
      await hand.click(180, 460);
      await hand.click(90, 490);
      // What waits for the tool's code would be given up with the tool.
      await page.getByRole("button", { name: /^Undo: Draw dimension/ }).waitFor();
      await hand.take("s");
      await hand.click(40, 490);
      await page.getByRole("button", { name: "Take the dimension away" }).waitFor();
    },
    async close({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+z");
    },
  },
  {
    name: "mirroring over a drawn line",
    region: ".middle",
    async open(hand) {
      const { page } = hand;
      await panel(hand, "Outline");
      await page.getByRole("option").first().click();
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Shift+g");
      for (const key of ["Enter", "Shift+ArrowUp"]) await page.keyboard.press(key);
      await page.getByRole("button", { name: "Keep the original" }).waitFor();
      await page.getByLabel("Direction of the line").waitFor();
    },
    async close({ page }) {
      for (let i = 0; i < 3; i++) await page.keyboard.press("Escape");
    },
  },
  {
    name: "pools by their dimensions",
    region: ".middle",
    async open({ page }) {
      await page.getByRole("button", { name: /^More tools/ }).click();
      await page.getByRole("menuitemradio", { name: /Pool by its dimensions/ }).click();
      await page.locator(".shape-strip").waitFor();
    },
    async close({ page }) {
      await page.keyboard.press("Escape");
      await page.locator(".shape-strip").waitFor({ state: "detached" });
    },
  },
  {
    name: "many elements selected",
    region: ".side",
    async open(hand) {
      await hand.page.locator(".sheet-canvas").focus();
      await hand.page.keyboard.press("Control+a");
      await panel(hand, "Facts");
      await hand.page.getByRole("heading", { name: /elements selected/ }).waitFor();
    },
    async close({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Escape");
    },
  },
  arrangeScreen("q", "Turn by degrees"),
  arrangeScreen("v", "Mirror"),
  arrangeScreen("Shift+Y", "Repeat along a line"),
  {
    name: "a file that was refused",
    region: "dialog[open]",
    async open({ page }) {
      await page.locator(".sheet-canvas").focus();
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Control+o")]);
      const text = JSON.stringify({ format: "copperband-site", version: 1, elements: [{ id: "one", kind: "fence" }] });
      await chooser.setFiles({ name: "broken.site.json", mimeType: "application/json", buffer: Buffer.from(text) });
      await page.getByRole("dialog").waitFor();
    },
    close: byEscape,
  },
  {
    name: "steps taken",
    async open({ page }) {
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("n");
      await page.keyboard.press("ArrowRight");
      await page.getByRole("button", { name: /^Steps taken/ }).click();
      await page.getByRole("region", { name: "Steps taken" }).waitFor();
    },
    async close({ page }) {
      await page.getByRole("region", { name: "Steps taken" }).getByRole("button", { name: "Close" }).click();
      await page.locator(".sheet-canvas").focus();
      await page.keyboard.press("Control+z");
      await page.keyboard.press("Escape");
    },
  },
  {
    name: "the walk",
    region: ".middle",
    async open(hand) {
      await hand.siteCommand("Walk round the program");
      await hand.page.getByText("Step 1 of 6", { exact: true }).waitFor();
    },
    close: async ({ page }) => page.getByRole("button", { name: "Leave the walk" }).click(),
  },
  {
    name: "an empty sheet",
    region: ".middle",
    open: (hand) => hand.emptySheet(),
  },
];

/** Puts a demo with questions on the sheet. */
export async function openDemo(hand: SheetPage): Promise<void> {
  await hand.siteCommand("Demo sites and kept copies");
  await hand.page.getByRole("button", { name: /Otterbend Court 7/ }).click();
  await hand.page.getByRole("heading", { name: "Otterbend Court 7" }).waitFor();
}
