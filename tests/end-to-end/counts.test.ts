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
