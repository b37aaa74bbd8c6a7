/** The code in a real browser: first questions, a rule sought and its finding, an amendment that acts, editions side by side. */
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { browserPages } from "./browser-pages.ts";
import type { SheetPage } from "./sheet-page.ts";

const pages = browserPages();
let hand: SheetPage;
let page: Page;

beforeEach(async () => {
  hand = await pages.open();
  page = hand.page;
});

/** What the code has to say of: its rules, the amendments, two editions. */
async function showCode(view: "Rules" | "Amendments" | "Editions"): Promise<void> {
  await hand.panel("Code");
  await page.getByRole("group", { name: "What of the code" }).getByRole("button", { name: view }).click();
}

describe("the code beside the sheet", () => {
  it("asks a new site which edition its permit falls under, once", async () => {
    await hand.siteCommand("New sheet");
    await page.getByRole("heading", { name: "Begin with the pool" }).waitFor();
    await hand.panel("Code");
    const asked = page.getByRole("region", { name: "First questions" });
    await asked.getByText("Which edition does the permit fall under?").waitFor();
    await asked.getByRole("button", { name: "NEC 2017" }).click();
    await expect.poll(() => asked.count()).toBe(0);
    await expect
      .poll(() => page.getByRole("region", { name: "Rules" }).getByRole("status").textContent())
      .toContain("NEC 2017");
  });

  it("finds a rule by its section and goes to a finding of it, with reason, limit, basis and lesson", async () => {
    await showCode("Rules");
    const rules = page.getByRole("region", { name: "Rules" });
    await rules.getByLabel("Word or section").fill("680.26(B)(7)");
    const rule = rules.getByRole("group").first();
    await rule.locator("summary").click();
    // Source: NEC 680.26(B)(7), five feet.
    await rule.getByText("5' 0\"").first().waitFor();
    const known = rule.getByRole("button", { name: /exempt|needs bonding/ }).first();
    const name = (await known.textContent())?.split(":")[0]?.trim() ?? "";
    await known.click();
    const finding = page.getByRole("article", { name: /^Finding \d+/ });
    await finding.getByRole("heading", { name }).first().waitFor();
    for (const heading of ["Measured", "How sure the limit is", "What this rule protects people from"]) {
      await finding.getByRole("heading", { name: heading }).waitFor();
    }
    await expect.poll(() => finding.textContent()).toContain("limit 5' 0\"");
  });

  it("puts an amendment in force: findings name it and follow it, and undo takes it back", async () => {
    await showCode("Amendments");
    const amendments = page.getByRole("region", { name: "Local amendments" });
    await amendments.getByText("None is in force.").waitFor();
    const part = page
      .getByRole("navigation", { name: "Parts of the article" })
      .getByRole("button", { name: /^26 B7.*Fixed metal/ });
    // Counts stand there once the first report has come.
    await part.locator(".count").first().waitFor();
    const before = await part.textContent();
    await amendments.getByLabel("Which number does it change?").fill("fixed metal distance");
    await amendments
      .getByRole("button", { name: /680\.26\(B\)\(7\)/ })
      .first()
      .click();
    // An invented ordinance that asks for 50 ft in place of the five of NEC 680.26(B)(7).
    await amendments.getByLabel("Here it is").fill("50'");
    await amendments.getByLabel("By which ordinance or authority").fill("Invented ordinance 7");
    await amendments.getByRole("button", { name: "Put it in force" }).click();
    await amendments.getByText("Invented ordinance 7").waitFor();
    await expect.poll(() => part.textContent()).not.toBe(before);
    await amendments.getByText(/^Read by:/).click();
    await amendments
      .getByRole("button", { name: /fence.*needs bonding/i })
      .first()
      .click();
    const finding = page.getByRole("article", { name: /^Finding \d+/ });
    await finding.getByText(/Local amendment in force .*Invented ordinance 7/).waitFor();
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(() => part.textContent()).toBe(before);
  });

  it("sets two editions side by side and adds what changes to the printed sheets", async () => {
    await showCode("Editions");
    const panel = page.getByRole("region", { name: "Editions side by side" });
    await panel.getByLabel("and under").selectOption({ label: "NEC 2023" });
    await panel.getByText(/findings? changes?; \d+ stay/).waitFor();
    // From 2023 on a lone ring no longer serves under conductive paving. Source: NEC 2023, 680.26(B)(2).
    await panel
      .getByText(/lone ring does not serve under conductive paving/)
      .first()
      .waitFor();
    await hand.siteCommand("Print");
    const print = page.getByRole("dialog", { name: "Print the plan" });
    const sheets = print.locator(".print-page");
    await print.getByRole("button", { name: "Print", exact: true, disabled: false }).waitFor();
    const plain = await sheets.count();
    await print.getByLabel("Add what changes under").selectOption({ label: "NEC 2023" });
    await expect.poll(() => sheets.count()).toBeGreaterThan(plain);
    await expect.poll(() => sheets.last().textContent()).toContain("What changes under NEC 2023");
    const compared = await sheets.count();
    await print.getByLabel("Add the reasons in full").check();
    await expect.poll(() => sheets.count()).toBeGreaterThan(compared);
    await print.getByLabel("Add what changes under").selectOption({ label: "no other edition" });
    await expect.poll(() => print.textContent()).not.toContain("What changes under NEC 2023");
    expect(await print.textContent()).toContain("Reasons of the findings in full");
  });
});
