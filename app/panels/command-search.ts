/** Finding commands, and elements, by what a person types. */
import { capitalized, elementName } from "../../rules/words/element-names.ts";
import type { Command } from "../commands/command.ts";
import type { AnyElement } from "../edits/edit.ts";

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

/** Elements shown at most: a longer list is what the outline is for. */
const MOST_ELEMENTS = 20;

/** Elements whose name or id holds every typed word; none for a text of less than two letters. */
export function searchElements(
  elements: readonly AnyElement[],
  typed: string,
): readonly { readonly id: string; readonly name: string }[] {
  const text = typed.trim().toLowerCase();
  if (text.length < 2) return [];
  const words = text.split(/\s+/);
  const found: { id: string; name: string }[] = [];
  for (const element of elements) {
    const name = capitalized(elementName(element));
    const all = `${name} ${element.id}`.toLowerCase();
    if (words.every((word) => all.includes(word))) found.push({ id: element.id, name });
    if (found.length === MOST_ELEMENTS) break;
  }
  return found;
}
