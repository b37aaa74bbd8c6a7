/** The one tool host of an editor: the sheet, the entry bar, commands and tests of them share it. */
import type { HostPorts } from "../tools/host-ports.ts";
import { ToolHost } from "../tools/tool-host.ts";

const hosts = new WeakMap<HostPorts, ToolHost>();

export function hostOf(editor: HostPorts): ToolHost {
  const known = hosts.get(editor);
  if (known) return known;
  const host = new ToolHost(editor);
  hosts.set(editor, host);
  return host;
}
