// @vitest-environment happy-dom
// Facts that are typed and cannot be read: never gone without a word. Common practice, no source.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { setField } from "../../../app/edits/set-field.ts";
import { ElementPanel } from "../../../app/panels/element-panel.tsx";
import { concretePool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

const SITE = siteOf([concretePool(), post(48)]);

let page: Bench;
beforeEach(() => {
  page = bench(SITE);
  page.show(<ElementPanel />);
});
afterEach(() => page.close());

const select = (...ids: readonly string[]) => page.does(() => page.editor.view.getState().select(ids));
const field = (label: string) => {
  const found = page.all("label").find((one) => one.textContent === label || one.textContent?.startsWith(label));
  const input = found?.querySelector("input") ?? document.getElementById(found?.getAttribute("for") ?? "");
  if (!(input instanceof HTMLInputElement)) throw new Error(`There is no field ${label}.`);
  return input;
};
const leave = (input: HTMLInputElement) =>
  page.does(() => void input.dispatchEvent(new FocusEvent("focusout", { bubbles: true })));
const said = () => page.editor.view.getState().notice?.text ?? null;

describe("a typed fact that cannot be read", () => {
  it("is told of when its field goes with the selection", () => {
    select("post");
    page.type(field("Up"), "four feet");
    leave(field("Up"));
    expect(said()).toBeNull();
    select("pool");
    expect(said()).toMatch(/^Up stays as it was\. .*four feet/);
  });

  it("is told of when a fact of the element cannot be read, and not once it was given up", () => {
    select("post");
    page.type(field("Reaches in"), "high");
    leave(field("Reaches in"));
    page.key(field("Reaches in"), "Escape");
    select("pool");
    expect(said()).toBeNull();
    select("post");
    page.type(field("Reaches in"), "high");
    leave(field("Reaches in"));
    select();
    expect(said()).toMatch(/^Reaches in stays as it was\. .*high/);
  });

  it("is nothing to tell of any more once the fact has been changed elsewhere, as by undo", () => {
    select("post");
    page.type(field("Reaches in"), "high");
    leave(field("Reaches in"));
    expect(page.all("[role=alert]")).toHaveLength(1);
    page.does(() => void page.editor.document.getState().edit(setField("post", "penetration", 3)));
    expect(page.all("[role=alert]")).toHaveLength(0);
    select("pool");
    expect(said()).toBeNull();
  });

  it("does not stand in the field of the same name on another site", () => {
    page.type(field("Spare"), "plenty");
    leave(field("Spare"));
    page.does(() => page.editor.document.getState().open(SITE, { name: "", saved: null }));
    expect(field("Spare").value).toBe("");
    expect(said()).toBeNull();
  });
});
