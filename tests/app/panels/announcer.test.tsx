// @vitest-environment happy-dom
/** What is said of changed counts, however reports and steps follow on one another. Our own design, no source. */
import { act } from "react";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { Announcer } from "../../../app/panels/announcer.tsx";
import { concretePool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

/** A post 60 in. from the water needs bonding; a step farther out it is exempt (NEC 680.26(B)(7), restated). */
const SITE = siteOf([concretePool(), post(60)]);

let page: Bench;

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  page.close();
  vi.useRealTimers();
});

const rest = () => act(() => vi.advanceTimersByTimeAsync(1000));
const said = () => page.all("[role=status]").at(-1)?.textContent;

/** Puts the report of what the sheet shows now before the page, as a worker does. */
function judged(): void {
  const { shown, revision } = page.editor.document.getState();
  page.does(() => page.editor.live.setState({ report: recompute(shown), reportRevision: revision, failure: null }));
}

const move = moveElements(["post"], 0, 12);

it("what a step has changed is told against the site as it was opened", async () => {
  page = bench(SITE);
  page.show(<Announcer />);
  judged();
  page.does(() => page.editor.document.getState().edit(move));
  judged();
  await rest();
  expect(said()).toMatch(/^Now \d+ needs? bonding, \d+ exempt\.$/);
});

it("a step says what it has done and where the one selected lies now; undo says that itself", async () => {
  page = bench(SITE);
  page.show(<Announcer />);
  const done = () => page.all("[role=status]").at(-2)?.textContent;
  page.does(() => page.editor.view.getState().select(["post"]));
  page.does(() => page.editor.document.getState().edit(move));
  await rest();
  expect(done()).toMatch(/^Done: Move .+\. Its middle lies .+ right, .+ (up|down)\.$/);
  page.does(() => page.editor.document.getState().edit(setSiteField("name", "Elder Court 3")));
  await rest();
  expect(done()).toBe("Done: Rename the site.");
  page.does(() => page.editor.document.getState().undo());
  await rest();
  expect(done()).toBe("Done: Rename the site.");
});

it("a step that has a notice of its own is not told twice", async () => {
  page = bench(SITE);
  page.show(<Announcer />);
  page.does(() => {
    page.editor.document.getState().edit(move);
    page.editor.view.getState().say("Moved by a foot.");
  });
  await rest();
  expect(page.all("[role=status]").at(-2)?.textContent).toBe("");
});

it("a pool is told with what is found of its water too", () => {
  page = bench(siteOf([concretePool({ name: "Pool" })]));
  page.show(<Announcer />);
  judged();
  const { findings } = page.editor.live.getState().report ?? { findings: [] };
  expect(findings.some(({ element, body, outcome }) => element === null && body === "pool" && outcome === "bond")).toBe(
    true,
  );
  page.does(() => page.editor.view.getState().select(["pool"]));
  expect(page.all("[role=status]")[0]?.textContent).toContain("needs bonding");
});

it("so is a move whose report comes while it is under way, once it has ended", async () => {
  page = bench(SITE);
  page.show(<Announcer />);
  judged();
  page.does(() => page.editor.document.getState().beginGesture("Move"));
  page.does(() => page.editor.document.getState().preview(move));
  judged();
  await rest();
  expect(said()).toBe("");
  page.does(() => page.editor.document.getState().commitGesture());
  judged();
  await rest();
  expect(said()).toMatch(/^Now \d+ needs? bonding, \d+ exempt\.$/);
});

it("who begins before the first counts are there hears all of them", async () => {
  page = bench(SITE);
  page.show(<Announcer />);
  page.does(() => page.editor.document.getState().edit(move));
  judged();
  await rest();
  expect(said()).toMatch(/^Now .*needs? bonding, .*questions?.*exempt\.$|^Now .*exempt\.$/);
  expect(said()?.split(",").length).toBeGreaterThan(2);
});
