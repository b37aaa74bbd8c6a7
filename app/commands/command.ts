/** What a command is: one record that serves menu, shortcut, list of commands and help. */
import type { EditorPorts } from "./editor-ports.ts";

export const COMMAND_GROUPS = ["Site", "Change", "Arrange", "Select", "View", "Findings", "Draw", "Help"] as const;
export type CommandGroup = (typeof COMMAND_GROUPS)[number];

export interface Command {
  /** Stable. */
  readonly id: string;
  readonly label: string;
  readonly group: CommandGroup;
  /** How it is called right now, where that says more: "Undo move fence, south run". */
  labelNow?(editor: EditorPorts): string;
  /** The key to show, as `Mod+Z`: Mod is Ctrl, or Cmd on a Mac. */
  readonly key?: string;
  /** Further keys that do the same. */
  readonly otherKeys?: readonly string[];
  /** Runs again while its key is held down. */
  readonly repeats?: boolean;
  /** True, or why it cannot be run now: a plain sentence. */
  available(editor: EditorPorts): true | string;
  /** Where it takes a while, a promise; what it rejects with is said. */
  run(editor: EditorPorts): unknown;
}

export const ALWAYS = (): true => true;

/** Runs a command if it is available; otherwise says why it is not. True when it ran. */
export function runCommand(editor: EditorPorts, command: Command): boolean {
  const available = command.available(editor);
  if (available !== true) {
    // One key too many after the last step is no problem, and that goes by itself; a sheet that takes no changes is one.
    const isLocked = available === editor.document.getState().locked;
    editor.view.getState().say(available, isLocked ? "problem" : "plain");
    return false;
  }
  const running = command.run(editor);
  if (running instanceof Promise) {
    running.catch((error: unknown) => {
      const reason = error instanceof Error ? error.message : String(error);
      editor.view.getState().say(`“${command.label}” could not be done: ${reason}`, "problem");
      console.error(error);
    });
  }
  return true;
}
