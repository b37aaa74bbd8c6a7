/** `draw FILE --out NAME.svg`: writes the plan of a site as a drawing sheet. */
import { compareEditions } from "../../rules/compare-editions.ts";
import type { EditionId } from "../../rules/editions/edition.ts";
import { EDITION_WHEN_UNNAMED, namedEdition } from "../../rules/editions/in-force.ts";
import { recompute } from "../../rules/recompute.ts";
import { comparisonWithLabels, reportWithLabels } from "../../rules/words/field-words.ts";
import { drawingSvg } from "../drawing/drawing-svg.ts";
import type { PaletteName } from "../drawing/palette.ts";
import type { PaperName } from "../drawing/paper.ts";
import { readInput, systemReason, WRITE_REASONS } from "./site-input.ts";
import { CLEAR, type Terminal, UNREADABLE } from "./terminal.ts";

export interface DrawOptions {
  /** A file name, or `-` for standard output. */
  readonly out: string;
  readonly as?: EditionId;
  /** Adds what changes under this edition. */
  readonly compare?: EditionId;
  /** Adds the reasons of every finding in full. */
  readonly reasons?: boolean;
  readonly paper?: PaperName;
  readonly palette?: PaletteName;
}

export async function draw(file: string, options: DrawOptions, terminal: Terminal): Promise<number> {
  const input = await readInput(file, terminal);
  if (!input.ok) {
    await terminal.complain(`${input.lines.join("\n")}\n`);
    return UNREADABLE;
  }
  const { site } = input;
  const { as, compare, paper, palette, reasons } = options;
  const report = reportWithLabels(recompute(site, as === undefined ? {} : { as }), site);
  const before = as ?? namedEdition(site) ?? EDITION_WHEN_UNNAMED;
  const comparison =
    compare === undefined ? {} : { comparison: comparisonWithLabels(compareEditions(site, before, compare), site) };
  const svg = drawingSvg(site, report, { paper, palette, reasons, ...comparison });
  if (options.out === "-") {
    await terminal.write(svg);
    return CLEAR;
  }
  try {
    await terminal.writeFile(options.out, svg);
  } catch (error) {
    await terminal.complain(`${options.out} cannot be written: ${systemReason(error, WRITE_REASONS)}.\n`);
    return UNREADABLE;
  }
  return CLEAR;
}
