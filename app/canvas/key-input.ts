/** Keys while the sheet has the focus, or nothing has: first the tool in hand, then the commands. Space held moves the sheet. */
import { hasDialog } from "../commands/keyboard.ts";
import type { ToolHost } from "../tools/tool-host.ts";
import type { PointerInput } from "./pointer-input.ts";

/** Starts listening, before the commands do. Returns what ends it. */
export function listenToToolKeys(
  box: HTMLElement,
  pointer: PointerInput,
  host: ToolHost,
  changed: () => void,
): () => void {
  const page = box.ownerDocument.defaultView;
  if (!page) return () => {};
  const isMine = (event: KeyboardEvent) => event.target === box || event.target === box.ownerDocument.body;

  const down = (event: KeyboardEvent) => {
    if (event.key === "Alt" && isMine(event)) {
      host.holdSnappingOff(true);
      // The browser would take its menu for it.
      if (host.tool.id !== "select") event.preventDefault();
      return;
    }
    if (!isMine(event) || event.isComposing || event.altKey) return;
    if (hasDialog(page)) return;
    if (event.ctrlKey || event.metaKey) return;
    if (event.key === " ") {
      pointer.isSpaceDown = true;
      event.preventDefault();
      changed();
      return;
    }
    const { key, shiftKey } = event;
    // A key that waits for the tool is pressed again once that is there: it may be one of a command.
    const again = () =>
      box.dispatchEvent(new KeyboardEvent("keydown", { key, shiftKey, bubbles: true, cancelable: true }));
    if (host.key({ key, shift: shiftKey }, again)) event.preventDefault();
  };
  const up = (event: KeyboardEvent) => {
    if (event.key === "Alt") host.holdSnappingOff(false);
    if (event.key !== " ") return;
    pointer.isSpaceDown = false;
    changed();
  };
  const leave = () => {
    host.holdSnappingOff(false);
    pointer.isSpaceDown = false;
    changed();
  };
  page.addEventListener("keydown", down, { capture: true });
  page.addEventListener("keyup", up, { capture: true });
  page.addEventListener("blur", leave);
  return () => {
    page.removeEventListener("keydown", down, { capture: true });
    page.removeEventListener("keyup", up, { capture: true });
    page.removeEventListener("blur", leave);
  };
}
