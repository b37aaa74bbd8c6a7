/** Typed measurements while drawing: the fields that the tool in hand takes. Enter places, Escape gives the typing up. */

import { CornerDownLeft, Undo2 } from "lucide-react";
import { type KeyboardEvent, useEffect, useId, useRef } from "react";
import { useStore } from "zustand";
import { useEditor } from "../editor-context.tsx";
import { toolKeyFor } from "../tools/entry-keys.ts";
import { focusSheet } from "./focus-sheet.ts";
import { hostOf } from "./host-of.ts";
import { SideChoice } from "./side-choice.tsx";
import "./canvas.css";
import { tip } from "../panels/tip-props.ts";

const hasModifier = ({ ctrlKey, metaKey, altKey }: KeyboardEvent) => ctrlKey || metaKey || altKey;

export function EntryBar() {
  const editor = useEditor();
  const host = hostOf(editor);
  const entry = useStore(host.state, (state) => state.entry);
  const takesBack = useStore(host.state, (state) => state.takesBack);
  const texts = useStore(host.state, (state) => state.texts);
  const problems = useStore(host.state, (state) => state.problems);
  const refusal = useStore(host.state, (state) => state.refusal);
  const focusRequests = useStore(host.state, (state) => state.focusRequests);
  const id = useId();
  const first = useRef<HTMLInputElement>(null);

  const answered = useRef(0);
  const isShown = entry !== null;

  useEffect(() => {
    const input = first.current;
    // Asked for while a tool is still on its way, the focus goes there once there are fields.
    if (!isShown || focusRequests === answered.current || !input) return;
    answered.current = focusRequests;
    input.focus();
    input.setSelectionRange(input.value.length, input.value.length);
  }, [focusRequests, isShown]);

  if (!entry) return null;
  const problem = refusal ?? Object.values(problems)[0] ?? null;
  // A field that cannot be read is the one that is wrong; what is refused as a whole is wrong in all that was typed.
  const isUnread = Object.keys(problems).length > 0;
  const place = () => {
    // The drawing may have ended with it, and a rounded corner is done with: keys then go on on the sheet.
    if (!host.enter() || host.state.getState().entry === null) return;
    if (host.tool.id === "select") focusSheet();
    else first.current?.focus();
  };
  /** What ends the bar takes its button along: keys then go on on the sheet. */
  const act = (button: () => void) => {
    button();
    if (host.state.getState().entry === null) focusSheet();
  };
  return (
    <form
      className="entry-bar"
      aria-label="Typed measurements"
      onSubmit={(event) => {
        event.preventDefault();
        place();
      }}
      onKeyDown={(event) => {
        const isEmptyField = event.target instanceof HTMLInputElement && event.target.value === "";
        // A key that is held to empty the field, or another field's text, is no sign for the tool.
        const isFree = isEmptyField && !event.repeat && !hasModifier(event);
        const key = isFree ? toolKeyFor(entry, event.key, takesBack !== null) : null;
        if (key !== null && (key !== "Backspace" || Object.keys(texts).length === 0)) {
          event.preventDefault();
          host.press(key);
          return;
        }
        if (event.key !== "Escape") return;
        event.preventDefault();
        for (const { name } of entry.fields) host.type(name, "");
        focusSheet();
      }}
    >
      {entry.fields.map((field, i) => (
        <label
          key={field.name}
          htmlFor={`${id}-${field.name}`}
          {...(field.help === undefined ? {} : tip(field.label, undefined, field.help))}
        >
          <span>{field.label}</span>
          <input
            ref={i === 0 ? first : null}
            id={`${id}-${field.name}`}
            value={texts[field.name] ?? ""}
            placeholder={field.shown}
            aria-description={field.help}
            autoComplete="off"
            spellCheck={false}
            aria-invalid={isUnread ? problems[field.name] !== undefined : refusal !== null && field.name in texts}
            aria-describedby={problem === null ? undefined : `${id}-problem`}
            onChange={(event) => host.type(field.name, event.target.value)}
          />
        </label>
      ))}
      <button type="submit" className="strong entry-button">
        <CornerDownLeft size={16} aria-hidden="true" />
        {entry.action}
      </button>
      {entry.side ? <SideChoice rule={entry.side} press={(key) => host.press(key)} /> : null}
      {entry.buttons?.map(({ key, label, hint, isPressed }) => (
        <button
          key={key}
          type="button"
          className="entry-button"
          aria-pressed={isPressed}
          {...tip(label, key.length === 1 ? key.toUpperCase() : key, hint)}
          onClick={() => act(() => host.press(key))}
        >
          {label}
        </button>
      ))}
      {takesBack !== null ? (
        <button
          type="button"
          className="icon-button"
          aria-label={takesBack}
          {...tip(takesBack, "Backspace")}
          onClick={() => act(() => host.takeBack())}
        >
          <Undo2 size={16} aria-hidden="true" />
        </button>
      ) : null}
      {entry.finish === null ? null : (
        <button type="button" className="entry-button" onClick={() => act(() => host.finish())}>
          {entry.finish}
        </button>
      )}
      {problem === null ? null : (
        <p id={`${id}-problem`} className="problem" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}
