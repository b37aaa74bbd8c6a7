/** Yards whose figures hang on a number of the code, each figure with its source: lengths, counts and areas of the report. */
import type { EditionId } from "../../rules/editions/edition.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { siteOf } from "./catalogue/yards.ts";

export interface FigureYard {
  readonly name: string;
  readonly source: string;
  readonly editions: readonly EditionId[];
  /** The numbers of the code that the figure hangs on. */
  readonly parameters: readonly ParameterId[];
  readonly elements: readonly object[];
  readonly head?: object;
  /** Whether the report says what the source says. */
  readonly holds: (report: Report) => boolean;
}

export function figureSite({ elements, head }: FigureYard, edition: EditionId): Site {
  return siteOf(elements, { edition, ...head });
}

export const FIGURE_YARDS: readonly FigureYard[] = [];
