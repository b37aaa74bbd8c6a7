/** The sheet's own box, which takes the keys of tools and of the view. */
export const SHEET_BOX = ".sheet-canvas";

/** Puts the focus on the sheet, as it lies: keys then go there. */
export function focusSheet(page: Document = document): void {
  page.querySelector<HTMLElement>(SHEET_BOX)?.focus({ preventScroll: true });
}
