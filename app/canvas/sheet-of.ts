/** The controller of the sheet that an editor is mounted on. */
import type { Editor } from "../editor.ts";
import type { SheetController } from "./sheet-controller.ts";

const sheets = new WeakMap<Editor, SheetController>();

export function mountSheet(editor: Editor, sheet: SheetController): void {
  sheets.set(editor, sheet);
}

export function sheetOf(editor: Editor): SheetController | undefined {
  return sheets.get(editor);
}
