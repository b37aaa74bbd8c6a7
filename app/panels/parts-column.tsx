/** The code's own order as navigation: every part with its counts; choosing one leaves just its geometry on the sheet. */
import { PARTS, type PartId } from "../../rules/catalogue/rule.ts";
import { EDITIONS, isEditionId } from "../../rules/editions/in-force.ts";
import { findingsByPart, type PartFindings } from "../../rules/findings-by-part.ts";
import { OUTCOMES_WORST_FIRST, type Outcome } from "../../rules/report.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { useReport, useView } from "../editor-context.tsx";
import { OutcomeMark } from "./outcome-mark.tsx";

/** Where bonding ends and clearances begin. */
const FIRST_CLEARANCE: PartId = "receptacles";

export function PartsColumn() {
  const report = useReport();
  const chosen = useView((view) => view.part);
  const choosePart = useView((view) => view.choosePart);
  const groups = new Map((report ? findingsByPart(report) : []).map((group) => [group.part.id, group]));
  const edition = report && isEditionId(report.edition) ? EDITIONS[report.edition].title : "";
  return (
    <nav className="parts" aria-label="Parts of the article">
      <header className="parts-head">
        <h2>Article 680</h2>
        <p className="soft">{edition === "" ? "in the code's order" : `${edition}, in the code's order`}</p>
      </header>
      <ul>
        <li>
          <button type="button" className="part" aria-pressed={chosen === null} onClick={() => choosePart(null)}>
            <span className="part-section" />
            <span className="part-title">The whole site</span>
          </button>
        </li>
        {PARTS.map((part) => (
          <li key={part.id} className={part.id === FIRST_CLEARANCE ? "first-clearance" : undefined}>
            <button
              type="button"
              className={groups.has(part.id) ? "part" : "part part-none"}
              aria-pressed={chosen === part.id}
              onClick={() => choosePart(chosen === part.id ? null : part.id)}
            >
              <span className="part-section">{shortSection(part.section)}</span>
              <span className="part-title">{part.title}</span>
              <Counts group={groups.get(part.id)} />
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** `680.26(B)(7)` as `26 B7`, as the column has room for. */
export function shortSection(section: string): string {
  const [, rest = section] = section.split(".");
  const [number = "", ...letters] = rest.split("(");
  return letters.length === 0 ? number : `${number} ${letters.map((letter) => letter.replace(")", "")).join("")}`;
}

function Counts({ group }: { readonly group: PartFindings | undefined }) {
  if (!group) return <span className="part-counts part-nothing">none</span>;
  const counts = new Map<Outcome, number>();
  for (const { finding } of group.findings) counts.set(finding.outcome, (counts.get(finding.outcome) ?? 0) + 1);
  return (
    <span className="part-counts">
      {OUTCOMES_WORST_FIRST.filter((outcome) => counts.has(outcome)).map((outcome) => (
        <span key={outcome} className="count" title={`${counts.get(outcome)} ${OUTCOME_WORDS[outcome]}`}>
          <OutcomeMark outcome={outcome} spoken />
          {counts.get(outcome)}
        </span>
      ))}
    </span>
  );
}
