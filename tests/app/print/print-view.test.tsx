// @vitest-environment happy-dom
// What is printed is about the sheet as it is now, or nothing is. Common practice, no source.
import { act } from "react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { PrintView } from "../../../app/print/print-view.tsx";
import { concretePool, deck, post } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "../panels/panel-bench.tsx";

const SITE = siteOf([concretePool(), deck(), post(48)]);

describe("the printed sheets", () => {
  let page: Bench;
  afterEach(() => {
    page.close();
    vi.unstubAllGlobals();
  });

  const open = () => {
    page = bench(SITE, recompute(SITE));
    page.does(() => page.editor.dialogs.setState({ open: "print" }));
    page.show(<PrintView />);
  };
  const live = (state: object) => page.does(() => (page.editor.live as { setState(s: object): void }).setState(state));
  const isDisabled = () => (page.button("Print") as HTMLButtonElement).disabled;

  it("are there and may be printed once the report is about the sheet", () => {
    open();
    expect(page.all(".print-page").length).toBeGreaterThan(0);
    expect(isDisabled()).toBe(false);
  });

  it("are not those of the sheet before: while a report is on its way nothing is printed", () => {
    open();
    page.does(() => void page.editor.document.getState().edit(setSiteField("name", "Changed")));
    expect(page.all(".print-page")).toHaveLength(0);
    expect(isDisabled()).toBe(true);
    expect(page.query(".print-pages").textContent).toMatch(/Nothing is printed yet/);
    const { shown, revision } = page.editor.document.getState();
    live({ report: recompute(shown), site: shown, reportRevision: revision });
    expect(page.all(".print-page").length).toBeGreaterThan(0);
    expect(isDisabled()).toBe(false);
  });

  it("say so on paper where the calculation has stopped, also when the browser itself is asked to print", () => {
    page = bench(SITE, recompute(SITE));
    page.show(<PrintView />);
    live({ failure: "a rule broke" });
    act(() => void window.dispatchEvent(new Event("beforeprint")));
    expect(page.all(".print-page")).toHaveLength(0);
    expect(page.query(".print-pages").textContent).toContain(
      "Nothing is printed: no report is about this sheet. The calculation stopped: a rule broke",
    );
  });

  it("can be printed without routes that are not worked out, and say so", () => {
    page = bench(SITE, recompute(SITE, { withoutRoutes: true }));
    page.does(() => page.editor.dialogs.setState({ open: "print" }));
    page.show(<PrintView />);
    live({ routesPending: true });
    expect(isDisabled()).toBe(true);
    live({ routesFailure: "they take too long" });
    expect(isDisabled()).toBe(false);
    expect(page.query(".print-pages").textContent).toMatch(/routes of the branches are not worked out/);
  });
});
