// @vitest-environment happy-dom
/** The walk ahead of the first report: what a step is about comes later. Our own design, no source. */
import { beforeEach, describe, expect, it } from "vitest";
import { createStore, type StoreApi } from "zustand/vanilla";
import { offerWalk, type Walker, walkTo } from "../../../app/walk/walk.ts";
import { createWalkStore } from "../../../app/walk/walk-state.ts";
import { concretePool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { headlessEditor } from "../commands/headless-editor.ts";

const SITE = siteOf([concretePool(), post(48)]);
const REPORT = recompute(SITE);
const POST = "post";

let live: StoreApi<{ readonly report: Report | null }>;
let walker: Walker;
const shown = () => {
  const { finding, selection } = walker.view.getState();
  return [REPORT.findings.find(({ id }) => id === finding)?.element ?? null, selection];
};

beforeEach(() => {
  live = createStore(() => ({ report: null }));
  walker = { ...headlessEditor(SITE), live, walk: createWalkStore() };
  offerWalk(walker);
});

describe("a step about a finding that is come to before the first report", () => {
  it.each([2, 3])("step %s shows it when the report comes, and once only", (step) => {
    walkTo(walker, step);
    expect(shown()).toEqual([null, []]);
    live.setState({ report: REPORT });
    expect(shown()).toEqual([POST, [POST]]);
    walker.view.getState().select([]);
    live.setState({ report: recompute(SITE) });
    expect(walker.view.getState().selection).toEqual([]);
  });

  it("takes nothing from somebody who has chosen something since, nor does a step of another kind show it", () => {
    walkTo(walker, 2);
    walker.view.getState().select(["pool-1"]);
    live.setState({ report: REPORT });
    expect(shown()).toEqual([null, ["pool-1"]]);
    walkTo(walker, 4);
    live.setState({ report: null });
    live.setState({ report: REPORT });
    expect(shown()).toEqual([null, []]);
  });
});
