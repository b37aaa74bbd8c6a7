/**
 * What was just said: spoken politely, shown over the sheet, or over the window that is open, for a while; a problem stays
 * until it is put away or work goes on.
 */
import { X } from "lucide-react";
import { useEffect, useRef } from "react";
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
  useEffect(() => {
    if (notice === null || notice.kind === "problem") return;
    const timer = setTimeout(() => editor.view.getState().unsay(), STAYS + notice.text.length * STAYS_PER_LETTER);
    return () => clearTimeout(timer);
  }, [notice, editor]);
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
        <div className={`notice notice-${notice.kind}`} key={notice.at}>
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
