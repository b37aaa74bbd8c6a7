// @vitest-environment happy-dom
// The code beside the sheet, mounted on a real document. Common practice, no source.
import { act } from "react";
import { createRoot } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createStore } from "zustand/vanilla";
import type { Editor } from "../../../app/editor.ts";
import { EditorContext } from "../../../app/editor-context.tsx";
import { removeAmendment, setAmendment } from "../../../app/edits/set-amendment.ts";
import { parametersWith } from "../../../app/panels/amendments.tsx";
import { CodePanel } from "../../../app/panels/code-panel.tsx";
import { firstQuestions } from "../../../app/panels/first-questions.tsx";
import type { CompareReply, CompareRequest } from "../../../app/workers/compare-messages.ts";
import { concretePool, deck, linerPool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { compareEditions } from "../../../rules/compare-editions.ts";
import { EDITIONS } from "../../../rules/editions/in-force.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { headlessEditor } from "../commands/headless-editor.ts";

/** A worker that compares at once, on the page's own thread. */
class WorkerHere {
  onmessage: ((event: { data: CompareReply }) => void) | null = null;
  onerror = null;
  terminate() {}
  postMessage({ turn, site, before, after }: CompareRequest) {
    const { reports: _, ...comparison } = compareEditions(site, before, after);
    queueMicrotask(() => act(() => this.onmessage?.({ data: { turn, ok: true, comparison } })));
  }
}

let root: ReturnType<typeof createRoot>;
let page: HTMLElement;

beforeEach(() => {
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  vi.stubGlobal("Worker", WorkerHere);
  page = document.body.appendChild(document.createElement("div"));
  root = createRoot(page);
});

afterEach(async () => {
  await act(async () => root.unmount());
  page.remove();
  vi.unstubAllGlobals();
});

async function show(site: Site) {
  const headless = headlessEditor(site);
  const live = createStore<{ report: Report | null }>(() => ({ report: recompute(site) }));
  headless.document.subscribe(({ shown }) => live.setState({ report: recompute(shown) }));
  const editor = { ...headless, live } as unknown as Editor;
  await act(async () =>
    root.render(
      <EditorContext.Provider value={editor}>
        <CodePanel />
      </EditorContext.Provider>,
    ),
  );
  return editor;
}

const button = (label: string | RegExp): HTMLElement => {
  const found = [...page.querySelectorAll("button")].find(({ textContent }) =>
    typeof label === "string" ? textContent?.trim() === label : label.test(textContent?.trim() ?? ""),
  );
  if (!found) throw new Error(`there is no button ${label} in ${page.textContent}`);
  return found;
};

const click = (label: string | RegExp) => act(async () => button(label).click());

const type = async (selector: string, text: string) => {
  const field = page.querySelector<HTMLInputElement>(selector);
  if (!field) throw new Error(`there is no field ${selector}`);
  await act(async () => {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(field, text);
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
};

describe("the search for rules", () => {
  it("lists rules with limits, basis, teaching note and their findings here", async () => {
    const editor = await show(siteOf([concretePool(), post(48)]));
    await type("input[type=search]", "26 b 7");
    const rule = page.querySelector("details.rule");
    expect(rule?.textContent).toMatch(/Fixed metal.*680\.26\(B\)\(7\)/s);
    expect(rule?.textContent).toMatch(/5' 0".*published/s);
    expect(rule?.textContent).toContain("What it protects people from.");
    await click(/^Light pole post: needs bonding/i);
    expect(editor.view.getState()).toMatchObject({ finding: "fixed-metal/post/pool", selection: ["post"] });
  });

  it("says so when nothing is found", async () => {
    await show(siteOf([concretePool()]));
    await type("input[type=search]", "zebra");
    expect(page.querySelector("[role=status]")?.textContent).toContain("No rule holds all of this");
  });
});

describe("local amendments", () => {
  it("are found by words, typed by their unit, need a reason, and are taken back", async () => {
    const editor = await show(siteOf([concretePool(), post(65)]));
    await click("Amendments");
    await type("input[type=search]", "fixed metal inside walls exempt");
    await click(/Fixed metal more than this from the inside walls.*Now 5'\s0"/);
    await type("input[id$=value]", "far");
    await click("Put it in force");
    expect(page.querySelector("[role=alert]")?.textContent).not.toBe("");
    await type("input[id$=value]", "6'");
    await click("Put it in force");
    expect(page.querySelector("[role=alert]")?.textContent).toMatch(/ordinance|authority/);
    expect(editor.document.getState().shown.amendments).toBeUndefined();
    await type("input[id$=reason]", "invented ordinance 4");
    await click("Put it in force");
    expect(editor.document.getState().shown.amendments).toEqual([
      { parameter: "fixedMetal.distance", value: 72, reason: "invented ordinance 4" },
    ]);
    expect(page.textContent).toMatch(/5' 0" by the edition, here 6' 0": invented ordinance 4/);
    expect(page.querySelector("li.amendment details")?.textContent).toMatch(/fixed metal.*needs bonding/is);
    await click("Take it back");
    expect(editor.document.getState().shown.amendments).toBeUndefined();
  });

  it("are changed in place, with the number and the reason that stand", async () => {
    const amendments = [{ parameter: "fixedMetal.distance", value: 72, reason: "invented ordinance 4" }];
    const editor = await show(siteOf([concretePool(), post(65)], { amendments }));
    await click("Amendments");
    await click("Change it");
    expect(page.querySelector<HTMLInputElement>("input[id$=value]")?.value).toBe(`6' 0"`);
    expect(page.querySelector<HTMLInputElement>("input[id$=reason]")?.value).toBe("invented ordinance 4");
    expect(page.querySelector("form strong")?.textContent).toMatch(/^Fixed metal more than this/);
    await type("input[id$=value]", "7'");
    await click("Put it in force");
    expect(editor.document.getState().shown.amendments).toEqual([{ ...amendments[0], value: 84 }]);
    expect(page.textContent).toMatch(/5' 0" by the edition, here 7' 0": invented ordinance 4/);
    await click("Change it");
    await click("Leave it");
    expect(editor.document.getState().shown.amendments).toEqual([{ ...amendments[0], value: 84 }]);
  });

  it("keep the hand of whoever works by keys", async () => {
    await show(siteOf([concretePool(), post(65)]));
    const held = () => (document.activeElement as HTMLInputElement).value || document.activeElement?.textContent;
    const press = async (label: string | RegExp) => {
      button(label).focus();
      await click(label);
    };
    await press("Amendments");
    await type("input[type=search]", "fixed metal inside walls exempt");
    await press(/Fixed metal more than this from the inside walls/);
    expect(held()).toBe(`5' 0"`);
    await type("input[id$=reason]", "invented ordinance 4");
    await press("Put it in force");
    expect(held()).toBe("Change it");
    await press("Change it");
    expect(held()).toBe(`5' 0"`);
    await press("Leave it");
    expect(held()).toBe("Change it");
    await press("Take it back");
    expect(document.activeElement).toBe(page.querySelector(".amendment-search input"));
  });

  it("are named among the steps by their section", () => {
    // Five feet: NEC 680.26(B)(7).
    expect(setAmendment("fixedMetal.distance", 72, "invented").label).toBe("Amend 680.26(B)(7)");
    expect(removeAmendment("fixedMetal.distance").label).toBe("Take back the amendment of 680.26(B)(7)");
  });

  it("finds a number by meaning, section or name", () => {
    const table = EDITIONS["nec-2020"].parameters;
    expect(parametersWith("lone ring paving", table)).toContain("perimeter.ringUnderPaving");
    expect(parametersWith("680.26(C)", table)).toContain("water.area");
    expect(parametersWith("ring max", table)).toContain("ring.max");
    expect(parametersWith("zebra", table)).toEqual([]);
  });
});

describe("editions side by side", () => {
  it("shows what changes and why", async () => {
    await show(siteOf([concretePool(), deck()]));
    await click("Editions");
    const choice = page.querySelectorAll("select")[1];
    await act(async () => {
      if (!choice) throw new Error("there is no second choice");
      choice.value = "nec-2023";
      choice.dispatchEvent(new Event("change", { bubbles: true }));
    });
    await act(async () => {});
    const text = page.textContent ?? "";
    expect(text).toMatch(/A lone ring does not serve under conductive paving/);
    expect(text).toMatch(/copper ring, [\d.]+ sq ft/);
    expect(text).toMatch(/copper grid, [\d.]+ sq ft/);
    expect(text).toContain("A lone copper ring no longer serves under conductive paving.");
    expect(text, "a name of a number of ours").not.toMatch(/[a-z]\.[a-z]+[A-Z]/);
  });
});

describe("editions side by side, when another site is opened", () => {
  it("begin anew with the edition of that site, and show nothing of the one before", async () => {
    const editor = await show(siteOf([concretePool(), deck()], { edition: "nec-2020" }));
    await click("Editions");
    await act(async () => {});
    const chosen = () => page.querySelectorAll("select")[0]?.value;
    expect(chosen()).toBe("nec-2020");
    await act(async () =>
      editor.document.getState().open(siteOf([], { edition: "nec-2017" }), { name: "", saved: null }),
    );
    expect(chosen()).toBe("nec-2017");
    expect(page.textContent).not.toMatch(/findings? changes?;/);
  });
});

describe("the first questions", () => {
  it("ask for the edition, whether the pool stays, and whether paving is there already", async () => {
    const site = siteOf(
      [linerPool({ storable: undefined, installation: undefined }), deck(), deck({ id: "lawn", material: "lawn" })],
      {
        edition: undefined,
      },
    );
    expect(firstQuestions(site).map(({ id }) => id)).toEqual(["edition", "storable pool", "existing deck"]);
    const editor = await show(site);
    await click("NEC 2020");
    await click("It stays");
    await click("It is there already");
    const { shown } = editor.document.getState();
    expect(shown.edition).toBe("nec-2020");
    expect(shown.elements).toMatchObject([{ storable: false }, { existing: true }, {}]);
    expect(page.querySelector(".first-questions")).toBeNull();
  });

  it("are not asked of a pool that is built in", () => {
    expect(firstQuestions(siteOf([concretePool()]))).toEqual([]);
  });
});
