/** The six steps of the walk on the first demo: what each says, where it points, and what it shows. */
import type { Report } from "../../rules/report.ts";
import type { EditorPorts } from "../commands/editor-ports.ts";

/** What of the page a step points at. */
export type WalkPlace = "sheet" | "parts" | "details" | "tools";

export interface WalkStep {
  readonly title: string;
  readonly text: string;
  /** Said instead where a finger points. */
  readonly byTouch?: string;
  readonly place: WalkPlace;
  /** It shows a finding, which there is only once a report has come. */
  readonly isAboutFinding?: true;
  /** Puts on the page what the step is about. */
  show(editor: EditorPorts): void;
}

/** The part that the steps look at. */
const PART = "fixed-metal";

export const WALK_STEPS: readonly WalkStep[] = [
  {
    title: "A backyard, drawn to scale",
    text: "This yard is invented. The heavy line is the pool's inside wall; copper that is still to be laid is drawn broken. The wheel zooms, and the Move tool moves the sheet.",
    byTouch:
      "This yard is invented. The heavy line is the pool's inside wall; copper that is still to be laid is drawn broken. Two fingers move the sheet and zoom it.",
    place: "sheet",
    show: showWhole,
  },
  {
    title: "The code's own order",
    text: "Each row is a part of Article 680 with a count of its findings by outcome. Choose a row and only its geometry stays strong on the sheet, as that of Fixed metal does now.",
    place: "parts",
    show(editor) {
      showWhole(editor);
      editor.view.getState().choosePart(PART);
      editor.view.getState().showColumn("parts");
    },
  },
  {
    title: "One finding, one measurement",
    text: "The rest of the sheet steps back. What stays is the line that was measured, with its length, and the limit as a dashed line. Beside it: why it matters, and what settles it.",
    place: "details",
    isAboutFinding: true,
    show(editor) {
      showFinding(editor);
      editor.view.getState().showColumn("details");
    },
  },
  {
    title: "Change it and watch",
    text: "The fence is selected. Drag it off the pool, or press Shift with the down arrow: the finding turns as it crosses the limit. Undo takes it back.",
    byTouch:
      "The fence is selected. Drag it off the pool: the finding turns as it crosses the limit. Undo takes it back.",
    place: "sheet",
    isAboutFinding: true,
    show(editor) {
      showFinding(editor);
      editor.view.getState().showColumn(null);
    },
  },
  {
    title: "The copper, counted",
    text: "Ring, ties and branches with their lengths, and every connector. Choose a line to light up its pieces. An open diamond on the sheet is a tie to be made: touch it to record it.",
    place: "details",
    show(editor) {
      showWhole(editor);
      editor.view.getState().setPanel("copper");
      editor.view.getState().showColumn("details");
    },
  },
  {
    title: "Now your own yard",
    text: "Begin a new sheet and draw the pool along its inside wall; deck, house and fences follow. A tip beside each button tells its key, and All commands finds everything by name. Help brings this walk back.",
    byTouch:
      "Begin a new sheet and draw the pool along its inside wall; deck, house and fences follow. All commands, in the menu, finds everything by name. Help brings this walk back.",
    place: "tools",
    show: showWhole,
  },
];

function showWhole({ view }: EditorPorts): void {
  const { choosePart, select, showColumn, setTool } = view.getState();
  setTool("select");
  choosePart(null);
  select([]);
  showColumn(null);
}

/** The fence that stands too near; where it has been moved off, whatever comes first in its part. */
export function findingToShow(report: Report | null): Report["findings"][number] | null {
  const ofPart = report?.findings.filter(({ rule, witness }) => rule === PART && witness.length > 1) ?? [];
  return ofPart.find(({ outcome, element }) => outcome === "bond" && element?.includes("fence")) ?? ofPart[0] ?? null;
}

function showFinding(editor: EditorPorts): void {
  showWhole(editor);
  const { choosePart, chooseFinding, select } = editor.view.getState();
  choosePart(PART);
  const finding = findingToShow(editor.live.getState().report);
  if (!finding) return;
  chooseFinding(finding.id);
  if (finding.element !== null) select([finding.element]);
}
