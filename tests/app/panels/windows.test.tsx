// @vitest-environment happy-dom
// Windows over the page and printed sheets, mounted on a real document. Common practice, no source.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { planSheets } from "../../../app/drawing/sheets.ts";
import { CommandsDialog } from "../../../app/panels/commands-dialog.tsx";
import { Dialog } from "../../../app/panels/dialog.tsx";
import { HelpDialog } from "../../../app/panels/help-dialog.tsx";
import { Notice } from "../../../app/panels/notice.tsx";
import { RefusedDialog } from "../../../app/panels/refused-dialog.tsx";
import { SheetPage } from "../../../app/print/sheet-page.tsx";
import { concretePool, deck } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

const SITE = siteOf([concretePool(), deck({ name: '<img src=x onerror="alert(1)">' })]);

let page: Bench;
let closed: number;
const close = () => {
  closed += 1;
};
beforeEach(() => {
  closed = 0;
  page = bench(SITE, recompute(SITE));
});
afterEach(() => page.close());

describe("a file that was refused", () => {
  it("is told with every problem, where it is, what was expected and what was got", () => {
    const broken = {
      format: "copperband-site",
      version: 1,
      elements: [concretePool({ shell: "paper" }), { id: "f", kind: "fence" }],
    };
    const read = checkSite(broken);
    if (read.ok) throw new Error("The file was not refused.");
    page.show(<RefusedDialog refused={{ file: "yard.site.json", refusal: read.refusal }} onClose={close} />);
    const rows = page.all("tbody tr").map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows).toEqual(
      read.refusal.problems.map(({ element, field, expected, got }) => [element, field, expected, got]),
    );
    expect(rows.length).toBeGreaterThan(1);
    expect(page.box.textContent).toContain("nothing is lost");
    page.press(page.button("Back to the sheet"));
    expect(closed).toBe(1);
  });
});

describe("a notice while a window is open", () => {
  const told = () => page.all("[role=status]").filter((one) => one.textContent?.includes("could not be read"));

  it("is said in the window, as what lies below can be neither pressed nor heard, and goes back over the sheet", () => {
    const both = (isOpen: boolean) => (
      <>
        <Notice />
        {isOpen ? (
          <Dialog title="Gallery" onClose={close}>
            <p>Pictures</p>
          </Dialog>
        ) : null}
      </>
    );
    page.show(both(false));
    page.show(both(true));
    // It stands there before it has something to say: only then is that spoken.
    expect(page.all("dialog [role=status]")).toHaveLength(1);
    page.does(() => page.editor.view.getState().say("The plan could not be read.", "problem"));
    expect(told()).toHaveLength(1);
    expect(told()[0]?.closest("dialog")).not.toBeNull();
    page.press(page.button("Put the notice away"));
    expect([told().length, closed]).toEqual([0, 0]);
    page.does(() => page.editor.view.getState().say("The plan could not be read.", "problem"));
    page.show(both(false));
    expect(told()).toHaveLength(1);
    expect(told()[0]?.closest("dialog")).toBeNull();
  });
});

describe("the list of commands", () => {
  it("finds by typing, is walked by arrow keys, and runs by Enter", () => {
    page.show(<CommandsDialog onClose={close} />);
    const field = page.query("[role=combobox]");
    page.type(field, "fence");
    expect(page.all("[role=option]").map((row) => row.textContent)).toEqual(["DrawFenceF"]);
    page.key(field, "Enter");
    expect([closed, page.editor.view.getState().tool]).toEqual([1, "fence"]);
  });

  it("says why a command cannot be run now", () => {
    page.show(<CommandsDialog onClose={close} />);
    const row = page.all("[role=option]").find((one) => one.textContent?.includes("Delete"));
    expect([row?.getAttribute("aria-disabled"), row?.textContent]).toEqual([
      "true",
      expect.stringContaining("Select something first."),
    ]);
  });
});

describe("help", () => {
  it("holds the key of every command that has one", () => {
    page.show(<HelpDialog onClose={close} />);
    const held = page.all(".help-keys dt").map((one) => one.textContent);
    const keyed = page.editor.commands.all.filter(({ key }) => key !== undefined).map(({ label }) => label);
    expect([...held].sort()).toEqual([...keyed].sort());
  });

  it("holds the keys of a drawing under way, which are no commands", () => {
    page.show(<HelpDialog onClose={close} />);
    expect(page.all(".help-drawing dt").map((one) => one.textContent)).toEqual([
      "Alt",
      "Enter",
      "Backspace",
      "A R T",
      "V",
      "K",
      "Space",
    ]);
  });
});

describe("a printed sheet", () => {
  it("has its true size, names of its own, and the site's words as text", () => {
    const sheets = planSheets(SITE, recompute(SITE), { paper: "letter" });
    const [sheet] = sheets;
    if (!sheet) throw new Error("no sheet");
    page.show(
      [1, 2].map((number) => <SheetPage key={number} sheet={sheet} number={number} count={2} palette="sheet" />),
    );
    const svgs = page.all("svg");
    expect(svgs.map((svg) => [svg.getAttribute("width"), svg.getAttribute("height")])).toEqual(
      Array(2).fill(["11in", "8.5in"]),
    );
    const ids = page.all("[id]").map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const pointed = page.all("[fill^=url]").map((one) => one.getAttribute("fill")?.slice(5, -1));
    expect(pointed.length).toBeGreaterThan(0);
    expect(pointed.filter((id) => !ids.includes(id ?? ""))).toEqual([]);
    expect([page.all("img").length, page.box.textContent?.includes("<img src=x")]).toEqual([0, true]);
  });
});

describe("a window", () => {
  const begun = (dialog: HTMLElement) => dialog.dispatchEvent(new Event("pointerdown", { bubbles: true }));

  it("closes by a press beside it, not by one that began inside, nor while something is begun in it", () => {
    page.show(
      <Dialog title="Some" onClose={close}>
        <p>Words</p>
      </Dialog>,
    );
    const dialog = page.query("dialog");
    begun(page.query("p"));
    page.press(dialog);
    expect(closed).toBe(0);
    begun(dialog);
    page.press(dialog);
    expect(closed).toBe(1);
    page.show(
      <Dialog title="Some" staysOpen onClose={close}>
        <p>Words</p>
      </Dialog>,
    );
    begun(page.query("dialog"));
    page.press(page.query("dialog"));
    expect(closed).toBe(1);
  });
});
