// @vitest-environment happy-dom
// What is typed while a window is still being fetched is the window's, and no command of the sheet. Our own design, no source.
import { act, type ComponentType } from "react";
import { afterEach, beforeEach, expect, it } from "vitest";
import { useStore } from "zustand";
import { hasDialog } from "../../../app/commands/keyboard.ts";
import { useEditor } from "../../../app/editor-context.tsx";
import { CommandsDialog } from "../../../app/panels/commands-dialog.tsx";
import { later } from "../../../app/panels/later.tsx";
import { OutlinePanel } from "../../../app/panels/outline-panel.tsx";
import { FindOnItsWay, WindowOnItsWay } from "../../../app/panels/typed-ahead.tsx";
import { concretePool, deck } from "../../../rules/catalogue/common/example-yard.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

let page: Bench;
beforeEach(() => {
  page = bench(siteOf([concretePool(), deck({ name: "North deck" })]));
});
afterEach(() => page.close());

/** A late part whose code comes when it is sent. */
function onItsWay<P extends object>(part: ComponentType<P>, meanwhile: React.ReactNode) {
  let send: () => void = () => undefined;
  const sent = new Promise<void>((resolve) => {
    send = resolve;
  });
  const Part = later(async () => {
    await sent;
    return part;
  }, meanwhile);
  const arrives = async () => {
    await act(async () => send());
    await act(async () => undefined);
  };
  return { Part, arrives };
}

const fieldNamed = (label: string) => page.query(`input[aria-label="${label}"]`) as HTMLInputElement;
const SEARCH = "Search the commands and elements";

/** The window as long as it is asked for. */
function Asked({ Part }: { readonly Part: ComponentType<Parameters<typeof CommandsDialog>[0]> }) {
  const { dialogs } = useEditor();
  const open = useStore(dialogs, (state) => state.open);
  return open === "commands" ? <Part onClose={() => dialogs.setState({ open: null })} /> : null;
}

function commandsOnTheirWay() {
  const { Part, arrives } = onItsWay(CommandsDialog, <WindowOnItsWay field={SEARCH} />);
  page.does(() => page.editor.dialogs.setState({ open: "commands" }));
  page.show(<Asked Part={Part} />);
  return { arrives };
}

it("keys are the window's from the first on; what was typed stands in its field, to go on with", async () => {
  const { arrives } = commandsOnTheirWay();
  expect(hasDialog(window)).toBe(true);
  page.type(fieldNamed(SEARCH), "north");
  await arrives();
  const field = fieldNamed(SEARCH);
  expect(field.getAttribute("role")).toBe("combobox");
  expect([field.value, field.selectionStart, field.selectionEnd]).toEqual(["north", 5, 5]);
  expect(page.all("[role=option]").map((row) => row.textContent)).toEqual(["Go toNorth deck"]);
  expect(page.editor.dialogs.getState().open).toBe("commands");
});

it("Enter after it is pressed once the window is there", async () => {
  const { arrives } = commandsOnTheirWay();
  page.type(fieldNamed(SEARCH), "north");
  page.key(fieldNamed(SEARCH), "Enter");
  expect(page.editor.view.getState().selection).toEqual([]);
  await arrives();
  expect(page.editor.view.getState().selection).toHaveLength(1);
  expect(page.editor.dialogs.getState().open).toBeNull();
});

it("Enter before more is typed does nothing", async () => {
  const { arrives } = commandsOnTheirWay();
  page.type(fieldNamed(SEARCH), "n");
  page.key(fieldNamed(SEARCH), "Enter");
  page.type(fieldNamed(SEARCH), "no");
  await arrives();
  expect(fieldNamed(SEARCH).value).toBe("no");
  expect(page.editor.view.getState().selection).toEqual([]);
});

it("Escape gives the window up, and it does not come later", async () => {
  const { arrives } = commandsOnTheirWay();
  page.does(() => page.query("dialog").dispatchEvent(new Event("cancel", { cancelable: true })));
  expect(page.editor.dialogs.getState().open).toBeNull();
  await arrives();
  expect(page.all("dialog")).toEqual([]);
  page.does(() => page.editor.dialogs.setState({ open: "commands" }));
  expect(fieldNamed(SEARCH).value).toBe("");
});

it("a window that nobody asked for stays until it is read", () => {
  page.does(() => page.editor.dialogs.setState({ open: "help" }));
  page.show(<WindowOnItsWay staysOpen />);
  page.does(() => page.query("dialog").dispatchEvent(new Event("cancel", { cancelable: true })));
  expect(page.editor.dialogs.getState().open).toBe("help");
  expect(page.all("button")).toEqual([]);
});

it("what is to be found in the outline is typed for the outline", async () => {
  const { Part, arrives } = onItsWay(OutlinePanel, <FindOnItsWay />);
  page.show(<Part />);
  expect(page.all("input")).toEqual([]);
  page.does(() => page.editor.view.getState().askToFind());
  page.type(fieldNamed("Filter the outline"), "north");
  page.key(fieldNamed("Filter the outline"), "Enter");
  await arrives();
  const field = fieldNamed("Filter the outline");
  expect([field.value, document.activeElement === field]).toEqual(["north", true]);
  const [selected = ""] = page.editor.view.getState().selection;
  expect(page.editor.document.getState().shown.elements.find(({ id }) => id === selected)?.name).toBe("North deck");
  // The next time all of it is marked, to be typed over.
  page.does(() => page.editor.view.getState().askToFind());
  expect([field.selectionStart, field.selectionEnd]).toEqual([0, 5]);
});

it("nothing that was typed for one window comes to stand in another", async () => {
  const first = onItsWay(CommandsDialog, <WindowOnItsWay field={SEARCH} />);
  const close = () => undefined;
  page.show(<first.Part onClose={close} />);
  page.type(fieldNamed(SEARCH), "north");
  page.show(null);
  page.show(<first.Part onClose={close} />);
  await first.arrives();
  expect(fieldNamed(SEARCH).value).toBe("");
});
