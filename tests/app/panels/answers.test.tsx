// @vitest-environment happy-dom
// Answers beside a finding: what was asked, whose answer it was, that it lapsed. Common practice, no source.
import { afterEach, beforeAll, describe, expect, it } from "vitest";
import { answerQuestion } from "../../../app/edits/answer-question.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { FindingPanel } from "../../../app/panels/finding-panel.tsx";
import { loadLaterParts } from "../../../app/panels/later.tsx";
import { concretePool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Site } from "../../../rules/site/site.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

let page: Bench;

beforeAll(loadLaterParts);

afterEach(() => page.close());

function open(site: Site): void {
  page = bench(site, recompute(site));
  page.show(<FindingPanel />);
}

const site = (): Site => page.editor.document.getState().shown;

/** Shows the finding of a rule about an element. */
function choose(rule: string, element: string | null): ReturnType<typeof recompute>["findings"][number] {
  const found = recompute(site()).findings.find((one) => one.rule === rule && one.element === element);
  if (!found) throw new Error(`no finding of ${rule}`);
  page.does(() => page.editor.view.getState().chooseFinding(found.id));
  return found;
}

describe("an answered finding", () => {
  it("says what was asked, and takes back its own answer where the same was said to another question", () => {
    // Five feet of NEC 680.26(B)(7), and two answers alike about one post.
    open(siteOf([concretePool(), post(60.5)], { accuracy: 1 }));
    const asked = choose("fixed-metal", "post");
    page.does(() => {
      const document = page.editor.document.getState();
      document.edit(answerQuestion(asked, "yes", "RK", "2026-05-01"));
      const other = { ...asked, question: { id: "another-question", text: "Another?", options: ["yes", "no"] } };
      document.edit(answerQuestion(other, "yes", "RK", "2026-05-01"));
    });
    page.report(recompute(site()));
    expect(page.query(".kept-answer").textContent).toContain(asked.question?.text.split(",")[0]);
    page.press(page.button("Take back"));
    expect(site().answers?.map(({ question }) => question)).toEqual(["another-question"]);
  });

  it("keeps the hand of whoever works by keys", async () => {
    open(siteOf([concretePool(), post(60.5)], { accuracy: 1 }));
    choose("fixed-metal", "post");
    page.type(page.query(".slip-who input"), "RK");
    page.query(".slip-answers button").focus();
    page.press(page.query(".slip-answers button"));
    page.report(recompute(site()));
    await expect.poll(() => document.activeElement?.textContent).toBe("Take back");
    page.press(page.button("Take back"));
    page.report(recompute(site()));
    await expect.poll(() => document.activeElement?.textContent).toBe("Yes");
  });

  it("says that an answer lapsed also where its question is not asked any more", async () => {
    open(siteOf([concretePool(), post(60.5)], { accuracy: 1 }));
    const asked = choose("fixed-metal", "post");
    page.does(() => {
      page.editor.document.getState().edit(answerQuestion(asked, "yes", "RK", "2026-05-01"));
      page.editor.document.getState().edit(moveElements(["post"], 0, 24));
    });
    page.report(recompute(site()));
    choose("fixed-metal", "post");
    expect(page.query(".outcome").textContent).toContain("exempt");
    expect(page.query(".kept-answer.is-lapsed").textContent).toContain("RK, 2026-05-01");
    page.button("Take back").focus();
    page.press(page.button("Take back"));
    expect(site().answers).toBeUndefined();
    expect(page.all(".kept-answer")).toHaveLength(0);
    // The hand stays at the finding.
    await expect.poll(() => document.activeElement).toBe(page.query("article"));
  });

  it("says so of one about a pool too, where the pool is looked at", () => {
    const asked = { element: null, body: "pool", question: { id: "ties-even", text: "Even?", options: ["yes"] } };
    open(siteOf([concretePool()]));
    page.does(() => {
      page.editor.document.getState().edit(answerQuestion(asked, "yes", "RK", "2026-05-01"));
      page.editor.document.getState().edit(moveElements(["pool"], 0, 24));
    });
    page.report(recompute(site()));
    choose("tie-spacing", null);
    expect(page.query(".kept-answer.is-lapsed").textContent).toContain("On ties even");
  });
});

it("the editions are asked for by their titles", () => {
  open(siteOf([concretePool()], { edition: undefined }));
  choose("edition-in-force", null);
  expect(page.all(".slip-answers button").map(({ textContent }) => textContent)).toEqual([
    "NEC 2017",
    "NEC 2020",
    "NEC 2023",
  ]);
  page.type(page.query(".slip-who input"), "RK");
  page.press(page.button("NEC 2017"));
  page.report(recompute(site()));
  expect(page.query(".kept-answer").textContent).toContain("NEC 2017");
  expect(page.box.textContent).not.toMatch(/nec-20/i);
});
