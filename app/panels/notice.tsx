/**
 * What was just said: spoken politely, shown over the sheet, or over the window that is open, for a while, and for as
 * long as the pointer or the focus is in it; a problem stays until it is put away or work goes on.
 */
import { X } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { createPortal } from "react-dom";
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { tip } from "./tip-props.ts";
import { useTopWindow } from "./top-window.ts";

/** How long a plain notice stays, milliseconds: a base, and more for every letter. */
const STAYS = 3000;
const STAYS_PER_LETTER = 40;

export function Notice() {
  const editor = useEditor();
  const notice = useView((view) => view.notice);
  /** The notice, by its moment, that somebody is reading or about to press a button of. */
  const [held, setHeld] = useState<number | null>(null);
  const isHeld = notice !== null && held === notice.at;
  useEffect(() => {
    if (notice === null || notice.kind === "problem" || isHeld) return;
    const timer = setTimeout(() => editor.view.getState().unsay(), STAYS + notice.text.length * STAYS_PER_LETTER);
    return () => clearTimeout(timer);
  }, [notice, isHeld, editor]);
  const site = useDocument((state) => state.history.present);
  const isOther = useDocument((state) => state.history.past.length === 0 && state.history.future.length === 0);
  const saidOf = useRef(site);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what a notice is about is the site as it was when it was said.
  useEffect(() => {
    saidOf.current = site;
  }, [notice]);
  useEffect(() => {
    // Of work on another site nothing is said any more; a problem goes as soon as work goes on.
    if (notice !== null && saidOf.current !== site && (notice.kind === "problem" || isOther)) {
      editor.view.getState().unsay();
    }
  }, [notice, site, isOther, editor]);
  const over = useTopWindow();
  const place = (
    <div className="notice-place" role="status" aria-live="polite">
      {notice === null ? null : (
        // biome-ignore lint/a11y/noStaticElementInteractions: nothing is pressed here; it stays while its buttons are in use
        <div
          className={`notice notice-${notice.kind}`}
          key={notice.at}
          onPointerEnter={() => setHeld(notice.at)}
          onPointerLeave={({ currentTarget }) => {
            if (!currentTarget.contains(document.activeElement)) setHeld(null);
          }}
          onFocus={() => setHeld(notice.at)}
          onBlur={({ currentTarget, relatedTarget }) => {
            if (!currentTarget.contains(relatedTarget) && !currentTarget.matches(":hover")) setHeld(null);
          }}
        >
          <span>{notice.text}</span>
          {notice.ways.map((id) => {
            const command = editor.commands.get(id);
            return (
              <button key={id} type="button" className="notice-way" onClick={() => runCommand(editor, command)}>
                {command.label}
              </button>
            );
          })}
          <button
            type="button"
            className="plain icon-button"
            aria-label="Put the notice away"
            {...tip("Put the notice away")}
            onClick={() => {
              editor.view.getState().unsay();
              // A window that is not the browser's own would lose the keys.
              over?.focus();
            }}
          >
            <X size={16} aria-hidden="true" />
          </button>
        </div>
      )}
    </div>
  );
  return over ? createPortal(place, over) : place;
}
