// @vitest-environment happy-dom
// What the page says while a report is late, stopped, or without its routes. Common practice, no source.
import { afterEach, describe, expect, it } from "vitest";
import { CopperPanel } from "../../../app/panels/copper-panel.tsx";
import { CountsLine } from "../../../app/panels/counts-line.tsx";
import { FindingPanel } from "../../../app/panels/finding-panel.tsx";
import { concretePool, deck, post } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

const SITE = siteOf([concretePool(), deck(), post(48)]);

describe("a report that is not all there", () => {
  let page: Bench;
  afterEach(() => page.close());
  const live = (state: object) => page.does(() => (page.editor.live as { setState(s: object): void }).setState(state));

  it("names no length of branches where the routes are not worked out, and says why", () => {
    page = bench(SITE, recompute(SITE, { withoutRoutes: true }));
    page.show(<CopperPanel />);
    live({ routesPending: true, routesFailure: "They take too long." });
    const text = page.query(".copper").textContent ?? "";
    expect(text).toContain("Branchesnot worked out");
    expect(text).toContain("Copper in allnot worked out");
    expect(text).toContain("are not worked out; all else is. They take too long.");
    expect(text).not.toContain("on its way");
  });

  it("that is late is told from one that is about the sheet", () => {
    page = bench(SITE, recompute(SITE));
    page.show(
      <>
        <CountsLine />
        <FindingPanel />
      </>,
    );
    const total = () => page.query(".copper-figure").textContent;
    const figure = total();
    expect(figure).toMatch(/\d/);
    expect(page.all("[aria-busy=true]")).toHaveLength(0);
    live({ isBehind: true });
    expect(total()).toBe("on its way");
    expect(page.all("[aria-busy=true]")).toHaveLength(1);
    expect(page.box.textContent).toContain("about the sheet before the last change");
    live({ isBehind: false });
    expect(total()).toBe(figure);
    expect(page.box.textContent).not.toContain("about the sheet before the last change");
  });
});
