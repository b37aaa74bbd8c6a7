/** The local amendments in force, as blocks for a column of the sheet: what the edition says, what holds here, and why. */

import type { Parameter, ParameterValue } from "../../rules/editions/edition.ts";
import { EDITIONS, isEditionId } from "../../rules/editions/in-force.ts";
import type { ParameterId, ParameterTable } from "../../rules/editions/parameter-types.ts";
import type { Report } from "../../rules/report.ts";
import { parameterText } from "../../rules/words/parameters.ts";
import { type Block, headingBlock, paragraphBlock, spaceBlock } from "./blocks.ts";
import type { ListOptions } from "./finding-list.ts";

/** Nothing where none is in force. */
export function amendmentBlocks(report: Report, { units, width }: ListOptions): Block[] {
  const { amendments, edition } = report;
  if (amendments.length === 0) return [];
  const written: ParameterTable | null = isEditionId(edition) ? EDITIONS[edition].parameters : null;
  return [
    headingBlock("Local amendments", "in force on this plan"),
    ...amendments.map(({ parameter, value, reason }) => {
      const known: Parameter | undefined = written?.[parameter as ParameterId];
      const change =
        known === undefined
          ? `${parameter}: ${JSON.stringify(value)}`
          : `${known.says} ${known.section}: ${parameterText(known.value, known.unit, units)}; here ${parameterText(value as ParameterValue, known.unit, units)}`;
      return paragraphBlock(`${change}. ${reason === "" ? "No reason given" : `By: ${reason}`}.`, width);
    }),
    spaceBlock(4),
  ];
}

/** What the title block says of them. */
export function amendmentCount({ amendments }: Pick<Report, "amendments">): string {
  return amendments.length === 0 ? "none" : `${amendments.length} in force, see sheet 1`;
}
