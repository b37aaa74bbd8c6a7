/** What still needs copper, finding by finding, each with where to put it: its branch, what is open, its place below. */
import { useState } from "react";
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Finding, Report } from "../../rules/report.ts";
import { BONDING_WORDS } from "../../rules/words/comparison.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import { areaText, copperText, lengthText, type Units } from "../../rules/words/lengths.ts";
import { decidingText } from "../../rules/words/measured.ts";
import { useDocument, useView } from "../editor-context.tsx";
import { subjectOf } from "./finding-words.ts";
import { OutcomeMark } from "./outcome-mark.tsx";

/** Rows before the rest is asked for. */
const FIRST = 12;

interface MissingListProps {
  readonly report: Report;
  /** What stands for the branches while their routes are not there; null when they are. */
  readonly waiting: string | null;
  readonly units: Units | undefined;
}

export function MissingList({ report, waiting, units }: MissingListProps) {
  const elements = useDocument((state) => state.shown.elements);
  const chooseFinding = useView((view) => view.chooseFinding);
  const select = useView((view) => view.select);
  const hover = useView((view) => view.hover);
  const [all, setAll] = useState(false);
  const needed = neededFindings(report);
  if (needed.length === 0) return null;
  const names = namesOf(elements);
  const shown = all ? needed : needed.slice(0, FIRST);
  const isRecorded = report.counts.missing > 0;
  return (
    <div className="missing-list">
      <h3>
        {isRecorded ? "Not reached yet" : "What needs bonding"}
        <span className="soft"> · copper still to lay, drawn broken</span>
      </h3>
      <ul className="plain-list">
        {shown.map(({ number, finding }) => (
          <li key={finding.id}>
            <button
              type="button"
              className="missing-row"
              onPointerEnter={() => hover(finding.element)}
              onPointerLeave={() => hover(null)}
              onClick={() => {
                hover(null);
                chooseFinding(finding.id);
                if (finding.element !== null) select([finding.element]);
              }}
            >
              <span className="finding-number">{number}</span>
              <OutcomeMark outcome={finding.outcome} spoken />
              <span className="finding-name">{capitalized(subjectOf(finding, names))}</span>
              <span className="small soft finding-brief">{placeOf(finding, report, waiting, units)}</span>
            </button>
          </li>
        ))}
      </ul>
      {shown.length < needed.length ? (
        <button type="button" className="show-more" onClick={() => setAll(true)}>
          Show all {needed.length}
        </button>
      ) : null}
    </div>
  );
}

/** The findings whose copper nothing recorded makes, in the code's order. */
export function neededFindings(report: Report): NumberedFinding[] {
  return findingsByPart(report)
    .flatMap(({ findings }) => findings)
    .filter(({ finding }) => finding.outcome === "missing" || finding.outcome === "bond");
}

/** Where the copper of a need goes, in few words. */
export function placeOf(
  finding: Finding,
  report: Pick<Report, "band" | "branches" | "ties">,
  waiting: string | null,
  units: Units | undefined,
): string {
  const { gap } = finding.measured;
  if (typeof gap === "number" && gap > 0) return `${lengthText(gap, units)} open round the water`;
  if (finding.rule === "tie-spacing") {
    const { ties: made } = finding.measured;
    const { ties: needed } = finding.required;
    if (typeof made !== "number" || typeof needed !== "number") return finding.section;
    // A shell that adjoins another shares its ties: they are listed once, with the other.
    const isOwn = report.ties.some(({ between }) => between.some((end) => end === finding.body));
    const places = isOwn ? "their places below" : "shared with the shell it adjoins";
    return `${needed - made} of ${needed} ties open, ${places}`;
  }
  if (finding.rule === "perimeter-surfaces") {
    const pieces = report.band
      .filter(({ pool }) => pool === finding.body || finding.alsoBodies?.includes(pool))
      .flatMap(({ bySurface }) => bySurface.filter(({ surface }) => surface === finding.element));
    const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
    const by = [...new Set(pieces.map(({ bonding }) => BONDING_WORDS[bonding]))].join(", ");
    return `${by}, ${areaText(area, units)}`;
  }
  const branches = report.branches.filter(({ to }) => to === finding.element);
  if (branches.length > 0) {
    const run = branches.reduce((sum, branch) => sum + branch.run + branch.drop, 0);
    return `${branches.length === 1 ? "branch" : `${branches.length} branches`} of ${copperText(run, units)}`;
  }
  if (waiting !== null && finding.element !== null) return `branch ${waiting}`;
  return decidingText(finding, units) || finding.section;
}
