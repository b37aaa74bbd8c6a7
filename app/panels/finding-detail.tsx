/** One finding: outcome, the measurement on its gauge, why, what settles it, how sure the limit is, its question. */
import { ChevronDown, ChevronLeft, ChevronUp } from "lucide-react";
import { RULES } from "../../rules/catalogue/index.ts";
import type { NumberedFinding } from "../../rules/findings-by-part.ts";
import type { BasisWord, Finding } from "../../rules/report.ts";
import { tied } from "../../rules/words/breaks.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import { measuredTexts } from "../../rules/words/measured.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { useDocument, useView } from "../editor-context.tsx";
import { isOpen, subjectOf } from "./finding-words.ts";
import { Gauge } from "./gauge.tsx";
import { KeptAnswer, LapsedAnswers } from "./kept-answer.tsx";
import { OutcomeMark } from "./outcome-mark.tsx";
import { QuestionSlip } from "./question-slip.tsx";
import { tip } from "./tip-props.ts";

const BASIS_SENTENCES: Readonly<Record<BasisWord, string>> = {
  published: "Two or more published restatements agree.",
  "one source": "One published restatement says so.",
  memory: "Recalled from memory: check it against the book before relying on it.",
  judgement: "A judgement of ours; no source names it.",
};

interface FindingDetailProps {
  readonly numbered: NumberedFinding;
  readonly siblings: readonly NumberedFinding[];
}

export function FindingDetail({ numbered, siblings }: FindingDetailProps) {
  const { number, finding } = numbered;
  const elements = useDocument((state) => state.shown.elements);
  const units = useDocument((state) => state.shown.display?.units);
  const chooseFinding = useView((view) => view.chooseFinding);
  const select = useView((view) => view.select);
  const setPanel = useView((view) => view.setPanel);
  const names = namesOf(elements);
  const rule = RULES.find((candidate) => candidate.id === finding.rule);
  const at = siblings.findIndex((sibling) => sibling.finding.id === finding.id);
  const goTo = (step: number) => {
    const next = siblings[(at + step + siblings.length) % siblings.length];
    if (!next) return;
    chooseFinding(next.finding.id);
    if (next.finding.element !== null) select([next.finding.element]);
  };
  const about = finding.element ?? finding.body;
  const sections = [finding.section, ...finding.alsoSections].join(", ");
  return (
    <article className="finding" aria-label={`Finding ${number}`} tabIndex={-1}>
      <div className="finding-steps">
        <button type="button" className="plain back" onClick={() => chooseFinding(null)}>
          <ChevronLeft size={16} aria-hidden="true" /> All findings
        </button>
        <span className="steps">
          <span className="small soft">
            {at + 1} of {siblings.length}
          </span>
          <button
            type="button"
            className="plain icon-button"
            aria-label="Previous finding"
            {...tip("Previous finding", "[")}
            onClick={() => goTo(-1)}
          >
            <ChevronUp size={18} aria-hidden="true" />
          </button>
          <button
            type="button"
            className="plain icon-button"
            aria-label="Next finding"
            {...tip("Next finding", "]")}
            onClick={() => goTo(1)}
          >
            <ChevronDown size={18} aria-hidden="true" />
          </button>
        </span>
      </div>
      <p className="small soft">
        Finding {number}, {sections}
      </p>
      <h2 className="finding-title">{capitalized(subjectOf(finding, names))}</h2>
      <p className={`outcome outcome-${finding.outcome}`}>
        <OutcomeMark outcome={finding.outcome} />
        {OUTCOME_WORDS[finding.outcome]}
      </p>
      <Gauge finding={finding} units={units} />
      <p>{tied(finding.why)}</p>
      {finding.remedy !== "" ? (
        <>
          <h3>{isOpen(finding) ? "What settles it" : "What to do"}</h3>
          <p>{tied(finding.remedy)}</p>
        </>
      ) : null}
      <KeptAnswer finding={finding} />
      {about === null ? null : <LapsedAnswers about={about} />}
      {finding.question ? <QuestionSlip key={finding.id} finding={finding} /> : null}
      <Measurements finding={finding} units={units} />
      <h3>{rule?.parameters.length === 0 ? "How sure this is" : "How sure the limit is"}</h3>
      <p>{BASIS_SENTENCES[finding.basis]}</p>
      {rule ? (
        <>
          <h3>What this rule protects people from</h3>
          <p>{rule.protects}</p>
        </>
      ) : null}
      {finding.element !== null ? (
        <button
          type="button"
          onClick={() => {
            if (finding.element !== null) select([finding.element]);
            setPanel("element");
          }}
        >
          Show its facts
        </button>
      ) : null}
    </article>
  );
}

function Measurements({
  finding,
  units,
}: {
  readonly finding: Finding;
  readonly units: Parameters<typeof measuredTexts>[1];
}) {
  const texts = measuredTexts(finding, units);
  if (texts.length === 0) return null;
  return (
    <>
      <h3>Measured</h3>
      <ul>
        {texts.map((text) => (
          <li key={text}>{tied(capitalized(text))}</li>
        ))}
      </ul>
    </>
  );
}
