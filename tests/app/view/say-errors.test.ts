// @vitest-environment happy-dom
/** Mistakes that nobody caught, on a page. Common practice, no source. */
import { expect, it } from "vitest";
import { sayErrors } from "../../../app/view/say-errors.ts";
import { createViewStore } from "../../../app/view/view-store.ts";

it("says a mistake once, and nothing of what a browser only notes", () => {
  const view = createViewStore();
  const stop = sayErrors(window, view);
  const text = () => view.getState().notice?.text ?? null;
  const send = (name: string, more: object) => window.dispatchEvent(Object.assign(new Event(name), more));
  send("error", { error: null, message: "ResizeObserver loop completed with undelivered notifications." });
  expect(text()).toBeNull();
  send("error", { error: new Error("a tool broke") });
  expect(view.getState().notice).toMatchObject({ kind: "problem", ways: ["save"] });
  expect(text()).toMatch(/a tool broke/);
  view.getState().unsay();
  send("error", { error: new Error("a tool broke") });
  expect(text()).toBeNull();
  send("unhandledrejection", { reason: new Error("no room") });
  expect(text()).toMatch(/no room/);
  stop();
  send("error", { error: new Error("another") });
  expect(text()).toMatch(/no room/);
});
