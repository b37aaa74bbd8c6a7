/** `draw FILE --out NAME.svg`: writes the plan of a site as a drawing sheet. */
import type { EditionId } from "../../rules/editions/edition.ts";
import { recompute } from "../../rules/recompute.ts";
import { drawingSvg } from "../drawing/drawing-svg.ts";
import type { PaletteName } from "../drawing/palette.ts";
import type { PaperName } from "../drawing/paper.ts";
import { readInput, systemReason } from "./site-input.ts";
import { CLEAR, type Terminal, UNREADABLE } from "./terminal.ts";

export interface DrawOptions {
  /** A file name, or `-` for standard output. */
  readonly out: string;
  readonly as?: EditionId;
  readonly paper?: PaperName;
  readonly palette?: PaletteName;
}

export async function draw(file: string, options: DrawOptions, terminal: Terminal): Promise<number> {
  const input = await readInput(file, terminal);
  if (!input.ok) {
    await terminal.complain(`${input.lines.join("\n")}\n`);
    return UNREADABLE;
  }
  const report = recompute(input.site, options.as === undefined ? {} : { as: options.as });
  const svg = drawingSvg(input.site, report, { paper: options.paper, palette: options.palette });
  if (options.out === "-") {
    await terminal.write(svg);
    return CLEAR;
  }
  try {
    await terminal.writeFile(options.out, svg);
  } catch (error) {
    await terminal.complain(`${options.out} cannot be written: ${systemReason(error)}.\n`);
    return UNREADABLE;
  }
  return CLEAR;
}
