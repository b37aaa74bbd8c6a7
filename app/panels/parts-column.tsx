/** The code's own order as navigation: every part with its counts; choosing one leaves just its geometry on the sheet. */
import { Eye, EyeOff } from "lucide-react";
import { memo } from "react";
import { PARTS, type PartId } from "../../rules/catalogue/rule.ts";
import { EDITIONS, isEditionId } from "../../rules/editions/in-force.ts";
import { findingsByPart, type Part, type PartFindings } from "../../rules/findings-by-part.ts";
import { OUTCOMES_WORST_FIRST } from "../../rules/report.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { useEditor, useReport, useView } from "../editor-context.tsx";
import { drawnOf } from "../view/hidden-parts.ts";
import { OutcomeMark } from "./outcome-mark.tsx";
import { tip } from "./tip-props.ts";

/** Where bonding ends and clearances begin. */
const FIRST_CLEARANCE: PartId = "receptacles";

export function PartsColumn() {
  const report = useReport();
  const chosen = useView((view) => view.part);
  const choosePart = useView((view) => view.choosePart);
  const groups = new Map((report ? findingsByPart(report) : []).map((group) => [group.part.id, group]));
  const edition = report && isEditionId(report.edition) ? EDITIONS[report.edition].title : "";
  const amended = report?.amendments.length ?? 0;
  const locally = amended === 0 ? "" : ` with ${amended === 1 ? "a local amendment" : `${amended} local amendments`}`;
  return (
    <nav className="parts" aria-label="Parts of the article">
      <header className="parts-head">
        <h2>Article 680</h2>
        <p className="soft">{edition === "" ? "in the code's order" : `${edition}${locally}, in the code's order`}</p>
      </header>
      <ul>
        <li>
          <button type="button" className="part" aria-pressed={chosen === null} onClick={() => choosePart(null)}>
            <span className="part-section" />
            <span className="part-title">The whole site</span>
          </button>
        </li>
        {PARTS.map((part) => (
          <PartRow
            key={part.id}
            part={part}
            isChosen={chosen === part.id}
            counts={report ? countsText(groups.get(part.id)) : null}
          />
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

interface PartRowProps {
  readonly part: Part;
  readonly isChosen: boolean;
  /** As `countsText` writes them: a row is drawn again only when its own counts change. Null: not worked out yet. */
  readonly counts: string | null;
}

const PartRow = memo(function PartRow({ part, isChosen, counts }: PartRowProps) {
  const view = useEditor().view;
  return (
    <li className={part.id === FIRST_CLEARANCE ? "part-line first-clearance" : "part-line"}>
      <button
        type="button"
        className={counts === "" || counts === null ? "part part-none" : "part"}
        aria-pressed={isChosen}
        onClick={() => {
          const { choosePart, column, showColumn } = view.getState();
          choosePart(isChosen ? null : part.id);
          // Where the column lies over the sheet, the part's findings take its place.
          if (column === "parts" && !isChosen) showColumn("details");
        }}
      >
        <span className="part-section">{shortSection(part.section)}</span>
        <span className="part-title">{part.title}</span>
        <Counts counts={counts} />
      </button>
      <PartEye part={part} />
    </li>
  );
});

/** Shows or hides what belongs to a part alone. Its findings stay. */
function PartEye({ part }: { readonly part: Part }) {
  const isHidden = useView((view) => view.hiddenParts.includes(part.id));
  const { view, live } = useEditor();
  const words = isHidden ? `Draw again: ${part.title}` : `Do not draw: ${part.title}`;
  return (
    <button
      type="button"
      className="plain part-eye"
      aria-pressed={isHidden}
      aria-label={words}
      {...tip(words, undefined, "What is not drawn is judged all the same.")}
      onClick={() => {
        const { hiddenParts, setHiddenParts, selection, select } = view.getState();
        const parts = isHidden ? hiddenParts.filter((one) => one !== part.id) : [...hiddenParts, part.id];
        setHiddenParts(parts);
        const drawn = drawnOf(selection, live.getState().report, parts);
        if (drawn.length < selection.length) select(drawn);
      }}
    >
      {isHidden ? <EyeOff size={16} aria-hidden="true" /> : <Eye size={16} aria-hidden="true" />}
    </button>
  );
}

/** How many findings of each outcome, in the order of OUTCOMES_WORST_FIRST: `0 1 0 2 5 0`; empty for a part without any. */
function countsText(group: PartFindings | undefined): string {
  if (!group) return "";
  return OUTCOMES_WORST_FIRST.map(
    (outcome) => group.findings.filter(({ finding }) => finding.outcome === outcome).length,
  ).join(" ");
}

function Counts({ counts }: { readonly counts: string | null }) {
  if (counts === null) return null;
  if (counts === "") return <span className="part-counts part-nothing">none</span>;
  const numbers = counts.split(" ");
  return (
    <span className="part-counts">
      {OUTCOMES_WORST_FIRST.map((outcome, i) =>
        numbers[i] === "0" ? null : (
          <span key={outcome} className="count" title={`${numbers[i]} ${OUTCOME_WORDS[outcome]}`}>
            <OutcomeMark outcome={outcome} spoken />
            {numbers[i]}
          </span>
        ),
      )}
    </span>
  );
}
