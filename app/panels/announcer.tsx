/**
 * What is selected, what a step has done, and how the counts of the findings have changed after it, said politely to
 * assistive technology.
 * Nothing is said while a gesture runs, and of a change only its end: the counts are read once they have come to rest.
 */
import { useEffect, useState } from "react";
import { OUTCOMES_WORST_FIRST, type Outcome, type Report } from "../../rules/report.ts";
import { capitalized, elementName } from "../../rules/words/element-names.ts";
import { OUTCOME_WORDS, outcomeCount } from "../../rules/words/outcomes.ts";
import { EMPTY_REPORT } from "../canvas/empty-report.ts";
import { elementBounds } from "../drawing/element-bounds.ts";
import type { Editor } from "../editor.ts";
import { useEditor } from "../editor-context.tsx";
import type { DocumentState } from "../site-document/store.ts";
import { placeWords } from "../tools/measures.ts";

/** Counts are at rest when so many milliseconds have brought no other report. */
const REST = 600;
/** Steps that follow one another faster than so many milliseconds, as of a key that is held, are said once, as the last. */
const STEPS_REST = 250;

export function Announcer() {
  const editor = useEditor();
  const [selected, setSelected] = useState("");
  const [done, setDone] = useState("");
  const [counts, setCounts] = useState("");

  useEffect(
    () =>
      editor.view.subscribe((state, before) => {
        if (state.selection === before.selection) return;
        // A list says itself what is chosen in it.
        const saysItself = document.activeElement?.closest("[role=listbox], [role=tree]");
        // Of a dimension that was picked the tool says so.
        setSelected(saysItself || state.dimension !== null ? "" : selectionText(editor));
      }),
    [editor],
  );

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    const stop = editor.document.subscribe((state, before) => {
      if (!isNewStep(state, before)) return;
      if (timer !== null) clearTimeout(timer);
      const { notice } = editor.view.getState();
      timer = setTimeout(() => {
        // A step that has a notice of its own is told by that.
        const now = editor.view.getState().notice;
        if (now === null || now === notice) setDone(stepText(editor));
      }, STEPS_REST);
    });
    return () => {
      stop();
      if (timer !== null) clearTimeout(timer);
    };
  }, [editor]);

  useEffect(() => {
    let said: Report["counts"] | null = null;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const look = () => {
      const { report, failure } = editor.live.getState();
      const { gesture, history } = editor.document.getState();
      if (!report || failure !== null || gesture !== null) return;
      const isFresh = history.past.length === 0 && history.future.length === 0;
      // Who has begun before the first counts were there hears all of them.
      const text = isFresh ? null : changeText(said ?? EMPTY_REPORT.counts, report.counts);
      if (text !== null) setCounts(text);
      said = report.counts;
    };
    const later = () => {
      // The counts that a change is told against are those of the site as it was opened, however soon the change comes,
      // and not those of a move that is under way.
      const { report, reportRevision, failure } = editor.live.getState();
      const { gesture, history, revision } = editor.document.getState();
      const isFresh = gesture === null && history.past.length === 0 && history.future.length === 0;
      if (report && failure === null && isFresh && reportRevision === revision) said = report.counts;
      if (timer !== null) clearTimeout(timer);
      timer = setTimeout(look, REST);
    };
    const stops = [editor.live.subscribe(later), editor.document.subscribe(later)];
    return () => {
      for (const stop of stops) stop();
      if (timer !== null) clearTimeout(timer);
    };
  }, [editor]);

  return (
    <div className="unseen-place">
      <p className="unseen" role="status">
        {selected}
      </p>
      <p className="unseen" role="status">
        {done}
      </p>
      <p className="unseen" role="status">
        {counts}
      </p>
    </div>
  );
}

/** `Selected fence, south run: needs bonding.` */
export function selectionText(editor: Pick<Editor, "document" | "view" | "live">): string {
  const { selection } = editor.view.getState();
  const [id, ...others] = selection;
  if (id === undefined) return "Nothing is selected.";
  if (others.length > 0) return `${selection.length} elements are selected.`;
  const element = editor.document.getState().shown.elements.find((one) => one.id === id);
  if (!element) return "";
  const outcomes = new Set(
    editor.live
      .getState()
      .report?.findings.flatMap(({ element: about, body, outcome }) => ((about ?? body) === id ? [outcome] : [])),
  );
  const words = OUTCOMES_WORST_FIRST.filter((outcome) => outcomes.has(outcome)).map((one) => OUTCOME_WORDS[one]);
  return `${capitalized(elementName(element))} is selected${words.length === 0 ? "" : `: ${words.join(", ")}`}.`;
}

/** True for a step forward that is new: undo and redo say themselves what they do. */
function isNewStep({ history }: DocumentState, { history: before }: DocumentState): boolean {
  return history !== before && history.future.length === 0 && history.past.at(-1)?.site === before.present;
}

/** `Done: Move fence, south run. Its middle lies 10' 0" right, 2' 0" up.`; the place where the one selected has gone elsewhere. */
export function stepText({ document, view }: Pick<Editor, "document" | "view">): string {
  const { past, present } = document.getState().history;
  const last = past.at(-1);
  if (!last) return "";
  const done = `Done: ${last.label}.`;
  const [id, ...others] = view.getState().selection;
  if (id === undefined || others.length > 0) return done;
  const [from, to] = [last.site, present].map(({ elements }) => {
    const element = elements.find((one) => one.id === id);
    const bounds = element && elementBounds(element);
    return bounds ? ([(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2] as const) : null;
  });
  if (!from || !to || (from[0] === to[0] && from[1] === to[1])) return done;
  return `${done} Its middle lies ${placeWords([...to], present.display?.units ?? "ft-in")}.`;
}

/** `Now 8 need bonding, 1 question.`: the counts that have changed; null when none has. */
export function changeText(before: Report["counts"], now: Report["counts"]): string | null {
  const changed = OUTCOMES_WORST_FIRST.filter((outcome: Outcome) => before[outcome] !== now[outcome]);
  if (changed.length === 0) return null;
  return `Now ${changed.map((outcome) => outcomeCount(outcome, now[outcome])).join(", ")}.`;
}
