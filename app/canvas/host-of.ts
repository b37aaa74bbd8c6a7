/** The one tool host of an editor: the sheet, the entry bar and tests of them share it. */
import type { Editor } from "../editor.ts";
import { ToolHost } from "../tools/tool-host.ts";

const hosts = new WeakMap<Editor, ToolHost>();

export function hostOf(editor: Editor): ToolHost {
  const known = hosts.get(editor);
  if (known) return known;
  const host = new ToolHost(editor);
  hosts.set(editor, host);
  return host;
}
