/** How a local amendment is named wherever it acts. */
import { RULES } from "../catalogue/index.ts";
import type { Parameter, ParameterValue } from "../editions/edition.ts";
import { EDITION_WHEN_UNNAMED, EDITIONS } from "../editions/in-force.ts";
import type { ParameterId } from "../editions/parameter-types.ts";
import type { Finding, Report } from "../report.ts";
import type { Units } from "./lengths.ts";
import { parameterText } from "./parameters.ts";

/** `680.26(B)(7): 6' 0" here, Ordinance 12-4`; a number that no edition holds stands by its name. */
export function amendmentWords(
  { parameter, value, reason }: { readonly parameter: string; readonly value: unknown; readonly reason?: string },
  units: Units = "ft-in",
): string {
  const { parameters } = EDITIONS[EDITION_WHEN_UNNAMED];
  const known: Parameter | null = Object.hasOwn(parameters, parameter) ? parameters[parameter as ParameterId] : null;
  const change =
    known === null
      ? `${parameter}: ${JSON.stringify(value)}`
      : `${known.section}: ${parameterText(value as ParameterValue, known.unit, units)} here`;
  return reason ? `${change}, ${reason}` : change;
}

const READ: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  RULES.map((rule) => [rule.id, new Set(rule.parameters)]),
);

/** The amendments of numbers that the rule of a finding reads, in words. */
export function amendedFor(
  finding: Pick<Finding, "rule">,
  report: Pick<Report, "amendments">,
  units: Units = "ft-in",
): string[] {
  const read = READ.get(finding.rule);
  return report.amendments
    .filter(({ parameter }) => read?.has(parameter))
    .map((amendment) => amendmentWords(amendment, units));
}
