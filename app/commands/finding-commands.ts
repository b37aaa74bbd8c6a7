/** Stepping through the findings in the code's order, within the chosen part if there is one. */
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";

/** The findings that are stepped through now, with their numbers. */
export function steppedFindings(editor: EditorPorts): NumberedFinding[] {
  const { report } = editor.live.getState();
  if (!report) return [];
  const { part } = editor.view.getState();
  return findingsByPart(report)
    .filter((group) => part === null || group.part.id === part)
    .flatMap((group) => group.findings);
}

function stepCommand(id: string, label: string, key: string, way: 1 | -1): Command {
  return {
    id,
    label,
    group: "Findings",
    key,
    repeats: true,
    available: (editor) => (steppedFindings(editor).length > 0 ? true : "There are no findings to step through."),
    run(editor) {
      const findings = steppedFindings(editor);
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
