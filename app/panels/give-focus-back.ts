import { focusSheet } from "../canvas/focus-sheet.ts";

/**
 * A window that goes takes the focus with it: it goes back to where it was before the window came, or to the sheet where
 * that is gone. Where something else has taken the focus since, it stays there.
 */
export function giveFocusBack(before: Element | null, window: Element | null): void {
  const now = document.activeElement;
  const isLost = now === null || now === document.body || window?.contains(now) === true;
  if (!isLost || before === document.body) return;
  if (before instanceof HTMLElement && before.isConnected) before.focus();
  else focusSheet();
}
