/** Everything on the sheet as a list, selected with it both ways; only the rows in view are on the page. */
import { type KeyboardEvent, memo, useContext, useEffect, useId, useMemo, useRef, useState } from "react";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import type { Command } from "../commands/command.ts";
import { runCommand } from "../commands/command.ts";
import type { EditorPorts } from "../commands/editor-ports.ts";
import { isAllLocked } from "../commands/selection.ts";
import { useDocument, useEditor, useReport, useView } from "../editor-context.tsx";
import { OutcomeMark } from "./outcome-mark.tsx";
import { filteredRows, type OutlineOrder, type OutlineRow, outlineRows, rowsInView } from "./outline-rows.ts";
import { commandTip } from "./tip-props.ts";
import { NOTHING_TYPED, TypedAheadContext } from "./typed-ahead.tsx";

/** Height of a row, pixels; the same in panels.css. */
const ROW = 48;

export function OutlinePanel() {
  const editor = useEditor();
  const elements = useDocument((state) => state.shown.elements);
  const units = useDocument((state) => state.shown.display?.units) ?? "ft-in";
  const arrangement = useDocument((state) => state.shown.arrangement);
  const report = useReport();
  const findRequests = useView((view) => view.findRequests);
  const search = useRef<HTMLInputElement>(null);
  const [order, setOrder] = useState<OutlineOrder>("file");
  const ahead = useContext(TypedAheadContext);
  const [filter, setFilter] = useState(() => ahead.current.text);
  const all = useMemo(
    () => outlineRows(elements, report, units, order, arrangement),
    [elements, report, units, order, arrangement],
  );
  const rows = useMemo(() => filteredRows(all, filter), [all, filter]);
  const goToFirst = useRef(() => {});
  goToFirst.current = () => {
    const [first] = rows;
    if (!first) return;
    editor.view.getState().select([first.id]);
    editor.canvas?.showElements([first.id]);
  };
  // The command to find something puts the focus here, on a panel that is open or just opens.
  useEffect(() => {
    if (findRequests === 0) return;
    editor.view.setState({ findRequests: 0 });
    search.current?.focus();
    const { text, isEntered } = ahead.current;
    ahead.current = NOTHING_TYPED;
    // What was typed while the panel was on its way is gone on with.
    search.current?.setSelectionRange(text.length, search.current.value.length);
    if (isEntered) goToFirst.current();
  }, [editor, findRequests, ahead]);
  return (
    <section aria-label="Outline of the site" className="outline">
      <div className="list-head">
        <h2>Outline</h2>
        <fieldset className="switch">
          <legend className="unseen">Order of the rows</legend>
          {(["file", "kind"] as const).map((one) => (
            <button key={one} type="button" aria-pressed={order === one} onClick={() => setOrder(one)}>
              {one === "file" ? "As drawn" : "By kind"}
            </button>
          ))}
        </fieldset>
      </div>
      <input
        ref={search}
        className="outline-filter"
        type="search"
        aria-label="Filter the outline"
        placeholder={`Find among ${elements.length}: fence, light, hidden …`}
        value={filter}
        onKeyDown={(event) => {
          if (event.key !== "Enter" || rows.length === 0) return;
          event.preventDefault();
          goToFirst.current();
        }}
        onChange={(event) => setFilter(event.target.value)}
      />
      {rows.length === 0 ? (
        <p className="panel-note">
          {elements.length === 0 ? "Nothing is drawn yet." : `Nothing here is called “${filter.trim()}”.`}
        </p>
      ) : (
        <Rows rows={rows} />
      )}
      <OutlineButtons />
      <p className="unseen" role="status">
        {filter === "" ? "" : `${rows.length} of ${elements.length} elements`}
      </p>
    </section>
  );
}

/** What is done with the rows that are selected, locked and hidden ones too. */
const BUTTONS = ["lock", "hide", "group", "ungroup", "show", "unlock-all", "show-all"] as const;

function OutlineButtons() {
  const editor = useEditor();
  // Read so that the buttons follow what is selected and how it is handled.
  useView((view) => view.selection);
  useDocument((state) => state.history.present.arrangement);
  const offered = BUTTONS.map((id) => editor.commands.get(id)).filter((command) => command.available(editor) === true);
  if (offered.length === 0) return null;
  return (
    <fieldset className="outline-buttons row">
      <legend className="unseen">Lock, hide and group</legend>
      {offered.map((command) => (
        <button key={command.id} type="button" {...commandTip(command)} onClick={() => runCommand(editor, command)}>
          {shortWords(command, editor)}
        </button>
      ))}
    </fieldset>
  );
}

/** The label without what it is done to: that is selected in the list above. */
function shortWords(command: Command, editor: EditorPorts): string {
  if (command.id === "lock") return isAllLocked(editor) ? "Unlock" : "Lock";
  return command.label;
}

function Rows({ rows }: { readonly rows: readonly OutlineRow[] }) {
  const selection = useView((view) => view.selection);
  const select = useView((view) => view.select);
  const hover = useView((view) => view.hover);
  const setPanel = useView((view) => view.setPanel);
  const { canvas } = useEditor();
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const [view, setView] = useState({ top: 0, height: 800 });
  const [active, setActive] = useState(0);
  const selected = useMemo(() => new Set(selection), [selection]);
  const at = Math.min(active, rows.length - 1);

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => setView({ top: element.scrollTop, height: element.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  // What is selected on the sheet comes into view here.
  const [first] = selection;
  const firstAt = first === undefined ? -1 : rows.findIndex((row) => row.id === first);
  useEffect(() => {
    if (firstAt < 0) return;
    setActive(firstAt);
    showRow(box.current, firstAt);
  }, [firstAt]);

  const go = (next: number, keep: boolean) => {
    const index = Math.max(0, Math.min(rows.length - 1, next));
    const row = rows[index];
    if (!row) return;
    setActive(index);
    showRow(box.current, index);
    select(keep ? [...new Set([...selection, row.id])] : [row.id]);
    canvas?.showElements([row.id]);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const page = Math.max(1, Math.floor(view.height / ROW) - 1);
    const ways: Readonly<Record<string, number>> = {
      ArrowDown: at + 1,
      ArrowUp: at - 1,
      PageDown: at + page,
      PageUp: at - page,
      Home: 0,
      End: rows.length - 1,
    };
    const next = ways[event.key];
    const row = rows[at];
    if (next !== undefined) go(next, event.shiftKey);
    else if (event.key === "Enter" && row) {
      select([row.id]);
      setPanel("element");
    } else if (event.key === " " && row) select(toggled(selection, row.id));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const [from, to] = rowsInView(rows.length, ROW, view.top, view.height);
  return (
    <div
      ref={box}
      className="outline-rows"
      role="listbox"
      tabIndex={0}
      aria-label="Elements of the site"
      aria-multiselectable="true"
      aria-activedescendant={rows[at] ? `${id}-${at}` : undefined}
      onScroll={(event) => setView({ top: event.currentTarget.scrollTop, height: event.currentTarget.clientHeight })}
      onKeyDown={onKeyDown}
      onPointerLeave={() => hover(null)}
    >
      <div role="presentation" style={{ height: from * ROW }} />
      {rows.slice(from, to).map((row, i) => {
        const index = from + i;
        return (
          <Row
            key={row.id}
            row={row}
            dom={`${id}-${index}`}
            index={index}
            count={rows.length}
            isActive={index === at}
            isSelected={selected.has(row.id)}
            onActive={setActive}
          />
        );
      })}
      <div role="presentation" style={{ height: (rows.length - to) * ROW }} />
    </div>
  );
}

interface RowProps {
  readonly row: OutlineRow;
  readonly dom: string;
  readonly index: number;
  readonly count: number;
  readonly isActive: boolean;
  readonly isSelected: boolean;
  onActive(index: number): void;
}

/** Drawn again only where what it says changes. */
const Row = memo(
  function Row({ row, dom, index, count, isActive, isSelected, onActive }: RowProps) {
    const { view, canvas } = useEditor();
    return (
      // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the keys
      // biome-ignore lint/a11y/useFocusableInteractive: the list keeps the focus and names its active row
      <div
        id={dom}
        role="option"
        className={isActive ? "outline-row is-active" : "outline-row"}
        aria-selected={isSelected}
        aria-posinset={index + 1}
        aria-setsize={count}
        title={row.name}
        onPointerEnter={() => view.getState().hover(row.id)}
        onClick={(event) => {
          onActive(index);
          const { select, selection, adding } = view.getState();
          const isAdding = adding || event.shiftKey || event.ctrlKey || event.metaKey;
          select(isAdding ? toggled(selection, row.id) : [row.id]);
          canvas?.showElements([row.id]);
        }}
        onDoubleClick={() => view.getState().setPanel("element")}
      >
        <span className="outline-mark">
          {row.outcome === null ? null : (
            <span title={OUTCOME_WORDS[row.outcome]}>
              <OutcomeMark outcome={row.outcome} spoken />
            </span>
          )}
        </span>
        <span className="outline-name">{row.name}</span>
        <span className="outline-size">{row.size}</span>
        <span className="outline-kind">
          {row.kind}
          {row.handled === "" ? null : <strong>, {row.handled}</strong>}
        </span>
        <span className="outline-place">{row.position}</span>
      </div>
    );
  },
  (a, b) =>
    a.dom === b.dom &&
    a.count === b.count &&
    a.isActive === b.isActive &&
    a.isSelected === b.isSelected &&
    (["id", "name", "kind", "size", "position", "outcome", "handled"] as const).every(
      (key) => a.row[key] === b.row[key],
    ),
);

function toggled(ids: readonly string[], id: string): readonly string[] {
  return ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id];
}

function showRow(box: HTMLElement | null, index: number): void {
  if (!box) return;
  const top = index * ROW;
  if (top < box.scrollTop) box.scrollTop = top;
  else if (top + ROW > box.scrollTop + box.clientHeight) box.scrollTop = top + ROW - box.clientHeight;
}
