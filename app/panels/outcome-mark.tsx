/** The small sign of an outcome: told apart by shape as well as by color; the word stands beside it or is read out. */
import type { Outcome } from "../../rules/report.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";

const SIZE = 12;

export function OutcomeMark({ outcome, spoken = false }: { readonly outcome: Outcome; readonly spoken?: boolean }) {
  return (
    <>
      <svg className={`mark mark-${outcome}`} width={SIZE} height={SIZE} viewBox="-6 -6 12 12" aria-hidden="true">
        {shapeOf(outcome)}
      </svg>
      {spoken ? <span className="unseen">{OUTCOME_WORDS[outcome]}</span> : null}
    </>
  );
}

function shapeOf(outcome: Outcome) {
  switch (outcome) {
    case "bond":
      return <path d="M0-5L5 0L0 5L-5 0Z" fill="var(--panel)" stroke="var(--copper)" strokeWidth="1.5" />;
    case "missing":
      return <path d="M0-5L5 0L0 5L-5 0Z" fill="var(--copper)" stroke="var(--copper)" strokeWidth="1.5" />;
    case "conflict":
      return <path d="M-2-5H2L5-2V2L2 5H-2L-5 2V-2Z" fill="var(--ink)" stroke="var(--ink)" />;
    case "review":
      return <rect x="-4.5" y="-4.5" width="9" height="9" fill="var(--question)" stroke="var(--ink)" />;
    case "meets":
      return <circle r="4.2" fill="var(--meets)" />;
    case "exempt":
      return <circle r="4.2" fill="none" stroke="var(--faint)" strokeWidth="1.5" />;
  }
}
