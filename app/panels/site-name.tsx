/** The name of the site: a press on it turns it into a field. */
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { useDocument, useEditor } from "../editor-context.tsx";
import { setSiteField } from "../edits/set-site-field.ts";

const LONGEST_NAME = 200;

export function SiteName() {
  const editor = useEditor();
  const name = useDocument((state) => state.shown.name) ?? "";
  const [text, setText] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const isOpen = text !== null;
  /** It was ended by a key, which goes on from the name then. */
  const isByKey = useRef(false);
  // At once: later it would be taken out of the hands of somebody who has gone on meanwhile.
  useLayoutEffect(() => {
    if (!isOpen && isByKey.current) button.current?.focus();
    isByKey.current = false;
  }, [isOpen]);
  useEffect(() => {
    if (isOpen) field.current?.select();
  }, [isOpen]);

  useEffect(() => {
    document.title = `${name.trim() === "" ? "Site without a name" : name}, Copperband`;
  }, [name]);

  const end = (keep: boolean) => {
    if (text === null) return;
    setText(null);
    const next = text.trim();
    if (!keep || next === name) return;
    const refusal = editor.document.getState().edit(setSiteField("name", next === "" ? undefined : next));
    if (refusal) editor.view.getState().say(refusal.reason, "problem");
  };

  if (text === null) {
    return (
      <h1 className="site-name">
        <button
          ref={button}
          type="button"
          className="plain"
          title={name === "" ? "Name this site" : `${name}: press to rename`}
          onClick={() => setText(name)}
        >
          {name.trim() === "" ? "Site without a name" : name}
        </button>
      </h1>
    );
  }
  return (
    <input
      ref={field}
      className="site-name-field"
      aria-label="Name of the site"
      value={text}
      maxLength={LONGEST_NAME}
      autoComplete="off"
      onChange={(event) => setText(event.target.value)}
      onBlur={() => end(true)}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== "Escape") return;
        event.stopPropagation();
        // The same press would open it again: the name has the focus before the browser takes Enter for a press on it.
        event.preventDefault();
        isByKey.current = true;
        end(event.key === "Enter");
      }}
    />
  );
}
