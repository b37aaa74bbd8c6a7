/**
 * The steps taken since the site was opened, in a list beside the sheet: a press or the arrow keys go back and forward
 * through them, and the sheet follows at once. Only the rows in view are made, so that thousands stay quick.
 */
import { X } from "lucide-react";
import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useRef, useState } from "react";
import { tidySelection } from "../commands/selection.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import { tip } from "./tip-props.ts";
import { useCoarsePointer } from "./use-coarse-pointer.ts";
import "./steps-list.css";

/** Height of a row in pixels, with a mouse and with fingers; the style sheet says the same. */
const ROW = 36;
const COARSE_ROW = 44;
/** Rows made above and below what is in view. */
const SPARE = 4;
const PAGE = 10;

export default function StepsList({ onClose }: { onClose(): void }) {
  const editor = useEditor();
  const { past, future, dropped } = useDocument(({ history }) => history);
  const locked = useDocument((state) => state.locked);
  const isCoarse = useCoarsePointer();
  const rowHeight = isCoarse ? COARSE_ROW : ROW;
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const [view, setView] = useState({ top: 0, height: 400 });
  const now = past.length;
  const count = 1 + past.length + future.length;

  const go = (to: number) => {
    editor.document.getState().go(Math.max(0, Math.min(count - 1, to)) - now);
    tidySelection(editor);
  };

  useEffect(() => {
    const opener = document.activeElement;
    list.current?.focus();
    return () => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);

  // The step that is shown stays in view, wherever it was gone to from.
  useLayoutEffect(() => {
    const box = list.current;
    if (!box) return;
    const top = now * rowHeight;
    if (top < box.scrollTop) box.scrollTop = top - rowHeight;
    else if (top + 2 * rowHeight > box.scrollTop + box.clientHeight)
      box.scrollTop = top + 2 * rowHeight - box.clientHeight;
    setView({ top: box.scrollTop, height: box.clientHeight });
  }, [now, rowHeight]);

  const onKeyDown = (event: KeyboardEvent) => {
    const moves: Readonly<Record<string, number>> = {
      ArrowUp: now - 1,
      ArrowDown: now + 1,
      PageUp: now - PAGE,
      PageDown: now + PAGE,
      Home: 0,
      End: count - 1,
    };
    const to = moves[event.key];
    if (event.key === "Escape" || event.key === "Enter") onClose();
    else if (to !== undefined) go(to);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const first = Math.max(0, Math.floor(view.top / rowHeight) - SPARE);
  const last = Math.min(count - 1, Math.ceil((view.top + view.height) / rowHeight) + SPARE);
  // The step that is shown has a row even while it is scrolled out of sight: the focus speaks of it.
  const rows = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  if (now < first || now > last) rows.push(now);
  const start = dropped === 0 ? "As it was opened" : "Steps before this are no longer kept";
  const labelOf = (row: number) =>
    row === 0 ? start : ((row <= now ? past[row - 1] : future[row - now - 1])?.label ?? "");

  return (
    <section className="taken" aria-label="Steps taken">
      <header className="taken-head">
        <h2>Steps taken</h2>
        <button
          type="button"
          className="plain icon-button"
          aria-label="Close"
          {...tip("Close", "Escape")}
          onClick={onClose}
        >
          <X size={18} aria-hidden="true" />
        </button>
      </header>
      <div
        ref={list}
        className="taken-rows"
        role="listbox"
        tabIndex={0}
        aria-label="Steps, oldest first"
        aria-activedescendant={`${id}-${now}`}
        aria-disabled={locked !== null}
        onKeyDown={onKeyDown}
        onScroll={({ currentTarget: { scrollTop, clientHeight } }) => setView({ top: scrollTop, height: clientHeight })}
      >
        <div className="taken-all" role="presentation" style={{ height: count * rowHeight }}>
          {rows.map((row) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the keys
            // biome-ignore lint/a11y/useFocusableInteractive: the list has the focus and names the row
            <div
              key={row}
              id={`${id}-${row}`}
              role="option"
              className={row > now ? "taken-row taken-undone" : "taken-row"}
              aria-selected={row === now}
              aria-posinset={row + 1}
              aria-setsize={count}
              style={{ top: row * rowHeight, height: rowHeight }}
              onClick={() => go(row)}
            >
              <span className="taken-mark" aria-hidden="true" />
              <span className="taken-label">{labelOf(row)}</span>
              {row === now ? <span className="taken-now">shown</span> : null}
              {row > now ? <span className="taken-now">undone</span> : null}
            </div>
          ))}
        </div>
      </div>
      <p className="taken-foot">
        {locked ??
          `${isCoarse ? "A tap goes to one." : "Up and Down go through them."} The next change replaces what is undone.`}
      </p>
    </section>
  );
}
