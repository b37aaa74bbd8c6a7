// @vitest-environment happy-dom
/** What typed figures would make stands on the sheet before it is done. Places are arithmetic. */
import { afterEach, describe, expect, it } from "vitest";
import { ArrangePanel } from "../../../app/arranging/arrange-panel.tsx";
import { foreseenBy } from "../../../app/arranging/foresee.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import type { Site } from "../../../rules/site/site.ts";
import { type Bench, bench } from "../panels/panel-bench.tsx";

const SITE = {
  format: "copperband-site",
  version: 1,
  edition: "nec-2020",
  elements: [
    { id: "metal-1", kind: "metal", part: "post", shape: { point: [10, 20] } },
    {
      id: "fence-1",
      kind: "fence",
      path: {
        closed: false,
        vertices: [
          [0, 0],
          [100, 0],
        ],
      },
    },
  ],
} as unknown as Site;

let page: Bench | null = null;
afterEach(() => {
  page?.close();
  page = null;
});

describe("what an edit would make", () => {
  it("is told by place and by line, and only of what would be elsewhere", () => {
    expect(foreseenBy(SITE, moveElements(["metal-1"], 5, 0))).toEqual([{ at: [15, 20] }]);
    expect(foreseenBy(SITE, moveElements(["fence-1"], 0, 7))).toEqual([
      { edges: [expect.objectContaining({ kind: "line", from: [0, 7], to: [100, 7] })] },
    ]);
  });

  it("is nothing where the edit is refused or changes nothing", () => {
    expect(foreseenBy(SITE, { label: "No", apply: () => ({ ok: false, reason: "No.", element: null }) })).toEqual([]);
    expect(foreseenBy(SITE, { label: "Nothing", apply: (site) => ({ ok: true, site }) })).toEqual([]);
  });
});

describe("a form", () => {
  it("shows it while figures are typed, and no longer once they are wrong, applied or put away", () => {
    page = bench(SITE);
    const { editor } = page;
    const foreseen = () => editor.view.getState().foreseen;
    const ids = ["metal-1"];
    page.does(() => editor.view.getState().select(ids));
    page.does(() => editor.view.getState().setArranging("turn"));
    page.show(<ArrangePanel ids={ids} />);
    expect(foreseen()).toEqual([]);
    page.does(() => editor.view.getState().setArranging("move-by"));
    const right = page.query("input");
    page.type(right, "30in");
    expect(foreseen()).toEqual([{ at: [40, 20] }]);
    page.type(right, "far");
    expect(foreseen()).toEqual([]);
    page.type(right, "30in");
    page.press(page.button("Move"));
    expect(foreseen()).toEqual([]);
    page.type(right, "31in");
    expect(foreseen()).toEqual([{ at: [71, 20] }]);
    page.press(page.button("Close"));
    expect(foreseen()).toEqual([]);
    expect(editor.document.getState().history.past).toHaveLength(1);
  });

  it("says why it could not be done for as long as those figures stand", () => {
    page = bench(SITE);
    const { editor } = page;
    const ids = ["metal-1"];
    page.does(() => editor.view.getState().select(ids));
    page.does(() => editor.view.getState().setArranging("move-by"));
    page.show(<ArrangePanel ids={ids} />);
    page.press(page.button("Move"));
    expect(page.query('[role="alert"]').textContent).toBe("Type how far.");
    page.type(page.query("input"), "30in");
    expect(page.all('[role="alert"]')).toEqual([]);
  });
});
