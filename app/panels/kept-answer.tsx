/** The answer that a finding follows, or one that lapsed: who gave it and when, and a way to take it back. */
import { useRef } from "react";
import { editionInForce } from "../../rules/editions/in-force.ts";
import { findAnswer, printOf } from "../../rules/measures/answers.ts";
import type { Finding, Report } from "../../rules/report.ts";
import type { Answer, Site } from "../../rules/site/site.ts";
import { optionText } from "../../rules/words/answers.ts";
import { tied } from "../../rules/words/breaks.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { useDocument, useEditor, useReport } from "../editor-context.tsx";
import { answersAbout, withdrawAnswer } from "../edits/answer-question.ts";
import { useHandOnFocus } from "./hand-on-focus.ts";

export function KeptAnswer({ finding }: { readonly finding: Finding }) {
  const site = useDocument((state) => state.shown);
  const kept = answerBehind(site, finding);
  return kept ? <Kept kept={kept} finding={finding} /> : null;
}

function Kept({ kept, finding }: { readonly kept: Answer; readonly finding: Finding }) {
  if (finding.lapsed !== true) return <AnswerBox kept={kept} asked={finding.answered?.asked} />;
  return <AnswerBox kept={kept} lapsed="What it was about has changed since. Look again and answer anew." />;
}

/**
 * Answers about an element that lapsed and that no finding asks for any more: what they were about has changed so far that
 * the question is gone. They are said where the element is looked at, so that none goes without a word.
 */
export function LapsedAnswers({ about }: { readonly about: string }) {
  const site = useDocument((state) => state.shown);
  const report = useReport();
  const gone = report === null ? [] : answersGone(site, report, about);
  return gone.map((kept) => (
    <AnswerBox
      key={`${kept.question} ${kept.about} ${kept.on} ${kept.answer}`}
      kept={kept}
      asked={`On ${kept.question.replaceAll("-", " ")}`}
      lapsed="What it was about has changed since, and it is not asked any more."
    />
  ));
}

interface AnswerBoxProps {
  readonly kept: Answer;
  /** What was asked, as far as it is known. */
  readonly asked?: string | undefined;
  /** What is said of an answer that no longer counts. */
  readonly lapsed?: string;
}

function AnswerBox({ kept, asked, lapsed }: AnswerBoxProps) {
  const editor = useEditor();
  const box = useRef<HTMLElement>(null);
  useHandOnFocus(box);
  const isLapsed = lapsed !== undefined;
  const who = [kept.by, kept.on].filter((text) => text !== undefined && text !== "").join(", ");
  const takeBack = () => {
    const refusal = editor.document.getState().edit(withdrawAnswer(kept));
    if (refusal) return editor.view.getState().say(refusal.reason, "problem");
    editor.view.getState().say(`Answer taken back: ${optionText(kept.answer)}.`);
  };
  return (
    <section
      ref={box}
      className={isLapsed ? "kept-answer is-lapsed" : "kept-answer"}
      aria-label={isLapsed ? "Lapsed" : "Answer"}
    >
      <div>
        <h3>{isLapsed ? "Answer lapsed" : "Answered on site"}</h3>
        {asked === undefined ? null : <p className="small">{tied(asked)}</p>}
        <p className={isLapsed ? "lapsed-words" : "kept-words"}>{capitalized(optionText(kept.answer))}</p>
        {who === "" ? null : <p className="small soft">{who}</p>}
        {isLapsed ? <p className="small">{lapsed}</p> : null}
      </div>
      <button type="button" onClick={takeBack}>
        Take back
      </button>
    </section>
  );
}

/** The kept answers about an element that fit nothing that stands now, and that no finding asks anew. */
export function answersGone(site: Site, report: Pick<Report, "findings">, about: string): Answer[] {
  const edition = editionInForce(site).id;
  const bodies = [null, ...site.elements.filter(({ kind }) => kind === "pool").map(({ id }) => id)];
  const stands = ({ restsOn, about: print }: Answer) =>
    print === undefined || bodies.some((body) => printOf(site, edition, about, body, restsOn) === print);
  const asked = new Set(
    report.findings.flatMap(({ element, body, question }) =>
      question && (element ?? body) === about ? [question.id] : [],
    ),
  );
  return answersAbout(site, { element: about, body: null }).filter(
    (answer) => !stands(answer) && !asked.has(answer.question),
  );
}

/** The answer of the site that a finding follows, or that lapsed; null when there is none. */
export function answerBehind(site: Site, finding: Finding): Answer | null {
  const { question, answered, lapsed, element, body } = finding;
  if (lapsed && question) {
    return findAnswer(site, editionInForce(site).id, question.id, element, body)?.answer ?? null;
  }
  if (!answered) return null;
  const fits = answersAbout(site, finding).filter(
    ({ question: asked, answer, by, on }) =>
      asked === answered.question && answer === answered.answer && by === answered.by && on === answered.on,
  );
  return fits.at(-1) ?? null;
}
