// @vitest-environment happy-dom
/** Keys to commands, by themselves and on a page. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { COMMANDS } from "../../../app/commands/commands.ts";
import { createKeyboard, keyOf, listenToKeys, type Press } from "../../../app/commands/keyboard.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { headlessEditor } from "./headless-editor.ts";

function press(key: string, extra: Partial<Press> = {}): Press {
  return { key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...extra };
}

function ready() {
  const editor = headlessEditor(sampleYard());
  return { editor, keyboard: createKeyboard(COMMANDS, editor), state: () => editor.document.getState() };
}

describe("a press", () => {
  it.each([
    [press("z", { ctrlKey: true }), "Mod+Z"],
    [press("Z", { metaKey: true, shiftKey: true }), "Mod+Shift+Z"],
    [press("?", { shiftKey: true }), "?"],
    [press("+", { shiftKey: true, ctrlKey: true }), "Mod++"],
    [press("ArrowLeft", { shiftKey: true }), "Shift+ArrowLeft"],
    [press("M", { shiftKey: true }), "Shift+M"],
    [press("m"), "M"],
    [press(" "), "Space"],
  ])("is named %o as %s", (event, name) => {
    expect(keyOf(event)).toBe(name);
  });

  it("runs its command and is used; any other is left to the browser", () => {
    const { editor, keyboard } = ready();
    expect(keyboard.down(press("f"), false)).toBe(true);
    expect(editor.view.getState().tool).toBe("fence");
    expect(keyboard.down(press("`"), false)).toBe(false);
    expect(keyboard.down(press("s", { ctrlKey: true }), false)).toBe(true);
    expect(editor.asked).toEqual(["files.save"]);
  });

  it("held down repeats only what may repeat", () => {
    const { editor, keyboard } = ready();
    keyboard.down(press("+"), false);
    keyboard.down(press("+", { repeat: true }), false);
    keyboard.down(press("s", { ctrlKey: true }), false);
    expect(keyboard.down(press("s", { ctrlKey: true, repeat: true }), false)).toBe(true);
    expect(editor.asked).toEqual(["zoom 1.25", "zoom 1.25", "files.save"]);
  });

  it("in a field is typed, save for a few with Ctrl", () => {
    const { editor, keyboard } = ready();
    for (const key of ["f", "Delete", "ArrowLeft", "?"]) expect(keyboard.down(press(key), true)).toBe(false);
    for (const key of ["z", "a", "d"]) expect(keyboard.down(press(key, { ctrlKey: true }), true)).toBe(false);
    expect(keyboard.down(press("s", { ctrlKey: true }), true)).toBe(true);
    expect(editor.asked).toEqual(["files.save"]);
    expect(editor.view.getState().tool).toBe("select");
  });
});

describe("arrow keys", () => {
  it("look around when nothing is selected", () => {
    const { editor, keyboard } = ready();
    keyboard.down(press("ArrowLeft"), false);
    keyboard.down(press("ArrowDown", { shiftKey: true }), false);
    expect(editor.asked).toEqual(["pan -64 0", "pan 0 256"]);
  });

  it("move the selection as one step until they are let go", () => {
    const { editor, keyboard, state } = ready();
    editor.view.getState().select(["pump-1"]);
    keyboard.down(press("ArrowRight"), false);
    keyboard.down(press("ArrowRight", { repeat: true }), false);
    keyboard.down(press("ArrowUp", { shiftKey: true }), false);
    expect(field(state().shown, "pump-1", "at")).toEqual([522, 232]);
    expect(state().history.past).toEqual([]);
    keyboard.up({ key: "ArrowRight" });
    expect(state().gesture).not.toBeNull();
    keyboard.up({ key: "ArrowUp" });
    expect(state().history.past.map(({ label }) => label)).toEqual(["Move pump 1"]);
    keyboard.down(press("ArrowLeft"), false);
    keyboard.up({ key: "ArrowLeft" });
    expect(state().history.past).toHaveLength(2);
  });

  it("are given up by Escape, and ended by another command and when the window loses the focus", () => {
    const { editor, keyboard, state } = ready();
    const start = state().history.present;
    editor.view.getState().select(["pump-1"]);
    keyboard.down(press("ArrowRight"), false);
    keyboard.down(press("Escape"), false);
    expect(state().shown).toBe(start);
    expect(editor.view.getState().selection).toEqual(["pump-1"]);
    keyboard.down(press("ArrowRight"), false);
    keyboard.leave();
    expect(state().history.past).toHaveLength(1);
    keyboard.down(press("ArrowRight"), false);
    keyboard.down(press("z", { ctrlKey: true }), false);
    expect(field(state().shown, "pump-1", "at")).toEqual([521, 220]);
    expect(state().history.future).toHaveLength(1);
  });

  it("stop where a move is refused, and say why", () => {
    const { editor, keyboard, state } = ready();
    editor.document.getState().edit({
      label: "Far",
      apply: (site) => ({
        ok: true,
        site: { ...site, elements: [{ id: "p", kind: "equipment", unit: "pump", at: [999_990, 0] }] },
      }),
    });
    editor.view.getState().select(["p"]);
    keyboard.down(press("ArrowRight"), false);
    keyboard.down(press("ArrowRight", { shiftKey: true }), false);
    expect(editor.said()).toMatch(/^Pump p would lie farther/);
    keyboard.up({ key: "ArrowRight" });
    expect(field(state().shown, "p", "at")).toEqual([999_991, 0]);
  });

  it("leave a running gesture of the pointer alone", () => {
    const { editor, keyboard, state } = ready();
    editor.view.getState().select(["pump-1"]);
    state().beginGesture("Drag");
    expect(keyboard.down(press("ArrowRight"), false)).toBe(true);
    expect(state().gesture?.label).toBe("Drag");
    expect(state().shown).toBe(state().history.present);
  });
});

describe("keys and the pointer on a page", () => {
  const send = (name: string, init: KeyboardEventInit = {}) =>
    document.body.dispatchEvent(
      name.startsWith("key")
        ? new KeyboardEvent(name, { bubbles: true, cancelable: true, ...init })
        : new Event(name, { bubbles: true }),
    );

  it("an arrow key that is held while a drag begins leaves the drag alone", () => {
    const editor = headlessEditor(sampleYard());
    const stop = listenToKeys(window, COMMANDS, editor);
    const state = () => editor.document.getState();
    editor.view.getState().select(["pump-1"]);
    send("keydown", { key: "ArrowRight" });
    send("pointerdown");
    expect(state().history.past).toHaveLength(1);
    state().beginGesture("Drag");
    const { shown } = state();
    send("keydown", { key: "ArrowRight", repeat: true });
    send("keyup", { key: "ArrowRight" });
    expect(state().gesture?.label).toBe("Drag");
    expect(state().shown).toBe(shown);
    stop();
  });

  it("a window of the page's own keeps the keys also when what had the focus in it is gone", () => {
    document.body.innerHTML = '<section role="dialog" aria-modal="true"></section>';
    const editor = headlessEditor(sampleYard());
    const stop = listenToKeys(window, COMMANDS, editor);
    editor.view.getState().select(["pump-1"]);
    send("keydown", { key: "Delete" });
    expect(editor.document.getState().history.past).toEqual([]);
    document.body.innerHTML = '<section role="dialog" aria-modal="false"></section>';
    send("keydown", { key: "Delete" });
    expect(editor.document.getState().history.past).toHaveLength(1);
    stop();
  });
});

describe("on a page", () => {
  const html = `<div id="sheet" tabindex="0"></div><input id="name"><input id="tick" type="checkbox"><button id="go">Go</button>
    <ul id="list" role="listbox" tabindex="0"></ul><dialog id="ask" open><p id="inside" tabindex="0"></p></dialog>`;

  function sent(target: string, init: KeyboardEventInit): boolean {
    const event = new KeyboardEvent("keydown", { bubbles: true, cancelable: true, ...init });
    document.getElementById(target)?.dispatchEvent(event);
    return event.defaultPrevented;
  }

  it("fields, buttons, lists and dialogs keep their own keys", () => {
    document.body.innerHTML = html;
    const editor = headlessEditor(sampleYard());
    const stop = listenToKeys(window, COMMANDS, editor);
    expect(sent("sheet", { key: "f" })).toBe(true);
    expect(editor.view.getState().tool).toBe("fence");
    expect(sent("name", { key: "w" })).toBe(false);
    expect(sent("name", { key: "s", ctrlKey: true })).toBe(true);
    expect(sent("list", { key: "ArrowDown" })).toBe(false);
    expect(sent("tick", { key: "w" })).toBe(true);
    expect(sent("inside", { key: "b" })).toBe(false);
    expect(editor.view.getState().tool).toBe("wall");
    // A dialog keeps the keys also when what had the focus in it is gone.
    const lost = new KeyboardEvent("keydown", { key: "b", bubbles: true, cancelable: true });
    document.body.dispatchEvent(lost);
    expect(lost.defaultPrevented).toBe(false);
    document.querySelector("dialog")?.removeAttribute("open");
    const held = new KeyboardEvent("keydown", { key: "b", bubbles: true, cancelable: true });
    document.body.dispatchEvent(held);
    expect(held.defaultPrevented).toBe(true);
    expect(sent("go", { key: "ArrowDown" })).toBe(true);
    expect(editor.asked).toEqual(["files.save", "pan 0 64"]);
    stop();
    expect(sent("sheet", { key: "f" })).toBe(false);
  });
});
