/** The answer that a finding follows, or one that lapsed: who gave it and when, and a way to take it back. */
import { editionInForce } from "../../rules/editions/in-force.ts";
import { findAnswer } from "../../rules/measures/answers.ts";
import type { Finding } from "../../rules/report.ts";
import type { Answer, Site } from "../../rules/site/site.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import { answersAbout, withdrawAnswer } from "../edits/answer-question.ts";

export function KeptAnswer({ finding }: { readonly finding: Finding }) {
  const editor = useEditor();
  const site = useDocument((state) => state.shown);
  const kept = answerBehind(site, finding);
  if (!kept) return null;
  const isLapsed = finding.lapsed === true;
  const who = [kept.by, kept.on].filter((text) => text !== undefined && text !== "").join(", ");
  const takeBack = () => {
    const refusal = editor.document.getState().edit(withdrawAnswer(kept.question, kept.element ?? null));
    if (refusal) return editor.view.getState().say(refusal.reason, "problem");
    editor.view.getState().say(`Answer taken back: ${kept.answer}.`);
  };
  return (
    <section className={isLapsed ? "kept-answer is-lapsed" : "kept-answer"} aria-label={isLapsed ? "Lapsed" : "Answer"}>
      <div>
        <h3>{isLapsed ? "Answer lapsed" : "Answered on site"}</h3>
        <p className={isLapsed ? "lapsed-words" : ""}>{capitalized(kept.answer)}</p>
        {who === "" ? null : <p className="small soft">{who}</p>}
        {isLapsed ? <p className="small">What it was about has changed since. Look again and answer anew.</p> : null}
      </div>
      <button type="button" onClick={takeBack}>
        Take back
      </button>
    </section>
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
    (answer) => answer.answer === answered.answer && answer.by === answered.by && answer.on === answered.on,
  );
  return fits.findLast((answer) => question === undefined || answer.question === question.id) ?? null;
}
