/** Mounts components of the page in a made-up browser, round a real document and view, and presses keys on them. */
import { act, type ReactNode } from "react";
import { createRoot, type Root } from "react-dom/client";
import { createStore } from "zustand/vanilla";
import { COMMANDS } from "../../../app/commands/commands.ts";
import type { Editor } from "../../../app/editor.ts";
import { EditorContext } from "../../../app/editor-context.tsx";
import type { FilesState } from "../../../app/files/files.ts";
import type { LiveState } from "../../../app/live/live-reports.ts";
import type { Report } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";
import { headlessEditor } from "../commands/headless-editor.ts";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

export interface Bench {
  readonly editor: Editor;
  readonly asked: readonly string[];
  readonly box: HTMLElement;
  show(node: ReactNode): void;
  /** Does something to document or view and lets the page follow. */
  does(change: () => void): void;
  /** Puts another report before the page. */
  report(report: Report | null, routesPending?: boolean): void;
  query(selector: string): HTMLElement;
  all(selector: string): HTMLElement[];
  button(name: string): HTMLElement;
  press(target: HTMLElement): void;
  key(target: HTMLElement, key: string, more?: KeyboardEventInit): void;
  type(target: HTMLElement, text: string): void;
  close(): void;
}

export function bench(site: Site, report: Report | null = null): Bench {
  const headless = headlessEditor(site);
  const live = createStore<LiveState>(() => ({
    report,
    site,
    reportRevision: 1,
    routesPending: false,
    routesFailure: null,
    failure: null,
    isBehind: false,
    took: 0,
  }));
  const dialogs = createStore<{ open: null }>(() => ({ open: null }));
  const filesState = createStore<FilesState>(() => ({
    refused: null,
    keeping: { state: "kept" },
    elsewhere: null,
    changedFile: null,
  }));
  const files = new Proxy(headless.files, {
    get: (target, name) => (name === "state" ? filesState : Reflect.get(target, name)),
  });
  const editor = {
    ...headless,
    files,
    live: Object.assign(live, { close: () => undefined }),
    commands: COMMANDS,
    dialogs,
  } as unknown as Editor;
  const box = document.createElement("div");
  document.body.append(box);
  const root: Root = createRoot(box);
  const one = (selector: string): HTMLElement => {
    const found = box.querySelector<HTMLElement>(selector);
    if (!found) throw new Error(`Nothing on the page fits ${selector}.`);
    return found;
  };
  return {
    editor,
    asked: headless.asked,
    box,
    show: (node) => act(() => root.render(<EditorContext value={editor}>{node}</EditorContext>)),
    does: (change) => act(change),
    report: (next, routesPending = false) => act(() => live.setState({ report: next, routesPending })),
    query: one,
    all: (selector) => [...box.querySelectorAll<HTMLElement>(selector)],
    button(name) {
      const found = [...box.querySelectorAll<HTMLElement>("button")].find(
        (button) => button.getAttribute("aria-label") === name || button.textContent?.trim() === name,
      );
      if (!found) throw new Error(`There is no button "${name}".`);
      return found;
    },
    press: (target) => act(() => target.click()),
    key: (target, key, more = {}) =>
      act(() => {
        target.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more }));
      }),
    type: (target, text) =>
      act(() => {
        const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
        set?.call(target, text);
        target.dispatchEvent(new Event("input", { bubbles: true }));
      }),
    close: () => {
      act(() => root.unmount());
      box.remove();
    },
  };
}
