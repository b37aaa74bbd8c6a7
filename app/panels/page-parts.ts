/** The parts of the page in the order in which a key goes through them, and the place in each that takes the focus. */
import { SHEET_BOX } from "../canvas/focus-sheet.ts";

const PARTS: readonly { readonly part: string; readonly inside: string; readonly stop: string }[] = [
  { part: "top", inside: ".topbar", stop: "button" },
  { part: "parts", inside: ".left", stop: '[aria-pressed="true"]' },
  { part: "tools", inside: ".toolbar", stop: '[aria-pressed="true"], [data-pressed]' },
  { part: "sheet", inside: ".sheet", stop: SHEET_BOX },
  { part: "details", inside: ".side", stop: '[role="tab"][aria-selected="true"]' },
  { part: "status", inside: ".status", stop: "button" },
];

type Which = "details" | "next" | "previous";

/**
 * Puts the focus into a part that a change just made may bring onto the page: once that is rendered, which is before the
 * next key is heard. A part that stands only in the next frame takes it then, unless the focus has gone elsewhere.
 */
export function focusPagePartSoon(page: Document, which: Which): void {
  queueMicrotask(() => {
    if (focusPagePart(page, which)) return;
    const { activeElement } = page;
    requestAnimationFrame(() => {
      if (page.activeElement === activeElement) focusPagePart(page, which);
    });
  });
}

/**
 * Puts the focus into a part by name, or into the next or previous one that is on the page; passes over what is hidden.
 * False when no part took it.
 */
export function focusPagePart(page: Document, which: Which): boolean {
  const named = PARTS.findIndex(({ part }) => part === which);
  if (named >= 0) return focusOn(page, named);
  const way = which === "next" ? 1 : -1;
  const active = page.activeElement;
  const now = PARTS.findIndex(({ inside }) => active?.closest(inside));
  // From nowhere, the first key goes to the first part or the last.
  const start = now >= 0 ? now : way === 1 ? -1 : PARTS.length;
  for (let i = 1; i <= PARTS.length; i++) {
    if (focusOn(page, (start + way * i + PARTS.length * 2) % PARTS.length)) return true;
  }
  return false;
}

function focusOn(page: Document, at: number): boolean {
  const { inside, stop } = PARTS[at] ?? { inside: "", stop: "" };
  const part = inside === "" ? null : page.querySelector(inside);
  const target = part?.querySelector<HTMLElement>(stop);
  if (!target || page.defaultView?.getComputedStyle(target).visibility === "hidden") return false;
  target.focus();
  return page.activeElement === target;
}
