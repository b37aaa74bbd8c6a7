/** What the code says of the chosen part, or of one finding: its measurement against the limit, why, remedy, question. */
import { memo, useMemo, useState } from "react";
import type { PartId } from "../../rules/catalogue/rule.ts";
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Finding, Outcome, Report } from "../../rules/report.ts";
import { tied } from "../../rules/words/breaks.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { decidingText } from "../../rules/words/measured.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { steppedFindings } from "../commands/finding-commands.ts";
import { useDocument, useEditor, useLive, useReport, useView } from "../editor-context.tsx";
import type { ViewState } from "../view/view-store.ts";
import { BEHIND, isOpen, subjectOf } from "./finding-words.ts";
import { FindingDetail } from "./later.tsx";
import { OutcomeMark } from "./outcome-mark.tsx";

export function FindingPanel() {
  const report = useReport();
  const part = useView((view) => view.part);
  const chosen = useView((view) => view.finding);
  const hasFailed = useLive((state) => state.failure !== null);
  const sift = useView((view) => view.sift);
  if (!report) {
    return hasFailed ? <Failure /> : <p className="panel-note">Working out the first report …</p>;
  }
  const numbered = numberedFindings(report, part);
  const open = chosen === null ? undefined : numbered.find(({ finding }) => finding.id === chosen);
  return (
    <>
      <Failure />
      <Behind />
      {open ? (
        <FindingDetail numbered={open} siblings={steppedFindings(report, { part, sift, finding: chosen })} />
      ) : (
        <FindingList report={report} part={part} numbered={numbered} sift={sift} />
      )}
    </>
  );
}

/** A calculation that stopped is said in full, with what it means for what stands here. */
function Failure() {
  const failure = useLive((state) => state.failure);
  const hasReport = useLive((state) => state.report !== null);
  if (failure === null) return null;
  const reason = /[.!?]$/.test(failure) ? failure : `${failure}.`;
  return (
    <p className="problem failure">
      The calculation stopped: {reason}{" "}
      {hasReport
        ? "What stands here is from before it stopped, and the drawing has changed since. Undo the last step to go on."
        : "There is no report of this site. It can still be drawn on and saved: undo the last step, or open another site."}
    </p>
  );
}

/** Said once a report takes longer than a moment, as on a large site. */
function Behind() {
  const isBehind = useLive((state) => state.isBehind && state.failure === null);
  return isBehind ? <p className="panel-note">{BEHIND}</p> : null;
}

/** Findings of a part (null: all), in the code's order. */
export function numberedFindings(report: Report, part: PartId | null): NumberedFinding[] {
  return findingsByPart(report)
    .filter((group) => part === null || group.part.id === part)
    .flatMap((group) => group.findings);
}

interface FindingListProps {
  readonly report: Report;
  readonly part: PartId | null;
  readonly numbered: readonly NumberedFinding[];
  readonly sift: ViewState["sift"];
}

/** Rows on the page at first, and with each asking for more: a list of thousands would hold the page up. */
const ROWS_AT_ONCE = 250;

function FindingList({ report, part, numbered, sift }: FindingListProps) {
  const setSift = useView((view) => view.setSift);
  const elements = useDocument((state) => state.shown.elements);
  const units = useDocument((state) => state.shown.display?.units);
  const selected = useView((view) => view.selection);
  const [most, setMost] = useState(ROWS_AT_ONCE);
  const names = useMemo(() => namesOf(elements), [elements]);
  const groups = findingsByPart(report).filter((group) => part === null || group.part.id === part);
  let count = 0;
  const shown = groups.flatMap((group) => {
    const sifted = group.findings.filter(({ finding }) => sift === "all" || isOpen(finding));
    const findings = sifted.slice(0, Math.max(0, most - count));
    count += sifted.length;
    return findings.length === 0 ? [] : [{ part: group.part, findings }];
  });
  return (
    <section aria-label="Findings">
      <div className="list-head">
        <h2>{part === null ? "Findings" : groups[0]?.part.title}</h2>
        <fieldset className="switch">
          <legend className="unseen">Which findings</legend>
          <button type="button" aria-pressed={sift === "open"} onClick={() => setSift("open")}>
            Open {numbered.filter(({ finding }) => isOpen(finding)).length}
          </button>
          <button type="button" aria-pressed={sift === "all"} onClick={() => setSift("all")}>
            All {numbered.length}
          </button>
        </fieldset>
      </div>
      {numbered.length === 0 ? (
        <p className="panel-note">Nothing on this sheet falls under this part yet.</p>
      ) : shown.length === 0 ? (
        <p className="panel-note">
          Nothing here is missing, in conflict or in question: {numbered.length} settled, under “All”.
        </p>
      ) : (
        shown.map(({ part: { id, title, section }, findings }) => (
          <section key={id} aria-label={title}>
            {part === null ? (
              <h3 className="finding-part">
                {title} <span className="small soft">{section}</span>
              </h3>
            ) : null}
            <ul className="finding-list">
              {findings.map(({ number, finding }) => (
                <FindingRow
                  key={finding.id}
                  id={finding.id}
                  element={finding.element}
                  number={number}
                  outcome={finding.outcome}
                  name={capitalized(subjectOf(finding, names))}
                  brief={briefOf(finding, units)}
                  isSelected={isAbout(finding, selected)}
                />
              ))}
            </ul>
          </section>
        ))
      )}
      {count > most ? (
        <button type="button" className="show-more" onClick={() => setMost(most + ROWS_AT_ONCE)}>
          Show {Math.min(ROWS_AT_ONCE, count - most)} more of {count}
        </button>
      ) : null}
    </section>
  );
}

/** A finding about no element is about its pool, as the facts of the pool say. */
function isAbout({ element, body }: Finding, selected: readonly string[]): boolean {
  const about = element ?? body;
  return about !== null && selected.includes(about);
}

/** What is asked, or the measurement that decides; a conflict's own measurement before its question. */
function briefOf(finding: Finding, units: Units | undefined): string {
  const { question, outcome, lapsed } = finding;
  if (question && outcome === "review") return lapsed ? `answer lapsed · ${question.text}` : question.text;
  return decidingText(finding, units) || (question?.text ?? "");
}

interface FindingRowProps {
  readonly id: string;
  readonly element: string | null;
  readonly number: number;
  readonly outcome: Outcome;
  readonly name: string;
  readonly brief: string;
  readonly isSelected: boolean;
}

/** Drawn again only where its own words change: reports come with every frame of a drag. */
const FindingRow = memo(function FindingRow(props: FindingRowProps) {
  const { id, element, number, outcome, name, brief, isSelected } = props;
  const view = useEditor().view;
  return (
    <li>
      <button
        type="button"
        className={isSelected ? "finding-row is-selected" : "finding-row"}
        onPointerEnter={() => view.getState().hover(element)}
        onPointerLeave={() => view.getState().hover(null)}
        onClick={() => {
          view.getState().chooseFinding(id);
          if (element !== null) view.getState().select([element]);
        }}
      >
        <span className="finding-number">{number}</span>
        <OutcomeMark outcome={outcome} />
        <span className="finding-name">{name}</span>
        <span className="small soft finding-brief">
          {tied([OUTCOME_WORDS[outcome], brief].filter((text) => text !== "").join(" · "))}
        </span>
      </button>
    </li>
  );
});
