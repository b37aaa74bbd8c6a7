/** What is open on the site, outcome by outcome, and how much copper: "0 missing" never without the open questions. */
import type { Outcome, Report } from "../../rules/report.ts";
import { copperText, type Units } from "../../rules/words/lengths.ts";
import {
  missingText,
  OUTCOME_MEANINGS,
  OUTCOME_WORDS,
  outcomeCount,
  questionsText,
} from "../../rules/words/outcomes.ts";
import { useDocument, useLiveAtOnce } from "../editor-context.tsx";
import { routesWords } from "./copper-lines.ts";
import { BEHIND } from "./finding-words.ts";
import { OutcomeMark } from "./outcome-mark.tsx";

const OPEN: readonly Outcome[] = ["conflict", "missing", "bond", "review"];
const SETTLED: readonly Outcome[] = ["meets", "exempt"];

export function CountsLine() {
  const units = useDocument((state) => state.shown.display?.units);
  const report = useLiveAtOnce((state) => state.report);
  const routesPending = useLiveAtOnce((state) => state.routesPending);
  const routesFailure = useLiveAtOnce((state) => state.routesFailure);
  const failure = useLiveAtOnce((state) => state.failure);
  const isBehind = useLiveAtOnce((state) => state.isBehind);
  const state = failure !== null ? " has-failed" : isBehind ? " is-behind" : "";
  return (
    <div className={`topbar-counts${state}`} aria-busy={isBehind} title={isBehind ? BEHIND : undefined}>
      {failure === null ? null : (
        <span className="problem-chip" role="alert" title={failure}>
          The calculation stopped
        </span>
      )}
      {report ? (
        <>
          <ul className="counts" aria-label="Findings by outcome">
            {OPEN.filter((outcome) => report.counts[outcome] > 0 || (outcome === "review" && report.missing === 0)).map(
              (outcome) => (
                <li
                  key={outcome}
                  className={report.counts[outcome] === 0 ? "count count-none" : "count"}
                  title={OUTCOME_MEANINGS[outcome]}
                >
                  <OutcomeMark outcome={outcome} />
                  <span className="count-words">{openCount(outcome, report)}</span>
                  <span className="count-figure" aria-hidden="true">
                    {report.counts[outcome]}
                  </span>
                </li>
              ),
            )}
            {SETTLED.filter((outcome) => report.counts[outcome] > 0).map((outcome) => (
              <li
                key={outcome}
                className="count count-settled"
                title={`${report.counts[outcome]} ${OUTCOME_WORDS[outcome]}: ${OUTCOME_MEANINGS[outcome]}`}
              >
                <OutcomeMark outcome={outcome} />
                <span>
                  {report.counts[outcome]}
                  <span className="unseen"> {OUTCOME_WORDS[outcome]}</span>
                </span>
              </li>
            ))}
          </ul>
          <strong className="copper-total" title="Copper in all, with spare">
            Copper{" "}
            <span className="copper-figure">
              {routesPending || isBehind
                ? routesWords(isBehind ? null : routesFailure)
                : totalText(report.takeoff.conductor.total, units)}
            </span>
          </strong>
        </>
      ) : failure === null ? (
        <span className="soft">Working it out …</span>
      ) : null}
    </div>
  );
}

function totalText(inches: number, units: Units | undefined): string {
  return inches === 0 ? "none" : copperText(inches, units);
}

/** A count that stands in the line; questions that are open carry the zero of what is missing. */
export function openCount(outcome: Outcome, report: Pick<Report, "counts" | "missing">): string {
  if (outcome !== "review") return outcomeCount(outcome, report.counts[outcome]);
  return report.missing === 0 ? missingText(report) : questionsText(report.counts.review);
}
