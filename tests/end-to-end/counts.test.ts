/** Counts by outcome stand in the top bar at every width. Common practice, no source. */
import { expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";

const pages = browserPages();

it("the counts by outcome, settled ones too, are on the screen at every width, whole and beside the copper", async () => {
  const { page } = await pages.open();
  const counts = page.getByRole("list", { name: "Findings by outcome" }).getByRole("listitem");
  await expect.poll(() => counts.count()).toBeGreaterThan(2);
  for (const width of [1440, 1366, 1150, 1024, 910, 834, 600, 507, 320]) {
    await page.setViewportSize({ width, height: 800 });
    const cut = await page.evaluate(() => {
      const { left, right } = document.querySelector(".topbar")?.getBoundingClientRect() ?? { left: 0, right: 0 };
      const boxes = [...document.querySelectorAll(".topbar .count, .topbar .copper-total")].map((one) =>
        one.getBoundingClientRect(),
      );
      return boxes.filter((box) => box.width < 12 || box.left < left || box.right > right).length;
    });
    expect([width, cut]).toEqual([width, 0]);
  }
});

it("with type twice as large no count of a part is cut at the side of its column", async () => {
  const { page } = await pages.open();
  const counts = page.getByRole("navigation", { name: "Parts of the article" }).locator(".part-counts");
  await expect.poll(() => counts.count()).toBeGreaterThan(10);
  await page.evaluate(() => {
    document.documentElement.style.fontSize = "200%";
  });
  const cut = () =>
    page.evaluate(() => {
      const right = document.querySelector(".parts")?.getBoundingClientRect().right ?? 0;
      const all = [...document.querySelectorAll(".part-counts")];
      return all
        .filter((one) => one.getBoundingClientRect().right > right)
        .map((one) => one.parentElement?.textContent);
    });
  await expect.poll(cut).toEqual([]);
});
