/** The code beside the sheet: first questions, the rules by word or section, local amendments, editions side by side. */
import { useState } from "react";
import { useDocument } from "../editor-context.tsx";
import { Amendments } from "./amendments.tsx";
import { ComparePanel } from "./compare-panel.tsx";
import { FirstQuestions } from "./first-questions.tsx";
import { RuleSearch } from "./rule-search.tsx";
import "./code-panel.css";

const VIEWS = [
  { id: "rules", label: "Rules" },
  { id: "amendments", label: "Amendments" },
  { id: "editions", label: "Editions" },
] as const;

type ViewId = (typeof VIEWS)[number]["id"];

export function CodePanel() {
  const [view, setView] = useState<ViewId>("rules");
  const opened = useDocument((state) => state.opened);
  return (
    // What was begun for one site is not put on the next.
    <div className="code-panel" key={opened}>
      <FirstQuestions />
      <fieldset className="switch">
        <legend className="unseen">What of the code</legend>
        {VIEWS.map(({ id, label }) => (
          <button key={id} type="button" aria-pressed={view === id} onClick={() => setView(id)}>
            {label}
          </button>
        ))}
      </fieldset>
      {view === "rules" ? <RuleSearch /> : null}
      {view === "amendments" ? <Amendments /> : null}
      {view === "editions" ? <ComparePanel /> : null}
    </div>
  );
}
