// @vitest-environment happy-dom
// The panels mounted on a real document. Common practice, no source, unless a line says otherwise.
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { answerQuestion } from "../../../app/edits/answer-question.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { CopperPanel } from "../../../app/panels/copper-panel.tsx";
import { FindingPanel } from "../../../app/panels/finding-panel.tsx";
import { loadLaterParts } from "../../../app/panels/later.tsx";
import { Menu } from "../../../app/panels/menu.tsx";
import { Notice } from "../../../app/panels/notice.tsx";
import { OutlinePanel } from "../../../app/panels/outline-panel.tsx";
import { SiteName } from "../../../app/panels/site-name.tsx";
import { ToolBar } from "../../../app/panels/tool-bar.tsx";
import { concretePool, deck, post } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

/** A pool with its deck; posts stand 4 ft and farther off. */
const SITE = siteOf(
  [concretePool(), deck(), ...Array.from({ length: 60 }, (_, i) => post(48 + i, { id: `post-${i}` }))],
  {
    name: "Test yard",
    edition: "nec-2020",
  },
);
const REPORT = recompute(SITE);

let page: Bench;
beforeAll(loadLaterParts);

beforeEach(() => {
  vi.stubGlobal(
    "ResizeObserver",
    class {
      observe() {}
      disconnect() {}
      unobserve() {}
    },
  );
  page = bench(SITE, REPORT);
});
afterEach(() => {
  page.close();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const view = () => page.editor.view.getState();
const site = () => page.editor.document.getState().shown;

describe("the copper panel", () => {
  it("lights up a run while it is pointed at or has the focus, and keeps a chosen one lit", () => {
    page.show(<CopperPanel />);
    const line = page.all(".takeoff-line").find((one) => one.textContent?.startsWith("Ring"));
    if (!line) throw new Error("no line");
    page.press(line);
    expect([view().highlight, line.getAttribute("aria-pressed")]).toEqual(["ring", "true"]);
    page.press(line);
    expect([view().highlight, line.getAttribute("aria-pressed")]).toEqual([null, "false"]);
  });

  it("says on its way while routes are worked out, in every figure that waits for them", () => {
    page.show(<CopperPanel />);
    expect(page.box.textContent).not.toContain("on its way");
    page.report(recompute(SITE, { withoutRoutes: true }), true);
    const figure = (label: string) =>
      page.all(".takeoff-line, .sums > div").find((one) => one.textContent?.startsWith(label))?.textContent;
    expect(
      ["Branches", "Drops", "Spare", "Copper in all", "Weight"].map((label) => figure(label)?.endsWith("on its way")),
    ).toEqual(Array(5).fill(true));
    expect(figure("Ring")).toContain("107' 0\"");
  });

  it("lays the ring short, and takes an offset only within the edition's limits", () => {
    page.show(<CopperPanel />);
    page.press(page.button("Short"));
    expect(site().settings?.ringStyle).toBe("short");
    const field = page.query(".offset input");
    page.type(field, "25in");
    page.key(field, "Enter");
    expect(site().settings?.ringOffset).toBeUndefined();
    expect(page.query(".offset .problem").textContent).toContain("1' 6\" to 2' 0\"");
    // A bare number is inches here.
    page.type(field, "20");
    page.key(field, "Enter");
    expect(site().settings?.ringOffset).toBe(20);
  });

  it("records a tie in one step that undo takes back", () => {
    page.show(<CopperPanel />);
    page.press(page.button("Record tie T2"));
    const ties = site().elements.filter(({ kind }) => kind === "tie");
    expect(ties).toHaveLength(1);
    page.does(() => page.editor.document.getState().undo());
    expect(site()).toBe(SITE);
  });
});

describe("the outline", () => {
  it("has only the rows in view on the page, and says how many there are", () => {
    page.show(<OutlinePanel />);
    const rows = page.all("[role=option]");
    expect(rows.length).toBeLessThan(40);
    expect(rows[0]?.getAttribute("aria-setsize")).toBe(String(SITE.elements.length));
  });

  it("selects by arrow keys, adds with Shift, and opens the facts by Enter", () => {
    page.show(<OutlinePanel />);
    const list = page.query("[role=listbox]");
    page.key(list, "ArrowDown");
    expect(view().selection).toEqual([SITE.elements[1]?.id]);
    page.key(list, "ArrowDown", { shiftKey: true });
    expect(view().selection).toEqual([SITE.elements[1]?.id, SITE.elements[2]?.id]);
    page.key(list, "End");
    expect(view().selection).toEqual([SITE.elements.at(-1)?.id]);
    page.key(list, "Enter");
    expect(view().panel).toBe("element");
  });

  it("follows a selection made on the sheet, and a filter", () => {
    page.show(<OutlinePanel />);
    const id = SITE.elements[3]?.id ?? "";
    page.does(() => view().select([id]));
    const chosen = page.all('[role=option][aria-selected="true"]');
    expect(chosen).toHaveLength(1);
    expect(page.query("[role=listbox]").getAttribute("aria-activedescendant")).toBe(chosen[0]?.id);
    page.type(page.query("input[type=search]"), "deck");
    expect(page.all("[role=option]")).toHaveLength(1);
    page.type(page.query("input[type=search]"), "gondola");
    expect(page.box.textContent).toContain("Nothing here is called “gondola”.");
  });
});

describe("findings", () => {
  it("of a large site come a few hundred at a time, and more when asked for", () => {
    const posts = Array.from({ length: 320 }, (_, i) => ({ ...post(400 + 10 * i), id: `post-${i}` }));
    const large = siteOf([concretePool(), ...posts]);
    page.close();
    page = bench(large, recompute(large));
    page.show(<FindingPanel />);
    page.press(page.button(`All ${recompute(large).findings.length}`));
    expect(page.all(".finding-row")).toHaveLength(250);
    page.press(page.query(".show-more"));
    expect(page.all(".finding-row")).toHaveLength(recompute(large).findings.length);
    expect(page.all(".show-more")).toHaveLength(0);
  });

  it("keep an answer with initials and date, show it, and take it back", () => {
    const asking = siteOf([concretePool({ steel: undefined }), deck()], { edition: "nec-2020" });
    page.close();
    page = bench(asking, recompute(asking));
    const asked = recompute(asking).findings.find(({ question }) => question);
    if (!asked?.question) throw new Error("nothing is asked");
    view().chooseFinding(asked.id);
    page.show(<FindingPanel />);
    const option = page.query(".slip-answers button");
    page.press(option);
    expect(page.query(".slip .problem").textContent).toContain("initials");
    expect(site().answers).toBeUndefined();
    page.type(page.query(".slip-who input"), "RK");
    page.press(option);
    expect(site().answers).toMatchObject([
      { question: asked.question.id, by: "RK", on: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) },
    ]);
    page.report(recompute(site()));
    expect(page.query(".kept-answer").textContent).toContain("RK");
    page.press(page.button("Take back"));
    expect(site().answers).toBeUndefined();
  });

  it("show that an answer lapsed once what it was about has changed, and ask again", () => {
    const asking = siteOf([concretePool({ steel: undefined }), deck()]);
    page.close();
    page = bench(asking, recompute(asking));
    const asked = recompute(asking).findings.find(({ question }) => question);
    if (!asked?.question) throw new Error("nothing is asked");
    const document = page.editor.document.getState();
    document.edit(answerQuestion(asked, asked.question.options[0] ?? "", "RK", "2026-05-01"));
    document.edit(setField("pool", "finish", "tile"));
    view().chooseFinding(asked.id);
    page.report(recompute(site()));
    page.show(<FindingPanel />);
    expect(page.query(".kept-answer.is-lapsed").textContent).toContain("Answer lapsed");
    expect(page.query(".kept-answer.is-lapsed").textContent).toContain("RK, 2026-05-01");
    expect(page.all(".slip-answers button").length).toBe(asked.question.options.length);
  });

  it("stand under the parts of the article, and a question says what it asks", () => {
    const asking = siteOf([concretePool({ id: "pool-1", name: undefined, steel: undefined }), deck()]);
    page.close();
    const report = recompute(asking);
    page = bench(asking, report);
    page.show(<FindingPanel />);
    const parts = page.all(".finding-part").map((heading) => heading.textContent);
    expect(parts).toContain("Shell 680.26(B)(1)");
    const asked = report.findings.find(({ rule, question }) => rule === "shell" && question);
    const row = page.all(".finding-row").find((one) => one.textContent?.includes(asked?.question?.text ?? "none"));
    expect(row?.querySelector(".finding-name")?.textContent).toBe("Pool 1");
  });

  it("are sifted the same after one was looked at", () => {
    page.show(<FindingPanel />);
    const all = page.all(".switch button")[1];
    if (!all) throw new Error("no switch");
    page.press(all);
    page.press(page.query(".finding-row"));
    page.press(page.button("All findings"));
    expect(page.all(".switch button").map((one) => one.getAttribute("aria-pressed"))).toEqual(["false", "true"]);
    expect(page.all(".finding-row")).toHaveLength(REPORT.findings.length);
  });

  it("step from one to the next and back to the list", () => {
    page.show(<FindingPanel />);
    page.press(page.query(".finding-row"));
    const first = view().finding;
    page.press(page.button("Next finding"));
    expect(view().finding).not.toBe(first);
    page.press(page.button("Previous finding"));
    expect(view().finding).toBe(first);
    page.press(page.button("All findings"));
    expect([view().finding, page.all(".finding-row").length > 0]).toEqual([null, true]);
  });
});

describe("a calculation that stopped", () => {
  it("is said in full beside the last report", () => {
    page.show(<FindingPanel />);
    page.does(() => page.editor.live.setState({ failure: "No room." }));
    expect(page.query(".failure").textContent).toContain("No room. What stands here is from before");
    expect(page.all(".finding-row").length).toBeGreaterThan(0);
  });

  it("before there was a report is not said to be worked out still", () => {
    page.show(<FindingPanel />);
    page.does(() => page.editor.live.setState({ report: null, failure: "No room" }));
    expect(page.query(".failure").textContent).toContain("No room. There is no report of this site.");
    expect(page.box.textContent).not.toContain("Working out");
  });
});

describe("the site's name", () => {
  it("is changed by Enter in one step, kept by Escape, and taken away when emptied", () => {
    page.show(<SiteName />);
    const rename = (text: string, key: string) => {
      page.press(page.query("button"));
      page.type(page.query("input"), text);
      const pressed = new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true });
      page.does(() => page.query("input").dispatchEvent(pressed));
      // The keys go on from the name at once; this one does not press it again.
      expect(pressed.defaultPrevented).toBe(true);
      expect(document.activeElement).toBe(page.query("button"));
    };
    rename("Backyard 5", "Escape");
    expect(site().name).toBe("Test yard");
    rename(" Backyard 5 ", "Enter");
    expect(site().name).toBe("Backyard 5");
    expect(page.editor.document.getState().history.past).toHaveLength(1);
    rename("", "Enter");
    expect([site().name, page.box.textContent]).toEqual([undefined, "Site without a name"]);
  });
});

describe("a menu", () => {
  it("opens by its button, is walked by arrow keys and letters, runs, and closes by Escape", () => {
    const ran: string[] = [];
    const item = (id: string) => ({ id, label: id, run: () => ran.push(id) });
    page.show(<Menu name="Things" label="Things" items={[item("Alder"), item("Birch"), item("Cedar")]} />);
    page.press(page.button("Things"));
    expect(document.activeElement?.textContent).toBe("Alder");
    const focused = () => document.activeElement as HTMLElement;
    page.key(focused(), "ArrowUp");
    expect(focused().textContent).toBe("Cedar");
    page.key(focused(), "b");
    expect(focused().textContent).toBe("Birch");
    page.press(focused());
    expect(ran).toEqual(["Birch"]);
    expect(page.all("[role=menu]")).toHaveLength(0);
    page.press(page.button("Things"));
    page.key(focused(), "Escape");
    expect([page.all("[role=menu]").length, focused().getAttribute("aria-haspopup")]).toEqual([0, "menu"]);
  });
});

describe("the tools", () => {
  it("show which is in hand, also one of the menu", () => {
    page.show(<ToolBar />);
    page.press(page.button("Fence"));
    expect(view().tool).toBe("fence");
    expect(page.all('[aria-pressed="true"]').map((one) => one.textContent)).toEqual(["Fence"]);
    page.press(page.query("[aria-haspopup=menu]"));
    page.press(page.all("[role=menuitemradio]").find((one) => one.textContent?.startsWith("No-copper")) as HTMLElement);
    expect(view().tool).toBe("keep-out");
    expect(page.query("[aria-haspopup=menu]").getAttribute("aria-label")).toContain("No-copper area");
  });
});

describe("notices", () => {
  it("go after a while; a problem stays until it is put away", () => {
    vi.useFakeTimers();
    page.show(<Notice />);
    page.does(() => view().say("Kept."));
    expect(page.query("[role=status]").textContent).toContain("Kept.");
    page.does(() => vi.advanceTimersByTime(6000));
    expect(view().notice).toBeNull();
    page.does(() => view().say("That cannot be.", "problem"));
    page.does(() => vi.advanceTimersByTime(60_000));
    expect(view().notice?.text).toBe("That cannot be.");
    page.press(page.button("Put the notice away"));
    expect(view().notice).toBeNull();
  });

  it("stay while the pointer or the focus is in them: what is being read is not taken away", () => {
    vi.useFakeTimers();
    page.show(<Notice />);
    page.does(() => view().say("Kept."));
    page.does(() => page.button("Put the notice away").focus());
    page.does(() => vi.advanceTimersByTime(60_000));
    expect(view().notice?.text).toBe("Kept.");
    page.does(() => page.button("Put the notice away").blur());
    page.does(() => vi.advanceTimersByTime(6000));
    expect(view().notice).toBeNull();
    // The next one does not inherit it.
    page.does(() => view().say("Kept again."));
    page.does(() => page.button("Put the notice away").focus());
    page.does(() => vi.advanceTimersByTime(10));
    page.does(() => view().say("Another."));
    page.does(() => vi.advanceTimersByTime(6000));
    expect(view().notice).toBeNull();
  });

  it("of a problem are gone once work goes on", () => {
    page.show(<Notice />);
    page.does(() => view().say("That cannot be.", "problem"));
    page.does(() => page.editor.document.getState().edit(setField("post-1", "name", "Post")));
    expect(view().notice).toBeNull();
    page.does(() => {
      page.editor.document.getState().edit(setField("post-1", "name", "Light post"));
      view().say("Nor can that.", "problem");
    });
    expect(view().notice?.text).toBe("Nor can that.");
  });
});
