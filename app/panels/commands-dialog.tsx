/** Every command, found by typing and run by Enter; and every element, to go to. */
import { type KeyboardEvent, useContext, useEffect, useId, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { type Command, runCommand } from "../commands/command.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import { searchCommands, searchElements } from "./command-search.ts";
import { Dialog } from "./dialog.tsx";
import { keyWords } from "./key-words.ts";
import { NOTHING_TYPED, TypedAheadContext } from "./typed-ahead.tsx";

export function CommandsDialog({ onClose }: { onClose(): void }) {
  const editor = useEditor();
  const id = useId();
  const ahead = useContext(TypedAheadContext);
  const [typed, setTyped] = useState(() => ahead.current.text);
  const [active, setActive] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const commands = searchCommands(
    editor.commands.all.filter((command) => command.id !== "commands"),
    typed,
  );
  const elements = useDocument((state) => state.shown.elements);
  const found = useMemo(() => searchElements(elements, typed), [elements, typed]);
  const count = commands.length + found.length;
  const at = Math.min(active, count - 1);

  useEffect(() => {
    list.current?.querySelector(`[data-at="${at}"]`)?.scrollIntoView({ block: "nearest" });
  }, [at]);

  const run = (command: Command | undefined) => {
    if (!command) return;
    // It is gone, and the focus back, before the command puts the focus where its work goes on.
    flushSync(onClose);
    runCommand(editor, command);
  };
  const goTo = (id: string | undefined) => {
    if (id === undefined) return;
    onClose();
    editor.view.getState().select([id]);
    editor.view.getState().setPanel("element");
    editor.canvas?.showElements([id]);
  };

  const enter = () => {
    if (at < commands.length) run(commands[at]);
    else goTo(found[at - commands.length]?.id);
  };

  // What was typed while this window was on its way stands in the field; Enter after it is pressed now.
  const enterNow = useRef(enter);
  enterNow.current = enter;
  useEffect(() => {
    const { text, isEntered } = ahead.current;
    ahead.current = NOTHING_TYPED;
    field.current?.setSelectionRange(text.length, text.length);
    if (isEntered) queueMicrotask(() => enterNow.current());
  }, [ahead]);

  const onKeyDown = (event: KeyboardEvent) => {
    const ways: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % Math.max(1, count),
      ArrowUp: (at - 1 + count) % Math.max(1, count),
      PageDown: Math.min(count - 1, at + 8),
      PageUp: Math.max(0, at - 8),
    };
    const next = ways[event.key];
    if (next !== undefined) setActive(next);
    else if (event.key === "Enter") enter();
    else return;
    event.preventDefault();
  };

  return (
    <Dialog title="All commands" onClose={onClose}>
      <input
        ref={field}
        type="search"
        role="combobox"
        aria-expanded="true"
        aria-controls={`${id}-list`}
        aria-activedescendant={at >= 0 ? `${id}-${at}` : undefined}
        aria-label="Search the commands and elements"
        placeholder="Type what you want to do, or the name of an element"
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
        {found.map((element, i) => {
          const place = commands.length + i;
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the search field has the keys
            // biome-ignore lint/a11y/useFocusableInteractive: the search field keeps the focus and names the active row
            <div
              key={element.id}
              id={`${id}-${place}`}
              data-at={place}
              role="option"
              className={place === at ? "command-row is-active" : "command-row"}
              aria-selected={place === at}
              onPointerMove={() => setActive(place)}
              onClick={() => goTo(element.id)}
            >
              <span className="command-group">Go to</span>
              <span className="command-label">{element.name}</span>
            </div>
          );
        })}
        {count === 0 ? <p className="panel-note">No command or element holds “{typed.trim()}”.</p> : null}
      </div>
    </Dialog>
  );
}
