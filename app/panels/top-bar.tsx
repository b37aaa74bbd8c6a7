/** The line above the sheet: which site, whether it is kept, what is open in it, how much copper. */
import { useStore } from "zustand";
import type { Outcome } from "../../rules/report.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { outcomeCount } from "../../rules/words/outcomes.ts";
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useLive } from "../editor-context.tsx";
import { OutcomeMark } from "./outcome-mark.tsx";

/** What stands in the line: everything that asks for something. */
const SHOWN: readonly Outcome[] = ["missing", "bond", "conflict", "review"];

export function TopBar() {
  const editor = useEditor();
  const name = useDocument((state) => state.shown.name);
  const units = useDocument((state) => state.shown.display?.units);
  const undoable = useDocument((state) => state.history.past.at(-1)?.label ?? null);
  const redoable = useDocument((state) => state.history.future[0]?.label ?? null);
  const { report, routesPending, failure } = useLive((state) => state);
  const keeping = useStore(editor.files.state, (state) => state.keeping);
  const run = (id: string) => runCommand(editor, editor.commands.get(id));
  return (
    <header className="topbar">
      <div className="topbar-site">
        <strong className="site-name" title={name}>
          {name === undefined || name.trim() === "" ? "Unnamed site" : name}
        </strong>
        <span className="small soft">
          {keeping.state === "failed" ? "not kept in this browser" : "kept in this browser"}
        </span>
      </div>
      <div className="topbar-buttons">
        {["gallery", "new", "open", "save"].map((id) => (
          <button key={id} type="button" className="plain" onClick={() => run(id)}>
            {editor.commands.get(id).label}
          </button>
        ))}
        <button
          type="button"
          className="plain"
          disabled={undoable === null}
          onClick={() => run("undo")}
          title={undoable ?? ""}
        >
          Undo
        </button>
        <button
          type="button"
          className="plain"
          disabled={redoable === null}
          onClick={() => run("redo")}
          title={redoable ?? ""}
        >
          Redo
        </button>
      </div>
      <div className="topbar-counts" aria-live="polite">
        {failure === null ? null : <span className="problem">The calculation stopped: {failure}</span>}
        {report ? (
          <>
            {SHOWN.filter((outcome) => report.counts[outcome] > 0).map((outcome) => (
              <span key={outcome} className="count">
                <OutcomeMark outcome={outcome} /> {outcomeCount(outcome, report.counts[outcome])}
              </span>
            ))}
            <strong>
              Copper{" "}
              {routesPending ? "on its way" : lengthText(Math.ceil(report.takeoff.conductor.total / 12) * 12, units)}
            </strong>
          </>
        ) : (
          <span className="soft">working it out …</span>
        )}
      </div>
    </header>
  );
}
