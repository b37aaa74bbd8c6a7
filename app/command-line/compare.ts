/** `check FILE... --compare EDITION`: the same site under two editions, what changes and why. */
import { compareEditions } from "../../rules/compare-editions.ts";
import type { EditionId } from "../../rules/editions/edition.ts";
import { EDITION_WHEN_UNNAMED, namedEdition } from "../../rules/editions/in-force.ts";
import { recompute } from "../../rules/recompute.ts";
import { exitCodeOf, fileHeading } from "./check.ts";
import { comparisonText } from "./comparison-text.ts";
import { inputName, readInput, writeLine } from "./site-input.ts";
import { type Terminal, UNREADABLE, worstCode } from "./terminal.ts";
import { textWidth } from "./text-lines.ts";

export interface CompareOptions {
  readonly json: boolean;
  /** In place of the edition that the site names. */
  readonly as?: EditionId;
  /** The edition it is held against. */
  readonly to: EditionId;
}

/** Prints the comparison of each file; the exit code is that of `check` without the comparison. */
export async function compare(files: readonly string[], options: CompareOptions, terminal: Terminal): Promise<number> {
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
    const { site } = input;
    const own = options.as ?? namedEdition(site);
    const comparison = compareEditions(site, own ?? EDITION_WHEN_UNNAMED, options.to);
    // A site that names no edition is asked for one, which neither side of the comparison does.
    codes.push(exitCodeOf(own === null ? recompute(site) : comparison.reports.before));
    if (options.json) await writeLine(file, comparison, terminal);
    else {
      const head = files.length === 1 ? "" : `${i === 0 ? "" : "\n"}${fileHeading(inputName(file), width)}\n\n`;
      await terminal.write(head + comparisonText(comparison, site, { width, isTerminal: terminal.isTerminal }));
    }
  }
  return worstCode(codes);
}
