/** Finding commands by what a person types. */
import type { Command } from "../commands/command.ts";

/** Commands that hold every typed word in label, group or key; those whose label begins with the text come first. */
export function searchCommands<T extends Pick<Command, "label" | "group" | "key">>(
  commands: readonly T[],
  typed: string,
): readonly T[] {
  const text = typed.trim().toLowerCase();
  if (text === "") return commands;
  const words = text.split(/\s+/);
  const held = commands.filter(({ label, group, key }) => {
    const all = `${label} ${group} ${key ?? ""}`.toLowerCase();
    return words.every((word) => all.includes(word));
  });
  const begins = (command: T) => (command.label.toLowerCase().startsWith(text) ? 0 : 1);
  return [...held].sort((a, b) => begins(a) - begins(b));
}
