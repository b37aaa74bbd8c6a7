/**
 * Keys to commands. Keys typed into fields are left alone, save those with Mod that mean nothing to a field. Arrow keys
 * that move the selection make one step of the history from the first press until the last arrow key is let go.
 */
import { SHEET_BOX } from "../canvas/focus-sheet.ts";
import { moveElements } from "../edits/move-elements.ts";
import { ARROWS } from "../tools/arrows.ts";
import { BIG_NUDGE, NUDGE } from "./change-commands.ts";
import { type Command, runCommand } from "./command.ts";
import type { CommandList } from "./commands.ts";
import type { EditorPorts } from "./editor-ports.ts";
import { selectedIds } from "./selection.ts";

/** What is read of a keyboard event. */
export interface Press {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly repeat?: boolean;
}

/** Commands that also work while a field has the focus. */
const IN_FIELDS: ReadonlySet<string> = new Set(["open", "save", "save-as", "print", "commands"]);

/** The key in the words of commands: `Mod+Shift+Z`, `]`, `Shift+M`. A sign that needs Shift to be typed is its own key. */
export function keyOf(press: Press): string {
  const { key } = press;
  const isSign = key.length === 1 && key.toLowerCase() === key.toUpperCase();
  const name = key === " " ? "Space" : key.length === 1 ? key.toUpperCase() : key;
  const parts = [
    press.ctrlKey || press.metaKey ? "Mod" : "",
    press.shiftKey && !isSign ? "Shift" : "",
    press.altKey ? "Alt" : "",
    name,
  ];
  return parts.filter((part) => part !== "").join("+");
}

/** The command that a press runs now: the first with that key that is available, else the first with that key; or null. */
export function commandFor(commands: CommandList, editor: EditorPorts, press: Press): Command | null {
  const key = keyOf(press);
  const withKey = commands.all.filter((command) => command.key === key || command.otherKeys?.includes(key));
  return withKey.find((command) => command.available(editor) === true) ?? withKey[0] ?? null;
}

export interface Keyboard {
  /**
   * True when the press was used: the page then prevents what the browser would do. `settle` takes what stands in the field
   * as typed, before a command runs that saves or shows it.
   */
  down(press: Press, inField: boolean, settle?: () => void): boolean;
  up(press: Pick<Press, "key">): void;
  /** Ends a running move, as when the window loses the focus. */
  leave(): void;
}

export function createKeyboard(commands: CommandList, editor: EditorPorts): Keyboard {
  let nudged: { dx: number; dy: number } | null = null;
  const held = new Set<string>();

  function nudge(press: Press): boolean {
    const way = ARROWS[press.key];
    const ids = selectedIds(editor);
    if (!way || press.ctrlKey || press.metaKey || press.altKey || ids.length === 0) return false;
    const document = editor.document.getState();
    if (document.gesture && !nudged) return true;
    if (!document.gesture || !nudged) {
      nudged = { dx: 0, dy: 0 };
      document.beginGesture("Move");
    }
    const size = press.shiftKey ? BIG_NUDGE : NUDGE;
    const next = { dx: nudged.dx + way[0] * size, dy: nudged.dy + way[1] * size };
    held.add(press.key);
    const refusal = document.preview(moveElements(ids, next.dx, next.dy));
    if (refusal) {
      document.preview(moveElements(ids, nudged.dx, nudged.dy));
      editor.view.getState().say(refusal.reason, "problem");
    } else nudged = next;
    return true;
  }

  function endNudge(): void {
    if (nudged && editor.document.getState().gesture) editor.document.getState().commitGesture();
    nudged = null;
    held.clear();
  }

  return {
    down(press, inField, settle = () => undefined) {
      if (inField) {
        const command = commandFor(commands, editor, press);
        if (!command || !IN_FIELDS.has(command.id) || !(press.ctrlKey || press.metaKey)) return false;
        if (press.repeat) return true;
        settle();
        runCommand(editor, command);
        return true;
      }
      if (nudge(press)) return true;
      if (nudged && press.key === "Escape") {
        editor.document.getState().cancelGesture();
        endNudge();
        return true;
      }
      const command = commandFor(commands, editor, press);
      if (!command) return false;
      endNudge();
      if (press.repeat && !command.repeats) return true;
      runCommand(editor, command);
      return true;
    },
    up({ key }) {
      if (!held.delete(key) || held.size > 0) return;
      endNudge();
    },
    leave: endNudge,
  };
}

/** Listens on the whole page. Returns what stops it. */
export function listenToKeys(page: Window, commands: CommandList, editor: EditorPorts): () => void {
  const keyboard = createKeyboard(commands, editor);
  const down = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.isComposing) return;
    // Also where what had the focus in a dialog is gone, and with it the focus.
    if (isOverlay(event.target) || (event.target === page.document.body && hasDialog(page))) return;
    if (keyboard.down(event, isField(event), () => settleField(page, true))) event.preventDefault();
  };
  const up = (event: KeyboardEvent) => keyboard.up(event);
  const leave = () => keyboard.leave();
  // Before the sheet hears of it: a press ends what arrow keys were moving, and what is typed in a field of something that
  // the press may let go of, field and all.
  const press = (event: PointerEvent) => {
    leave();
    if (event.target instanceof Element && event.target.closest(SHEET_BOX)) settleField(page, false);
  };
  page.addEventListener("keydown", down);
  page.addEventListener("keyup", up);
  page.addEventListener("blur", leave);
  page.addEventListener("pointerdown", press, { capture: true });
  return () => {
    page.removeEventListener("keydown", down);
    page.removeEventListener("keyup", up);
    page.removeEventListener("blur", leave);
    page.removeEventListener("pointerdown", press, { capture: true });
  };
}

const TEXT_FIELDS = "input:not([type=checkbox], [type=radio], [type=button]), textarea, select, [contenteditable=true]";
/** Things that have keys of their own while they have the focus. */
const OWN_KEYS: Readonly<Record<string, string>> = {
  Enter: "button, a, summary",
  " ": "button, summary, input, [role=checkbox]",
  arrows:
    "input, [role=listbox], [role=tree], [role=radiogroup], [role=tablist], [role=menu], [role=grid], [role=slider]",
};

function isField(event: KeyboardEvent): boolean {
  const { target, key } = event;
  if (!(target instanceof Element)) return false;
  const own = OWN_KEYS[key.startsWith("Arrow") || key === "Home" || key === "End" ? "arrows" : key];
  return target.closest(TEXT_FIELDS) !== null || (own !== undefined && target.closest(own) !== null);
}

/** Takes what stands in the field with the focus as typed: fields read it when they are left. */
function settleField({ document }: Window, isKept: boolean): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLElement) || !field.matches(TEXT_FIELDS)) return;
  field.blur();
  if (isKept) field.focus();
}

/** Whether a window stands over the page: the browser's own, or one of the page. */
export function hasDialog({ document }: Window): boolean {
  return document.querySelector("dialog[open], [role=dialog][aria-modal=true]") !== null;
}

/** Inside a dialog, keys belong to the dialog. */
function isOverlay(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest("dialog[open], [role=dialog]") !== null;
}
