/** The ties to the shell, to be ticked off: where each goes along the inside wall, open or recorded. */
import type { TieReport } from "../../rules/report.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { recordTie } from "../edits/record-tie.ts";

interface TieListProps {
  readonly ties: readonly TieReport[];
  readonly units: Units | undefined;
}

export function TieList({ ties, units }: TieListProps) {
  const editor = useEditor();
  const elements = useDocument((state) => state.shown.elements);
  const select = useView((view) => view.select);
  if (ties.length === 0) return null;
  const names = namesOf(elements);
  const open = ties.filter((tie) => !tie.present).length;
  const record = (tie: TieReport, number: number) => {
    const refusal = editor.document.getState().edit(recordTie(tie));
    if (refusal) return editor.view.getState().say(refusal.reason, "problem");
    editor.view.getState().say(`Tie T${number} is recorded. Say under Facts which hardware holds it.`);
  };
  return (
    <div className="ties">
      <h3>
        Ties to the shell: {open === 0 ? "all recorded" : `${open} of ${ties.length} open`}
        <span className="soft"> · along the inside wall from the wedge</span>
      </h3>
      <ol>
        {ties.map((tie, i) => {
          const number = i + 1;
          const pools = tie.between.filter((end) => end !== "perimeter").map((id) => names.get(id) ?? id);
          return (
            <li key={`${tie.between.join(" ")} ${tie.distanceAlong}`} className="tie-row">
              <svg className="mark" width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
                <path
                  d="M0-5.500L5.5 0 0 5.5-5.5 0Z"
                  fill={tie.present ? "var(--copper)" : "none"}
                  stroke="var(--copper)"
                  strokeWidth="1.5"
                />
              </svg>
              <span className="tie-name">
                T{number} <span className="soft">{capitalized(pools.join(", "))}</span>
              </span>
              <span className="tie-place">{lengthText(tie.distanceAlong, units)}</span>
              {tie.present ? (
                <button
                  type="button"
                  className="plain tie-state"
                  disabled={tie.recorded === null}
                  aria-label={`Tie T${number} is recorded: select it`}
                  onClick={() => tie.recorded !== null && select([tie.recorded])}
                >
                  recorded
                </button>
              ) : (
                <button
                  type="button"
                  className="tie-state"
                  aria-label={`Record tie T${number}`}
                  onClick={() => record(tie, number)}
                >
                  Record
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </div>
  );
}
