/** `check FILE...`: reads sites, works out their reports and prints them. */
import type { EditionId } from "../../rules/editions/edition.ts";
import { recompute } from "../../rules/recompute.ts";
import type { Report } from "../../rules/report.ts";
import { reportText } from "./report-text.ts";
import { inputName, readInput, writeLine } from "./site-input.ts";
import { CLEAR, FAULTS, QUESTIONS, type Terminal, UNREADABLE, worstCode } from "./terminal.ts";
import { textWidth } from "./text-lines.ts";

export interface CheckOptions {
  readonly json: boolean;
  readonly as?: EditionId;
}

/**
 * Prints the report of each file, one after the other; the exit code is the worst of them. With `json` every file gives
 * exactly one line, that of a file that cannot be read being its refusal.
 */
export async function check(files: readonly string[], options: CheckOptions, terminal: Terminal): Promise<number> {
  const codes: number[] = [];
  const width = textWidth(terminal.columns);
  for (const [i, file] of files.entries()) {
    const input = await readInput(file, terminal);
    if (!input.ok) {
      await terminal.complain(`${input.lines.join("\n")}\n`);
      if (options.json) await writeLine(file, input.refusal, terminal);
      codes.push(UNREADABLE);
      continue;
    }
    const report = recompute(input.site, options.as === undefined ? {} : { as: options.as });
    codes.push(exitCodeOf(report));
    if (options.json) await writeLine(file, report, terminal);
    else {
      const head = files.length === 1 ? "" : `${i === 0 ? "" : "\n"}${fileHeading(inputName(file), width)}\n\n`;
      await terminal.write(head + reportText(report, input.site, { width, isTerminal: terminal.isTerminal }));
    }
  }
  return worstCode(codes);
}

/** The line that tells one of several files from the next. */
export function fileHeading(name: string, width: number): string {
  return `## ${name} ${"#".repeat(Math.max(2, width - name.length - 4))}`;
}

/** 0 nothing missing, in conflict or in question; 1 something missing or in conflict; 3 only questions remain. */
export function exitCodeOf(report: Pick<Report, "missing" | "counts">): number {
  const { missing, counts } = report;
  if (missing > 0 || counts.missing > 0 || counts.bond > 0 || counts.conflict > 0) return FAULTS;
  return counts.review > 0 ? QUESTIONS : CLEAR;
}
