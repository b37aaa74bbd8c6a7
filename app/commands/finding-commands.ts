/** Stepping through the findings that are listed, in the code's order, within the chosen part if there is one. */
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Report } from "../../rules/report.ts";
import { isOpen } from "../panels/finding-words.ts";
import type { ViewState } from "../view/view-store.ts";
import type { Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";

/**
 * The findings that are stepped through, with their numbers: where only the open ones are listed, those and the one that is
 * chosen, which an answer may just have settled. Where none is open all of them are.
 */
export function steppedFindings(
  report: Report,
  { part, sift, finding: chosen }: Pick<ViewState, "part" | "sift" | "finding">,
): NumberedFinding[] {
  const all = findingsByPart(report)
    .filter((group) => part === null || group.part.id === part)
    .flatMap((group) => group.findings);
  if (sift === "all" || !all.some(({ finding }) => isOpen(finding))) return all;
  return all.filter(({ finding }) => isOpen(finding) || finding.id === chosen);
}

function steppedNow(editor: EditorPorts): NumberedFinding[] {
  const { report } = editor.live.getState();
  return report ? steppedFindings(report, editor.view.getState()) : [];
}

function stepCommand(id: string, label: string, key: string, way: 1 | -1): Command {
  return {
    id,
    label,
    group: "Findings",
    key,
    repeats: true,
    available: (editor) => (steppedNow(editor).length > 0 ? true : "There are no findings to step through."),
    run(editor) {
      const findings = steppedNow(editor);
      const { finding, chooseFinding, say } = editor.view.getState();
      const at = findings.findIndex((entry) => entry.finding.id === finding);
      const next = at < 0 ? (way === 1 ? 0 : findings.length - 1) : (at + way + findings.length) % findings.length;
      const chosen = findings[next];
      if (!chosen) return;
      chooseFinding(chosen.finding.id);
      say(`Finding ${chosen.number}: ${chosen.finding.why}`);
    },
  };
}

export const findingCommands: readonly Command[] = [
  stepCommand("next-finding", "Next finding", "]", 1),
  stepCommand("previous-finding", "Previous finding", "[", -1),
];
