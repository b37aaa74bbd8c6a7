/** Every command, found by typing and run by Enter. */
import { type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
import { type Command, runCommand } from "../commands/command.ts";
import { useEditor } from "../editor-context.tsx";
import { searchCommands } from "./command-search.ts";
import { Dialog } from "./dialog.tsx";
import { keyWords } from "./key-words.ts";

export function CommandsDialog({ onClose }: { onClose(): void }) {
  const editor = useEditor();
  const id = useId();
  const [typed, setTyped] = useState("");
  const [active, setActive] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const commands = searchCommands(
    editor.commands.all.filter((command) => command.id !== "commands"),
    typed,
  );
  const at = Math.min(active, commands.length - 1);

  useEffect(() => {
    list.current?.querySelector(`[data-at="${at}"]`)?.scrollIntoView({ block: "nearest" });
  }, [at]);

  const run = (command: Command | undefined) => {
    if (!command) return;
    onClose();
    runCommand(editor, command);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const ways: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % Math.max(1, commands.length),
      ArrowUp: (at - 1 + commands.length) % Math.max(1, commands.length),
      PageDown: Math.min(commands.length - 1, at + 8),
      PageUp: Math.max(0, at - 8),
    };
    const next = ways[event.key];
    if (next !== undefined) setActive(next);
    else if (event.key === "Enter") run(commands[at]);
    else return;
    event.preventDefault();
  };

  return (
    <Dialog title="All commands" onClose={onClose}>
      <input
        type="search"
        role="combobox"
        aria-expanded="true"
        aria-controls={`${id}-list`}
        aria-activedescendant={commands[at] ? `${id}-${at}` : undefined}
        aria-label="Search the commands"
        placeholder="Type what you want to do"
        value={typed}
        data-first-focus=""
        onChange={(event) => {
          setTyped(event.target.value);
          setActive(0);
        }}
        onKeyDown={onKeyDown}
      />
      <div className="command-list" id={`${id}-list`} role="listbox" aria-label="Commands" ref={list}>
        {commands.map((command, i) => {
          const available = command.available(editor);
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the search field has the keys
            // biome-ignore lint/a11y/useFocusableInteractive: the search field keeps the focus and names the active row
            <div
              key={command.id}
              id={`${id}-${i}`}
              data-at={i}
              role="option"
              className={i === at ? "command-row is-active" : "command-row"}
              aria-selected={i === at}
              aria-disabled={available !== true}
              onPointerMove={() => setActive(i)}
              onClick={() => run(command)}
            >
              <span className="command-group">{command.group}</span>
              <span className="command-label">
                {command.labelNow?.(editor) ?? command.label}
                {available === true ? null : <span className="soft"> · {available}</span>}
              </span>
              {command.key === undefined ? null : <kbd>{keyWords(command.key)}</kbd>}
            </div>
          );
        })}
        {commands.length === 0 ? <p className="panel-note">No command holds “{typed.trim()}”.</p> : null}
      </div>
    </Dialog>
  );
}
