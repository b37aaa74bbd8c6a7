/**
 * What has to hold on every screen: axe finds nothing serious (WCAG 2.2 A and AA as axe-core restates them), and where a
 * finger points nothing is smaller than 44 px (the size that WCAG 2.5.5 names, restated from memory).
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions } from "playwright-core";
import { describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import { openDemo, SCREENS } from "./screens.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();

async function openPage(options: BrowserContextOptions): Promise<SheetPage> {
  const hand = await pages.open({ reducedMotion: "reduce", ...options });
  await openDemo(hand);
  return hand;
}

const WIDE = { viewport: { width: 1440, height: 900 } };
const MIDDLE = { viewport: { width: 1024, height: 768 } };
const UPRIGHT = { viewport: { width: 834, height: 1112 }, hasTouch: true, isMobile: true };
const SLICE = { viewport: { width: 507, height: 1000 }, hasTouch: true, isMobile: true };

describe("axe finds nothing serious on any screen", () => {
  it.each([
    ["wide, on paper", WIDE, "sheet"],
    ["wide, in projector colors", WIDE, "projector"],
    ["1024 x 768, on paper", MIDDLE, "sheet"],
    ["a tablet held upright, in projector colors", UPRIGHT, "projector"],
  ] as const)(
    "%s",
    async (_, options, palette) => {
      const hand = await openPage(options);
      if (palette === "projector") await hand.siteCommand("Projector colors");
      await hand.page.locator(`html[data-palette=${palette}]`).waitFor();
      const found: string[] = [];
      for (const screen of SCREENS) {
        await screen.open(hand);
        const axe = new AxeBuilder({ page: hand.page })
          .options({ resultTypes: ["violations"] })
          // The page has no frames: axe then needs no page of its own to gather what it found.
          .setLegacyMode(true);
        const { violations } = await (screen.region ? axe.include(screen.region) : axe).analyze();
        for (const { id, impact, nodes } of violations) {
          if (impact !== "serious" && impact !== "critical") continue;
          found.push(`${screen.name}: ${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
        }
        await screen.close?.(hand);
      }
      expect(found).toEqual([]);
    },
    400_000,
  );
});

/** Everything that can be pressed and is on the page now, smaller than `least` pixels one way: what it is and its size. */
function tooSmall(least: number): string[] {
  const pressable =
    "button, a[href], input, select, textarea, summary, [role=option], [role=tab], [role^=menuitem], [role=button]";
  const over = document.querySelector("dialog[open], .print-view.is-open") ?? document;
  return [...over.querySelectorAll<HTMLElement>(pressable)].flatMap((element) => {
    if (!element.checkVisibility({ visibilityProperty: true }) || element.closest("[inert]")) return [];
    // A box to tick is pressed by its label as well.
    const isTick = element.matches("[type=checkbox], [type=radio]");
    const target = (isTick ? element.closest("label, .tick") : null) ?? element;
    const { width, height } = target.getBoundingClientRect();
    if (width >= least - 0.5 && height >= least - 0.5) return [];
    const name = element.getAttribute("aria-label") ?? element.textContent ?? "";
    return [
      `${element.tagName.toLowerCase()} "${name.trim().slice(0, 40)}" ${Math.round(width)} x ${Math.round(height)}`,
    ];
  });
}

describe("where a finger points nothing is smaller than 44 px", () => {
  it.each([
    ["held upright", UPRIGHT],
    ["turned on its side", { ...UPRIGHT, viewport: { width: 1112, height: 834 } }],
    ["in half of a split screen", SLICE],
    ["in a third of a split screen", { ...SLICE, viewport: { width: 320, height: 1000 } }],
  ] as const)("on a tablet %s", async (_, options) => {
    const hand = await openPage(options);
    expect(await hand.page.evaluate(() => matchMedia("(pointer: coarse)").matches)).toBe(true);
    let measured = 0;
    const atFault = async () => {
      const found = await hand.page.evaluate(tooSmall, 44);
      // Nothing stands out over the edge of the page, seen or unseen: all of it would scroll.
      const [wider, taller] = await hand.page.evaluate(() => {
        const { scrollWidth, scrollHeight } = document.documentElement;
        return [scrollWidth - innerWidth, scrollHeight - innerHeight] as const;
      });
      if (wider > 0) found.push(`${wider} px wider than the page`);
      if (taller > 0) found.push(`${taller} px taller than the page`);
      return found;
    };
    for (const screen of SCREENS) {
      await screen.open(hand);
      await expect.poll(atFault, { message: screen.name }).toEqual([]);
      measured += (await hand.page.evaluate(tooSmall, 10_000)).length;
      await screen.close?.(hand);
    }
    expect(measured).toBeGreaterThan(300);
  });
});
