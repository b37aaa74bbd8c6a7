/** A question pinned to its finding: a few answers, and a place for initials and date. */
import { useId, useRef, useState } from "react";
import type { Finding } from "../../rules/report.ts";
import { optionText } from "../../rules/words/answers.ts";
import { tied } from "../../rules/words/breaks.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { useEditor } from "../editor-context.tsx";
import { answerQuestion } from "../edits/answer-question.ts";
import { useHandOnFocus } from "./hand-on-focus.ts";

/** The initials used last, so that a round of answers is not held up by typing them. */
let lastInitials = "";

export function QuestionSlip({ finding }: { readonly finding: Finding }) {
  const editor = useEditor();
  const [by, setBy] = useState(lastInitials);
  const [on, setOn] = useState(today);
  const [problem, setProblem] = useState<string | null>(null);
  const field = useId();
  const initials = useRef<HTMLInputElement>(null);
  const slip = useRef<HTMLElement>(null);
  useHandOnFocus(slip);
  const { question } = finding;
  if (!question) return null;
  const answer = (option: string) => {
    const refusal = editor.document.getState().edit(answerQuestion(finding, option, by, on));
    setProblem(refusal?.reason ?? null);
    if (refusal) {
      if (by.trim() === "") initials.current?.focus();
      return;
    }
    lastInitials = by.trim();
    editor.view.getState().say(`Answer kept: ${optionText(option)}.`);
  };
  return (
    <section ref={slip} className="slip" aria-label="Question">
      <p className="slip-question">{tied(question.text)}</p>
      <div className="slip-answers">
        {question.options.map((option) => (
          <button key={option} type="button" onClick={() => answer(option)}>
            {capitalized(optionText(option))}
          </button>
        ))}
      </div>
      <div className="slip-who">
        <label htmlFor={`${field}-by`}>
          Initials
          <input
            ref={initials}
            id={`${field}-by`}
            value={by}
            maxLength={8}
            autoComplete="off"
            aria-invalid={problem !== null && by.trim() === ""}
            onChange={(event) => setBy(event.target.value)}
          />
        </label>
        <label htmlFor={`${field}-on`}>
          Date
          <input id={`${field}-on`} type="date" value={on} onChange={(event) => setOn(event.target.value)} />
        </label>
      </div>
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}

/** Today as `2026-05-01`, by the clock of this place. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
